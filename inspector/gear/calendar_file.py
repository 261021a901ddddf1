"""What a calendar file says, as data."""

from dataclasses import dataclass
from datetime import date, datetime


@dataclass(frozen=True, slots=True)
class CalendarEntry:
    """A whole day of a calendar. uid: the same thing has the same at every export. remind_days: before it, 0: never."""

    uid: str
    on: date
    title: str
    says: str
    place: str = ""
    remind_days: int = 0


@dataclass(frozen=True, slots=True)
class CalendarFile:
    """A calendar. stamped: when it was made."""

    name: str
    stamped: datetime
    entries: tuple[CalendarEntry, ...]
