"""How long commands take from cold, in processor time, against importing SQLAlchemy and printing as many rows.

python tests/benchmarks/bench_start.py [FOLDER OF A REGISTER] [repeats]

Without a folder the sample register is made. The commands and the baseline take turns, each in a process of its own.
"""

import resource
import sqlite3
import statistics
import subprocess
import sys
import tempfile
from contextlib import closing
from pathlib import Path

from msgspec import Struct

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from inspector.rulebook.load import packaged
from tests.benchmarks.registers import sample_in

HERE = Path(__file__).resolve().parents[2]
REPEATS = 7
_BASELINE = """
import sqlalchemy, sqlite3, sys
for row in sqlite3.connect(sys.argv[1]).execute("SELECT * FROM item LIMIT 500"):
    print(*row)
"""


class Start(Struct, frozen=True):
    """What a command takes, in seconds of processor time, and how many times the baseline that is."""

    name: str
    median_s: float
    ratio: float


def main(folder: str = "", repeats: str = str(REPEATS)) -> None:
    """Print a line for each command."""
    with tempfile.TemporaryDirectory() as made:
        if not folder:
            sample_in(Path(made), packaged())
        for one in measure(Path(folder or made), int(repeats)):
            print(f"{one.name:<24}{one.median_s:8.3f} s{one.ratio:7.2f} x")


def measure(folder: Path, repeats: int) -> list[Start]:
    """The baseline and each command, which take turns."""
    timed: dict[str, list[float]] = {}
    asked = {"baseline": ["-c", _BASELINE, str(folder / "register.db")], **_commands(folder)}
    _seconds(asked["list"])  # a day may have come on which pieces are judged anew
    for _ in range(repeats):
        for name, words in asked.items():
            timed.setdefault(name, []).append(_seconds(words))
    medians = {name: statistics.median(every) for name, every in timed.items()}
    return [Start(name, median, median / medians["baseline"]) for name, median in medians.items()]


def _commands(folder: Path) -> dict[str, list[str]]:
    with closing(sqlite3.connect(folder / "register.db")) as database:
        (tag,) = database.execute("SELECT tag FROM item ORDER BY tag LIMIT 1").fetchone()
    lines = {"--help": (), "list": (), "show": (tag,), "where": (tag,), "people": (), "calendar": ()}
    return {name: ["-m", "inspector", "--register", str(folder), name, *more] for name, more in lines.items()}


def _seconds(words: list[str]) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, *words], cwd=HERE, capture_output=True, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


if __name__ == "__main__":
    main(*sys.argv[1:])
