"""One inspection logged, judged, stored and shown, beside the bare driver that reads and writes the same rows.

The bare driver works on a copy of the register without its guards that goes along step by step. It reads every row of
the piece (of its verdicts the last one), of the people and of the club, and writes the very rows that the program has
just written, in one transaction with synchronous=FULL.
"""

import shutil
import sqlite3
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import Any

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import event

from inspector.desk.opened import opened
from inspector.duties.gear_list import answers
from inspector.duties.log_inspection import Written, log_inspection
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plausible import cautions, widest_hole
from inspector.duties.sit_down import seat
from inspector.gear.lists import Order, Wanted
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from inspector.register.columns import METADATA
from inspector.rulebook.load import Rulebook
from tests.benchmarks.registers import office_on

_WHOLE = ("person", "person_change", "club_setting", "adoption")
_Statement = tuple[str, Any, bool]


class Logged(Struct, frozen=True):
    """Median milliseconds by the clock and of processor time: judged and kept, the record shown as well, and bare."""

    kept_ms: float
    shown_ms: float
    bare_ms: float
    shown_work_ms: float
    bare_work_ms: float
    runs: int


def measure(place: Path, rules: Rulebook, runs: int, aside: Path) -> Logged:
    """An inspection of so many different pieces of the sample, one each, on a copy of the register of a folder.

    aside: an empty folder for the copies. Raises ValueError where too few pieces of the register can be inspected.
    """
    shutil.copy(place / "register.db", aside / "register.db")
    office = seat(office_on(aside, rules))
    kept, shown, bare = [], [], []
    with _bare(aside) as connection:
        for key, tag, one in _written(office):
            with _writes(office) as noted:
                began = _now()
                try:
                    log_inspection(office, tag, one)
                except Refused:  # closed, or evidence
                    continue
                middle = _now()
                opened(office, tag)
                ended = _now()
            kept.append(_since(began, middle))
            shown.append(_since(began, ended))
            began = _now()
            _same_rows(connection, key, noted)
            bare.append(_since(began, _now()))
            if len(bare) > runs:
                break
    office.book.close()
    if len(bare) <= runs:
        raise ValueError(f"only {len(bare)} pieces can be inspected once more")
    kept_s, shown_s, bare_s = (each[1:] for each in (kept, shown, bare))  # the first one is not warm
    by_clock = [median(at for at, _ in each) * 1e3 for each in (kept_s, shown_s, bare_s)]
    of_work = [median(work for _, work in each) * 1e3 for each in (shown_s, bare_s)]
    return Logged(by_clock[0], by_clock[1], by_clock[2], of_work[0], of_work[1], runs)


def _now() -> tuple[float, float]:
    return time.perf_counter(), time.process_time()


def _since(began: tuple[float, float], ended: tuple[float, float]) -> tuple[float, float]:
    return ended[0] - began[0], ended[1] - began[1]


def _written(office: Office) -> Iterator[tuple[str, str, Written]]:
    """Id and tag of pieces with the last inspection of each once more, as the form would hand it over today."""
    for tag in answers(office, Wanted(order=Order.TAG)).tags:
        if "/" in tag:  # a piece that was written many times over has no life
            continue
        piece = open_item(office, tag)
        if piece.verdict.outcome is Outcome.RETIRE or not piece.dossier.inspections:
            continue
        facts = replace(piece.dossier.inspections[-1].facts, on=office.today, note="once more")
        found = cautions(office, piece.dossier, facts, widest_hole(office, piece.dossier))
        yield piece.dossier.item.id, tag, Written(facts, tuple(found))


@contextmanager
def _writes(office: Office) -> Iterator[list[_Statement]]:
    """What the program writes, as it is handed to the driver."""
    noted: list[_Statement] = []
    engine = office.book._engine

    def before(_c: object, _d: object, statement: str, given: Any, _e: object, many: bool) -> None:
        if statement.startswith(("INSERT", "UPDATE", "DELETE")):
            noted.append((statement, given, many))

    event.listen(engine, "before_cursor_execute", before)
    yield noted
    event.remove(engine, "before_cursor_execute", before)


@contextmanager
def _bare(aside: Path) -> Iterator[sqlite3.Connection]:
    """The bare driver on a copy of the register without guards."""
    with sqlite3.connect(aside / "register.db") as one:
        one.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    one.close()
    shutil.copy(aside / "register.db", aside / "bare.db")
    connection = sqlite3.connect(aside / "bare.db", isolation_level=None)
    connection.execute("PRAGMA journal_mode=WAL")
    connection.execute("PRAGMA synchronous=FULL")
    for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall():
        connection.execute(f'DROP TRIGGER "{name}"')
    yield connection
    connection.close()


def _same_rows(connection: sqlite3.Connection, key: str, noted: list[_Statement]) -> None:
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("SELECT * FROM item WHERE id = ?", (key,)).fetchall()
    for name in _OF_PIECE:
        connection.execute(f"SELECT * FROM {name} WHERE item_id = ?", (key,)).fetchall()
    for name in _WHOLE:
        connection.execute(f"SELECT * FROM {name}").fetchall()
    connection.execute("SELECT * FROM verdict WHERE item_id = ? ORDER BY day DESC, id DESC LIMIT 1", (key,)).fetchall()
    connection.execute("SELECT * FROM ledger ORDER BY id DESC LIMIT 1").fetchall()
    for statement, given, many in noted:
        (connection.executemany if many else connection.execute)(statement, given)
    connection.execute("COMMIT")


_OF_PIECE = tuple(table.name for table in METADATA.sorted_tables if "item_id" in table.c and table.name != "verdict")
