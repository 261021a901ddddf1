"""What a piece went through: pulls, and what the weather and the sea did to it."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from inspector.units import Figure


class Event(StrEnum):
    """What happened beyond an ordinary pull."""

    NONE = "none"
    OVERLOAD = "overload"  # a jerk, a stall, a speed or a snag beyond the plan
    DROPPED = "dropped"
    RAN_OVER = "ran_over"


@dataclass(frozen=True, slots=True)
class NewUse:
    """One day's pulls."""

    on: date
    pull_count: int
    event: Event = Event.NONE
    by: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Use:
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


@dataclass(frozen=True, slots=True)
class NewExposure:
    """A day, or a season of so many days, in salt, mud or sun. rinsed, hottest, dried: None where nobody knows."""

    on: date
    weather: Weather
    days_count: int = 1
    rinsed: bool | None = None
    by: str = ""
    note: str = ""
    hottest: Figure | None = None  # the greatest temperature of a heat
    dried: bool | None = None


@dataclass(frozen=True, slots=True)
class Exposure:
    """A logged exposure."""

    id: str
    item_id: str
    facts: NewExposure
