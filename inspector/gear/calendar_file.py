"""What a calendar file says, as data."""

from datetime import date, datetime

from msgspec import Struct


class CalendarEntry(Struct, frozen=True):
    """A whole day of a calendar. uid: the same thing has the same at every export. remind_days: before it, 0: never."""

    uid: str
    on: date
    title: str
    says: str
    place: str = ""
    remind_days: int = 0


class CalendarFile(Struct, frozen=True):
    """A calendar. stamped: when it was made."""

    name: str
    stamped: datetime
    entries: tuple[CalendarEntry, ...]
