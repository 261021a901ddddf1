"""How long a list of 10,000 rows takes to be brought in: read, judged in a dry run, taken, withdrawn.

python tests/benchmarks/bench_import.py [rows]

Beside each time stands that of the bare readers for the same file, `csv.reader` and calamine. Taking a row
books a piece in, judges it, words its verdict and keeps both with their digests in the ledger, so it is far from what
reading alone takes; what one row costs is told as well, and what the bare driver takes to write the very rows
that were kept, with no guard and nothing judged. Times are of this process's own work (processor time).
"""

import csv
import io
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import date, datetime, timedelta
from itertools import pairwise
from pathlib import Path
from statistics import median
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from python_calamine import CalamineWorkbook
from xlsxwriter import Workbook

from inspector.duties.import_list import dry_run, matching_of, read_list, take
from inspector.duties.office import Office
from inspector.duties.withdraw_import import withdraw_import
from inspector.gear.import_list import Fates, Imported
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks.bare_driver import Write, noting_writes, unguarded_copy, write_again
from tests.benchmarks.registers import office_on, sample_in

ROW_COUNT = 10_000
PUT_DOWN = "the rows it keeps, by the bare driver alone"
BAR_TOLD_PER_S = 5.0
BAR_ROW_MS = 8.0  # of one row taken; reading alone is a hundredth of it
DRY_RUNS = 5  # of each file, in turns with the bare reader
_FIRST_SERIAL = 100_000  # none that a recall of the sample means, or the list could not be withdrawn whole
_HEADS = ("Tag", "Kind", "WLL (t)", "Maker", "Serial", "Owner", "Place", "Body diameter (mm)", "Pin diameter (mm)",
          "Made on", "In service since", "Past", "Bought from", "Remarks")  # fmt: skip
Made = TypeVar("Made")
_KINDS = ("bow shackle", "D shackle", "bow shackle", "shackle bow")


class Measured(Struct, frozen=True):
    """Seconds of work, and of the bare reader of the same file where there is one; told: steps told a second."""

    name: str
    seconds: float
    bare_s: float = 0.0
    told_per_s: float = 0.0


def rows(count: int) -> list[tuple[str | float | date, ...]]:
    """A list as a club may have kept it."""
    return [_HEADS, *(_row(number) for number in range(count))]


def _row(number: int) -> tuple[str | float | date, ...]:
    made = date(2018, 1, 1) + timedelta(days=number % 2000)
    return (
        f"L-{number:05}", _KINDS[number % 4], (4.75, 3.25, 2.0)[number % 3], ("QVO", "BZW", "")[number % 3],
        f"Q {_FIRST_SERIAL + number}", "Club", f"Shed, hook {number % 90}", 19.0, 22.0, made, made + timedelta(days=30),
        ("new", "used", "")[number % 3], "a dealer", "from the old list",
    )  # fmt: skip


def as_csv(table: list[tuple[str | float | date, ...]]) -> bytes:
    """The list with semicolons and decimal commas, in an old alphabet."""
    text = io.StringIO(newline="")
    for row in table:
        cells = (str(cell).replace(".", ",") if isinstance(cell, float) else str(cell) for cell in row)
        csv.writer(text, delimiter=";").writerow(list(cells))
    return text.getvalue().encode("cp1252")


def as_xlsx(table: list[tuple[str | float | date, ...]]) -> bytes:
    """The list as a workbook."""
    stream = io.BytesIO()
    book = Workbook(stream, {"in_memory": True})
    sheet, day = book.add_worksheet("Gear"), book.add_format({"num_format": "dd.mm.yyyy"})
    for number, row in enumerate(table):
        for at, cell in enumerate(row):
            if isinstance(cell, date):
                sheet.write_datetime(number, at, datetime(cell.year, cell.month, cell.day), day)  # noqa: DTZ001 - a day
            else:
                sheet.write(number, at, cell)
    book.close()
    return stream.getvalue()


def measure(place: Path, rules: Rulebook, count: int) -> list[Measured]:
    """Both files read, run dry, taken and withdrawn."""
    office, table = office_on(place, rules), rows(count)
    found = []
    files = {"list.csv": (as_csv(table), _bare_csv), "list.xlsx": (as_xlsx(table), _bare_xlsx)}
    for name, (data, bare) in files.items():
        (place / name).write_bytes(data)
        turns = [_turn(office, place / name, lambda data=data, bare=bare: bare(data)) for _ in range(DRY_RUNS)]  # type: ignore[misc]
        bare_s, read_s, dry_s = (median(times) for times in zip(*(one[:3] for one in turns), strict=True))
        run = turns[-1][3]
        assert len(run.passed) == count
        found += [Measured(f"{name}: read", read_s, bare_s), Measured(f"{name}: read and run dry", dry_s, bare_s)]
        found += _taken(office, place / name, run, bare_s)
    office.book.close()
    return found


def _turn(office: Office, path: Path, bare: Callable[[], None]) -> tuple[float, float, float, Fates]:
    """Seconds of the bare reader, of reading, of reading and running dry; a dry run keeps nothing, so it can be had
    again."""
    _, bare_s = _timed(bare)
    file, read_s = _timed(lambda: read_list(path))
    run, run_s = _timed(lambda: dry_run(office, file, matching_of(office, file)))
    return bare_s, read_s, read_s + run_s, run


def _taken(office: Office, file: Path, run: Fates, bare_s: float) -> list[Measured]:
    name, steps = file.name, list[float]()
    heard = replace(office, told=lambda done, total: steps.append(time.process_time()))
    with unguarded_copy(file.parent, f"{name}.db") as bare, noting_writes(office) as noted:
        made, seconds = _timed(lambda: take(heard, run))
        _, put_s = _timed(lambda: _put_down(bare, noted))
    taken = Measured(f"{name}: taken", seconds, bare_s, 1 / max(_gaps(steps), default=1.0))
    put = Measured(f"{name}: {PUT_DOWN}", put_s, bare_s)
    assert isinstance(made, Imported)
    _, seconds = _timed(lambda: withdraw_import(office, made.number, "measured"))
    return [taken, put, Measured(f"{name}: withdrawn", seconds, bare_s)]


def _put_down(bare: sqlite3.Connection, noted: list[Write]) -> None:
    bare.execute("BEGIN IMMEDIATE")
    write_again(bare, noted)
    bare.execute("COMMIT")


def _gaps(steps: list[float]) -> list[float]:
    return [later - one for one, later in pairwise(steps)]


def _bare_csv(data: bytes) -> None:
    list(csv.reader(io.StringIO(data.decode("cp1252"), newline=""), delimiter=";"))


def _bare_xlsx(data: bytes) -> None:
    CalamineWorkbook.from_filelike(io.BytesIO(data)).get_sheet_by_index(0).to_python(skip_empty_area=False)


def _timed(work: Callable[[], Made]) -> tuple[Made, float]:
    began = time.process_time()
    value = work()
    return value, time.process_time() - began


def main(count: int = ROW_COUNT) -> int:
    """Print the figures; 0 when a row costs no more than its bar and it was told often enough how far it was."""
    rules = packaged()
    with tempfile.TemporaryDirectory() as folder:
        sample_in(Path(folder), rules)
        found = measure(Path(folder), rules, count)
    print(f"{count} rows of {len(_HEADS)} columns")
    for one in found:
        bare = f"{one.seconds / one.bare_s:7.1f} x the bare reader ({one.bare_s:.2f} s)" if one.bare_s else ""
        told = f", told at least {one.told_per_s:.0f} times a second" if one.told_per_s else ""
        print(f"{one.name:<28}{one.seconds:7.2f} s {one.seconds / count * 1000:6.2f} ms a row {bare}{told}")
    taken = [one for one in found if one.name.endswith("taken")]
    met = all(one.seconds / count * 1000 <= BAR_ROW_MS and one.told_per_s >= BAR_TOLD_PER_S for one in taken)
    print(f"bars: {BAR_ROW_MS} ms a row taken, told {BAR_TOLD_PER_S} times a second: {'kept' if met else 'not kept'}")
    return 0 if met else 1


if __name__ == "__main__":
    sys.exit(main(*(int(one) for one in sys.argv[1:2])))
