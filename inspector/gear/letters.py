"""What a letter to a holder and a sheet of slips say, as data. How to reach a person is never part of it."""

from msgspec import Struct

from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint


class LetterLine(Struct, frozen=True):
    """What falls due, and when, in words."""

    day: str
    what: str


class LetterPiece(Struct, frozen=True):
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


class HolderLetter(Struct, frozen=True):
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


class DueSlip(Struct, frozen=True):
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


class SlipSheet(Struct, frozen=True):
    """Slips to be cut apart."""

    imprint: Imprint
    slips: tuple[DueSlip, ...]
