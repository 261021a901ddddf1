"""Tell what was changed of a vehicle or a trip, newest first, in words: who, when, what, why."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from inspector.duties.look_up import trip
from inspector.duties.office import Office
from inspector.gear.changes import NewVehicleChange
from inspector.gear.lists import HistoryRow
from inspector.gear.trip import Trip, Vehicle, ground_words
from inspector.language import show_day, tr
from inspector.units import Figure

_Told = tuple[str, str]  # the name of a fact and how it reads


def vehicle_rows(changes: Sequence[NewVehicleChange], names: Mapping[str, str]) -> list[HistoryRow]:
    """A vehicle's own history, oldest first."""
    first = changes[0]
    listed = "; ".join(f"{name} {text}" for name, text in _vehicle_facts(first.vehicle) if text)
    rows = [HistoryRow(first.on, tr("Entered"), listed, names.get(first.by, first.by))]
    for before, after in pairwise(changes):
        said = "; ".join(_differences(_vehicle_facts(before.vehicle), _vehicle_facts(after.vehicle)))
        rows.append(HistoryRow(after.on, tr("Changed"), _with_why(said, after.why), names.get(after.by, after.by)))
    return rows


def trip_history(office: Office, ref: str) -> tuple[HistoryRow, ...]:
    """How a trip was planned and what was changed since, newest first."""
    found = trip(office, ref)
    with office.book.reading() as page:
        names = {one.id: one.name for one in page.people()}
        changes = page.trip_changes(found)
    first = changes[0]
    told = [f"{name} {text}" for name, text in _trip_facts(first.trip) if text]
    told += [f"{name} {', '.join(tags)}" for name, tags in _trip_lists(first.trip, names) if tags]
    rows = [HistoryRow(first.on, tr("Planned"), "; ".join(told), names.get(first.by, first.by))]
    for before, after in pairwise(changes):
        said = "; ".join(_trip_differences(before.trip, after.trip, names))
        rows.append(HistoryRow(after.on, tr("Changed"), _with_why(said, after.why), names.get(after.by, after.by)))
    return tuple(reversed(rows))


def _vehicle_facts(vehicle: Vehicle) -> list[_Told]:
    return [
        (tr("name"), vehicle.name),
        (tr("owner"), vehicle.owner),
        (tr("GVM"), vehicle.gvm.as_typed),
        (tr("mass"), _typed(vehicle.mass)),
        (tr("front spacing"), _typed(vehicle.front_spacing)),
        (tr("rear spacing"), _typed(vehicle.rear_spacing)),
        (tr("note"), vehicle.note),
    ]


def _typed(figure: Figure | None) -> str:
    return figure.as_typed if figure else ""


def _trip_facts(planned: Trip) -> list[_Told]:
    return [
        (tr("name"), planned.name),
        (tr("place"), planned.place),
        (tr("ground"), ground_words(planned.ground)),
        (tr("first day"), show_day(planned.first_on)),
        (tr("last day"), show_day(planned.last_on)),
        (tr("leader"), planned.leader),
        (tr("note"), planned.note),
    ]


def _trip_lists(planned: Trip, names: Mapping[str, str]) -> list[tuple[str, tuple[str, ...]]]:
    people = tuple(names.get(key, key) for key in planned.people)
    rides = tuple(tr("{tag} on {vehicle}", tag=one.tag, vehicle=one.vehicle) for one in planned.rides)
    listed = [(tr("vehicles"), planned.vehicles), (tr("kit"), planned.kit), (tr("people"), people)]
    return [*listed, (tr("rides"), rides)]


def _trip_differences(before: Trip, after: Trip, names: Mapping[str, str]) -> Iterator[str]:
    yield from _differences(_trip_facts(before), _trip_facts(after))
    for (name, old), (_, new) in zip(_trip_lists(before, names), _trip_lists(after, names), strict=True):
        if added := [one for one in new if one not in old]:
            yield tr("{what} with {added}", what=name, added=", ".join(added))
        if gone := [one for one in old if one not in new]:
            yield tr("{what} without {gone}", what=name, gone=", ".join(gone))
        if old != new and set(old) == set(new):
            yield tr("{what} in another order", what=name)


def _differences(before: list[_Told], after: list[_Told]) -> Iterator[str]:
    for (name, old), (_, new) in zip(before, after, strict=True):
        if old != new:
            yield tr("{what} {new}, before {old}", what=name, new=new or tr("not known"), old=old or tr("not known"))


def _with_why(said: str, why: str) -> str:
    return f"{said}. {why}" if why else said
