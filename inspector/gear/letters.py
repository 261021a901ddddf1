"""What a letter to a holder and a sheet of slips say, as data. How to reach a person is never part of it."""

from dataclasses import dataclass

from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint


@dataclass(frozen=True, slots=True)
class LetterLine:
    """What falls due, and when, in words."""

    day: str
    what: str


@dataclass(frozen=True, slots=True)
class LetterPiece:
    """A piece that somebody has or owns. may_use: for anything at all; says: what holds it, or what it may be used for.

    why: why it stands in the letter; do: what is asked of the reader, empty for nothing.
    """

    tag: str
    kind_name: str
    marked: str
    outcome: Outcome
    may_use: bool
    says: str
    why: str
    do: str
    due: tuple[LetterLine, ...]


@dataclass(frozen=True, slots=True)
class HolderLetter:
    """A letter. person: the id by which an address is looked up as it is printed; bring: the tags to be brought."""

    imprint: Imprint
    person: str
    name: str
    until: str
    bring: tuple[str, ...]
    bring_to: str
    bring_by: str
    pieces: tuple[LetterPiece, ...]
    others: tuple[LetterLine, ...]


@dataclass(frozen=True, slots=True)
class DueSlip:
    """A slip for one piece. may_use: for anything at all; says: what holds it, in one line; concerns: who and where.

    do: what is asked, where to bring it and by when.
    """

    tag: str
    kind_name: str
    marked: str
    may_use: bool
    says: str
    due: tuple[LetterLine, ...]
    concerns: str
    do: str


@dataclass(frozen=True, slots=True)
class SlipSheet:
    """Slips to be cut apart."""

    imprint: Imprint
    slips: tuple[DueSlip, ...]
