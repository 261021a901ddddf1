"""Counting what is there."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.whereabouts import Where


class Counted(StrEnum):
    """Whether a piece was there."""

    PRESENT = "present"
    ABSENT = "absent"
    UNKNOWN = "unknown"  # nobody looked where it should be


class NewStockTake(Struct, frozen=True):
    """A count that was begun. scope: the place counted, empty for everything; expected: tags that ought to be there.

    elsewhere: tags of pieces that are on loan or on a vehicle, with where; they are counted where they can be seen.
    """

    on: date
    scope: str
    expected: tuple[str, ...]
    elsewhere: tuple[tuple[str, str], ...]
    by: str


class StockTake(Struct, frozen=True):
    """A kept count. ref: what it is called by."""

    id: str
    ref: str
    facts: NewStockTake


class StockStep(StrEnum):
    """What an entry of a count says."""

    MARKED = "marked"
    CLOSED = "closed"


class NewStockEntry(Struct, frozen=True):
    """A mark, or the close. tag: of the piece marked, also one that was not expected; place: where it lay.

    unknown_tags: labels that no piece of the register has; of a close, all of them. was: where the register had the
    piece when it was marked, since what was found or lost after that is no matter of the mark.
    """

    on: date
    step: StockStep
    by: str
    tag: str = ""
    counted: Counted = Counted.PRESENT
    place: str = ""
    note: str = ""
    unknown_tags: tuple[str, ...] = ()
    was: Where | None = None


class StockEntry(Struct, frozen=True):
    """A logged entry of a count."""

    id: str
    stock_take_id: str
    facts: NewStockEntry
