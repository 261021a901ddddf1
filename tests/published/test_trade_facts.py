"""Facts of the trade. Common practice, no source; one reported case, not citable.

A 4 mm shank wall was found at 1.5 to 2 mm after years of salt water. With such a reading the piece is retired that day
and on every later one; with none it is held from the first salt exposure whose reading is overdue. For a pull a
reading is overdue from the first salt on, since an estimate never passes one.
"""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.use import Exposure, NewExposure, Weather
from inspector.gear.verdict import Verdict
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, read
from tests.each import each

BOUGHT = date(2018, 3, 1)
FIRST_SALT = date(2018, 5, 1)
CAP_DAYS = 365


def dossier(rules: Rulebook, kind_key: str, on: date, wall: str = "", read_on: date | None = None) -> Dossier:
    """A tube of 4 mm, bought new, launched in salt, its outside inspected and good every 90 days."""
    kind = rules.kind(kind_key)
    basis = Rating(Basis.TOWED_MASS, read("1500 kg", Dimension.MASS, field="r"), None, "piece")
    sizes = (("outside", "50 mm"), ("wall", "4 mm"), ("pin_hole", "16.2 mm"))
    facts = NewItem(
        "T",
        kind.key,
        basis,
        sizes=tuple(SizeAsNew(key, read(text, Dimension.LENGTH, field=key)) for key, text in sizes),
        provenance=Provenance.NEW,
        in_service_on=BOUGHT,
    )
    item = Item("i", BOUGHT, facts)
    days = [BOUGHT + timedelta(days=days) for days in range(0, (on - BOUGHT).days + 1, 90)]
    seen = [Inspection(f"{day}", "i", looked_at(rules, kind_key, day)) for day in days]
    if wall and read_on and read_on <= on:
        seen.append(Inspection("read", "i", with_wall(looked_at(rules, kind_key, read_on), wall)))
    salt = Exposure("e", "i", NewExposure(FIRST_SALT, Weather.SALT))
    listed = tuple(sorted(seen, key=lambda one: one.on))
    return Dossier(kind, item, on, listed, exposures=(salt,) if on >= FIRST_SALT else ())


def looked_at(rules: Rulebook, kind_key: str, day: date) -> NewInspection:
    kind = rules.kind(kind_key)
    answers = tuple(Answer(check.key, Grade.GOOD) for check in kind.checks)
    hole = kind.measure("pin_hole")
    assert hole is not None
    figure = read("16.2 mm", Dimension.LENGTH, field="h")
    holes = tuple(Reading("pin_hole", figure, point) for point in hole.points)
    return NewInspection(day, InspectionKind.PERIODIC, "p", competent=True, answers=answers, readings=holes)


def with_wall(seen: NewInspection, wall: str) -> NewInspection:
    figure = read(wall, Dimension.LENGTH, field="wall")
    reading = Reading("wall", figure, "bottom", Method.ULTRASONIC_BARE, Surface.DRESSED)
    return replace(seen, readings=(*seen.readings, reading))


def outcome_of(verdict: Verdict, purpose: Purpose) -> Outcome:
    return next(one.outcome for one in verdict.by_purpose if one.purpose is purpose)


@pytest.mark.printed("common practice, no source")
@each("kind", ["ball_mount", "hitch_receiver"])
@each("wall", ["2 mm", "1.5 mm"])
def test_with_such_a_reading_it_is_retired_that_day_and_every_later_one(rules: Rulebook, kind: str, wall: str) -> None:
    read_on = date(2026, 6, 1)
    for on in [read_on + timedelta(days=days) for days in (0, 1, 30, 400, 4000)]:
        assert judge(dossier(rules, kind, on, wall, read_on), rules, "test").outcome is Outcome.RETIRE


def test_with_none_a_receiver_is_held_for_pulling_from_the_first_salt_on(rules: Rulebook) -> None:
    before = judge(dossier(rules, "hitch_receiver", FIRST_SALT - timedelta(days=1)), rules, "test")
    assert "wall-reading-due" not in {one.rule for one in before.findings}, "no reading is asked of a dry tube"
    for days in (0, 1, 100, CAP_DAYS + 1, 3000):
        held = judge(dossier(rules, "hitch_receiver", FIRST_SALT + timedelta(days=days)), rules, "test")
        assert {one.rule for one in held.findings if one.outcome is Outcome.HOLD} >= {"wall-reading-due"}
        assert outcome_of(held, Purpose.KINETIC) is Outcome.HOLD
        assert outcome_of(held, Purpose.STATIC) is Outcome.HOLD
        assert held.outcome is Outcome.HOLD, "no estimate retires"


def test_for_towing_it_is_fit_only_while_the_upper_estimate_leaves_the_required_wall(rules: Rulebook) -> None:
    """0.8 mm to lose at 0.3 mm a year: 2.67 years after the first salt, 974 days."""
    last_good = FIRST_SALT + timedelta(days=973)
    good = judge(dossier(rules, "ball_mount", last_good), rules, "test")
    held = judge(dossier(rules, "ball_mount", last_good + timedelta(days=2)), rules, "test")
    assert (good.outcome, held.outcome) == (Outcome.FIT, Outcome.HOLD)


@each("kind", ["tow_ball", "ball_mount"])
def test_nobody_pulls_from_a_ball_or_a_ball_mount(rules: Rulebook, kind: str) -> None:
    """Never recover from a tow ball or a ball mount: those purposes are barred, whatever the strength."""
    known = rules.kind(kind)
    assert not known.may(Purpose.KINETIC) and not known.may(Purpose.STATIC)
    assert all(bar.why for bar in known.barred)
