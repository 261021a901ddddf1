"""Who has a piece, since when: lent and returned."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.use import NewExposure, NewUse


class Hands(StrEnum):
    """What an entry says."""

    LENT = "lent"
    RETURNED = "returned"
    NOT_RETURNED = "not_returned"  # reported missing or stolen while it was out


class Untold(StrEnum):
    """What nobody told of a piece that came back."""

    USES = "uses"
    EXPOSURES = "exposures"


class NewCustody(Struct, frozen=True):
    """A piece handed over or brought back. holder, by: ids of people; trip: its reference; due: to be back by.

    by: who handed it out, or who brought it back. Of a return: since, the day it was lent; untold, what nobody told.
    """

    on: date
    what: Hands
    holder: str
    due: date | None = None
    trip: str = ""
    by: str = ""
    note: str = ""
    untold: tuple[Untold, ...] = ()
    since: date | None = None


class Custody(Struct, frozen=True):
    """A logged entry."""

    id: str
    item_id: str
    facts: NewCustody


class Loan(Struct, frozen=True):
    """A piece that is out: with whom, since when, due when, for which trip.

    look_due: the day of an inspection or reading that falls due before the piece is to be back, or by today where it
    should have been back.
    """

    tag: str
    kind_name: str
    holder: str
    since: date
    due: date | None
    trip: str = ""
    look_due: date | None = None

    def overdue_days(self, on: date) -> int:
        """For how many days it should have been back; 0 where it is not due yet."""
        return max((on - self.due).days, 0) if self.due else 0


class WentThrough(Struct, frozen=True):
    """What a piece went through while it was out. An empty tuple says that nothing of the sort happened; None: nobody
    told, which is another thing."""

    uses: tuple[NewUse, ...] | None = None
    exposures: tuple[NewExposure, ...] | None = None


NOTHING_HAPPENED = WentThrough((), ())
NOBODY_TOLD = WentThrough()
