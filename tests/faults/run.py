"""The long profiles: `python -m tests.faults.run kills 500` and `python -m tests.faults.run flips 200`.

Kills: nothing lost, nothing half there, or it ends with what was. Flips: on the sample register, by how each was found.
"""

import os
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["LANGUAGE"] = "en"

from inspector.duties.build_sample import build_sample
from inspector.rulebook.load import packaged
from tests.conftest import office_in
from tests.faults import flips, kills
from tests.faults.small import small_register


def main(what: str, count: int, seed: int) -> int:
    """Run a profile; the exit code."""
    began = time.monotonic()
    with tempfile.TemporaryDirectory() as place:
        lines, well = {"kills": _kills, "flips": _flips}[what](Path(place), count, seed)
    for line in lines:
        print(line)
    print(f"{time.monotonic() - began:.0f} s, seed {seed}")
    return 0 if well else 1


def _kills(place: Path, count: int, seed: int) -> tuple[list[str], bool]:
    (place / "small").mkdir()
    small = small_register(place / "small", packaged())
    made = list(kills.run(small, place / "work", count, seed))
    return kills.table(made), len(made) == count


def _flips(place: Path, count: int, seed: int) -> tuple[list[str], bool]:
    office = office_in(place, packaged())
    build_sample(office)
    office.book.close()
    made = flips.run(place / "register.db", count, seed)
    counts = flips.counted(made)
    lines = [f"{outcome}: {counts[outcome]}" for outcome in flips.OUTCOMES]
    hit = Counter(one.flip.of for one in made)
    lines.append(f"places: {', '.join(f'{name} {number}' for name, number in hit.most_common())}")
    lines += [str(one) for one in made if one.outcome == flips.SLIPPED]
    return lines, not counts[flips.SLIPPED]


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]) if len(sys.argv) > 3 else 9))
