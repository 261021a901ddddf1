"""What the program writes, noted as it is handed to the driver, and the driver alone that writes the same rows."""

import shutil
import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from msgspec import Struct
from sqlalchemy import event

from inspector.duties.office import Office


class Write(Struct, frozen=True):
    """A statement as the driver gets it. is_many: given holds the values of several rows."""

    statement: str
    given: Any
    is_many: bool


@contextmanager
def noting_writes(office: Office) -> Iterator[list[Write]]:
    """Every statement that the program writes with in this block, in its order."""
    noted: list[Write] = []
    engine = office.book._engine

    def before(_c: object, _d: object, statement: str, given: Any, _e: object, is_many: bool) -> None:
        if statement.startswith(("INSERT", "UPDATE", "DELETE")):
            noted.append(Write(statement, given, is_many))

    event.listen(engine, "before_cursor_execute", before)
    yield noted
    event.remove(engine, "before_cursor_execute", before)


@contextmanager
def unguarded_copy(place: Path, name: str) -> Iterator[sqlite3.Connection]:
    """The driver on a copy of the register in a folder, put beside it: synchronised in full, without guards."""
    with sqlite3.connect(place / "register.db") as one:
        one.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    one.close()
    shutil.copy(place / "register.db", place / name)
    connection = sqlite3.connect(place / name, isolation_level=None)
    connection.execute("PRAGMA journal_mode=WAL")
    connection.execute("PRAGMA synchronous=FULL")
    for (trigger,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall():
        connection.execute(f'DROP TRIGGER "{trigger}"')
    try:
        yield connection
    finally:
        connection.close()


def write_again(connection: sqlite3.Connection, noted: Iterable[Write]) -> None:
    """The same rows by the driver alone, in the transaction that it is in."""
    for one in noted:
        (connection.executemany if one.is_many else connection.execute)(one.statement, one.given)
