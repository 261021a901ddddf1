"""How long judging takes: all pieces from cold, those whose day has come, and one after its inspection was logged."""

import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks.measuring import one_inspection
from tests.benchmarks.measuring.run import Run
from tests.benchmarks.measuring.table import Bar, Row
from tests.benchmarks.measuring.turns import Seen, in_turns, middle, once, row_of

_ALL_BAR, _ONE_BAR, _DAY_BAR = Bar(20), Bar(3), Bar(1 / 20)
_MB = 1e6


def all_from_cold(run: Run) -> Iterator[Row]:
    """Judged and worded, and nothing of it kept; then what it holds in memory at most."""
    sizes = run.sizes
    ours, bare, *_ = _judged(run)
    name = f"judge all, {sizes.many:,} items x {sizes.looks} inspections, cold"
    beside = "a process in which the bare driver reads the same rows into tuples"
    yield row_of(name, (ours, bare, "done"), beside, _ALL_BAR)
    held = f"judge all: most memory held, {sizes.many:,} items x {sizes.looks}"
    if not ours[0].more["peak_bytes"]:
        yield Row(held, why_not="this system does not tell how much memory a process held")
        return
    small = once("judge_all", run.stores.lived(sizes.usual, sizes.looks))
    yield Row(
        what=held,
        unit="MB",
        figure=max(one.more["peak_bytes"] for one in ours) / _MB,
        baseline=small.more["peak_bytes"] / _MB,
        beside=f"the same of {sizes.usual:,} items",
        runs=len(ours),
        note=f"the bare driver with all of the larger one's tuples: {bare[0].more['peak_bytes'] / _MB:,.0f} MB",
    )


def new_day(run: Run) -> Iterator[Row]:
    """Only what must be judged, while 2 % of the pieces have a verdict that holds no longer."""
    ours, _, day, whole = _judged(run)
    count, every = (seen[0].more["judged"] for seen in (day, whole))
    name, seen = f"open on a new day, 2 % of {run.sizes.many:,} items to be judged", (day, whole, "done")
    beside = f"the same where every verdict has run out: {count} and {every} judged and kept"
    note = f"beside judging all of them with nothing kept: {middle(day, 'done') / middle(ours, 'done'):.3f} x"
    yield row_of(f"{name}, from cold", seen, beside, _DAY_BAR, note)
    yield row_of(f"{name}, once it is open", seen, beside, _DAY_BAR, "reading the law is in it", since="open")


def one(run: Run) -> Iterator[Row]:
    """Judged, stored and shown, on registers of each size."""
    sizes = run.sizes
    for count in sorted({sizes.few, sizes.many, sizes.most}):
        with tempfile.TemporaryDirectory(dir=run.aside) as aside:
            found = one_inspection.measure(run.stores.listed(count), run.rules, sizes.logged, Path(aside))
        yield Row(
            what=f"one inspection: judge, store, show, {count:,} items",
            unit="ms",
            figure=found.shown_ms,
            baseline=found.bare_ms,
            beside="the bare driver reading and writing the same rows, one transaction, synchronous=FULL",
            bar=_ONE_BAR,
            work_ratio=found.shown_work_ms / found.bare_work_ms,
            runs=found.runs,
            note=f"judged and stored, without the record that is shown: {found.kept_ms:.1f} ms; the bare driver's "
            f"rows by SQLAlchemy, and one verdict in words: {found.least_work_ms / found.bare_work_ms:.1f} x of work",
        )


def _judged(run: Run) -> tuple[list[Seen], ...]:
    """All judged, the bare reading, a new day's judging of a few and of all, in turns; once a run."""
    found = run.shared.get("judged")
    if not isinstance(found, tuple):
        place = run.stores.lived(run.sizes.many, run.sizes.looks)
        with tempfile.TemporaryDirectory(dir=run.aside) as aside:
            copy = Path(aside) / "register"
            copy.mkdir()
            shutil.copy(place / "register.db", copy)
            works = [("judge_all", place), ("bare_read", place)]
            works += [(name, copy) for name in ("pass_some_days", "new_day", "pass_all_days", "new_day")]
            once("judge_all", run.stores.sample())  # what is imported is compiled
            ours, bare, _, day, _, whole = in_turns(works, run.sizes.long_runs, warm=False)
        run.shared["judged"] = found = (ours, bare, day, whole)
    return found
