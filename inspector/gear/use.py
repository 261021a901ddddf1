"""What a piece went through: pulls, and what the weather and the sea did to it."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.units import Figure


class Event(StrEnum):
    """What happened beyond an ordinary pull."""

    NONE = "none"
    OVERLOAD = "overload"  # a jerk, a stall, a speed or a snag beyond the plan
    DROPPED = "dropped"
    RAN_OVER = "ran_over"


class NewUse(Struct, frozen=True):
    """One day's pulls."""

    on: date
    pull_count: int
    event: Event = Event.NONE
    by: str = ""
    note: str = ""


class Use(Struct, frozen=True):
    """A logged use."""

    id: str
    item_id: str
    facts: NewUse


class Weather(StrEnum):
    """What the piece was exposed to."""

    SALT = "salt"
    MUD = "mud"
    SUN = "sun"
    HEAT = "heat"
    CHEMICAL = "chemical"
    FROST = "frost"  # frozen while it was wet


class NewExposure(Struct, frozen=True):
    """A day, or a season of so many days, in salt, mud or sun. rinsed, hottest, dried: None where nobody knows."""

    on: date
    weather: Weather
    days_count: int = 1
    rinsed: bool | None = None
    by: str = ""
    note: str = ""
    hottest: Figure | None = None  # the greatest temperature of a heat
    dried: bool | None = None


class Exposure(Struct, frozen=True):
    """A logged exposure."""

    id: str
    item_id: str
    facts: NewExposure
