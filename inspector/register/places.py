"""Where pieces are now, by the last entries of whereabouts, loans, fittings and destructions; each is somewhere."""

from collections.abc import Sequence

from sqlalchemy import Connection

from inspector.gear.custody import Hands, NewCustody
from inspector.gear.fitting import NewFitting
from inspector.gear.item import Item
from inspector.gear.whereabouts import NewWhereabouts, Where, Whereabouts
from inspector.register import tables, year_tables
from inspector.register.events import Row, Rows, events
from inspector.register.rows import Shape, from_body

_TELLING = (tables.destruction, year_tables.whereabouts, tables.custody, tables.fitting)
_Last = dict[str, Row]


def whereabouts(connection: Connection, items: Sequence[Item]) -> dict[str, Whereabouts]:
    """Where each piece is, by its id.

    What was made unusable or has left the club stays so, whatever a vehicle's list or an open loan says.
    """
    keys = [item.id for item in items]
    gone, moved, lent, fitted = (_last(rows) for rows in events(connection, _TELLING, keys))
    return {item.id: _where(item, gone, moved, lent, fitted) for item in items}


def _where(item: Item, gone: _Last, moved: _Last, lent: _Last, fitted: _Last) -> Whereabouts:
    if item.id in gone:
        return Whereabouts(Where.DESTROYED, since=gone[item.id].day)
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
    return from_body(rows[item.id].body, shape) if item.id in rows else None


def _last(rows: Rows) -> _Last:
    """The last entry of each piece."""
    return {item_id: entries[-1] for item_id, entries in rows.items()}
