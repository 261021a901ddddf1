"""Everything that has a bar, measured in one go, and the table of it.

python tests/benchmarks/measure.py                              # all of it, an hour or so
python tests/benchmarks/measure.py --quick                      # at small sizes, minutes: says that it runs, no more
python tests/benchmarks/measure.py --only "judge all" --keep FOLDER
python tests/benchmarks/measure.py --save now.json --against before.json

Each line: what, its figure, the baseline that took turns with it in the same run, the ratio, the ratio of processor
time, the bar, whether it is met. Nothing of it is asserted anywhere. The exit code says whether it was measured, not
whether a bar was met: 0 measured, or the table says why that cannot be done on this machine; 1 something broke.
"""

import argparse
import gc
import os
import sys
import tempfile
import traceback
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["LANGUAGE"] = "en"

from inspector import SELDOM
from inspector.rulebook.load import packaged
from tests.benchmarks.measuring.machine import revision, this_machine
from tests.benchmarks.measuring.parts import PARTS
from tests.benchmarks.measuring.run import FULL, QUICK, Part, Run
from tests.benchmarks.measuring.stores import Stores
from tests.benchmarks.measuring.table import Row, Table, saved
from tests.server import NoServerError


def main(given: Sequence[str] | None = None) -> int:
    """Measure and print; 0 when all was measured that this machine can measure."""
    asked = _asked(given)
    parts = [one for one in PARTS if all(word in one.name.casefold() for word in asked.only.casefold().split())]
    if not parts:
        names = "\n  ".join(one.name for one in PARTS)
        print(f"Nothing is called so. There is:\n  {names}", file=sys.stderr)
        return 2
    before = saved(asked.against) if asked.against else None
    gc.set_threshold(SELDOM)  # as the program's own process does
    broken, rows = [], []
    with _run(asked) as run:
        machine = this_machine(run.aside)
        for part in parts:
            print(f"measuring: {part.name}", file=sys.stderr, flush=True)
            found, is_sound = measured(part, run)
            rows += found
            broken += [] if is_sound else [part.name]
    day = datetime.now().astimezone().isoformat(timespec="minutes")
    table = Table(machine, day, revision(), asked.quick, tuple(rows))
    print("\n".join(table.lines()))
    if asked.save:
        table.save(asked.save)
    if before:
        print("\n" + "\n".join(table.against(before)))
    return 1 if broken else 0


def measured(part: Part, run: Run) -> tuple[list[Row], bool]:
    """The rows of a part, and whether it went well; where it cannot be measured here or broke, one that says why."""
    rows: list[Row] = []
    gc.collect()
    gc.freeze()  # what earlier parts left in memory is not looked through while this one is timed
    try:
        for row in part.measure(run):
            rows.append(row)
    except NoServerError as reason:
        rows.append(Row(part.name, why_not=str(reason)))
    except Exception as fault:
        traceback.print_exc()
        rows.append(Row(part.name, why_not=f"it broke: {fault}"))
        return rows, False
    return rows, True


@contextmanager
def _run(asked: argparse.Namespace) -> Iterator[Run]:
    rules = packaged()
    with tempfile.TemporaryDirectory() as made:
        folder = (asked.keep or Path(made)) / f"registers-{rules.hash[:12]}"  # under other rules all is judged anew
        folder.mkdir(parents=True, exist_ok=True)
        aside = Path(made) / "aside"
        aside.mkdir()
        yield Run(QUICK if asked.quick else FULL, Stores(folder, rules), aside)


def _asked(given: Sequence[str] | None) -> argparse.Namespace:
    about, _, more = (__doc__ or "").partition("\n\n")
    kept = argparse.RawDescriptionHelpFormatter
    parser = argparse.ArgumentParser(description=about, epilog=more, formatter_class=kept)
    parser.add_argument("--only", metavar="WORDS", default="", help="only what has all these words in its name")
    parser.add_argument(
        "--quick", action="store_true", help="small sizes and few runs: no figure to hold a bar against"
    )
    parser.add_argument("--save", metavar="FILE", type=Path, help="write machine, versions, revision and rows as JSON")
    parser.add_argument("--against", metavar="FILE", type=Path, help="print a saved run and this one side by side")
    parser.add_argument("--keep", metavar="FOLDER", type=Path, help="make the registers there, or use those that are")
    return parser.parse_args(given)


if __name__ == "__main__":
    sys.exit(main())
