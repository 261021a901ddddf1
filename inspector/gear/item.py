"""A piece of gear as it was booked in."""

from datetime import date
from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.fitting import End, Fitted, NewFitting, Side
from inspector.gear.kind import Basis
from inspector.gear.outcome import Purpose
from inspector.units import Figure

BOLT_COUNT = "bolt_count"  # the size that says how many bolts hold a part; a part that welds alone hold has none


class Provenance(StrEnum):
    """In which form a piece came in, and so how much of its life before the register is known."""

    NEW_CERTIFIED = "new_certified"
    NEW = "new"
    SECOND_HAND = "second_hand"
    UNKNOWN = "unknown"
    GIFT = "gift"
    HOME_MADE = "home_made"
    BORROWED = "borrowed"  # from another club or a firm, until a day

    @property
    def is_new(self) -> bool:
        """Whether the piece had no life before the register; of every other form nobody here knows that life."""
        return self in {Provenance.NEW, Provenance.NEW_CERTIFIED}


class Fixing(StrEnum):
    """How a part is fixed to the vehicle. Where nobody wrote it down its bolts are asked for."""

    UNKNOWN = ""
    BOLTS = "bolts"
    WELDS = "welds"


class Rating(Struct, frozen=True, gc=False):
    """What the piece is marked with. design_factor: between a WLL and failure; None where nobody knows.

    stated_on: "piece", "certificate" or "memory"; a rating from memory is no rating.
    """

    basis: Basis
    figure: Figure | None
    design_factor: float | None
    stated_on: str


class Worth(Struct, frozen=True):
    """What a piece is worth, for the insurer. hundredths: of the currency's unit; currency: its three letters."""

    hundredths: int
    currency: str
    as_typed: str


class SizeAsNew(Struct, frozen=True, gc=False):
    """One dimension of the new piece."""

    key: str
    figure: Figure


class NewItem(Struct, frozen=True, gc=False):
    """What the officer writes down when a piece comes in. Dates may be unknown (None).

    from_whom: seller, giver, maker of a home-made piece, or lender; paper: a certificate's number and issuer, or a
    receipt. visiting_for, visiting_until: the one trip for which somebody else's piece came along, and its last day.
    """

    tag: str
    kind: str
    rating: Rating
    maker_mark: str = ""
    serial: str = ""
    material: str = ""
    sizes: tuple[SizeAsNew, ...] = ()
    owner: str = ""
    place: str = ""
    provenance: Provenance = Provenance.UNKNOWN
    made_on: date | None = None
    in_service_on: date | None = None
    kept_for: tuple[Purpose, ...] = ()
    fitted_to: str = ""  # a vehicle's tag
    note: str = ""
    fixed_by: Fixing = Fixing.UNKNOWN
    fitted_end: End = End.UNKNOWN
    fitted_side: Side = Side.UNKNOWN
    worth: Worth | None = None
    from_whom: str = ""
    paper: str = ""
    borrowed_until: date | None = None
    visiting_for: str = ""
    visiting_until: date | None = None

    @property
    def fitted(self) -> Fitted | None:
        """The vehicle it sits on and where, or None for a loose piece."""
        return Fitted(self.fitted_to, self.fitted_end, self.fitted_side) if self.fitted_to else None

    def after(self, fitting: NewFitting) -> "NewItem":
        """The facts once a part was fitted or taken off; the place it was booked with is its place no more."""
        to = fitting.to or Fitted("")
        return replace(self, fitted_to=to.vehicle, fitted_end=to.end, fitted_side=to.side, place="")


class Item(Struct, frozen=True, gc=False):
    """A booked piece: its identity, the day it was booked, and what was written down."""

    id: str
    booked_on: date
    facts: NewItem

    @property
    def tag(self) -> str:
        """What is written on the piece."""
        return self.facts.tag

    @property
    def rating(self) -> Rating:
        """What it is marked with. A mark on a home-made piece is its maker's word, worth what memory is worth."""
        marked = self.facts.rating
        if self.facts.provenance is Provenance.HOME_MADE and marked.stated_on == "piece":
            return replace(marked, stated_on="memory")
        return marked

    @property
    def is_welded_on(self) -> bool:
        """Whether it was written down that welds alone hold it."""
        return self.facts.fixed_by is Fixing.WELDS

    def size(self, key: str) -> Figure | None:
        """The dimension as new, in metres, if it was written down."""
        for size in self.facts.sizes:  # no generator: it is asked some twenty times a verdict
            if size.key == key:
                return size.figure
        return None

    @property
    def born_on(self) -> date | None:
        """The earliest day written down of the piece's life, or None where nobody wrote one down.

        The day somebody put a used piece into service tells nothing of its years before: only its making does. Nor does
        the day of booking tell anything of a new one, which may have lain in a shop or in use for years.
        """
        if not self.facts.provenance.is_new:
            return self.facts.made_on
        return min((day for day in (self.facts.made_on, self.facts.in_service_on) if day), default=None)

    @property
    def life_began_on(self) -> date | None:
        """The same, or for a new piece the day of booking: less time for the same rust is the quicker rate."""
        return self.born_on or (self.booked_on if self.facts.provenance.is_new else None)
