"""What of a damaged register can be proved: lines by their own hash, rows by the checksum that a line says of them."""

import json
import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing, suppress
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from msgspec import Struct, field

from inspector.register import tables
from inspector.register.accounts import Key, rows_kept, rows_named
from inspector.register.canonical import digest
from inspector.register.chains import hash_of
from inspector.register.columns import METADATA
from inspector.register.field_setting import COPY_OF
from inspector.register.guards import guarded_engine
from inspector.register.kept import checksum
from inspector.register.raw_pages import RawFile, Record, named
from inspector.register.upgrade import bring_up

Row = dict[str, Any]
Told = dict[Key, tuple[str, int]]  # the checksum of a row that may change, "" once taken out, and the line
_MAY_CHANGE = ("club_setting", "contact")
_COPY_OF = ("club_setting", COPY_OF)  # in no line; a field copy that took itself for more would be worse than none
_OF_IDS = frozenset(one.name for one in tables.APPEND_ONLY) - {"ledger", "attachment_data", "rulebook", "document"}
_UUID_SIGNS, _UUID_VERSION_AT = 36, 14


class Salvage(Struct):
    """What was read and proved. lost: rows that a line names and that are not there, or not as they were written.

    lines: by their place. rows: proved ones. doubtful: what was read of lost ones. unnamed: ids of rows that no line
    read names. ends_well: whether the ledger's last line that was read is the last there was.
    """

    lines: dict[int, Row] = field(default_factory=dict)
    rows: dict[Key, Row] = field(default_factory=dict)
    lost: dict[Key, int] = field(default_factory=dict)
    doubtful: dict[Key, Row] = field(default_factory=dict)
    unnamed: set[str] = field(default_factory=set)
    ends_well: bool = False

    @property
    def gaps(self) -> tuple[tuple[int, int], ...]:
        """First and last place of every run of lines that are missing before the last one read."""
        there = sorted(self.lines)
        before = [0, *there]
        return tuple((one + 1, two - 1) for one, two in zip(before, there, strict=False) if two > one + 1)

    @property
    def lost_lines(self) -> bool:
        """Whether any line is missing, or may be."""
        return bool(self.gaps or self.unnamed or not self.ends_well)


def salvage(file: Path, rulebooks: Mapping[str, str]) -> Salvage:
    """Read all that can be proved. rulebooks: texts by their name, for a rulebook that the program knows as well."""
    raw, found = RawFile(file), Salvage()
    orders = _orders(raw)
    for record in raw.records():
        if line := _line(orders["ledger"], record):
            found.lines[line["id"]] = line
    accounted, told = _accounted(found.lines)
    for record in raw.records():
        _take(found, orders, accounted, told, record)
    for key, says in accounted.items():
        if key not in found.rows and not _known_rulebook(found, key, says, rulebooks):
            found.lost[key] = max(says.values())
    found.lost |= {
        key: line for key, (own, line) in told.items() if key[0] in _MAY_CHANGE and own and key not in found.rows
    }
    found.doubtful = {key: row for key, row in found.doubtful.items() if key in found.lost}
    found.ends_well = _ends_well(raw, found, orders["ledger"])
    return found


def _orders(raw: RawFile) -> dict[str, tuple[str, ...]]:
    """The columns of each table in the file's own order; where it does not say, in the order they are made in now."""
    orders = dict(_usual_orders())
    for record in raw.records():
        if len(record.values) == 5 and record.values[0] == "table" and record.values[1] in METADATA.tables:
            with suppress(sqlite3.Error), closing(sqlite3.connect(":memory:")) as made:
                made.execute(str(record.values[4]))
                if columns := tuple(row[1] for row in made.execute(f"PRAGMA table_info({record.values[1]})")):
                    orders[record.values[1]] = columns
    return orders


@cache
def _usual_orders() -> Mapping[str, tuple[str, ...]]:
    engine = guarded_engine("sqlite://")
    try:
        bring_up(engine)
        with engine.connect() as connection:
            return {
                name: tuple(str(row[1]) for row in connection.exec_driver_sql(f"PRAGMA table_info({name})"))
                for name in METADATA.tables
            }
    finally:
        engine.dispose()


def _line(columns: tuple[str, ...], record: Record) -> Row | None:
    """A line of the ledger whose hash is right."""
    if len(record.values) != len(columns) or not isinstance(record.values[-1], str | int):
        return None
    row = {**named(columns, record), "id": record.rowid}
    row.setdefault("number", record.rowid)  # before copies could be merged, place and number were the same
    texts = (row["hash"], row["body"], row["origin"], row["at"], row["before"])
    return row if all(isinstance(one, str) for one in texts) and hash_of(row) == row["hash"] else None


def _accounted(lines: Mapping[int, Row]) -> tuple[dict[Key, dict[str, int]], Told]:
    """What the lines say of rows: the checksum of each, and the line."""
    accounted: dict[Key, dict[str, int]] = {}
    told: Told = {}
    for place in sorted(lines):
        for name, key, own in rows_named(lines[place]):
            accounted.setdefault((name, key), {})[own] = place
        told |= {(name, key): (own, place) for name, key, own in rows_kept(lines[place])}
    return accounted, told


def _take(
    found: Salvage, orders: Mapping[str, tuple[str, ...]], accounted: Mapping[Key, Mapping[str, int]], told: Told,
    record: Record,
) -> None:  # fmt: skip
    """Put a row where it belongs: proved, doubtful, or named by no line."""
    is_named = False
    for name, row in _may_be(orders, record):
        if name in _MAY_CHANGE:
            key = (name, str(next(iter(row.values()))))
            if told.get(key, ("", 0))[0] == checksum(name, row) or key == _COPY_OF:
                found.rows[key] = row
            continue
        key = (name, str(row["id"]))
        if says := accounted.get(key):
            is_named = True
            if digest(row) in says:
                found.rows[key] = row
            else:
                found.doubtful[key] = row
    own = record.values[0] if record.values else None
    if not is_named and _is_id(own) and any(name in _OF_IDS for name, _ in _may_be(orders, record)):
        found.unnamed.add(str(own))


def _may_be(orders: Mapping[str, tuple[str, ...]], record: Record) -> Iterator[tuple[str, Row]]:
    """The tables that a row may be of, by the number of its columns; which one it is of, its checksum tells."""
    for name in (*(table.name for table in tables.APPEND_ONLY if table.name != "ledger"), *_MAY_CHANGE):
        columns = orders[name]
        if len(columns) == len(record.values) and isinstance(record.values[0], str):
            yield name, dict(named(columns, record))


def _is_id(value: object) -> bool:
    """Whether it is a time-ordered id, as nearly all rows have one."""
    return isinstance(value, str) and len(value) == _UUID_SIGNS and value[_UUID_VERSION_AT] == "7"


def _known_rulebook(found: Salvage, key: Key, says: Mapping[str, int], rulebooks: Mapping[str, str]) -> bool:
    """A rulebook that is lost and that the program has as well: the checksum proves that it is the same."""
    if key[0] != "rulebook" or key[1] not in rulebooks:
        return False
    for place in says.values():
        with suppress(ValueError):
            on = date.fromisoformat(str(found.lines[place]["at"])[:10]).isoformat()
            row = {"id": key[1], "adopted_on": on, "text": rulebooks[key[1]]}
            if digest(row) in says:
                found.rows[key] = row
                return True
    return False


def _ends_well(raw: RawFile, found: Salvage, columns: tuple[str, ...]) -> bool:
    """Whether the last line that was read lies on the ledger's last leaf."""
    if raw.pages < raw.whole or not found.lines:
        return False
    roots = [
        record.values[3]
        for record in raw.records()
        if len(record.values) == 5 and record.values[:2] == ("table", "ledger") and isinstance(record.values[3], int)
    ]
    leaves = raw.leaves_under(roots[-1]) if roots else None
    if not leaves:
        return False
    last = [line["id"] for one in raw.records() if one.page == leaves[-1] and (line := _line(columns, one))]
    return max(last, default=0) == max(found.lines)


def facts_of(line: Row) -> dict[str, Any]:
    """What a line tells; nothing where it cannot be read."""
    try:
        return dict(json.loads(line["body"])["facts"])
    except (ValueError, KeyError, TypeError):
        return {}
