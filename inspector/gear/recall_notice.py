"""A recall as a record: what a notice says, which pieces stand under it, who was written to and who answered what."""

from collections.abc import Iterable
from datetime import date
from enum import StrEnum

from msgspec import Struct


class Issuer(StrEnum):
    """Whose notice it is."""

    MAKER = "maker"
    REGULATOR = "regulator"
    CLUB = "club"


class Sure(StrEnum):
    """How a piece answers to a notice. What nobody can read is asked, never left out."""

    CERTAIN = "certain"
    TO_ASK = "to_ask"
    NOT_MEANT = "not_meant"


class Meant(Struct, frozen=True):
    """Which pieces a notice means, as it is written there. What is empty says nothing.

    kinds: keys of kinds of gear; batches: beginnings of serials, or signs that stand in them; first, last: serials of
    a range, either may be left open; made_from, made_until: both days count. tags: pieces that are named one by one.
    """

    mark: str = ""
    kinds: tuple[str, ...] = ()
    batches: tuple[str, ...] = ()
    first: str = ""
    last: str = ""
    made_from: date | None = None
    made_until: date | None = None
    tags: tuple[str, ...] = ()

    @property
    def names_serials(self) -> bool:
        """Whether it tells its pieces apart by what is stamped into them."""
        return bool(self.batches or self.first or self.last)


class NewRecall(Struct, frozen=True):
    """A notice as it was entered. on: the day of that; issued: the notice's own day, None where it bears none.

    source: where it can be read; reason, remedy: what is wrong, and what whoever has a piece is to do; by: an id.
    """

    on: date
    issuer: Issuer
    meant: Meant
    reason: str
    remedy: str = ""
    source: str = ""
    issued: date | None = None
    by: str = ""


class Recall(Struct, frozen=True):
    """A kept recall. ref: what it is called by."""

    id: str
    ref: str
    facts: NewRecall


class Step(StrEnum):
    """What a recall came to for one piece."""

    CALLED = "called"
    NOT_OF_IT = "not_of_it"  # somebody competent read on it that it is not meant
    REMEDIED = "remedied"  # what the notice asks for was done
    WITHDRAWN = "withdrawn"  # the recall itself was entered wrongly


class NewPieceCall(Struct, frozen=True):
    """A step of a piece under a recall (its reference). why: how it matches, or what was read or done.

    mark, serial: as read on the piece when somebody cleared it. by: an id.
    """

    on: date
    recall: str
    step: Step
    sure: Sure
    why: str
    by: str
    mark: str = ""
    serial: str = ""


class PieceCall(Struct, frozen=True):
    """A logged step."""

    id: str
    item_id: str
    facts: NewPieceCall


def that_count(calls: Iterable[PieceCall]) -> tuple[PieceCall, ...]:
    """The steps of one piece in their order, without a call that a withdrawal took back and the withdrawal itself."""
    found: list[PieceCall] = []
    for one in sorted(calls, key=lambda one: (one.facts.on, one.id)):
        if one.facts.step is Step.WITHDRAWN:
            back = (one.facts.recall, Step.CALLED)
            found = [before for before in found if (before.facts.recall, before.facts.step) != back]
        else:
            found.append(one)
    return tuple(found)


class RecallEntryKind(StrEnum):
    """What was added to a recall later."""

    WRITTEN = "written"  # a letter went out
    REMINDED = "reminded"
    ANSWERED = "answered"
    CLOSED = "closed"
    WITHDRAWN = "withdrawn"  # it was entered wrongly
    TOLD = "told"  # a letter went out that it was withdrawn


class Answer(StrEnum):
    """What somebody answered of a piece."""

    HAS_IT = "has_it"
    SENT = "sent"
    HAS_IT_NO_MORE = "has_it_no_more"
    PASSED_ON = "passed_on"
    MADE_UNUSABLE = "made_unusable"
    READ = "read"  # what stands on it


class NewRecallEntry(Struct, frozen=True):
    """What was added. person: an id, empty for one whom the register knows by name alone; name: as written to.

    number: of the letter; tags: the pieces it is about; text: to whom it was passed on, what was read, how it ended.
    Of a withdrawal by and person are the two who said so, and tags the pieces that it had held until then.
    """

    on: date
    kind: RecallEntryKind
    by: str
    person: str = ""
    name: str = ""
    number: str = ""
    tags: tuple[str, ...] = ()
    answer: Answer | None = None
    text: str = ""


class RecallEntry(Struct, frozen=True):
    """A logged addition."""

    id: str
    recall_id: str
    facts: NewRecallEntry
