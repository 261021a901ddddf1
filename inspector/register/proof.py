"""The whole proof: the file's pages and indexes, its tables and guards, then the ledger and all it accounts for.

Pages and indexes are looked at too, though that takes about as long again: a damaged index hides rows from a list
while every row is as it was.
"""

from collections.abc import Iterator

from sqlalchemy import Connection, inspect
from sqlalchemy.exc import DatabaseError

from inspector.gear.lists import Fault, Verified
from inspector.refused import Refused
from inspector.register import ledger
from inspector.register.aside import NoPlaceAside
from inspector.register.chains import GENESIS
from inspector.register.columns import METADATA
from inspector.register.guards import changed_triggers, missing_triggers

_MOST_TOLD = 20


def prove(connection: Connection, against: str = "") -> Verified:
    """Look at all of it. What cannot be read is a fault like any other; it ends nothing before it is told."""
    faults: list[Fault] = []
    try:
        faults += _file_faults(connection)
        faults += _table_faults(connection)
        found = ledger.verify(connection, against)
    except NoPlaceAside:
        raise
    except (DatabaseError, ValueError, Refused) as error:
        why = getattr(error, "orig", error)
        return Verified(0, 0, GENESIS, (*faults, Fault("register", f"it cannot be read to its end: {why}")))
    return Verified(found.line_count, found.row_count, found.head, (*faults, *found.faults), found.gaps)


def _file_faults(connection: Connection) -> Iterator[Fault]:
    if connection.dialect.name != "sqlite":
        return
    for row in connection.exec_driver_sql(f"PRAGMA integrity_check({_MOST_TOLD})"):
        if row[0] != "ok":
            yield Fault("file", str(row[0]))
    for table, key, parent, _ in connection.exec_driver_sql("PRAGMA foreign_key_check").fetchmany(_MOST_TOLD):
        yield Fault(str(table), f"the entry at place {key} refers to one of {parent} that is gone")


def _table_faults(connection: Connection) -> Iterator[Fault]:
    """Tables and columns that are not as they were made; guards that are gone or say something else."""
    looked = inspect(connection)
    there = set(looked.get_table_names())
    for table in METADATA.sorted_tables:
        if table.name not in there:
            yield Fault(table.name, "the table is gone")
            continue
        wanted = {one.name: one.nullable for one in table.columns}
        found = {str(one["name"]): bool(one["nullable"]) for one in looked.get_columns(table.name)}
        if any(found.get(name) != nullable for name, nullable in wanted.items()):
            yield Fault(table.name, "its columns are not as they were made")
        indexes = {one["name"] for one in looked.get_indexes(table.name)}
        if gone := {str(one.name) for one in table.indexes} - indexes:
            yield Fault(table.name, f"the index {min(gone)} is gone")
    for name in missing_triggers(connection):
        yield Fault("guards", f"{name} is gone")
    for name in changed_triggers(connection):
        yield Fault("guards", f"{name} was changed")
