"""The ledger: one line a deed, each naming the hash of the line before, each naming the rows it wrote.

A line's body is canonical JSON (sorted keys, no spaces). A row's digest is the sha256 of its columns in canonical
JSON, so `verify` finds a changed row as surely as a changed line.
"""

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, RowMapping, select

from inspector.gear.lists import Fault, Verified
from inspector.register import tables
from inspector.register.standing_check import standing_faults
from inspector.register.tables import APPEND_ONLY, ledger

GENESIS = "0" * 64
_FOLLOWED = tuple(table for table in APPEND_ONLY if table is not ledger)


def canonical(value: object) -> str:
    """The one spelling of a value as JSON."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False, default=_plain)


def _plain(value: object) -> str:
    if isinstance(value, date | datetime):
        return value.isoformat()
    if isinstance(value, bytes):
        return hashlib.sha256(value).hexdigest()
    raise TypeError(f"{type(value).__name__} has no canonical spelling")


def digest(row: Mapping[Any, Any]) -> str:
    """sha256 of a row's columns."""
    return hashlib.sha256(canonical({str(column): row[column] for column in row}).encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class Wrote:
    """A row that a deed wrote."""

    table: str
    id: str
    digest: str


def line_hash(line: int, origin: str, at: str, by: str, deed: str, body: str, before: str) -> str:
    """The hash of one ledger line over all its other columns."""
    return hashlib.sha256(canonical([line, origin, at, by, deed, body, before]).encode()).hexdigest()


def head(connection: Connection) -> tuple[int, str]:
    """Number and hash of the last line; (0, zeros) for an empty ledger."""
    row = connection.execute(select(ledger.c.id, ledger.c.hash).order_by(ledger.c.id.desc()).limit(1)).first()
    return (int(row[0]), str(row[1])) if row else (0, GENESIS)


def since(connection: Connection, number: int) -> tuple[tuple[int, str], ...]:
    """Number and hash of every line after one, the oldest first."""
    rows = connection.execute(select(ledger.c.id, ledger.c.hash).where(ledger.c.id > number).order_by(ledger.c.id))
    return tuple((int(row[0]), str(row[1])) for row in rows)


@dataclass(frozen=True, slots=True)
class Deed:
    """What a line says: who did what, when, with which facts, on which copy of the register."""

    name: str
    by: str
    at: datetime
    facts: Mapping[str, object]
    origin: str


def add_line(connection: Connection, deed: Deed, wrote: list[Wrote]) -> str:
    """Append a line for the deed; returns its hash."""
    number, before = head(connection)
    body = canonical({"facts": deed.facts, "rows": [[one.table, one.id, one.digest] for one in wrote]})
    row = {"id": number + 1, "origin": deed.origin, "at": deed.at.isoformat(timespec="seconds"), "by": deed.by}
    row |= {"deed": deed.name, "body": body, "before": before}
    row["hash"] = line_hash(number + 1, deed.origin, str(row["at"]), deed.by, deed.name, body, before)
    connection.execute(ledger.insert(), row)
    return str(row["hash"])


def verify(connection: Connection, against: str = "") -> Verified:
    """Recompute the chain and every row's digest, and hold what stands against them.

    against: a head printed on a document, sought in the chain.
    """
    faults: list[Fault] = []
    accounted: dict[tuple[str, str], tuple[str, int]] = {}
    number, before, seen = 0, GENESIS, False
    for row in connection.execute(select(ledger).order_by(ledger.c.id)).mappings():
        faults += _line_faults(row, number, before)
        number, before = int(row["id"]), str(row["hash"])
        seen = seen or (bool(against) and before.startswith(against))
        accounted.update(_rows_named(row))
    faults += _row_faults(connection, accounted)
    if not faults:  # what stands is held against verdicts that are as they were entered
        faults += standing_faults(connection, [key for name, key in accounted if name == tables.verdict.name])
    if against and not seen:
        faults.append(Fault("ledger", f"no line has the head {against}: lines were cut off or written anew after it"))
    return Verified(number, len(accounted), before, tuple(faults))


def _line_faults(row: RowMapping, last: int, before: str) -> Iterator[Fault]:
    line = int(row["id"])
    if line != last + 1:
        yield Fault("ledger", f"line {last + 1} is missing", line)
    if row["before"] != before:
        yield Fault("ledger", "does not follow from the line before it", line)
    columns = (row["origin"], row["at"], row["by"], row["deed"], row["body"], row["before"])
    if line_hash(line, *columns) != row["hash"]:
        yield Fault("ledger", "was changed after it was written", line)


def _rows_named(row: RowMapping) -> dict[tuple[str, str], tuple[str, int]]:
    try:
        named = json.loads(row["body"])["rows"]
        return {(str(table), str(key)): (str(own), int(row["id"])) for table, key, own in named}
    except (ValueError, KeyError, TypeError):
        return {}


def _row_faults(connection: Connection, accounted: dict[tuple[str, str], tuple[str, int]]) -> Iterator[Fault]:
    left = dict(accounted)
    for table in _FOLLOWED:
        for row in connection.execute(select(table)).mappings():
            named = left.pop((table.name, str(row["id"])), None)
            if named is None:
                yield Fault(table.name, f"row {row['id']} is in no line of the ledger")
            elif digest(dict(row.items())) != named[0]:
                yield Fault(table.name, f"row {row['id']} was changed after it was written", named[1])
    for (name, key), (_, line) in left.items():
        yield Fault(name, f"row {key} is gone", line)
