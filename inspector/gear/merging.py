"""Words about field copies of the register, and about what comes together when one is brought back."""

from datetime import date
from enum import StrEnum

from msgspec import Struct


class FieldCopy(Struct, frozen=True):
    """A copy of the register that somebody works on away from it.

    origin: the copy's own name, which its documents carry; holder: a person's id; what_for: in words, may be empty;
    brought_back: the day on which its deeds were last taken over, None where none were.
    """

    origin: str
    taken_on: date
    holder: str
    what_for: str
    brought_back: date | None = None


class Clash(StrEnum):
    """In what deeds of two copies do not go together. Both stay; what follows is on the safe side."""

    WHERE_IT_IS = "where_it_is"  # lent, put away, fitted or missing here, and something of the kind there
    WHAT_IT_IS = "what_it_is"  # what is written of the piece was changed in both
    LEFT_FOR_GOOD = "left_for_good"  # sold or made unusable in one, worked on in the other
    EVIDENCE = "evidence"  # kept as found in one, moved or changed in the other
    RETIRED_AND_USED = "retired_and_used"  # retired in one, handed out or used in the other
    WRITTEN_TWICE = "written_twice"  # the very same was entered in both
    SAME_TAG = "same_tag"  # two pieces were booked in under one tag
    SAME_NAME = "same_name"  # two people were entered under one name
    CHANGED_BOTH = "changed_both"  # a vehicle, a trip or a person was changed in both
    RULEBOOK = "rulebook"  # limits were adopted in both
    COUNT_CLOSED = "count_closed"  # a count was closed in one and went on in the other


class Clashed(Struct, frozen=True):
    """One clash. about: tag, reference or name; ours, theirs: the deeds, told as sentences; done: what follows."""

    clash: Clash
    about: str
    ours: tuple[str, ...]
    theirs: tuple[str, ...]
    done: str


class Merged(Struct, frozen=True):
    """What came of bringing a copy back.

    origin: the copy's; deed_count, row_count: what was new here, 0 where nothing was; tags: pieces that were judged
    anew; clashes: what does not go together.
    """

    origin: str
    deed_count: int
    row_count: int
    tags: tuple[str, ...]
    clashes: tuple[Clashed, ...]
