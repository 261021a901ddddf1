"""How well photos of ticked sheets are read, and how fast: made from numbers, read, held against what was ticked.

`python tests/benchmarks/bench_photos.py [count]` reads so many photos (1,000 unless told; odd seeds, which no limit was
set by) in one process and prints all figures; a thousand take about 20 minutes. Nothing is asserted here.
`--tuning` takes even seeds, `--from SEED` begins there.
"""

import argparse
import itertools
import sys
import time
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from statistics import median

from msgspec import Struct

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from PIL import Image

from tests.paper.photo_sheets.cases import case
from tests.paper.photo_sheets.clean_sheet import CleanSheet
from tests.paper.photo_sheets.measuring import Counts, count, upper_bound
from tests.paper.photo_sheets.printed_sheets import all_sheets

COUNT = 1000
_EVERY = 50


def measure(
    clean: list[CleanSheet], count_of: int, first: int, told: Callable[[int], None] = lambda done: None
) -> Counts:
    """Photos of these sheets, of every second seed from the first on. told: hears how many photos are done."""
    counts = Counts()
    for number in range(count_of):
        count(counts, case(first + 2 * number, clean))
        told(number + 1)
    return counts


class Compared(Struct, frozen=True):
    """Median milliseconds of a photo from its bytes to what its boxes say, and of Pillow decoding the same file."""

    read_ms: float
    decoded_ms: float


def compare(clean: list[CleanSheet], count_of: int) -> Compared:
    """So many photos of these sheets that can be read, both ways in turns; processor time."""
    every = (case(seed, clean) for seed in itertools.count(1, 2))
    read, decoded = [], []
    for one in itertools.islice((one for one in every if one.shot.usable), count_of):
        read.append(_work_ms(lambda one=one: count(Counts(), one)))  # type: ignore[misc]
        decoded.append(_work_ms(lambda one=one: Image.open(BytesIO(one.photo)).load()))  # type: ignore[misc]
    return Compared(median(read), median(decoded))


def _work_ms(work: Callable[[], object]) -> float:
    began = time.process_time()
    work()
    return (time.process_time() - began) * 1e3


def lines_of(counts: Counts) -> list[str]:
    """The figures, and each photo that was not read as it should."""
    taken = sorted(counts.seconds)
    share = counts.usable_accepted / max(counts.usable, 1)
    asked, unsure = (part / max(counts.boxes, 1) for part in (counts.asked_boxes, counts.unsure_boxes))
    return [
        f"photos {counts.photos}, of them usable {counts.usable}",
        f"usable accepted {counts.usable_accepted} ({share:.2%}); of the others accepted "
        f"{counts.accepted - counts.usable_accepted} of {counts.photos - counts.usable}",
        f"boxes read {counts.boxes}; asked {counts.asked_boxes} ({asked:.2%}, both boxes of each row that is unsure); "
        f"unsure by themselves {counts.unsure_boxes} ({unsure:.2%})",
        f"sure answers {counts.sure_rows} of {counts.rows} rows; wrong {counts.wrong}, "
        f"upper 95 % bound {upper_bound(counts.wrong, counts.sure_rows):.6f}",
        f"boxes wrong {counts.wrong_boxes} of {counts.boxes - counts.unsure_boxes} sure ones, "
        f"upper 95 % bound {upper_bound(counts.wrong_boxes, counts.boxes - counts.unsure_boxes):.6f}",
        f"faults read as passed {counts.passed}; wrong sheet numbers {counts.wrong_sheets}",
        f"seconds a photo: median {median(taken):.3f}, 95th {taken[int(len(taken) * 0.95)]:.3f}, most {taken[-1]:.3f}",
        *(f"refused, {reason}: {times}" for reason, times in sorted(counts.reasons.items())),
        *counts.notes,
    ]


def main() -> int:
    """Measure and print."""
    parser = argparse.ArgumentParser(description="How well photos of ticked sheets are read.")
    parser.add_argument("count", nargs="?", type=int, default=COUNT)
    parser.add_argument("--tuning", action="store_true", help="even seeds")
    parser.add_argument("--from", dest="first", type=int, default=0, help="begin at this seed")
    asked = parser.parse_args()
    began = time.perf_counter()

    def told(done: int) -> None:
        if done % _EVERY == 0:
            print(f"{done} of {asked.count}, {time.perf_counter() - began:.0f} s", file=sys.stderr, flush=True)

    first = asked.first // 2 * 2 + (0 if asked.tuning else 1)
    print("\n".join(lines_of(measure(all_sheets(), asked.count, first, told))))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
