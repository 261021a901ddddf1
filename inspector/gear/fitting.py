"""Where a part sits on a vehicle."""

from datetime import date
from enum import StrEnum

from msgspec import Struct


class End(StrEnum):
    """Which end of the vehicle; empty where nobody wrote it down."""

    UNKNOWN = ""
    FRONT = "front"
    REAR = "rear"


class Side(StrEnum):
    """Which side, seen by the driver; empty where nobody wrote it down."""

    UNKNOWN = ""
    LEFT = "left"
    MIDDLE = "middle"
    RIGHT = "right"


class Fitted(Struct, frozen=True):
    """A vehicle's tag and the place on it."""

    vehicle: str
    end: End = End.UNKNOWN
    side: Side = Side.UNKNOWN

    def may_share_end(self, other: "Fitted") -> bool:
        """Whether both may sit at one end of one vehicle: an end that nobody wrote down may be that one."""
        return self.vehicle == other.vehicle and (self.end == other.end or End.UNKNOWN in (self.end, other.end))


class NewFitting(Struct, frozen=True):
    """A part put on a vehicle, or taken off it (to None). by: a person's id."""

    on: date
    to: Fitted | None
    by: str = ""
    note: str = ""


class Fitting(Struct, frozen=True):
    """A logged fitting."""

    id: str
    item_id: str
    facts: NewFitting
