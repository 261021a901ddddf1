"""Where a piece is, apart from what it is fit for."""

from datetime import date
from enum import StrEnum

from msgspec import Struct


class Where(StrEnum):
    """Where a piece is. On loan, on a vehicle and destroyed follow from other entries and are never written as such."""

    IN_STORE = "in_store"
    ON_LOAN = "on_loan"
    ON_VEHICLE = "on_vehicle"
    MISSING = "missing"
    STOLEN = "stolen"
    SOLD = "sold"
    GIVEN_BACK = "given_back"  # to an owner other than the club
    DESTROYED = "destroyed"
    WITHDRAWN = "withdrawn"  # it never was a piece of this register: the list it was booked in from was wrong

    @property
    def is_closed(self) -> bool:
        """Whether the piece has left for good: nothing more is logged of it."""
        return self in {Where.SOLD, Where.DESTROYED, Where.WITHDRAWN}

    @property
    def is_gone(self) -> bool:
        """Whether the club does not have it: it is never packed, lent or proposed."""
        return self.is_closed or self in {Where.MISSING, Where.STOLEN, Where.GIVEN_BACK}


WRITTEN = (Where.IN_STORE, Where.MISSING, Where.STOLEN, Where.SOLD, Where.GIVEN_BACK, Where.WITHDRAWN)


class NewWhereabouts(Struct, frozen=True):
    """An entry. place: in the store, or where it was last seen; to: buyer or owner, as stated; by: a person's id.

    found: it was missing, stolen or given back and is here again: it is held until inspected. paper: what proves it,
    for example a report's number or a document of the register.
    """

    on: date
    where: Where
    place: str = ""
    to: str = ""
    by: str = ""
    why: str = ""
    paper: str = ""
    found: bool = False


class WhereaboutsEntry(Struct, frozen=True):
    """A logged entry."""

    id: str
    item_id: str
    facts: NewWhereabouts


class Whereabouts(Struct, frozen=True):
    """Where a piece is now. at: place, holder's id, vehicle's tag or new owner, as the word asks; empty: not written.

    since: the day of the entry that says so; None where the booking stands.
    """

    where: Where
    at: str = ""
    since: date | None = None
