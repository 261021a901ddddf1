"""One inspection logged, judged, stored and shown, beside the bare driver that reads and writes the same rows.

The bare driver works on a copy of the register without its guards that goes along step by step. It reads every row of
the piece (of its verdicts the last one), of the people and of the club, and writes the very rows that the program has
just written, in one transaction with synchronous=FULL.
"""

import shutil
import sqlite3
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import Any

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection, Select, bindparam, create_engine, select

from inspector.desk.opened import opened
from inspector.duties.gear_list import answers
from inspector.duties.judging import judged
from inspector.duties.log_inspection import Written, log_inspection
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plausible import cautions_of
from inspector.duties.sit_down import seat
from inspector.gear.lists import Order, Wanted
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from inspector.register.columns import METADATA
from inspector.rulebook.load import Rulebook
from tests.benchmarks.bare_driver import Write, noting_writes, unguarded_copy, write_again
from tests.benchmarks.registers import office_on

_Took = tuple[float, float]  # by the clock, and of processor time
_OfPiece = tuple[str, str, Written]


class Logged(Struct, frozen=True):
    """Median milliseconds by the clock and of processor time: judged and kept, the record shown as well, and bare.

    least_work_ms: the bare driver's work done by SQLAlchemy in its place, and the piece judged and worded once.
    """

    kept_ms: float
    shown_ms: float
    bare_ms: float
    shown_work_ms: float
    bare_work_ms: float
    least_work_ms: float
    runs: int


def measure(place: Path, rules: Rulebook, runs: int, aside: Path) -> Logged:
    """An inspection of so many different pieces of the sample, one each, on a copy of the register of a folder.

    aside: an empty folder for the copies. Raises ValueError where too few pieces of the register can be inspected.
    """
    shutil.copy(place / "register.db", aside / "register.db")
    office = seat(office_on(aside, rules))
    steps: list[tuple[_Took, ...]] = []
    with unguarded_copy(aside, "bare.db") as bare, _toolkit(aside, "toolkit.db") as toolkit:
        for written in _written(office):
            steps += _step(office, written, bare, toolkit)
            if len(steps) > runs:
                break
    office.book.close()
    if len(steps) <= runs:
        raise ValueError(f"only {len(steps)} pieces can be inspected once more")
    each = list(zip(*steps[1:], strict=True))  # the first one is not warm
    kept_ms, shown_ms, bare_ms, _ = (median(took[0] for took in one) * 1e3 for one in each)
    _, shown_work_ms, bare_work_ms, least_work_ms = (median(took[1] for took in one) * 1e3 for one in each)
    return Logged(kept_ms, shown_ms, bare_ms, shown_work_ms, bare_work_ms, least_work_ms, runs)


def _step(office: Office, written: _OfPiece, bare: sqlite3.Connection, toolkit: Connection) -> list[tuple[_Took, ...]]:
    """What one of them took, in the order of `Logged`; nothing where the piece is closed, or evidence."""
    key, tag, one = written
    with noting_writes(office) as noted:
        began = _now()
        try:
            log_inspection(office, tag, one)
        except Refused:
            return []
        kept = _now()
        said = opened(office, tag)
        shown = _now()
    _same_rows(bare, key, noted)
    done = _now()
    _by_toolkit(toolkit, key, noted)
    judged(office, said.judged.dossier)
    ends = _now()
    return [(_since(began, kept), _since(began, shown), _since(shown, done), _since(done, ends))]


def _now() -> _Took:
    return time.perf_counter(), time.process_time()


def _since(began: _Took, ended: _Took) -> _Took:
    return ended[0] - began[0], ended[1] - began[1]


def _written(office: Office) -> Iterator[_OfPiece]:
    """Id and tag of pieces with the last inspection of each once more, as the form would hand it over today."""
    for tag in answers(office, Wanted(order=Order.TAG)).tags:
        if "/" in tag:  # a piece that was written many times over has no life
            continue
        piece = open_item(office, tag)
        if piece.verdict.outcome is Outcome.RETIRE or not piece.dossier.inspections:
            continue
        facts = replace(piece.dossier.inspections[-1].facts, on=office.today, note="once more")
        found = cautions_of(office, piece.dossier, facts)
        yield piece.dossier.item.id, tag, Written(facts, tuple(found))


@contextmanager
def _toolkit(place: Path, name: str) -> Iterator[Connection]:
    """SQLAlchemy, and nothing of the program, on such a copy."""
    with unguarded_copy(place, name):
        engine = create_engine(f"sqlite:///{place / name}", isolation_level="AUTOCOMMIT")
        with engine.connect() as connection:
            connection.exec_driver_sql("PRAGMA synchronous=FULL")
            yield connection
        engine.dispose()


def _same_rows(connection: sqlite3.Connection, key: str, noted: Sequence[Write]) -> None:
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("SELECT * FROM item WHERE id = ?", (key,)).fetchall()
    for table in _OF_PIECE:
        connection.execute(f"SELECT * FROM {table.name} WHERE item_id = ?", (key,)).fetchall()
    for table in _WHOLE:
        connection.execute(f"SELECT * FROM {table.name}").fetchall()
    connection.execute("SELECT * FROM verdict WHERE item_id = ? ORDER BY day DESC, id DESC LIMIT 1", (key,)).fetchall()
    connection.execute("SELECT * FROM ledger ORDER BY id DESC LIMIT 1").fetchall()
    write_again(connection, noted)
    connection.execute("COMMIT")


def _by_toolkit(connection: Connection, key: str, noted: Sequence[Write]) -> None:
    """The same once more by SQLAlchemy: questions made once, what is written put as it is."""
    connection.exec_driver_sql("BEGIN IMMEDIATE")
    for question in _QUESTIONS:
        connection.execute(question, {"key": key}).fetchall()
    for one in noted:
        connection.exec_driver_sql(one.statement, one.given)
    connection.exec_driver_sql("COMMIT")


def _questions() -> Iterator[Select[Any]]:
    """What `_same_rows` asks."""
    item, verdict, ledger = (METADATA.tables[name] for name in ("item", "verdict", "ledger"))
    yield select(item).where(item.c.id == bindparam("key"))
    yield from (select(table).where(table.c.item_id == bindparam("key")) for table in _OF_PIECE)
    yield from map(select, _WHOLE)
    last = select(verdict).where(verdict.c.item_id == bindparam("key"))
    yield last.order_by(verdict.c.day.desc(), verdict.c.id.desc()).limit(1)
    yield select(ledger).order_by(ledger.c.id.desc()).limit(1)


_WHOLE = tuple(METADATA.tables[name] for name in ("person", "person_change", "club_setting", "adoption"))
_OF_PIECE = tuple(table for table in METADATA.sorted_tables if "item_id" in table.c and table.name != "verdict")
_QUESTIONS = tuple(_questions())
