"""What was done to a piece: repairs and parts put in place of others."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.item import Rating, SizeAsNew


class Work(StrEnum):
    """What was done."""

    PIN_AND_BOW = "pin_and_bow"  # another pin to this bow: both are a pair of one maker and size
    HOOK_LATCH = "hook_latch"
    RESPLICED = "respliced"
    BOLTS = "bolts"
    GALVANISED = "galvanised"  # zinc put on anew
    CLEANED = "cleaned"  # rust or paint taken off
    OTHER = "other"
    # Never kept: they have names so that they can be refused with the reason.
    WELDED = "welded"
    HEATED = "heated"
    STRAIGHTENED = "straightened"
    DRILLED = "drilled"
    GROUND = "ground"


class NewRepair(Struct, frozen=True):
    """A repair. done_by: who did it, as stated; by: the id of whoever writes it down; part: what was put in.

    rating: what the new part is marked with; None where it bears none. The piece is held until inspected after it.
    maker: whose mark the new part bears. own: the maker sells it for this very piece. sizes: of the new part, or of the
    piece after the work. replaces: the measures that speak of another part from then on.
    """

    on: date
    work: Work
    done_by: str
    by: str
    part: str = ""
    rating: Rating | None = None
    note: str = ""
    maker: str = ""
    own: bool = False
    sizes: tuple[SizeAsNew, ...] = ()
    replaces: tuple[str, ...] = ()


class Repair(Struct, frozen=True):
    """A logged repair."""

    id: str
    item_id: str
    facts: NewRepair
