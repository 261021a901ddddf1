"""The shape of a quantity: a named value, what it came from, or why nobody knows it."""

from datetime import date

from msgspec import Struct

from inspector.gear.inspection import Inspection
from inspector.gear.verdict import Known, Value
from inspector.units import Dimension


class Quantity(Struct, frozen=True, gc=False):
    """One named value of a case.

    applies: False where the piece has no such thing. value None: unknown, and why_unknown says why. stale: known once,
    but too long ago to pass anything. per_day: how the number grows by itself each day (SI). changes_on: the next day
    on which time alone may change it in a step. known: how it came to be known; seen_in: the inspection it stands in.
    """

    value: Value | None
    applies: bool = True
    why_unknown: str = ""
    stale: bool = False
    came_from: str = ""
    measured_on: date | None = None
    per_day: float = 0.0
    changes_on: date | None = None
    observation: str = ""
    known: Known | None = None
    seen_in: Inspection | None = None


NOT_APPLICABLE = Quantity(None, applies=False)


def unknown(why: str, observation: str = "") -> Quantity:
    """A quantity nobody knows."""
    return Quantity(None, why_unknown=why, observation=observation)


def number(value: float, dimension: Dimension, came_from: str, known: Known, **more: object) -> Quantity:
    """A known number in SI."""
    found = Value(number=value, dimension=dimension)
    return Quantity(found, came_from=came_from, known=known, **more)  # type: ignore[arg-type]


def word(value: str, came_from: str, known: Known, measured_on: date | None = None) -> Quantity:
    """A known word."""
    return Quantity(Value(word=value), came_from=came_from, measured_on=measured_on, known=known)
