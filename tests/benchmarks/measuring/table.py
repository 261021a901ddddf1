"""The table: what was measured, beside what, whether its bar is met; printed, saved, held against another run."""

import json
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path
from typing import Any

from msgspec import Struct, to_builtins

from tests.benchmarks.measuring.machine import Machine

_WHAT_WIDE = 68
_HEAD = f"{'what':<{_WHAT_WIDE}}{'figure':>12}{'baseline':>12}{'ratio':>9}{'of work':>9}  {'bar':<20}"

_HEAD_OF_TWO = f"{'what':<{_WHAT_WIDE}}{'before':>12}{'now':>12}{'change':>9}{'ratio':>9}{'now':>9}  {'before':<13}now"


class Of(StrEnum):
    """What a bar is a limit of."""

    RATIO = "ratio"
    FIGURE = "figure"


class Bar(Struct, frozen=True):
    """A limit of the ratio or of the figure itself: at most so much, or at least."""

    limit: float
    of: Of = Of.RATIO
    is_least: bool = False

    def words(self, unit: str) -> str:
        """The bar as it is printed."""
        sign = ">=" if self.is_least else "<="
        return f"{sign} {self.limit:g} {'x' if self.of is Of.RATIO else unit}".rstrip()


class Row(Struct, frozen=True):
    """One line. figure, baseline: medians of as many runs as told, in the unit; None where there is none.

    beside: what the baseline is. work_ratio: the ratio of processor time, where the figure is by the clock. bar: None
    where the figure is only stated. why_not: why it could not be measured here.
    """

    what: str
    unit: str = ""
    figure: float | None = None
    baseline: float | None = None
    beside: str = ""
    bar: Bar | None = None
    work_ratio: float | None = None
    runs: int = 1
    note: str = ""
    why_not: str = ""

    @property
    def ratio(self) -> float | None:
        """How many times the baseline."""
        return self.figure / self.baseline if self.figure is not None and self.baseline else None

    @property
    def is_met(self) -> bool | None:
        """Whether the bar is met; None where there is none, or nothing to hold against it."""
        value = self.ratio if self.bar and self.bar.of is Of.RATIO else self.figure
        if self.bar is None or value is None:
            return None
        return value >= self.bar.limit if self.bar.is_least else value <= self.bar.limit

    @property
    def verdict(self) -> str:
        """The last word of the line."""
        if self.why_not:
            return "not measured"
        if self.is_met is None:
            return "stated" if self.bar is None else "not measured"
        return "met" if self.is_met else "NOT MET"


class Table(Struct, frozen=True):
    """All lines of a run, and where, when and of what they were measured. is_quick: at small sizes."""

    machine: Machine
    day: str
    revision: str
    is_quick: bool
    rows: tuple[Row, ...]

    def lines(self) -> Iterator[str]:
        """The table as it is printed."""
        yield from self.machine.lines()
        yield f"{self.day}, revision {self.revision or 'unknown: no checkout'}"
        if self.is_quick:
            yield QUICK
        yield ""
        yield _HEAD
        for row in self.rows:
            yield from _lines_of(row)
        if self.is_quick:
            yield QUICK

    def save(self, file: Path) -> None:
        """Write it as JSON."""
        file.write_text(json.dumps(to_builtins(self), indent=1, ensure_ascii=False) + "\n", "utf-8")

    def against(self, before: "Table") -> Iterator[str]:
        """Old and new side by side, by the name of the row."""
        yield f"before: {before.day}, revision {before.revision}; now: {self.day}, revision {self.revision}"
        if differs := before.machine.differs(self.machine):
            yield f"NOT COMPARABLE figure by figure, the machines differ ({', '.join(differs)}): look at the ratios."
        if before.is_quick != self.is_quick:
            yield "NOT COMPARABLE: one of the two was measured at small sizes."
        yield _HEAD_OF_TWO
        old = {row.what: row for row in before.rows}
        for row in self.rows:
            yield _beside(old.pop(row.what, None), row)
        for gone in old:
            yield f"{gone:<{_WHAT_WIDE}}{'only measured before':>33}"


QUICK = "QUICK: small sizes and few runs. These figures say that it runs, NOT whether a bar is met."


def saved(file: Path) -> Table:
    """A table that was written by `Table.save`. Raises ValueError where the file is none."""
    try:
        found: dict[str, Any] = json.loads(file.read_text("utf-8"))
        rows = tuple(Row(**one | {"bar": _bar(one["bar"])}) for one in found["rows"])
        return Table(**found | {"machine": Machine(**found["machine"]), "rows": rows})
    except (TypeError, KeyError, json.JSONDecodeError) as error:
        raise ValueError(f"{file.name} is no table that was saved here: {error}") from error


def _bar(found: dict[str, Any] | None) -> Bar | None:
    return Bar(found["limit"], Of(found["of"]), found["is_least"]) if found else None


def _lines_of(row: Row) -> Iterator[str]:
    bar = row.bar.words(row.unit) if row.bar else "stated"
    told = f"{row.what:<{_WHAT_WIDE}}{_figure(row.figure, row.unit):>12}{_figure(row.baseline, row.unit):>12}"
    yield f"{told}{_times(row.ratio):>9}{_times(row.work_ratio):>9}  {bar:<20}{row.verdict}"
    if row.beside:
        yield f"    beside: {row.beside}; {_runs(row.runs)}"
    if row.note:
        yield f"    {row.note}"
    if row.why_not:
        yield f"    not measured here: {row.why_not}"


def _runs(count: int) -> str:
    return f"median of {count} runs" if count > 1 else "one run"


def _figure(value: float | None, unit: str) -> str:
    return "–" if value is None else f"{value:,.4g} {unit}".rstrip()


def _times(ratio: float | None) -> str:
    return "–" if ratio is None else f"{ratio:.2f} x"


def _beside(old: Row | None, new: Row) -> str:
    before = old.figure if old else None
    change = new.figure / before if before and new.figure is not None else None
    figures = f"{_figure(before, new.unit):>12}{_figure(new.figure, new.unit):>12}{_times(change):>9}"
    ratios = f"{_times(old.ratio if old else None):>9}{_times(new.ratio):>9}"
    return f"{new.what:<{_WHAT_WIDE}}{figures}{ratios}  {old.verdict if old else 'not there':<13}{new.verdict}"
