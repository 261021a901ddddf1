"""The read side of vehicles, fitted parts and trips: what stands is what was written last."""

import json
from collections.abc import Iterator, Mapping
from datetime import date, datetime

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection, Table, select

from inspector.gear.changes import NewTripChange, NewVehicleChange
from inspector.gear.fitting import End, Fitted, Fitting, NewFitting, Side
from inspector.gear.item import Item
from inspector.gear.trip import Trip, Vehicle
from inspector.register import tables
from inspector.register.current import select_items, tags_now
from inspector.register.rows import from_body


class _Booked(Struct, frozen=True):
    """Those parts of a booking that say where the piece sits; reading no more keeps a long list quick."""

    fitted_to: str = ""
    fitted_end: End = End.UNKNOWN
    fitted_side: Side = Side.UNKNOWN


class Entered(Struct, frozen=True):
    """When a vehicle or a trip was first written down, and by whom."""

    on: date
    by: str


def vehicles(connection: Connection) -> tuple[Vehicle, ...]:
    """Every vehicle by tag, with its standing facts."""
    now = {
        key: from_body(body, NewVehicleChange).vehicle
        for key, body in _changes(connection, tables.vehicle_change, "vehicle_id")
    }
    rows = connection.execute(select(tables.vehicle.c.id, tables.vehicle.c.body).order_by(tables.vehicle.c.tag))
    return tuple(now.get(str(key)) or from_body(str(body), Vehicle) for key, body in rows)


def vehicle_changes(connection: Connection, vehicle_id: str) -> tuple[NewVehicleChange, ...]:
    """A vehicle's life, oldest first; the first entry is how it came into the register."""
    table = tables.vehicle
    first = from_body(
        str(connection.execute(select(table.c.body).where(table.c.id == vehicle_id)).scalar_one()), Vehicle
    )
    entered = _entered(connection, "add vehicle", table, vehicle_id)
    later = _changes(connection, tables.vehicle_change, "vehicle_id", vehicle_id)
    return (
        NewVehicleChange(entered.on, first, entered.by, ""),
        *(from_body(body, NewVehicleChange) for _, body in later),
    )


def trips(connection: Connection) -> tuple[Trip, ...]:
    """Every trip as it is planned now, by its first day; its kit by the tags of today."""
    now = {
        key: from_body(body, NewTripChange).trip for key, body in _changes(connection, tables.trip_change, "trip_id")
    }
    rows = connection.execute(select(tables.trip.c.id, tables.trip.c.body).order_by(tables.trip.c.id))
    found = [now.get(str(key)) or from_body(str(body), Trip) for key, body in rows]
    tags = tags_now(connection)
    return tuple(sorted((_called_now(one, tags) for one in found), key=lambda one: one.first_on))


def _called_now(trip: Trip, tags: Mapping[str, str]) -> Trip:
    kit = tuple(tags.get(tag, tag) for tag in trip.kit)
    return replace(trip, kit=kit, rides=tuple(replace(one, tag=tags.get(one.tag, one.tag)) for one in trip.rides))


def trip_changes(connection: Connection, trip_id: str) -> tuple[NewTripChange, ...]:
    """A trip's plans, oldest first; the first entry is how it was planned."""
    table = tables.trip
    first = from_body(str(connection.execute(select(table.c.body).where(table.c.id == trip_id)).scalar_one()), Trip)
    entered = _entered(connection, "plan trip", table, trip_id)
    later = _changes(connection, tables.trip_change, "trip_id", trip_id)
    plans = (NewTripChange(entered.on, first, entered.by), *(from_body(body, NewTripChange) for _, body in later))
    tags = tags_now(connection)
    return tuple(replace(one, trip=_called_now(one.trip, tags)) for one in plans)


def _changes(connection: Connection, table: Table, column: str, owner: str = "") -> Iterator[tuple[str, str]]:
    """Owner and body of each change in order, so that the last one of an owner stands."""
    found = select(table.c[column], table.c.body).order_by(table.c.day, table.c.id)
    rows = connection.execute(found.where(table.c[column] == owner) if owner else found)
    return ((str(key), str(body)) for key, body in rows)


def _entered(connection: Connection, deed: str, table: Table, key: str) -> Entered:
    """The ledger line that first wrote a row."""
    line = tables.ledger
    found = select(line.c.at, line.c.by, line.c.body).where(line.c.deed == deed, line.c.body.contains(key))
    for at, by, body in connection.execute(found.order_by(line.c.id)):
        if any(one[:2] == [table.name, key] for one in json.loads(body)["rows"]):
            return Entered(datetime.fromisoformat(at).date(), str(by))
    raise LookupError(f"no line of the ledger wrote {table.name} {key}")


def fittings(connection: Connection) -> dict[str, Fitted]:
    """Where each fitted part sits now, by the piece's id; loose pieces are left out."""
    booked = connection.execute(select(tables.item.c.id, tables.item.c.body))
    found = {str(key): _booked_on(str(body)) for key, body in booked}
    found |= {key: one.facts.to for key, one in last_fittings(connection).items()}
    return {key: to for key, to in found.items() if to}


def last_fittings(connection: Connection) -> dict[str, Fitting]:
    """What was fitted or taken off last, by the piece's id."""
    table = tables.fitting
    rows = connection.execute(select(table.c.id, table.c.item_id, table.c.body).order_by(table.c.day, table.c.id))
    last = {str(item_id): (str(key), str(body)) for key, item_id, body in rows}
    return {item_id: Fitting(key, item_id, from_body(body, NewFitting)) for item_id, (key, body) in last.items()}


def _booked_on(body: str) -> Fitted | None:
    facts = from_body(body, _Booked)
    return Fitted(facts.fitted_to, facts.fitted_end, facts.fitted_side) if facts.fitted_to else None


def fittings_of(connection: Connection, item: Item) -> tuple[NewFitting, ...]:
    """What was fitted and taken off of one piece after its booking, oldest first."""
    return tuple(from_body(body, NewFitting) for _, body in _changes(connection, tables.fitting, "item_id", item.id))


def all_fittings(connection: Connection) -> Iterator[tuple[Item, tuple[NewFitting, ...]]]:
    """Every piece that was ever on a vehicle, with what was fitted and taken off after its booking."""
    moved: dict[str, list[NewFitting]] = {}
    for key, body in _changes(connection, tables.fitting, "item_id"):
        moved.setdefault(key, []).append(from_body(body, NewFitting))
    for item in select_items(connection):
        if item.facts.fitted_to or item.id in moved:
            yield item, tuple(moved.get(item.id, ()))
