"""What falls due: a day, what it is, of which piece, person or thing, whom it concerns and where it lies."""

from collections.abc import Mapping
from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.outcome import Outcome


class Due(StrEnum):
    """What falls due."""

    FIRST_INSPECTION = "first_inspection"  # nobody competent has inspected all of it: it is due, whatever the day
    INSPECTION = "inspection"
    READING = "reading"
    WALL = "wall"  # as its wall has thinned so far, it reaches what must be left on that day
    BACK = "back"  # a borrowed piece goes back to whose it is
    VERDICT = "verdict"  # time alone may change its verdict from that day on
    HOLD = "hold"  # it may be used for nothing until what holds it is settled
    LOAN = "loan"
    NOTICE = "notice"  # retired, and its notice is not printed
    DESTRUCTION = "destruction"  # retired, and not made unusable
    MISSING = "missing"
    COMPETENCE = "competence"
    TRIP = "trip"
    RECALL = "recall"
    ANSWER = "answer"  # of whoever was written to by a recall
    INCIDENT = "incident"
    COUNT = "count"

    @property
    def is_of_piece(self) -> bool:
        """Whether it is about a piece of gear."""
        return self not in {Due.COMPETENCE, Due.TRIP, Due.RECALL, Due.ANSWER, Due.INCIDENT, Due.COUNT}


class DueLine(Struct, frozen=True):
    """One line of the calendar. key: the same thing has the same key at every look.

    on: None where no day was ever set: it waits now, since the day `since` where that is known. about: a tag, a
    reference or a name; name: what that is. people: the names of those it concerns; place: where it is, in words.
    """

    what: Due
    key: str
    on: date | None
    about: str
    name: str
    says: str
    people: tuple[str, ...] = ()
    place: str = ""
    since: date | None = None

    def overdue_days(self, today: date) -> int:
        """For how many days it is past its day; a trip that has begun is not overdue."""
        return max((today - self.on).days, 0) if self.on and self.what is not Due.TRIP else 0


class DueSheet(Struct, frozen=True):
    """The calendar up to a day as it is looked at. groups: titles with their lines; outcomes: of pieces, by tag.

    people, places: the names and places that it can be narrowed to, whatever it is narrowed to now.
    """

    last: date
    lines: tuple[DueLine, ...]
    groups: tuple[tuple[str, tuple[DueLine, ...]], ...]
    outcomes: Mapping[str, Outcome]
    people: tuple[str, ...]
    places: tuple[str, ...]
