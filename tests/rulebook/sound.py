"""A sound piece of each kind, and the ways in which one thing about it can be changed."""

from datetime import date, timedelta
from typing import Any

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.evidence import NewQuarantine, NewRelease, Quarantine, Release
from inspector.gear.fitting import End, Fitted, Fitting, NewFitting, Side
from inspector.gear.inspection import (
    Answer,
    FirstValue,
    Inspection,
    InspectionKind,
    Method,
    NewInspection,
    Reading,
    Surface,
)
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.item_change import Altered, ItemChange, NewItemChange
from inspector.gear.kind import Basis, Grade, Kind, Measure
from inspector.gear.opinion import NewOpinion, Opinion, Stance
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import NewPieceCall, PieceCall, Step, Sure
from inspector.gear.repair import NewRepair, Repair, Work
from inspector.gear.strike import NewStrike, Strike
from inspector.gear.use import Event, Exposure, NewExposure, NewUse, Use, Weather
from inspector.gear.whereabouts import NewWhereabouts, Where, WhereaboutsEntry
from inspector.units import Dimension, read
from tests.rulebook.dossiers import TODAY, figure, new_size

SIZES = {  # a wall so thick that no strength sum sets the limit; pins of 22 mm and a block that go together with it
    key: SizeAsNew(key, figure(si, Dimension.LENGTH))
    for key, si in {
        "wall": 0.008, "pin_hole": 0.0222, "block_side": 0.043, "hole_diameter": 0.024, "eye_hole": 0.024
    }.items()
}  # fmt: skip
BOOKED = TODAY - timedelta(days=200)  # before the first birthday, so that age has taken nothing


def sound(kind: Kind, on: date = TODAY) -> Dossier:
    """A piece of the kind of which everything is known and good: new, certified, rated, measured as new today."""
    return Dossier(kind=kind, item=sound_item(kind), on=on, inspections=(sound_inspection(kind),))


def sound_item(kind: Kind) -> Item:
    """The piece as it was booked in."""
    facts = NewItem(
        tag="X-1",
        kind=kind.key,
        rating=sound_rating(kind),
        maker_mark="QVO",
        serial="QV 1-07",
        sizes=tuple(SIZES.get(size.key) or new_size(size) for size in kind.sizes),
        provenance=Provenance.NEW_CERTIFIED,
        in_service_on=BOOKED,
    )
    return Item("item-1", BOOKED, facts)


def sound_rating(kind: Kind, wanted: Basis | None = None, factor: float | None = 5.0) -> Rating:
    """A rating on the piece itself, of the basis that is wanted or the first that is a rating."""
    rated = [basis for basis in kind.rated_by if basis is not Basis.UNRATED]
    basis = wanted or (rated[0] if rated else Basis.UNRATED)
    if basis is Basis.UNRATED:
        return Rating(basis, None, None, "none")
    dimension = Dimension.MASS if basis is Basis.TOWED_MASS else Dimension.FORCE
    return Rating(basis, read("2,000 kg", dimension, field="rating"), factor, "piece")


def sound_inspection(kind: Kind, on: date = TODAY) -> Inspection:
    """All checks good and all measures as new, by a competent person."""
    item = sound_item(kind)
    facts = NewInspection(
        on=on,
        kind=InspectionKind.PERIODIC,
        by="p",
        competent=True,
        answers=tuple(Answer(check.key, Grade.GOOD) for check in kind.checks),
        readings=tuple(
            sound_reading(measure, point, item) for measure in kind.measures for point in measure.points or ("",)
        ),
    )
    return Inspection("i-1", item.id, facts)


def sound_reading(measure: Measure, point: str, item: Item) -> Reading:
    """The size as new on a bare, smooth face with a gauge that was tried that day; a count of faults is 0."""
    new = item.size(measure.compare_with)
    method = {Dimension.COUNT: Method.COUNTED}.get(measure.dimension, Method.CALLIPER)
    return Reading(
        measure=measure.key,
        figure=figure(new.si if new else 0.0, measure.dimension),
        point=point,
        method=Method.ULTRASONIC_BARE if measure.key == "wall" else method,
        surface=Surface.DRESSED,
        gauge="gauge A",
        block_checked=True,
    )


def with_facts(dossier: Dossier, **facts: Any) -> Dossier:
    """The piece booked in otherwise."""
    return replace(dossier, item=replace(dossier.item, facts=replace(dossier.item.facts, **facts)))


def with_size(dossier: Dossier, key: str, si: float) -> Dossier:
    """Another size as new."""
    sizes = [one for one in dossier.item.facts.sizes if one.key != key]
    wanted = next(size for size in dossier.kind.sizes if size.key == key)
    return with_facts(dossier, sizes=(*sizes, SizeAsNew(key, figure(si, wanted.dimension))))


def with_grade(dossier: Dossier, check: str, grade: str) -> Dossier:
    """Another grade at one check of the latest inspection."""
    last = dossier.inspections[-1]
    answers = tuple(replace(one, grade=Grade(grade)) if one.check == check else one for one in last.facts.answers)
    return _latest(dossier, replace(last, facts=replace(last.facts, answers=answers)))


def with_reading(dossier: Dossier, measure: str, si: float, **more: Any) -> Dossier:
    """Another value at every place of one measure of the latest inspection. more: e.g. surface."""
    last = dossier.inspections[-1]
    readings = tuple(
        replace(one, figure=replace(one.figure, si=si, as_typed=f"{si:.6g}"), **more) if one.measure == measure else one
        for one in last.facts.readings
    )
    return _latest(dossier, replace(last, facts=replace(last.facts, readings=readings)))


def without_reading(dossier: Dossier, measure: str) -> Dossier:
    """The latest inspection without that measure."""
    last = dossier.inspections[-1]
    readings = tuple(one for one in last.facts.readings if one.measure != measure)
    return _latest(dossier, replace(last, facts=replace(last.facts, readings=readings)))


def with_earlier(dossier: Dossier, inspection: Inspection) -> Dossier:
    """An inspection before the others."""
    return replace(dossier, inspections=(replace(inspection, id="i-0"), *dossier.inspections))


def with_use(dossier: Dossier, pulls: int = 0, event: Event = Event.NONE) -> Dossier:
    """Pulls or an event today, after the inspection."""
    return replace(dossier, uses=(*dossier.uses, Use("u", dossier.item.id, NewUse(TODAY, pulls, event))))


def with_doubt(dossier: Dossier) -> Dossier:
    """Somebody doubts it."""
    said = NewOpinion(TODAY, "m", Stance.DOUBTS, "it fell")
    return replace(dossier, opinions=(Opinion("o", dossier.item.id, said),))


def with_strike(dossier: Dossier) -> Dossier:
    """An entry about it was struck."""
    struck = NewStrike(TODAY, "p", "q", "another", "the tag of another piece")
    return replace(dossier, strikes=(Strike("s", dossier.item.id, struck),))


def with_fitting(dossier: Dossier) -> Dossier:
    """It was put on another vehicle today, after its inspection."""
    moved = NewFitting(TODAY, Fitted("V-1", End.REAR, Side.MIDDLE))
    return replace(dossier, fittings=(*dossier.fittings, Fitting("j", dossier.item.id, moved)))


def with_find(dossier: Dossier) -> Dossier:
    """It was missing and is here again since today."""
    found = NewWhereabouts(TODAY, Where.IN_STORE, "shelf", found=True)
    return replace(dossier, finds=(*dossier.finds, WhereaboutsEntry("j", dossier.item.id, found)))


def with_visit(dossier: Dossier) -> Dossier:
    """It came along for one trip, which ended yesterday."""
    return with_facts(dossier, visiting_for="T-1", visiting_until=TODAY - timedelta(days=1))


def with_repair(dossier: Dossier) -> Dossier:
    """Work was done on it today, after its inspection."""
    return replace(
        dossier, repairs=(*dossier.repairs, Repair("j", dossier.item.id, NewRepair(TODAY, Work.OTHER, "a smith", "p")))
    )


def with_new_label(dossier: Dossier) -> Dossier:
    """Its marking was written down anew today."""
    anew = NewItemChange(TODAY, Altered.LABEL_NEW, dossier.item.facts, "p", "the plate was cleaned")
    return replace(dossier, changes=(*dossier.changes, ItemChange("j", dossier.item.id, anew)))


def with_quarantine(dossier: Dossier) -> Dossier:
    """It is evidence of an incident."""
    kept = Quarantine("j", dossier.item.id, NewQuarantine(TODAY, "I-1", "p"))
    return replace(dossier, quarantines=(*dossier.quarantines, kept))


def with_release(dossier: Dossier) -> Dossier:
    """It was let go from an incident's evidence today."""
    free = Release("k", dossier.item.id, NewRelease(TODAY, "I-1", "p", "q", "measured and photographed"))
    return replace(with_quarantine(dossier), evidence_releases=(*dossier.evidence_releases, free))


def with_break(dossier: Dossier) -> Dossier:
    """It broke in an incident, was let go, and whoever looked at it since found it good."""
    day = dossier.inspections[-1].on - timedelta(days=1)
    kept = Quarantine("j", dossier.item.id, NewQuarantine(day, "I-1", "p", broke=True))
    free = Release("k", dossier.item.id, NewRelease(day, "I-1", "p", "q", "measured and photographed"))
    return replace(dossier, quarantines=(kept,), evidence_releases=(free,))


def with_call(dossier: Dossier, step: Step = Step.CALLED) -> Dossier:
    """It was called in today, or what the recall asks for was done today."""
    called = PieceCall("j", dossier.item.id, NewPieceCall(TODAY, "N-1", step, Sure.CERTAIN, "its serial", "p"))
    return replace(dossier, calls=(*dossier.calls, called))


def with_first_value(dossier: Dossier) -> Dossier:
    """A grade of the latest inspection was another one first."""
    latest = dossier.inspections[-1]
    first = FirstValue(latest.facts.answers[0].check, "", "bad", Outcome.HOLD)
    return _latest(dossier, replace(latest, facts=replace(latest.facts, first_values=(first,))))


def with_exposure(dossier: Dossier, weather: Weather, on: date = TODAY, days: int = 1, heat: str = "") -> Dossier:
    """An exposure. heat: its greatest temperature."""
    hottest = read(heat, Dimension.TEMPERATURE, field="heat") if heat else None
    added = Exposure("e", dossier.item.id, NewExposure(on, weather, days, hottest=hottest))
    return replace(dossier, exposures=(*dossier.exposures, added))


def older(dossier: Dossier, years: float) -> Dossier:
    """The same piece, made so long ago."""
    return with_facts(dossier, made_on=TODAY - timedelta(days=round(years * 365.25) + 1))


def _latest(dossier: Dossier, inspection: Inspection) -> Dossier:
    return replace(dossier, inspections=(*dossier.inspections[:-1], inspection))
