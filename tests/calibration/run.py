"""The calibration at full length: `python tests/calibration/run.py [--judgements N] [--pieces N] [--seed S]`.

Judges a made-up world by the packaged rules and prints, for each way in which walls go, how often a wall too thin was
called fit, how often a sound wall was, and how often a new reading lay in its band. Nothing here is asserted.
"""

import argparse
import math
import sys
from collections import Counter
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.rulebook.load import Rulebook, packaged
from tests.calibration import bands, simulate
from tests.calibration.world import BETWEEN, LINEAR, POWER, Process

PROCESSES = (LINEAR, POWER, BETWEEN)
SHARES = 8  # parts of the work, each with a seed of its own; the same whatever the number of cores
ONE_SIDED_95 = 1.645
ROWS = (
    ("pull below", "pull: wall below the required one"),
    ("pull clear by two", "pull: sound reading everywhere, wall at least required + 0.4 mm"),
    ("pull clear by one", "pull: sound reading everywhere, wall at least required + 0.2 mm"),
    ("pull below anywhere", "pull: wall or pit between the points below the required one"),
    ("tow below", "towing: wall below the required one"),
    ("tow clear by two", "towing: sound reading everywhere, wall at least required + 0.4 mm"),
)


def upper(hits: int, of: int) -> float:
    """The share that the count does not rule out, one-sided 95 % (Wilson)."""
    share, z2 = hits / of, ONE_SIDED_95**2
    root = ONE_SIDED_95 * math.sqrt(share * (1 - share) / of + z2 / (4 * of * of))
    return (share + z2 / (2 * of) + root) / (1 + z2 / of)


def judged_part(process: Process, count: int, rules: Rulebook, seed: int) -> Counter[str]:
    """A part of the judgements."""
    return simulate.judged(process, seed, count, rules)


def banded_part(process: Process, count: int, rules: Rulebook, seed: int) -> Counter[str]:
    """A part of the pieces whose bands are tried."""
    return bands.tried(process, seed, count, rules)


def in_parts(pool: ProcessPoolExecutor, work: Callable[[int], Counter[str]], seed: int) -> Counter[str]:
    """All parts added up."""
    total = Counter[str]()
    for part in pool.map(work, [seed * SHARES + number for number in range(SHARES)]):
        total.update(part)
    return total


def tell_judged(process: Process, count: Counter[str]) -> None:
    """The table of one process."""
    print(f"\n{process.name}: {count['judged']} judgements, {count['pull']} of pieces that pull")
    print(f"  {'':66} {'cases':>7} {'fit':>6} {'share':>9} {'at most':>9} {'retired':>8}")
    for name, said in ROWS:
        of, fit = count[name], count[f"{name}, fit"]
        if of:
            most = f"{upper(fit, of):9.4%}"
            print(f"  {said:66} {of:7} {fit:6} {fit / of:9.4%} {most} {count[f'{name}, retired'] / of:8.1%}")
    held = {name: number for name, number in count.items() if name.startswith("held clear pull by ")}
    for name, number in sorted(held.items(), key=lambda pair: -pair[1]):
        print(f"    sound and clear by 0.4 mm, yet {name.removeprefix('held clear pull by ')}: {number}")


def tell_bands(process: Process, count: Counter[str]) -> None:
    """How often new readings lay in their bands."""
    for name in ("today", "next reading"):
        of, below, above = count[name], count[f"{name}, below"], count[f"{name}, above"]
        if of:
            inside = f"in {1 - (below + above) / of:.2%}, below {below / of:.2%}, above {above / of:.2%}"
            print(f"  {process.name}, {name}: {of} bands, new reading {inside}")


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--judgements", type=int, default=100_000, help="of each process")
    parser.add_argument("--pieces", type=int, default=20_000, help="whose bands are tried, of each process")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--cores", type=int, default=2)
    asked, rules = parser.parse_args(), packaged()
    with ProcessPoolExecutor(asked.cores) as pool:
        for process in PROCESSES:
            work = partial(judged_part, process, asked.judgements // SHARES, rules)
            tell_judged(process, in_parts(pool, work, asked.seed))
        print("\nbands: of 100 new readings there, 95 are to lie in the band")
        for process in (LINEAR, POWER):
            tell_bands(
                process, in_parts(pool, partial(banded_part, process, asked.pieces // SHARES, rules), asked.seed)
            )


if __name__ == "__main__":
    main()
