"""Scales and ticks of a chart of lengths against days. Days are ordinals of the calendar, lengths metres."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from inspector.drawings.wording import length_text
from inspector.language import show_month
from inspector.units import Dimension, System, read

_MONTH_STEPS = (1, 3, 6, 12, 24, 60, 120, 240, 600, 1200)
_MOST_TICKS = 6
_LENGTH_STEPS = {
    System.METRIC: ("0.2 mm", "0.5 mm", "1 mm", "2 mm", "5 mm", "10 mm", "20 mm", "50 mm"),
    System.IMPERIAL: ("0.01 in", "0.02 in", "0.05 in", "0.1 in", "0.2 in", "0.5 in", "1 in", "2 in"),
}


@dataclass(frozen=True, slots=True)
class Scale:
    """A straight map from low..high, in whatever unit, to start_mm..end_mm of the picture."""

    low: float
    high: float
    start_mm: float
    end_mm: float

    def at(self, value: float) -> float:
        """Where a value stands, in mm."""
        return self.start_mm + (value - self.low) / (self.high - self.low) * (self.end_mm - self.start_mm)


@dataclass(frozen=True, slots=True)
class Tick:
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
    step_m = _length_step_m(high_m, system)
    count = int(high_m / step_m * (1 + 1e-9))
    return tuple(Tick(step_m * number, length_text(step_m * number, system)) for number in range(count + 1))


def _length_step_m(high_m: float, system: System) -> float:
    steps = [read(text, Dimension.LENGTH, field="step").si for text in _LENGTH_STEPS[system]]
    while high_m / steps[-1] > _MOST_TICKS:
        steps.append(steps[-1] * 2)
    return next(step for step in steps if high_m / step <= _MOST_TICKS)
