"""A vehicle's record: its facts, the parts on it with their standing verdicts, and its history."""

from collections.abc import Iterator, Mapping

from msgspec import Struct

from inspector.duties.gear_list import gear_rows
from inspector.duties.keep_vehicles import kept_words, overload_words
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.tell_changes import vehicle_rows
from inspector.gear.fitting import End, Fitted, NewFitting, Side
from inspector.gear.item import Item
from inspector.gear.lists import GearRow, HistoryRow
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.rulebook.rigs.part_words import part_words
from inspector.rulebook.words import place_words

_ENDS = tuple(End(one) for one in ("front", "rear", ""))
_SIDES = tuple(Side(one) for one in ("left", "middle", "right", ""))


class Part(Struct, frozen=True):
    """A part on a vehicle: where it sits, in words too (empty where nobody wrote it down), and its line of the list.

    tells: what it is for a rig: marking, bolts, what may be joined to it, what a winch pulls.
    """

    fitted: Fitted
    place: str
    row: GearRow
    tells: tuple[str, ...] = ()


class VehicleRecord(Struct, frozen=True):
    """All of a vehicle. warning: what must be said of it, empty for nothing; history: newest first."""

    vehicle: Vehicle
    warning: str
    parts: tuple[Part, ...]
    history: tuple[HistoryRow, ...]


class VehicleLine(Struct, frozen=True):
    """A vehicle of the list. overloaded: it weighs more than its GVM; kept_by: incidents whose evidence it is."""

    vehicle: Vehicle
    overloaded: bool
    kept_by: tuple[str, ...]


def fleet(office: Office) -> tuple[VehicleLine, ...]:
    """Every vehicle with what must be said of it."""
    with office.book.reading() as page:
        kept = page.kept_vehicles()
        return tuple(VehicleLine(one, bool(overload_words(one)), kept.get(one.tag, ())) for one in page.vehicles())


def vehicle_record(office: Office, tag: str) -> VehicleRecord:
    """The record of one vehicle; its parts from front to rear and left to right."""
    with office.book.reading() as page:
        vehicle = page.vehicle(tag)
        sits = {item.tag: fitted for item, fitted in page.fitted_items([vehicle.tag])}
        rows = gear_rows(office, page, page.gear_lines(tuple(sits)))
        warnings = (kept_words(page.kept_vehicles(), vehicle.tag), overload_words(vehicle))
        names = {one.id: one.name for one in page.people()}
        history = vehicle_rows(page.vehicle_changes(vehicle), names)
        for item, fittings in page.all_fittings():
            history += _moves(vehicle.tag, item, fittings, names)
    parts = [_told(office, sits[row.tag], row) for row in rows]
    parts.sort(key=lambda one: (*place_order(one.fitted), one.row.tag))
    history.sort(key=lambda one: one.on)
    warning = " ".join(one for one in warnings if one)
    return VehicleRecord(vehicle, warning, tuple(parts), tuple(reversed(history)))


def _told(office: Office, fitted: Fitted, row: GearRow) -> Part:
    tells = part_words(open_item(office, row.tag), office.rules, office.system)
    return Part(fitted, place_words(fitted), row, tells)


def place_order(fitted: Fitted) -> tuple[int, int]:
    """Sorts places from front to rear and left to right; those that nobody wrote down come last."""
    return _ENDS.index(fitted.end), _SIDES.index(fitted.side)


def _moves(
    vehicle: str, item: Item, fittings: tuple[NewFitting, ...], names: Mapping[str, str]
) -> Iterator[HistoryRow]:
    """When the piece came onto the vehicle and when it left it."""
    sat = item.facts.fitted
    if sat and sat.vehicle == vehicle:
        yield HistoryRow(item.booked_on, tr("Part booked"), _part(item, sat), "")
    for one in fittings:
        by = names.get(one.by, one.by)
        if one.to and one.to.vehicle == vehicle:
            yield HistoryRow(one.on, tr("Part fitted"), _with_note(_part(item, one.to), one.note), by)
        elif sat and sat.vehicle == vehicle:
            yield HistoryRow(one.on, tr("Part taken off"), _with_note(_part(item, sat), one.note), by)
        sat = one.to


def _part(item: Item, fitted: Fitted) -> str:
    place = place_words(fitted)
    return f"{item.tag}, {place}" if place else item.tag


def _with_note(said: str, note: str) -> str:
    return f"{said}. {note}" if note else said
