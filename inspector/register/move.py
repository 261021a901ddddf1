"""Carry a register over to another database, and close the one it came from.

Row by row, in one transaction on either side: the one that is left keeps all it has, gets one last line that says where
the register went, and takes no deed any more; the other goes on from that line. The side that is left is kept first, so
that at no moment both can be written on. Where the other side fails after that, the same move done again completes it.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection, Engine, String, Table, func, insert, select
from sqlalchemy.exc import DatabaseError

from inspector.gear.seats import Role
from inspector.language import tr, tr_n
from inspector.refused import Refused
from inspector.register import ledger, turns
from inspector.register.address import named, not_opened
from inspector.register.book import Book
from inspector.register.canonical import digest
from inspector.register.columns import METADATA
from inspector.register.engines import open_engine
from inspector.register.ledger import ARRIVED, MOVED, Deed
from inspector.register.seat_of_login import may_not, role_in
from inspector.register.streams import few_at_a_time
from inspector.register.where_it_lies import is_address

_SUMS = 1 << 256
_Told = Callable[[int, int], None]


class Moved(Struct, frozen=True):
    """What was carried over. head: the line that closed the one and that the other goes on from."""

    to: str
    row_count: int
    line_count: int
    head: str
    again: bool


def move(source: Book, target: str | Path, by: str, at: datetime, told: _Told) -> Moved:
    """Carry everything over. The target must be empty. told: how many rows of how many; what it raises ends the work.

    Nothing is written on either side unless all rows came over the same and `verify` proves both.
    """
    to = named(target) if isinstance(target, str) else target.parent.name
    with _opened(target) as engine, source.own_connection(write=True) as old:
        again = _is_under_way(old, to)
        _check_sound(old)
        with engine.connect().execution_options(write=True) as new:
            _check_empty(new, to)
            left = Deed(MOVED, by, at, {"to": to}, source.origin)
            head = ledger.head(old)[1] if again else ledger.add_line(old, left, [])
            count = carry(old, new, told)
            arrived = {"rows": count, "head": head}
            own = ledger.add_line(new, Deed(ARRIVED, by, at, arrived, source.origin), [])
            proved = ledger.verify(new)
            if proved.faults:
                raise _unlike(proved.faults[0].where)
            turns.keep(old, head)
            turns.keep(new, own)
    return Moved(to, count, proved.line_count, head, again)


@contextmanager
def _opened(target: str | Path) -> Iterator[Engine]:
    """The target with empty tables; of a file that was made for it nothing is left where the move fails."""
    if isinstance(target, Path):
        _check_free(target)
        target.parent.mkdir(parents=True, exist_ok=True)
    try:
        engine = open_engine(target)
    except DatabaseError as error:
        raise not_opened(target, error) from error
    if (role := role_in(engine)) is not Role.OFFICER:
        engine.dispose()
        raise may_not(role)
    try:
        yield engine
    except BaseException:
        engine.dispose()
        if isinstance(target, Path):
            _remove(target)
        raise
    engine.dispose()


def _beside(target: Path) -> list[Path]:
    return [target.with_name(target.name + end) for end in ("", "-wal", "-shm", "-journal")]


def _check_free(target: Path) -> None:
    if any(one.exists() for one in _beside(target)):
        why = tr("{folder} holds a register already, or a part of one, and it stays as it is.", folder=target.parent)
        raise Refused(tr("folder"), why, tr("Name an empty folder."))


def _remove(target: Path) -> None:
    for one in _beside(target):
        with suppress(OSError):
            one.unlink(missing_ok=True)


def _is_under_way(old: Connection, to: str) -> bool:
    """Whether it was closed for a move to just this place, which may not have been completed."""
    gone_to = ledger.moved_to(old)
    if gone_to and gone_to != to:
        raise ledger.moved_away(gone_to)
    return bool(gone_to)


def _check_sound(old: Connection) -> None:
    found = ledger.verify(old)
    if found.faults:
        why = tr_n("`verify` finds one fault in it.", "`verify` finds {count} faults in it.", len(found.faults))
        raise Refused(tr("register"), why, tr("A register that is not whole is not moved. See `inspector verify`."))


def _check_empty(new: Connection, to: str) -> None:
    if any(new.execute(select(table).limit(1)).first() for table in METADATA.sorted_tables):
        why = tr("{to} holds a register already, and it stays as it is.", to=to)
        raise Refused(tr("register"), why, tr("Name an empty database or folder."))


def carry(old: Connection, new: Connection, told: _Told = lambda _done, _total: None) -> int:
    """Every row of every table into empty ones, held against what it was; how many."""
    count, sums = _copied(old, new, told)
    _check_same(new, sums)
    return count


def _copied(old: Connection, new: Connection, told: _Told) -> tuple[int, dict[str, int]]:
    """Every row of every table; how many, and the sum of their digests by table."""
    tables = METADATA.sorted_tables
    total = sum(int(old.execute(select(func.count()).select_from(table)).scalar_one()) for table in tables)
    done, sums = 0, dict.fromkeys((table.name for table in tables), 0)
    for table in tables:
        for rows in _read(old, table):
            if new.dialect.name != "sqlite":
                _check_fits(table, rows)
            new.execute(insert(table), rows)
            sums[table.name] = (sums[table.name] + sum(map(_as_number, rows))) % _SUMS
            done += len(rows)
            told(done, total)
    return done, sums


def _read(connection: Connection, table: Table) -> Iterator[list[dict[str, Any]]]:
    """The rows a few at a time; a server is asked for no more than these."""
    for rows in connection.execute(few_at_a_time(table)).mappings().partitions():
        yield [dict(row) for row in rows]


def _as_number(row: dict[str, Any]) -> int:
    return int(digest(row), 16)


def _check_same(new: Connection, sums: dict[str, int]) -> None:
    """Every column of every row must have come over the same, whatever the order they lie in."""
    for table in METADATA.sorted_tables:
        found = 0
        for rows in _read(new, table):
            found = (found + sum(map(_as_number, rows))) % _SUMS
        if found != sums[table.name]:
            raise _unlike(table.name)


def _unlike(where: str) -> Refused:
    why = tr("What came over is not the same ({where}).", where=where)
    return Refused(tr("register"), why, tr("Nothing was moved. Tell whoever looks after the program."))


def _check_fits(table: Table, rows: list[dict[str, Any]]) -> None:
    """A file takes text of any length and the sign of number 0; a server does not."""
    for column in table.c:
        longest = column.type.length if isinstance(column.type, String) else None
        for row in rows:
            text = row[column.name]
            if isinstance(text, str) and ("\x00" in text or (longest and len(text) > longest)):
                key = next(iter(row.values()))
                why = tr("A server cannot hold the text “{column}” of row {key} in {table}.", column=column.name,
                         key=key, table=table.name)  # fmt: skip
                what = tr("It is too long or holds a sign of number 0. Nothing was moved; change it and do it again.")
                raise Refused(tr("register"), why, what)


def place_kept(target: str | Path) -> str:
    """How the new place is written down on this machine."""
    return named(target) if isinstance(target, str) and is_address(target) else str(Path(target).parent.resolve())
