"""How long it takes to gather what the window's first page and its calendar show, of 1,000 pieces.

python tests/benchmarks/bench_needs.py

The register is the sample ten times over. Beside the milliseconds stands how often a bare loop runs in that time.
"""

import sys
import tempfile
from collections.abc import Callable
from functools import partial
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.duties.due_sheet import due_sheet
from inspector.duties.office import Office
from inspector.duties.what_needs_me import what_needs_me
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks.bench_readiness import Measured, loop_s, median_s, prepare
from tests.benchmarks.registers import office_on, sample_in

PIECE_COUNT = 1000


def measure(place: Path, rules: Rulebook, repeats: int = 5) -> list[Measured]:
    """Both looks on a register opened once."""
    office = office_on(place, rules)
    steps: dict[str, Callable[[Office], object]] = {"what needs me": what_needs_me, "what falls due": due_sheet}
    loop = loop_s()
    taken = {name: median_s(partial(_look, look, office), repeats) for name, look in steps.items()}
    office.book.close()
    return [Measured(name, seconds, seconds / loop) for name, seconds in taken.items()]


def _look(look: Callable[[Office], object], office: Office) -> None:
    look(office)


def main() -> int:
    """Print the figures."""
    with tempfile.TemporaryDirectory() as folder:
        rules = packaged()
        sample_in(Path(folder), rules)
        count = prepare(Path(folder), rules, PIECE_COUNT)
        rows = measure(Path(folder), rules)
    print(f"a register of {count} pieces")
    for one in rows:
        print(f"{one.name:<20}{one.seconds * 1000:7.0f} ms  {one.loops:8.0f} x a bare loop of 10,000 additions")
    return 0


if __name__ == "__main__":
    sys.exit(main())
