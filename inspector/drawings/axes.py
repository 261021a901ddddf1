"""Scales and ticks of charts. Days are ordinals of the calendar, all else is SI."""

from collections.abc import Iterator
from datetime import date

from msgspec import Struct

from inspector.language import show_month
from inspector.units import Dimension, System, read, show

_MONTH_STEPS = (1, 3, 6, 12, 24, 60, 120, 240, 600, 1200)
_MOST_TICKS = 6
_STEPS = {
    (Dimension.LENGTH, System.METRIC): ("0.2 mm", "0.5 mm", "1 mm", "2 mm", "5 mm", "10 mm", "20 mm", "50 mm"),
    (Dimension.LENGTH, System.IMPERIAL): (
        "0.01 in", "0.02 in", "0.05 in", "0.1 in", "0.2 in", "0.5 in", "1 in", "2 in",
    ),
    (Dimension.SPEED, System.METRIC): ("0.5 km/h", "1 km/h", "2 km/h", "5 km/h", "10 km/h", "20 km/h"),
    (Dimension.SPEED, System.IMPERIAL): ("0.5 mph", "1 mph", "2 mph", "5 mph", "10 mph", "20 mph"),
    (Dimension.ENERGY, System.METRIC): ("1 kJ", "2 kJ", "5 kJ", "10 kJ", "20 kJ", "50 kJ", "100 kJ"),
    (Dimension.ENERGY, System.IMPERIAL): ("1000 ft lbf", "2000 ft lbf", "5000 ft lbf", "10000 ft lbf", "20000 ft lbf"),
    (Dimension.YEARS, System.METRIC): ("1 years", "2 years", "5 years", "10 years"),
    (Dimension.YEARS, System.IMPERIAL): ("1 years", "2 years", "5 years", "10 years"),
    (Dimension.FORCE, System.METRIC): ("1 kN", "2 kN", "5 kN", "10 kN", "20 kN", "50 kN", "100 kN", "200 kN"),
    (Dimension.FORCE, System.IMPERIAL): (
        "200 lbf", "500 lbf", "1000 lbf", "2000 lbf", "5000 lbf", "10000 lbf", "20000 lbf", "50000 lbf",
    ),
}  # fmt: skip


class Scale(Struct, frozen=True):
    """A straight map from low..high, in whatever unit, to start_mm..end_mm of the picture."""

    low: float
    high: float
    start_mm: float
    end_mm: float

    def at(self, value: float) -> float:
        """Where a value stands, in mm."""
        return self.start_mm + (value - self.low) / (self.high - self.low) * (self.end_mm - self.start_mm)


class Tick(Struct, frozen=True):
    """A value on an axis and what is written there."""

    value: float
    words: str


def day_ticks(first: float, last: float) -> tuple[Tick, ...]:
    """At most seven ticks at the first days of months between two ordinals; whole years read as years."""
    start, end = _month_count(first), _month_count(last)
    step = next((step for step in _MONTH_STEPS if (end - start) / step <= _MOST_TICKS), _MONTH_STEPS[-1])
    return tuple(tick for tick in _month_ticks(start, end, step) if first <= tick.value <= last)


def _month_count(ordinal: float) -> int:
    day = date.fromordinal(int(ordinal))
    return day.year * 12 + day.month - 1


def _month_ticks(start: int, end: int, step: int) -> Iterator[Tick]:
    for count in range(-(-start // step) * step, end + 1, step):
        year, month = count // 12, count % 12 + 1
        words = str(year) if step >= 12 else f"{show_month(month)} {year}"
        yield Tick(date(year, month, 1).toordinal(), words)


def length_ticks(high_m: float, system: System) -> tuple[Tick, ...]:
    """At most seven ticks from 0 to high_m, at round figures of the system's unit."""
    return round_ticks(high_m, Dimension.LENGTH, system)


def round_ticks(high: float, dimension: Dimension, system: System) -> tuple[Tick, ...]:
    """At most seven ticks from 0 to a high value, at round figures of the system's unit for its dimension."""
    step = _step(high, dimension, system)
    count = int(high / step * (1 + 1e-9))
    return tuple(Tick(step * number, show(step * number, dimension, system)) for number in range(count + 1))


def _step(high: float, dimension: Dimension, system: System) -> float:
    steps = [read(text, dimension, field="step").si for text in _STEPS[dimension, system]]
    while high / steps[-1] > _MOST_TICKS:
        steps.append(steps[-1] * 2)
    return next(step for step in steps if high / step <= _MOST_TICKS)
