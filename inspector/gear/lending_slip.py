"""What a borrower signs, as data."""

from msgspec import Struct

from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint


class LentPiece(Struct, frozen=True):
    """A piece that is handed out. limit: what it bears now, of a derated piece.

    may_for: what it may be used for; not_for: what it must not; mind: its state, and what falls due while it is out.
    may_use: for anything at all.
    """

    tag: str
    kind_name: str
    marked: str
    limit: str
    outcome: Outcome
    may_use: bool
    may_for: str
    not_for: str
    mind: str
    since: str
    due: str
    handed_by: str


class LendingSlip(Struct, frozen=True):
    """All that one person takes along. holder: the person's id; bring_back: the earliest day, in words.

    trip: its name, empty for none; lent, handed_by: day and name, where all pieces went out on one day or by one hand.
    """

    imprint: Imprint
    holder: str
    name: str
    trip: str
    bring_back: str
    lent: str
    handed_by: str
    pieces: tuple[LentPiece, ...]
