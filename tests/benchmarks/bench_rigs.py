"""How long checking a rig takes: median by shape, in the machine's own loops, and a thousand checks in a row.

python tests/benchmarks/bench_rigs.py
"""

import itertools
import statistics
import sys
import time
from pathlib import Path

from msgspec import Struct

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.gear.rig import Conditions, Footing, RigFacts
from inspector.rulebook.load import packaged
from inspector.rulebook.rigs.check import checked
from inspector.units import System
from tests.rulebook.rigs.drawn import bridled
from tests.rulebook.rigs.made import double_line, redirect, single_line, snatch, tackle

MUD = Conditions(bogged_in=Footing.BOG)


class Measured(Struct, frozen=True):
    """Milliseconds a check: the median, the slowest, and how many bare loops the median makes."""

    name: str
    median_ms: float
    slowest_ms: float
    loops: float


def shapes() -> dict[str, RigFacts]:
    """The rigs that are measured."""
    return {
        "snatch": snatch(MUD),
        "snatch, two bridles": bridled("0.8", "0.5"),
        "single winch line": single_line(MUD),
        "redirect": redirect("90 °", MUD),
        "double line": double_line(MUD),
        "five parts of line": tackle(5, MUD),
    }


def measure(repeats: int, many: int) -> tuple[list[Measured], float]:
    """Each shape so many times, and the seconds of many checks, the shapes in turn."""
    book, made, unit = packaged(), shapes(), _loop_ms()
    rows = []
    for name, facts in made.items():
        times = []
        for _ in range(repeats):
            began = time.perf_counter()
            checked(facts, book, "bench", System.METRIC)
            times.append((time.perf_counter() - began) * 1e3)
        middle = statistics.median(times)
        rows.append(Measured(name, middle, max(times), middle / unit))
    began = time.perf_counter()
    for facts in itertools.islice(itertools.cycle(made.values()), many):
        checked(facts, book, "bench", System.METRIC)
    return rows, time.perf_counter() - began


def main(repeats: int = 200, many: int = 1000) -> int:
    """Print the figures."""
    rows, many_s = measure(repeats, many)
    for one in rows:
        figures = f"{one.median_ms:7.3f} ms median  {one.slowest_ms:7.3f} ms slowest"
        print(f"{one.name:<24}{figures}  {one.loops:6.2f} x a bare loop of 10,000 additions")
    print(f"{many:,} checks in a row: {many_s:.2f} s")
    return 0


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
