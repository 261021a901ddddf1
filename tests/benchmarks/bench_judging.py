"""How long judging one piece takes: median over the sample register's pieces, and in the machine's own loops.

python tests/benchmarks/bench_judging.py
"""

import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

from inspector.duties.build_sample import build_sample
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.gear.person import Person
from inspector.register.book import open_book
from inspector.rulebook.judge import judge
from inspector.rulebook.load import packaged
from inspector.rulebook.release import releases
from inspector.rulebook.wording import explain

BAR_MS = 0.3
EVENING = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)


def main(repeats: int = 20) -> int:
    """Print the medians; 0 when judging keeps the bar."""
    rules = packaged()
    with tempfile.TemporaryDirectory() as folder:
        book = open_book(Path(folder) / "register.db")
        office = Office(book, rules, Path(folder), Person("nobody", "nobody", ""), lambda: EVENING, "bench")
        build_sample(office)
        pieces = [open_item(office, row.tag) for row in list_gear(office).rows]
        book.close()
    dossiers = [one.dossier for one in pieces]
    verdicts = [judge(one, rules, "bench") for one in dossiers]
    pairs = list(zip(dossiers, verdicts, strict=True))
    judging = _medians(lambda at: judge(dossiers[at], rules, "bench"), len(pairs), repeats)
    told = _medians(lambda at: releases(pairs[at][1], pairs[at][0], rules), len(pairs), repeats)
    worded = _medians(lambda at: explain(*pairs[at], rules), len(pairs), repeats)
    unit = _loop_ms()
    print(f"{len(pairs)} pieces, {sum(len(one.findings) for one in verdicts)} findings, each judged {repeats} times")
    for name, each in (("judge", judging), ("what would release it", told), ("words", worded)):
        middle, worst = statistics.median(each), max(each)
        print(f"{name:<24}{middle:7.3f} ms median  {worst:7.3f} ms slowest piece  {middle / unit:6.2f} x a bare loop")
    met = statistics.median(judging) <= BAR_MS
    print(f"bar: {BAR_MS} ms median: {'met' if met else 'not met'}")
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
