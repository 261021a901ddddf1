"""The pieces, parts and vehicles of a trip's sheet: what goes with its questions, what stays and why."""

from collections.abc import Iterator

from inspector.duties.before_use import asked_checks, asked_measures, goes, why_not
from inspector.duties.office import Office
from inspector.duties.plan_rides import ride_words
from inspector.duties.plausible import reading_name
from inspector.duties.tell_readiness import sits_words
from inspector.duties.trip_readiness import Ready, VehicleReady
from inspector.duties.use_limits import rated_now
from inspector.gear.judged import Judged
from inspector.gear.kit_check import AskedMeasure
from inspector.gear.papers import GoingPiece, SheetScope, StayingPiece, TickLine, VehicleLine
from inspector.language import tr
from inspector.rulebook.rigs.strap_band import band_words, strap_band, strap_words
from inspector.rulebook.words import marked_words
from inspector.units import Dimension

_LENGTHS = ("mm", "cm", "m", "in", "ft")


def vehicles_within(ready: Ready, scope: SheetScope) -> tuple[VehicleReady, ...]:
    """The vehicles that a sheet is of: all, one, or none."""
    return tuple(one for one in ready.vehicles if not scope.is_rest and scope.vehicle in {"", one.vehicle.tag})


def vehicle_line(office: Office, one: VehicleReady, ready: Ready) -> VehicleLine:
    """A vehicle with the straps that suit it, and what must be said of it."""
    vehicle = one.vehicle
    straps = [
        (piece.dossier.item.tag, piece.verdict.capacity.now_n)
        for piece in ready.going
        if _is_line(piece) and piece.verdict.capacity.now_n is not None
    ]
    band = band_words(strap_band(office.rules, vehicle.gvm.si), office.system)
    bare = "" if one.parts else tr("No part is written down for it, so nothing on it is known to be sound.")
    warnings = (one.warning, bare, strap_words(office.rules, vehicle.gvm.si, straps))
    warning = " ".join(said for said in warnings if said)
    return VehicleLine(vehicle.tag, vehicle.name, vehicle.gvm.as_typed, band, warning)


def _is_line(one: Judged) -> bool:
    return one.dossier.kind.key in {"kinetic_strap", "kinetic_rope"}


def going(office: Office, ready: Ready, scope: SheetScope) -> Iterator[GoingPiece]:
    """What is checked, in the order of the walk: the parts by vehicle, front to rear, then what is in the bag."""
    for vehicle in vehicles_within(ready, scope):
        for part in vehicle.parts:
            if goes(part.judged) and _tag(part.judged) not in ready.barred:
                yield _going(office, part.judged, sits_words(part), vehicle.vehicle.tag)
    for one in _loose(ready, ready.going, scope):
        yield _going(office, one, _where(ready, one), "")


def staying(ready: Ready, scope: SheetScope) -> Iterator[StayingPiece]:
    """What may not be used: first of the kit, then of the parts on the vehicles."""
    absent = {one.tag: one.why for one in ready.away if one.lent}
    for one in _loose(ready, (*ready.gone, *ready.staying), scope):
        why = absent[_tag(one)] if one in ready.gone else why_not(one)
        yield _staying(one, why, ready.lies.get(_tag(one), ""), "")  # where it would ride is beside the point
    for vehicle in vehicles_within(ready, scope):
        for part in vehicle.parts:
            kept = ready.barred.get(_tag(part.judged), "")
            if kept or not goes(part.judged):
                yield _staying(part.judged, kept or why_not(part.judged), sits_words(part), vehicle.vehicle.tag)


def _loose(ready: Ready, pieces: tuple[Judged, ...], scope: SheetScope) -> Iterator[Judged]:
    """Those of the kit that belong onto this sheet and sit on no vehicle of the trip."""
    sits = ready.sits
    for one in pieces:
        rides = ready.trip.rides_on(_tag(one))
        here = rides == scope.vehicle if scope.vehicle or scope.is_rest else True
        if here and _tag(one) not in sits:
            yield one


def _where(ready: Ready, one: Judged) -> str:
    """Where it rides or lies; empty where nobody knows, so that it is written in."""
    tag = _tag(one)
    known = ready.trip.rides_on(tag) or ready.lies.get(tag, "")
    return ride_words(ready.trip, tag, "", ready.lies.get(tag, "")) if known else ""


def _tag(one: Judged) -> str:
    return one.dossier.item.tag


def _going(office: Office, one: Judged, where: str, part_of: str) -> GoingPiece:
    kind, item = one.dossier.kind, one.dossier.item
    ticks = [TickLine(check.asks, key=check.key) for check in asked_checks(kind)]
    ticks += [line for asked in asked_measures(office, one) for line in _measured(asked)]
    return GoingPiece(
        tag=item.tag,
        kind_name=kind.name,
        marked=marked_words(item),
        now=rated_now(office, one),
        use_line=one.explanation.use_line,
        outcome=one.verdict.outcome,
        ticks=tuple(ticks),
        where=where,
        part_of=part_of,
    )


def _measured(asked: AskedMeasure) -> Iterator[TickLine]:
    """A line for each named place. A length may be written in any unit; the one of the limit stands first."""
    measure = asked.measure
    units = _LENGTHS if measure.dimension is Dimension.LENGTH else ()
    first = next((unit for unit in asked.limit.split()[::-1] if unit in units), "")
    ordered = (first, *(unit for unit in units if unit != first)) if first else ()
    for point in measure.points or ("",):
        text = reading_name(measure, point)
        yield TickLine(text, asked.limit, f"{measure.key}/{point}" if point else measure.key, ordered)


def _staying(one: Judged, why: str, where: str, part_of: str) -> StayingPiece:
    return StayingPiece(_tag(one), one.dossier.kind.name, one.verdict.outcome, why, where, part_of)
