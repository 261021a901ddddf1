"""How long judging one piece takes: median over the sample register's pieces, and in the machine's own loops.

python tests/benchmarks/bench_judging.py
"""

import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from msgspec import Struct

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.duties.look_up import list_gear, open_item
from inspector.rulebook.judge import judge
from inspector.rulebook.load import packaged
from inspector.rulebook.release import releases
from inspector.rulebook.wording import explain
from tests.benchmarks.registers import office_on, sample_in

BAR_MS = 0.3


class Measured(Struct, frozen=True):
    """Milliseconds a piece: the median, the slowest piece, and how many bare loops the median makes."""

    name: str
    median_ms: float
    slowest_ms: float
    loops: float


def measure(place: Path, repeats: int) -> tuple[int, list[Measured]]:
    """The pieces of the folder's register, and each step of a verdict measured on them."""
    rules = packaged()
    office = office_on(place, rules)
    dossiers = [open_item(office, row.tag).dossier for row in list_gear(office).rows]
    office.book.close()
    verdicts = [judge(one, rules, "bench") for one in dossiers]
    steps: dict[str, Callable[[int], object]] = {
        "judge": lambda at: judge(dossiers[at], rules, "bench"),
        "what would release it": lambda at: releases(verdicts[at], dossiers[at], rules),
        "words": lambda at: explain(dossiers[at], verdicts[at], rules),
    }
    unit = _loop_ms()
    rows = []
    for name, step in steps.items():
        each = _medians(step, len(dossiers), repeats)
        middle = statistics.median(each)
        rows.append(Measured(name, middle, max(each), middle / unit))
    return len(dossiers), rows


def main(repeats: int = 20) -> int:
    """Print the figures; 0 when judging keeps the bar."""
    with tempfile.TemporaryDirectory() as folder:
        sample_in(Path(folder), packaged())
        count, rows = measure(Path(folder), repeats)
    print(f"{count} pieces, each step {repeats} times")
    for one in rows:
        figures = f"{one.median_ms:7.3f} ms median  {one.slowest_ms:7.3f} ms slowest piece"
        print(f"{one.name:<24}{figures}  {one.loops:6.2f} x a bare loop of 10,000 additions")
    met = rows[0].median_ms <= BAR_MS
    print(f"bar: judge {BAR_MS} ms median: {'met' if met else 'not met'}")
    return 0 if met else 1


def _medians(work: Callable[[int], object], count: int, repeats: int) -> list[float]:
    """The median milliseconds of each piece."""
    taken: list[list[float]] = [[] for _ in range(count)]
    for _ in range(repeats):
        for at in range(count):
            began = time.perf_counter()
            work(at)
            taken[at].append((time.perf_counter() - began) * 1e3)
    return [statistics.median(one) for one in taken]


def _loop_ms() -> float:
    """A bare loop of 10,000 additions, the machine's measure."""
    times = []
    for _ in range(50):
        began = time.perf_counter()
        sum(number for number in range(10_000))
        times.append((time.perf_counter() - began) * 1e3)
    return statistics.median(times)


if __name__ == "__main__":
    sys.exit(main())
