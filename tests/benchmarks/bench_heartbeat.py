"""How long the window's own thread stands still while long work is done: a timer that ought to beat every 5 ms tells.

python tests/benchmarks/bench_heartbeat.py

The register is the sample ten times over, the window is open on the gear list; a list of 10,000 rows is run dry and
brought in. Beside the longest pause stands the longest one of the same window with nothing to do, measured just before.
"""

import os
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QCoreApplication, QObject, QTimer
from PySide6.QtWidgets import QApplication

from inspector.desk.look import Look
from inspector.desk.place import Go
from inspector.desk.places import GEAR
from inspector.desk.window import DeskWindow
from inspector.duties.adopt_rulebook import adopt_rulebook
from inspector.duties.back_up import back_up
from inspector.duties.compare_rulebooks import CURRENT, compare_rulebooks, named_book
from inspector.duties.import_list import dry_run, matching_of, read_list, take
from inspector.duties.look_up import club_officer, list_gear, people
from inspector.duties.office import Office
from inspector.duties.retire_item import print_notices
from inspector.gear.import_list import Fates
from inspector.gear.outcome import Outcome
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks.bench_import import as_csv, rows
from tests.benchmarks.bench_readiness import prepare
from tests.benchmarks.registers import office_on, sample_in

PIECE_COUNT = 1000
ROW_COUNT = 10_000
BAR_MS = 50.0
_BEAT_MS = 5
_IDLE_S = 1.0
_CLUB = b"""
club = "Bench"
title = "Ours"
from = 2026-11-25
why = "measured"
[[limit]]
rule = "shackle-body-worn"
limit = "7 %"
"""


class Pause(Struct, frozen=True):
    """The longest pause of the window in ms while something was done, how long it took, how many steps it told."""

    name: str
    longest_ms: float
    seconds: float
    steps: int


class Heart(QObject):
    """Notes by how much each beat came late."""

    def __init__(self) -> None:
        super().__init__()
        self.late_ms: list[float] = []
        self._last = time.perf_counter()
        self._timer = QTimer(self, interval=_BEAT_MS)
        self._timer.timeout.connect(self._beat)

    def start(self) -> None:
        """Begin to count anew."""
        self.late_ms.clear()
        self._last = time.perf_counter()
        self._timer.start()

    def longest_ms(self) -> float:
        """Stop; the longest pause."""
        self._timer.stop()
        return max(self.late_ms, default=0.0)

    def _beat(self) -> None:
        now = time.perf_counter()
        self.late_ms.append(max((now - self._last) * 1000 - _BEAT_MS, 0.0))
        self._last = now


def measure(place: Path, rules: Rulebook, row_count: int = ROW_COUNT) -> list[Pause]:
    """The window idle, then under each piece of long work. row_count: of the list that is brought in."""
    app = QApplication.instance() or QApplication([])
    office = office_on(place, rules)
    officer = club_officer(office)
    office = replace(office, officer=next(one for one in people(office) if one.id == officer))
    window = DeskWindow(office, Look())
    window.resize(1280, 720)
    window.show()
    window.pages.go(Go(GEAR))
    _until(app, lambda: window.background.is_idle, _IDLE_S)
    heart = Heart()
    heart.start()
    _until(app, lambda: False, _IDLE_S)
    rows = [Pause("nothing to do", heart.longest_ms(), _IDLE_S, 0)]
    rows += [_worked(app, window, heart, name, work) for name, work in _works(office, place, row_count).items()]
    window.close_for_good()
    office.book.close()
    return rows


def _works(office: Office, place: Path, row_count: int) -> dict[str, Callable[[Office], object]]:
    retired = tuple(row.tag for row in list_gear(office).rows if row.outcome is Outcome.RETIRE)
    current, ours = named_book(office, CURRENT, b""), named_book(office, "ours.toml", _CLUB)
    return {
        "judging all by two rulebooks": lambda heard: compare_rulebooks(heard, current, ours),
        "adopting a rulebook": lambda heard: adopt_rulebook(heard, _CLUB, "ours.toml"),
        f"printing {len(retired)} notices": lambda heard: print_notices(heard, retired),
        "copying the register": lambda heard: back_up(heard, place / "copies"),
        f"running {row_count} rows dry": partial(_run_dry, place / "list.csv", row_count),
        f"taking {row_count} rows": lambda heard: take(heard, _run_dry(place / "list.csv", 0, heard)),
    }


def _run_dry(path: Path, row_count: int, heard: Office) -> Fates:
    """A list of so many rows, read and run dry; of none: the one that lies there."""
    if row_count:
        path.write_bytes(as_csv(rows(row_count)))
    file = read_list(path)
    return dry_run(heard, file, matching_of(heard, file))


def _worked(
    app: QCoreApplication, window: DeskWindow, heart: Heart, name: str, work: Callable[[Office], object]
) -> Pause:
    ended: list[object] = []
    steps: list[int] = []
    window.background.long_begun.connect(lambda progress: progress.moved.connect(lambda done, _: steps.append(done)))
    heart.start()
    began = time.perf_counter()
    window.background.run_long(work, window._office, done=ended.append, failed=ended.append, says=name)
    _until(app, lambda: bool(ended), 600)
    if isinstance(ended[0], Exception):
        raise ended[0]
    return Pause(name, heart.longest_ms(), time.perf_counter() - began, len(steps))


def _until(app: QCoreApplication, is_over: Callable[[], bool], most_s: float) -> None:
    ends = time.perf_counter() + most_s
    while not is_over() and time.perf_counter() < ends:
        app.processEvents()
        time.sleep(0.001)


def main() -> int:
    """Print the figures; 0 when no work holds the window up for longer than the bar."""
    rules = packaged()
    with tempfile.TemporaryDirectory() as folder:
        sample_in(Path(folder), rules)
        count = prepare(Path(folder), rules, PIECE_COUNT)
        rows = measure(Path(folder), rules)
    print(f"a register of {count} pieces")
    for one in rows:
        told = f"{one.seconds:6.1f} s, {one.steps:5} steps told"
        print(f"{one.name:<32}longest pause {one.longest_ms:6.1f} ms   {told}")
    longest = max(one.longest_ms for one in rows)
    print(f"bar: {BAR_MS} ms: {'kept' if longest <= BAR_MS else 'not kept'}")
    return 0 if longest <= BAR_MS else 1


if __name__ == "__main__":
    sys.exit(main())
