"""How long the sums take: 100,000 calls each, beside a bare Python function called as often in the same run.

`python tests/benchmarks/bench_sums.py` prints the table. Nothing here is asserted by the clock.
"""

import math
import platform
import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.mechanics import corrosion, shear, snatch

CALLS = 100_000
RUNS = 5


def bare(mass_kg: float, speed_m_per_s: float) -> float:
    """The baseline: one call, one formula, no check."""
    return math.sqrt(mass_kg * speed_m_per_s**2)


CASES: dict[str, Callable[[], float]] = {
    "bare Python function (baseline)": lambda: bare(2500.0, 2.8),
    "snatch.anchored_peak_n": lambda: snatch.anchored_peak_n(8e3, 43.6e3, 2500.0, 2.8),
    "snatch.stored_energy_j": lambda: snatch.stored_energy_j(40e3, 43.6e3),
    "shear.pin_shear_n": lambda: shear.pin_shear_n(0.015875, 800e6, 2),
    "shear.pin_moment_resistance_n_m": lambda: shear.pin_moment_resistance_n_m(0.015875, 640e6),
    "corrosion.remaining_life_years": lambda: corrosion.remaining_life_years(0.005, 0.004, 0.00015),
    "corrosion.atmospheric_loss_m": lambda: corrosion.atmospheric_loss_m(80e-6, 10.0, 0.523),
}


def seconds(work: Callable[[], float], calls: int) -> float:
    """The median of several runs."""
    taken = []
    for _ in range(RUNS):
        began = time.perf_counter()
        for _ in range(calls):
            work()
        taken.append(time.perf_counter() - began)
    return median(taken)


def measure(calls: int = CALLS) -> list[tuple[str, float, float]]:
    """What, seconds for all calls, times the baseline."""
    figures = {name: seconds(work, calls) for name, work in CASES.items()}
    base = next(iter(figures.values()))
    return [(name, taken, taken / base) for name, taken in figures.items()]


def main() -> int:
    """Print the table."""
    print(f"{CALLS:,} calls each, median of {RUNS} runs, {platform.python_version()} on {platform.machine()}")
    for name, taken, ratio in measure():
        print(f"{name:36}  {taken:6.3f} s  {ratio:6.1f} x")
    return 0


if __name__ == "__main__":
    sys.exit(main())
