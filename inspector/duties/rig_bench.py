"""The parts that a rig can be built of by hand: what the trip takes, what sits on its two vehicles, the loose ends."""

from collections.abc import Iterable, Iterator

from msgspec import Struct

from inspector.drawings.rig_words import part_name
from inspector.duties.judging import judged
from inspector.duties.office import Office
from inspector.duties.trip_readiness import PartReady, readiness
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.rig import GROUND, LooseEnd
from inspector.language import tr
from inspector.rulebook.words import place_words
from inspector.units import Dimension, show

_IN_THE_GROUND = (LooseEnd.TREE, LooseEnd.GROUND_ANCHOR)
_ON_A_VEHICLE = (LooseEnd.TOWING_EYE, LooseEnd.TIE_DOWN, LooseEnd.CHAIN_PLATE)


class BenchPart(Struct, frozen=True):
    """One part. name: its kind in words; outcome: for the day, None of an end that no register holds.

    bears: what it stands, in words; where: in the kit, or on which vehicle and where on it.
    """

    tag: str
    name: str
    outcome: Outcome | None
    bears: str
    where: str


def rig_bench(office: Office, ref: str, vehicles: tuple[str, ...]) -> tuple[BenchPart, ...]:
    """The parts to build of, the kit first. ref: a trip, or empty: then only what sits on the vehicles.

    vehicles: the tags of who pulls and who is stuck. Judged for the trip's last day, without a trip for today.
    """
    wanted = tuple(dict.fromkeys(tag for tag in vehicles if tag))
    found = _of_trip(office, ref, wanted) if ref else _on_vehicles(office, wanted)
    return (*found, *_loose(wanted))


def _of_trip(office: Office, ref: str, vehicles: tuple[str, ...]) -> tuple[BenchPart, ...]:
    ready = readiness(office, ref)
    why = {one.tag: one.why for one in ready.away}
    kit = [
        _part(office, one, why.get(one.dossier.item.tag, tr("in the kit")))
        for one in (*ready.going, *ready.gone, *ready.staying)
    ]
    sits = [one for car in ready.vehicles if car.vehicle.tag in vehicles for one in car.parts]
    known = {one.tag for one in kit}
    return (*kit, *(one for one in _fitted(office, sits) if one.tag not in known))


def _on_vehicles(office: Office, vehicles: tuple[str, ...]) -> tuple[BenchPart, ...]:
    with office.book.reading() as page:
        known = {one.tag for one in page.vehicles()}
        places = {item.id: place for item, place in page.fitted_items([tag for tag in vehicles if tag in known])}
        items = [item for item, _ in page.fitted_items([tag for tag in vehicles if tag in known])]
        dossiers = page.dossiers([(item, office.kind(item.facts.kind)) for item in items], office.today)
    sits = [PartReady(places[one.item.id], place_words(places[one.item.id]), judged(office, one)) for one in dossiers]
    return tuple(_fitted(office, sits))


def _fitted(office: Office, parts: Iterable[PartReady]) -> Iterator[BenchPart]:
    for one in parts:
        place = tr("on {vehicle}, {place}", vehicle=one.fitted.vehicle, place=one.place)
        yield _part(office, one.judged, place if one.place else tr("on {vehicle}", vehicle=one.fitted.vehicle))


def _part(office: Office, one: Judged, where: str) -> BenchPart:
    strength_n = one.verdict.capacity.now_n
    stands = tr("its strength is not known")
    if strength_n is not None:
        stands = tr("stands {force}", force=show(strength_n, Dimension.FORCE, office.system))
    return BenchPart(one.dossier.item.tag, one.dossier.kind.name, one.verdict.outcome, stands, where)


def _loose(vehicles: tuple[str, ...]) -> Iterator[BenchPart]:
    """Ends that no register holds: those that a rig must never hang on are there to be tried and seen refused."""
    tags = [f"{one.value}@{GROUND}" for one in _IN_THE_GROUND]
    tags += [f"{one.value}@{tag}" for tag in vehicles for one in _ON_A_VEHICLE]
    for tag in tags:
        name = part_name(tag)
        yield BenchPart(tag, name[:1].upper() + name[1:], None, tr("no strength is on record"), tr("no tag"))
