"""Where pieces are now, by the last entries of whereabouts, loans, fittings and destructions; each is somewhere."""

from collections.abc import Iterator, Sequence
from datetime import date
from functools import cache
from typing import Any

from sqlalchemy import Connection, Select, Table, bindparam, select

from inspector.gear.custody import Hands, NewCustody
from inspector.gear.fitting import NewFitting
from inspector.gear.item import Item
from inspector.gear.whereabouts import NewWhereabouts, Where, Whereabouts
from inspector.register import tables, year_tables
from inspector.register.rows import Shape, from_body

_AT_ONCE = 500
_Last = dict[str, tuple[date, str]]


def whereabouts(connection: Connection, items: Sequence[Item]) -> dict[str, Whereabouts]:
    """Where each piece is, by its id.

    What was made unusable or has left the club stays so, whatever a vehicle's list or an open loan says.
    """
    keys = [item.id for item in items]
    gone = _last(connection, tables.destruction, keys)
    moved = _last(connection, year_tables.whereabouts, keys)
    lent = _last(connection, tables.custody, keys)
    fitted = _last(connection, tables.fitting, keys)
    return {item.id: _where(item, gone, moved, lent, fitted) for item in items}


def _where(item: Item, gone: _Last, moved: _Last, lent: _Last, fitted: _Last) -> Whereabouts:
    if item.id in gone:
        return Whereabouts(Where.DESTROYED, since=gone[item.id][0])
    entry = _read(moved, item, NewWhereabouts)
    if entry and entry.where.is_gone:
        at = entry.to if entry.where in {Where.SOLD, Where.GIVEN_BACK} else entry.place
        return Whereabouts(entry.where, at, entry.on)
    custody = _read(lent, item, NewCustody)
    if custody and custody.what is Hands.LENT:
        return Whereabouts(Where.ON_LOAN, custody.holder, custody.on)
    fitting = _read(fitted, item, NewFitting)
    on_vehicle = fitting.to if fitting else item.facts.fitted
    if on_vehicle:
        return Whereabouts(Where.ON_VEHICLE, on_vehicle.vehicle, fitting.on if fitting else None)
    if entry:
        return Whereabouts(Where.IN_STORE, entry.place, entry.on)
    return Whereabouts(Where.IN_STORE, "" if fitting else item.facts.place)


def _read(rows: _Last, item: Item, shape: type[Shape]) -> Shape | None:
    return from_body(rows[item.id][1], shape) if item.id in rows else None


def _last(connection: Connection, table: Table, keys: Sequence[str]) -> _Last:
    """Day and body of the last entry of each piece."""
    found: _Last = {}
    for some in shares(keys):
        for item_id, day, body in connection.execute(_rows_of(table), {"keys": some}):
            found[str(item_id)] = (day, str(body))
    return found


@cache
def _rows_of(table: Table) -> Select[Any]:
    """The question for the entries of some pieces; made once, since making it takes longer than asking it."""
    rows = select(table.c.item_id, table.c.day, table.c.body)
    return rows.where(table.c.item_id.in_(bindparam("keys", expanding=True))).order_by(table.c.day, table.c.id)


def shares(keys: Sequence[str]) -> Iterator[Sequence[str]]:
    """The keys in shares that every database takes in one question."""
    return (keys[at : at + _AT_ONCE] for at in range(0, len(keys), _AT_ONCE))
