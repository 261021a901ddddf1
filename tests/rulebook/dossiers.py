"""Dossiers of every kind, drawn at random, for the laws of judgement."""

from datetime import date, timedelta

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn
from msgspec.structs import replace

from inspector.gear.custody import Custody, Hands, NewCustody, Untold
from inspector.gear.dossier import Dossier
from inspector.gear.evidence import NewQuarantine, NewRelease, Quarantine, Release
from inspector.gear.fitting import End, Fitted, Fitting, NewFitting
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
from inspector.gear.kind import Basis, Grade, Kind, Measure, Size
from inspector.gear.opinion import Answered, NewOpinion, Opinion, Stance
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import NewPieceCall, PieceCall, Step, Sure
from inspector.gear.repair import NewRepair, Repair, Work
from inspector.gear.strike import NewStrike, Strike
from inspector.gear.use import Event, Exposure, NewExposure, NewUse, Use, Weather
from inspector.gear.whereabouts import NewWhereabouts, Where, WhereaboutsEntry
from inspector.rulebook.judge import judge
from inspector.rulebook.load import packaged
from inspector.rulebook.opinions import facts_digest, may_be_answered
from inspector.units import Dimension, Figure, read
from tests.rulebook.profiles import count_drawn

BOOK = packaged()
KINDS = sorted(BOOK.kinds.values(), key=lambda kind: kind.key)
TODAY = date(2026, 11, 25)
LONGEST_AGO = 1500

days_ago = st.integers(0, LONGEST_AGO).map(lambda days: TODAY - timedelta(days=days))
mostly_good = st.sampled_from([Grade.GOOD] * 12 + [Grade.SLIGHT, Grade.BAD, Grade.NOT_SEEN])


def figure(value: float, dimension: Dimension) -> Figure:
    """A figure as somebody would have typed it."""
    if dimension is Dimension.LENGTH:
        return read(f"{value * 1000:.2f} mm", dimension, field="size")
    return Figure(round(value), f"{round(value)}", dimension)


OPTIONAL = {"corner_radius": 0.008, "end_distance": 0.03, "weld_throat": 0.003, "chain_hole": 0.05}
OPTIONAL |= {"plate_width": 0.06, "block_side": 0.05}


def new_size(size: Size) -> SizeAsNew:
    """A plausible size as new."""
    lengths = {"length": 9.0, "wall": 0.005, "outside": 0.06, "pin_hole": 0.0162, "lever": 0.06, "pin_diameter": 0.022}
    lengths |= {"ball_diameter": 0.05, "coupler": 0.05} | OPTIONAL
    counts = {"outer_wires": 114}
    value = lengths.get(size.key, 0.02) if size.dimension is Dimension.LENGTH else counts.get(size.key, 4)
    return SizeAsNew(size.key, figure(value, size.dimension))


@st.composite
def items(draw: DrawFn, kind: Kind) -> Item:
    """A piece of the kind with a past."""
    basis = draw(st.sampled_from(kind.rated_by))
    dimension = Dimension.MASS if basis is Basis.TOWED_MASS else Dimension.FORCE
    typed = f"{draw(st.integers(500, 12000))} kg"
    rated = basis is not Basis.UNRATED and draw(st.integers(0, 9)) > 0
    factor, stated = draw(st.sampled_from(FACTORS)), draw(st.sampled_from(STATED))
    rating = Rating(basis, read(typed, dimension, field="r") if rated else None, factor, stated)
    booked = draw(days_ago)
    visit = draw(st.integers(0, LONGEST_AGO + 30)) if draw(st.integers(0, 9)) == 0 else None
    facts = NewItem(
        tag="X-1",
        kind=kind.key,
        rating=rating,
        maker_mark=draw(st.sampled_from(["QVO", "QVO", ""])),
        serial=draw(st.sampled_from(["QV 1", "QV 1", ""])),
        material=draw(st.sampled_from(MATERIALS)),
        sizes=tuple(draw(drawn_size(size)) for size in kind.sizes if size.required or draw(st.booleans())),
        provenance=draw(st.sampled_from(list(Provenance))),
        made_on=draw(st.none() | st.just(booked - timedelta(days=draw(st.integers(0, 4000))))),
        visiting_for="T-1" if visit is not None else "",
        visiting_until=booked + timedelta(days=visit) if visit is not None else None,
    )
    return Item("item-1", booked, facts)


STATED = ["piece", "piece", "piece", "certificate", "memory"]
FACTORS = [5.0, 5.0, 5.0, 6.0, 4.0, None]
MATERIALS = ["", "", "polyester webbing", "steel wire, fibre core", "steel wire, steel core"]


@st.composite
def drawn_size(draw: DrawFn, size: Size) -> SizeAsNew:
    """A plausible size as new, and now and then an odd one."""
    plausible = new_size(size)
    if size.dimension is not Dimension.LENGTH or draw(st.integers(0, 7)):
        return plausible
    return SizeAsNew(size.key, figure(plausible.figure.si * draw(st.floats(0.7, 1.2)), size.dimension))


@st.composite
def readings(draw: DrawFn, kind: Kind, item: Item) -> tuple[Reading, ...]:
    """Readings of an inspection, near the size as new; half of the time every point is read."""
    whole = draw(st.booleans())
    return tuple(
        draw(reading_at(measure, point, item))
        for measure in kind.measures
        for point in measure.points or ("",)
        if whole or draw(st.integers(0, 4)) > 0
    )


@st.composite
def reading_at(draw: DrawFn, measure: Measure, point: str, item: Item) -> Reading:
    """One reading."""
    if measure.key.startswith("broken_wires"):
        return Reading(measure.key, figure(draw(st.integers(0, 6)), measure.dimension), point, Method.COUNTED)
    new = item.size(measure.compare_with)
    around = draw(st.floats(0.5, 1.15)) if draw(st.integers(0, 3)) == 0 else draw(st.floats(0.97, 1.01))
    value = figure((new.si if new else 0.02) * around, measure.dimension)
    surface = draw(st.sampled_from([Surface.DRESSED, Surface.DRESSED, Surface.ROUGH]))
    tried = draw(st.sampled_from([True, True, True, False, None]))
    return Reading(measure.key, value, point, draw(st.sampled_from(METHODS)), surface, block_checked=tried)


METHODS = [Method.ULTRASONIC_BARE, Method.CALLIPER, Method.ULTRASONIC_PAINT]


@st.composite
def inspections(draw: DrawFn, kind: Kind, item: Item, number: int) -> Inspection:
    """An inspection between booking and today."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    answers = [Answer(check.key, draw(mostly_good)) for check in kind.checks]
    kept = tuple(
        replace(one, grade=Grade.BAD) if one.grade is Grade.SLIGHT and not check.slight else one
        for one, check in zip(answers, kind.checks, strict=True)
    )
    what = draw(st.sampled_from([InspectionKind.PERIODIC, InspectionKind.PERIODIC, *InspectionKind]))
    competent = draw(st.integers(0, 4)) > 0
    facts = NewInspection(on, what, draw(st.sampled_from("pq")), competent, kept, draw(readings(kind, item)))
    facts = replace(facts, next_within_days=draw(st.sampled_from([None, None, None, 20, 400])))
    if draw(st.integers(0, 9)) == 0:
        facts = replace(facts, first_values=(FirstValue(kind.checks[0].key, "", "bad", Outcome.HOLD),))
    return Inspection(f"i-{number}", item.id, facts)


@st.composite
def exposures(draw: DrawFn, item: Item) -> Exposure:
    """An exposure between booking and today."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    days, weather = draw(st.integers(1, 60)), draw(st.sampled_from(list(Weather)))
    heat = draw(st.none() | st.integers(40, 120)) if weather is Weather.HEAT else None
    hottest = read(f"{heat} °C", Dimension.TEMPERATURE, field="e") if heat is not None else None
    return Exposure("e", item.id, NewExposure(on, weather, days, hottest=hottest))


@st.composite
def uses(draw: DrawFn, item: Item) -> Use:
    """A use between booking and today."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    event = draw(st.sampled_from([Event.NONE] * 6 + list(Event)))
    return Use("u", item.id, NewUse(on, draw(st.integers(0, 8)), event))


@st.composite
def doubts(draw: DrawFn, item: Item) -> Opinion:
    """Somebody's doubt."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    return Opinion("d", item.id, NewOpinion(on, "m", Stance.DOUBTS, "it looks odd"))


@st.composite
def untold_returns(draw: DrawFn, item: Item) -> Custody:
    """A return from a loan of which nobody told the weather."""
    lent = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    back = lent + timedelta(days=draw(st.integers(0, (TODAY - lent).days)))
    return Custody("r", item.id, NewCustody(back, Hands.RETURNED, "m", untold=(Untold.EXPOSURES,), since=lent))


@st.composite
def fittings(draw: DrawFn, item: Item) -> Fitting:
    """It was put on a vehicle, or taken off it."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    to = Fitted("V-1", End.FRONT) if draw(st.booleans()) else None
    return Fitting(draw(st.sampled_from(("a", "z"))), item.id, NewFitting(on, to))


@st.composite
def strikes(draw: DrawFn, item: Item) -> Strike:
    """An entry that was struck."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    return Strike("s", item.id, NewStrike(on, "p", "q", "gone", "another piece"))


Entry = WhereaboutsEntry | Repair | ItemChange | Quarantine | Release | PieceCall
YEAR = ("finds", "repairs", "changes", "quarantines", "evidence_releases", "calls")


@st.composite
def year_entries(draw: DrawFn, item: Item, name: str) -> Entry:
    """An entry of the officer's year, by the name of its place in the dossier."""
    on = item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - item.booked_on).days)))
    key = draw(st.sampled_from(("a", "z")))
    ref = draw(st.sampled_from(("I-1", "I-2")))
    made: dict[str, Entry] = {
        "finds": WhereaboutsEntry(key, item.id, NewWhereabouts(on, Where.IN_STORE, found=True)),
        "repairs": Repair(key, item.id, NewRepair(on, draw(st.sampled_from(Work)), "a smith", "p")),
        "changes": ItemChange(key, item.id, NewItemChange(on, draw(st.sampled_from(Altered)), item.facts, "p", "why")),
        "quarantines": Quarantine(key, item.id, NewQuarantine(on, ref, "p", draw(st.booleans()))),
        "calls": PieceCall(key, item.id, NewPieceCall(on, ref, draw(st.sampled_from(Step)), Sure.TO_ASK, "why", "p")),
        "evidence_releases": Release(key, item.id, NewRelease(on, ref, "p", "q", "measured", draw(st.booleans()))),
    }
    return made[name]


@st.composite
def swaps(draw: DrawFn, dossier: Dossier, key: str) -> Repair:
    """A part put in place of another, so that what was measured of it before speaks of another part."""
    on = dossier.item.booked_on + timedelta(days=draw(st.integers(0, (TODAY - dossier.item.booked_on).days)))
    replaces = tuple(measure.key for measure in dossier.kind.measures if measure.key != "wall" and draw(st.booleans()))
    work = draw(st.sampled_from((Work.PIN_AND_BOW, Work.BOLTS)))
    return Repair(key, dossier.item.id, NewRepair(on, work, "a smith", "p", replaces=replaces))


def with_entry(dossier: Dossier, name: str, entry: Entry) -> Dossier:
    """The dossier with one more entry at this place."""
    return replace(dossier, **{name: (*getattr(dossier, name), entry)})


@st.composite
def dossiers(draw: DrawFn, kinds: list[Kind] = KINDS) -> Dossier:
    """A dossier of any kind, judged today; now and then with an opinion that answers what holds it."""
    dossier = draw(facts_of(kinds))
    for name in YEAR:
        if draw(st.integers(0, 29)) == 0:
            dossier = with_entry(dossier, name, draw(year_entries(dossier.item, name)))
    if draw(st.integers(0, 9)) == 0:
        dossier = with_entry(dossier, "repairs", draw(swaps(dossier, draw(st.sampled_from(("a", "z"))))))
    if draw(st.integers(0, 3)) == 0:
        dossier = draw(answered(dossier))
    count_drawn(dossier)
    return dossier


@st.composite
def answered(draw: DrawFn, dossier: Dossier) -> Dossier:
    """The dossier with an opinion on some of what it is held for, where there is anything to answer."""
    findings = [one for one in judge(dossier, BOOK, "test").findings if may_be_answered(one, BOOK)]
    said = tuple(Answered(one.rule, one.value) for one in findings if one.value and draw(st.booleans()))
    facts = NewOpinion(TODAY, "q", Stance.ANSWERS, "seen", said, facts_digest(dossier))
    return replace(dossier, opinions=(*dossier.opinions, Opinion("o", dossier.item.id, facts)))


@st.composite
def facts_of(draw: DrawFn, kinds: list[Kind]) -> Dossier:
    """What is known of a piece."""
    kind = draw(st.sampled_from(kinds))
    item = draw(items(kind))
    seen = [draw(inspections(kind, item, number)) for number in range(draw(st.integers(0, 4)))]
    return Dossier(
        kind=kind,
        item=item,
        on=TODAY,
        inspections=tuple(sorted(seen, key=lambda one: one.on)),
        uses=tuple(sorted(draw(st.lists(uses(item), max_size=3)), key=lambda one: one.facts.on)),
        exposures=tuple(sorted(draw(st.lists(exposures(item), max_size=3)), key=lambda one: one.facts.on)),
        opinions=(draw(doubts(item)),) if draw(st.integers(0, 9)) == 0 else (),
        strikes=(draw(strikes(item)),) if draw(st.integers(0, 19)) == 0 else (),
        untold=(draw(untold_returns(item)),) if draw(st.integers(0, 9)) == 0 else (),
        fittings=(draw(fittings(item)),) if draw(st.integers(0, 9)) == 0 else (),
    )
