"""How sure a wall's forecast is: the band round it. It informs only; no outcome and no due date rests on it."""

from datetime import date
from enum import StrEnum

from msgspec import Struct


class BandFrom(StrEnum):
    """What a band was made from."""

    LINE = "line"  # a straight line through readings of three days or more
    RATES = "rates"  # the slowest and the fastest rate that the readings allow
    PUBLISHED = "published"  # no reading: the slowest and the fastest published rate


class BandAt(Struct, frozen=True):
    """The band on one day, in metres. Of 100 new readings there, dressed and by a tried gauge, 95 would lie in it."""

    on: date
    low_m: float
    line_m: float
    high_m: float


class WallBand(Struct, frozen=True):
    """The band of the place that goes first.

    now, at_due: on the judging day and when the next reading is due; None where that lies beyond reach_on, the last day
    to which a line may be drawn. drawn: the band from the first reading on, for a picture. earliest_on, likely_on,
    latest_on: when a reading less the gauge's allowance is down to the required wall, so that the piece is retired, by
    the lower bound, the line and the upper bound; None: not until reach_on, or where that is None too, no end in sight.
    """

    made_from: BandFrom
    point: str
    reading_count: int
    earliest_on: date | None
    likely_on: date | None
    latest_on: date | None
    reach_on: date | None = None
    now: BandAt | None = None
    at_due: BandAt | None = None
    drawn: tuple[BandAt, ...] = ()
