"""Every row of the history as a line of JSON, for another program or another age.

A line is {"row": {columns}, "table": name}. Columns that hold JSON stand in it as they are stored, so that their
digest can be reckoned again; days are written 2026-11-25. Of a file's bytes the line gives the count: an archive has
the bytes themselves under their sha256. Contact details, passphrases, settings and what is derived are no history and
in no line. Every shape is described by `line_schema.py`.
"""

import json
from collections.abc import Iterator
from datetime import date

from sqlalchemy import Connection, RowMapping, Table, func, select

from inspector.register.tables import APPEND_ONLY
from inspector.register.year_tables import attachment_data

AS_JSON = frozenset({"body", "words"})  # columns that hold JSON texts
_AT_ONCE = 200


def json_lines(connection: Connection) -> Iterator[bytes]:
    """The lines with their ends, table by table, each in the order of its keys; few rows are in memory at a time."""
    for table in APPEND_ONLY:
        if table is attachment_data:
            yield from _files(connection)
        else:
            yield from _rows(connection, table)


def _rows(connection: Connection, table: Table) -> Iterator[bytes]:
    asked = select(table).order_by(*table.primary_key.columns)
    rows = connection.execution_options(yield_per=_AT_ONCE).execute(asked)
    for row in rows.mappings():
        yield _line(table.name, _columns(row))


def _files(connection: Connection) -> Iterator[bytes]:
    """The bytes of files are counted by the database and never read."""
    size = func.length(attachment_data.c.data)
    for key, count in connection.execute(select(attachment_data.c.id, size).order_by(attachment_data.c.id)):
        yield _line(attachment_data.name, {"id": _text(str(key)), "size_bytes": _text(int(count))})


def _columns(row: RowMapping) -> dict[str, str]:
    """Each column's JSON."""
    return {str(name): str(value) if name in AS_JSON else _text(value) for name, value in row.items()}


def _text(value: object) -> str:
    return json.dumps(value.isoformat() if isinstance(value, date) else value, ensure_ascii=False)


def _line(table: str, columns: dict[str, str]) -> bytes:
    inside = ",".join(f'"{name}":{columns[name]}' for name in sorted(columns))
    return f'{{"row":{{{inside}}},"table":"{table}"}}\n'.encode()
