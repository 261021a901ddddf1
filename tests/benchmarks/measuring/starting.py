"""How long the program takes from its start to the window's first paint, the list's first rows, a command's end."""

from collections.abc import Iterator

from tests.benchmarks.measuring.run import Run
from tests.benchmarks.measuring.table import Bar, Row
from tests.benchmarks.measuring.turns import Seen, in_turns, once, row_of

PAINT, ROWS, COMMAND = "start to first paint", "start to the list's first rows, usable", "`inspector list` from cold"
_PAINT_BAR, _ROWS_BAR, _COMMAND_BAR = Bar(1.5), Bar(3.5), Bar(2.5)
_NOTE = "by the clock, from the start of the process; not the day's first start, which proves the register as well"


def to_first_paint(run: Run) -> Iterator[Row]:
    """Of the register that the bar names."""
    name = f"{PAINT}, {run.sizes.many:,} items"
    ours, bare = _windows(run)[run.sizes.many]
    yield row_of(name, (ours, bare, "painted"), "a bare main window with an empty table, painted", _PAINT_BAR, _NOTE)


def to_first_rows(run: Run) -> Iterator[Row]:
    """Of each size, since it must be the same with all of them."""
    for count, (ours, bare) in _windows(run).items():
        beside = "the bare window, and the bare driver reading 50 rows"
        yield row_of(f"{ROWS}, {count:,} items", (ours, bare, "usable"), beside, _ROWS_BAR, _NOTE)


def command(run: Run) -> Iterator[Row]:
    """`inspector list`, without a window."""
    place = run.stores.listed(run.sizes.usual)
    ours, bare = in_turns([("list_command", place), ("bare_list", place)], run.sizes.runs)
    name = f"{COMMAND}, {run.sizes.usual:,} items"
    beside = "a process that imports sqlalchemy and sqlite3, reads the same rows and prints them"
    yield row_of(name, (ours, bare, "done"), beside, _COMMAND_BAR)


_Pair = tuple[list[Seen], list[Seen]]


def _windows(run: Run) -> dict[int, _Pair]:
    """The window on each register beside a bare one, by the number of pieces; opened once a run."""
    found = run.shared.get("windows")
    if not isinstance(found, dict):
        sizes = sorted({run.sizes.few, run.sizes.many, run.sizes.most})
        run.shared["windows"] = found = {count: _window(run, count) for count in sizes}
    return found


def _window(run: Run, count: int) -> _Pair:
    place = run.stores.listed(count)
    once("look_after", place)
    ours, bare = in_turns([("window", place), ("bare_window", place)], run.sizes.runs)
    return ours, bare
