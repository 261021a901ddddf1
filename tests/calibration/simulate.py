"""Judges dossiers of the made-up world and counts how often the verdict and the truth part.

Nothing of the judge's own arithmetic is used: dossiers go in through the public door, the truth stays on this side.
"""

from collections import Counter
from datetime import date, timedelta
from random import Random

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade, Kind
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.use import Exposure, NewExposure, Weather
from inspector.gear.verdict import Verdict
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, read
from tests.calibration import world
from tests.calibration.world import Process, Round, Truth

BEGAN = date(2015, 3, 1)
DAYS_PER_PIECE = 4  # judging days of one piece, until it is retired
FRESH_DAYS = 30
GAUGE_UNCERTAINTY = 0.2  # mm, as taken off each reading: some 95 % of readings lie closer than this
PULLS = {Purpose.KINETIC, Purpose.STATIC}
OPEN = {Outcome.FIT, Outcome.DERATE}
PIN, YIELD, PULL = 15.875, 235.0, 50e3  # mm, MPa, N: what bears on the hole of a receiver that recovers
SHAPES = (  # kind, walls as new in mm; a receiver thinner than 5 mm cannot bear the pull even new
    ("hitch_receiver", (5.0, 6.0, 6.35)),
    ("tow_bar", (3.0, 4.0, 5.0, 6.0)),
    ("ball_mount", (3.0, 4.0, 5.0, 6.0)),
)


class Gear(Struct, frozen=True):
    """A piece of the world as the book knows it, and its truth."""

    kind: Kind
    item: Item
    truth: Truth
    booked: int
    rounds: list[Round]
    salt: tuple[int, ...]

    @property
    def required(self) -> float:
        """What must be left, in mm: four fifths, or what bears on the pin; reckoned here, not asked of the judge."""
        share = 0.8 * self.truth.nominal
        if self.kind.key == "tow_bar":
            return share
        rating = self.item.rating.figure
        assert rating is not None
        towed = 1.5 * 9.80665 * rating.si
        pull = max(towed, PULL) if self.kind.key == "hitch_receiver" else towed
        return max(share, pull / (2 * 1.5 * PIN * YIELD))


def gear(rng: Random, process: Process, rules: Rulebook) -> Gear:
    """A piece drawn from the world, with all that was ever written down of it."""
    key, walls = rng.choice(SHAPES)
    kind, nominal = rules.kind(key), rng.choice(walls)
    wall = kind.measure("wall")
    assert wall is not None
    truth, booked = world.truth(rng, process, nominal, wall.points), world.booked_day(rng)
    salt, day = [], booked
    while day < booked + world.WATCHED_DAYS:
        salt.append(day)
        day += rng.randrange(14, 200)
    item = booked_item(rng, kind, nominal, booked)
    return Gear(kind, item, truth, booked, world.rounds(rng, truth, booked), tuple(salt))


def booked_item(rng: Random, kind: Kind, nominal: float, booked: int) -> Item:
    """The piece as it was booked in. A used one comes with the day it was made, or nobody knows."""
    mass = f"{rng.randrange(750, 1 + round(700 * nominal if kind.key == 'ball_mount' else 3000), 50)} kg"
    sizes = {"outside": "60 mm", "wall": f"{nominal} mm", "pin_hole": "16.2 mm"}
    counts = {"bolt_count": "6"}
    new = [SizeAsNew(one, read(text, Dimension.LENGTH, field=one)) for one, text in sizes.items() if has(kind, one)]
    new += [SizeAsNew(one, read(text, Dimension.COUNT, field=one)) for one, text in counts.items() if has(kind, one)]
    known = booked == 0 or rng.random() < 0.5
    facts = NewItem(
        tag="T",
        kind=kind.key,
        rating=Rating(Basis.TOWED_MASS, read(mass, Dimension.MASS, field="rating"), None, "piece"),
        sizes=tuple(new),
        provenance=Provenance.SECOND_HAND if booked else Provenance.NEW,
        made_on=BEGAN if known else None,
    )
    return Item("i", on(booked), facts)


def has(kind: Kind, size: str) -> bool:
    """Whether this size is asked of the kind."""
    return any(one.key == size for one in kind.sizes)


def on(day: int) -> date:
    """A day of the piece's life in the calendar."""
    return BEGAN + timedelta(days=day)


def dossier(made: Gear, day: int, looked: int) -> Dossier:
    """All that was known on a day; a competent person looked at all but the walls on the day `looked`."""
    seen = [inspection(made, one) for one in made.rounds if one.day <= day]
    seen.append(inspection(made, Round(looked, True, ())))
    salt = [Exposure("e", "i", NewExposure(on(one), Weather.SALT)) for one in made.salt if one <= day]
    listed = tuple(sorted(seen, key=lambda one: one.on))
    return Dossier(made.kind, made.item, on(day), listed, exposures=tuple(salt))


def inspection(made: Gear, one: Round) -> Inspection:
    """A round as it stands in the book; whatever is no wall is sound."""
    walls = tuple(
        Reading(
            "wall",
            read(taken.typed, Dimension.LENGTH, field="wall"),
            taken.point,
            Method.ULTRASONIC_BARE,
            {True: Surface.ROUGH, False: Surface.DRESSED, None: Surface.NOT_STATED}[taken.rough],
            block_checked=taken.tried,
        )
        for taken in one.reads
    )
    facts = NewInspection(
        on(one.day), InspectionKind.PERIODIC, "p", one.competent, answers(made.kind), (*walls, *others(made))
    )
    return Inspection(str(one.day), "i", facts)


def answers(kind: Kind) -> tuple[Answer, ...]:
    """Every check good: only walls are in question here."""
    return tuple(Answer(check.key, Grade.GOOD) for check in kind.checks)


def others(made: Gear) -> tuple[Reading, ...]:
    """Holes and bolts as new."""
    found = []
    for measure in made.kind.measures:
        size = made.item.size(measure.compare_with)
        if measure.key != "wall" and size is not None:
            found += [Reading(measure.key, size, point) for point in measure.points or ("",)]
    return tuple(found)


def watch(rng: Random, made: Gear, rules: Rulebook, count: Counter[str]) -> None:
    """Judge the piece on some days of its life, in order, until it is retired; count what came out."""
    for day in judging_days(rng, made):
        looked = max(day - rng.randrange(0, 150), made.booked)
        verdict = judge(dossier(made, day, looked), rules, "calibration")
        tally(made, day, verdict, count)
        if verdict.outcome is Outcome.RETIRE:
            return


def judging_days(rng: Random, made: Gear) -> list[int]:
    """Half of the days anywhere, half soon after walls were read."""
    first, last = made.booked, made.booked + world.WATCHED_DAYS
    anywhere = [rng.randrange(first, last) for _ in range(DAYS_PER_PIECE // 2)]
    soon = [rng.choice(made.rounds).day + rng.randrange(0, FRESH_DAYS) for _ in range(DAYS_PER_PIECE // 2)]
    return sorted(anywhere + soon)


def tally(made: Gear, day: int, verdict: Verdict, count: Counter[str]) -> None:
    """Count one verdict beside the truth of its day."""
    spare = made.truth.thinnest(day) - made.required
    anywhere = made.truth.thinnest_anywhere(day) - made.required
    outcomes = {one.purpose: one.outcome for one in verdict.by_purpose}
    pulls = [outcome for purpose, outcome in outcomes.items() if purpose in PULLS]
    uses = {"pull": all(one in OPEN for one in pulls)} if pulls else {}
    uses["tow"] = outcomes[Purpose.TOWING] in OPEN
    count["judged"] += 1
    for use, fit in uses.items():
        told = [use]
        told += [f"{use} below"] if spare < 0 else []
        told += [f"{use} below anywhere"] if anywhere < 0 else []
        if is_fresh(made, day) and spare >= GAUGE_UNCERTAINTY:
            told.append(f"{use} clear by one")
            told += [f"{use} clear by two"] if spare >= 2 * GAUGE_UNCERTAINTY else []
        for name in told:
            count[name] += 1
            count[f"{name}, fit"] += fit
            count[f"{name}, retired"] += verdict.outcome is Outcome.RETIRE
    if uses.get("pull") is False and spare >= 2 * GAUGE_UNCERTAINTY and is_fresh(made, day):
        for finding in verdict.findings:
            if finding.outcome not in OPEN:
                count[f"held clear pull by {finding.rule}"] += 1


def is_fresh(made: Gear, day: int) -> bool:
    """Whether the last readings are new and as they should be, at every point."""
    done = [one for one in made.rounds if one.day <= day]
    return bool(done) and day - done[-1].day <= FRESH_DAYS and done[-1].is_sound(len(made.truth.points))


def with_rounds(made: Gear, rounds: list[Round]) -> Gear:
    """The same piece, read otherwise."""
    return replace(made, rounds=rounds)


def by_a_member(one: Round) -> Round:
    """The same readings from somebody who may pass nothing."""
    return replace(one, competent=False)


def called(made: Gear, day: int, outcome: Outcome, rules: Rulebook) -> Verdict:
    """A verdict that calls the piece this for every purpose, whatever the judge would say: it tries the counting."""
    verdict = judge(dossier(made, day, day), rules, "calibration")
    by_purpose = tuple(replace(one, outcome=outcome) for one in verdict.by_purpose)
    return replace(verdict, outcome=outcome, by_purpose=by_purpose)


def judged(process: Process, seed: int, judgements: int, rules: Rulebook) -> Counter[str]:
    """At least so many judgements of one process."""
    rng, count = Random(f"{process.name} {seed}"), Counter[str]()
    while count["judged"] < judgements:
        watch(rng, gear(rng, process, rules), rules, count)
    return count
