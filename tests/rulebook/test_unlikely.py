"""What reads larger or much shorter than new is held until it is read again, and nothing is reckoned from it."""

from datetime import timedelta

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, InspectionKind
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Needed, Verdict
from inspector.rulebook.judge import judge
from inspector.rulebook.release import releases
from tests.each import each
from tests.rulebook import sound as make
from tests.rulebook.dossiers import BOOK, KINDS, TODAY, dossiers

TUBES = [kind for kind in KINDS if kind.family == "tube"]
# kind, measure, as new, a reading that may be, the rule and what cannot be; metres
CASES = [
    ("bow_shackle", "bow_diameter", 0.019, 0.0208, "body-larger-than-new", 0.024),
    ("dee_shackle", "pin_diameter", 0.022, 0.0241, "pin-larger-than-new", 0.030),
    ("hitch_pin", "pin_diameter", 0.016, 0.0175, "pin-larger-than-new", 0.020),
    ("hitch_receiver", "wall", 0.0063, 0.007, "wall-larger-than-new", 0.0079),
    ("tow_bar", "wall", 0.005, 0.0056, "wall-larger-than-new", 0.007),
    ("tow_ball", "ball_diameter", 0.050, 0.0503, "ball-larger-than-new", 0.054),
    ("winch_hook", "saddle", 0.020, 0.0219, "saddle-larger-than-new", 0.025),
    ("wire_winch_rope", "diameter", 0.010, 0.0105, "rope-larger-than-new", 0.012),
    ("kinetic_strap", "length", 9.0, 8.6, "shorter-than-new", 4.0),
    ("tree_strap", "length", 3.0, 2.86, "shorter-than-new", 1.0),
    ("kinetic_rope", "length", 9.0, 8.6, "shorter-than-new", 2.0),
]


def verdict_of(dossier: Dossier) -> Verdict:
    return judge(dossier, BOOK, "test")


def held_by(verdict: Verdict) -> set[str]:
    return {one.rule for one in verdict.findings if one.outcome is not Outcome.FIT}


def reading(kind_key: str, measure: str, new: float, si: float) -> Dossier:
    """A sound piece, booked in at that size, that reads so."""
    kind = BOOK.kinds[kind_key]
    asked = kind.measure(measure)
    assert asked
    return make.with_reading(make.with_size(make.sound(kind), asked.compare_with, new), measure, si)


@each(("kind", "measure", "new", "may_be", "rule", "cannot_be"), CASES, ids=[f"{one[0]}: {one[4]}" for one in CASES])
def test_what_cannot_be_is_held_until_it_is_read_again(
    kind: str, measure: str, new: float, may_be: float, rule: str, cannot_be: float
) -> None:
    assert rule not in held_by(verdict_of(reading(kind, measure, new, may_be)))
    odd = reading(kind, measure, new, cannot_be)
    verdict = verdict_of(odd)
    assert rule in held_by(verdict) and verdict.outcome is Outcome.HOLD
    (release,) = [one for one in releases(verdict, odd, BOOK) if one.rule == rule]
    assert (release.needed, release.observation) == (Needed.READING, measure)
    again = make.with_earlier(reading(kind, measure, new, new), replace(odd.inspections[0], id="i-0"))
    earlier = replace(again.inspections[0], facts=replace(again.inspections[0].facts, on=TODAY - timedelta(days=1)))
    assert rule not in held_by(verdict_of(replace(again, inspections=(earlier, *again.inspections[1:]))))


def test_a_member_s_reading_holds_too_and_a_competent_one_since_releases_it() -> None:
    kind = BOOK.kinds["bow_shackle"]
    whole = make.sound(kind)
    new = whole.item.size("bow_diameter")
    assert new
    odd = make.with_reading(whole, "bow_diameter", new.si * 1.3).inspections[0]
    members = replace(odd, id="i-2", facts=replace(odd.facts, competent=False, kind=InspectionKind.BEFORE_USE))
    seen = replace(whole, inspections=(*whole.inspections, members))
    assert "body-larger-than-new" in held_by(verdict_of(seen))
    anew = replace(whole.inspections[0], id="i-3")
    assert verdict_of(replace(seen, inspections=(*seen.inspections, anew))).outcome is Outcome.FIT


def test_what_is_short_or_thick_of_a_piece_without_its_size_as_new_is_asked_by_others() -> None:
    whole = make.sound(BOOK.kinds["tow_ball"])
    bare = make.with_facts(whole, sizes=tuple(one for one in whole.item.facts.sizes if one.key != "ball_diameter"))
    verdict = verdict_of(bare)
    assert verdict.outcome is Outcome.HOLD and "ball-larger-than-new" not in {one.rule for one in verdict.findings}


def of_years_ago(dossier: Dossier, si: float) -> Inspection:
    """The same inspection three years ago, the wall read so at every place."""
    first = make.with_reading(dossier, "wall", si).inspections[0]
    return replace(first, id="i-0", facts=replace(first.facts, on=TODAY - timedelta(days=1095)))


def test_nothing_is_reckoned_from_a_wall_that_cannot_be() -> None:
    """7.9 mm of 6.3 gives neither a life, nor a rate to the reading after it."""
    kind = BOOK.kinds["ball_mount"]
    odd = verdict_of(reading("ball_mount", "wall", 0.0063, 0.0079))
    assert odd.wall and odd.wall.estimated and odd.wall.history == () and odd.wall.points == ()
    now = make.with_facts(reading("ball_mount", "wall", 0.0063, 0.0062), made_on=TODAY - timedelta(days=1500))
    alone = verdict_of(now).wall
    after = verdict_of(replace(now, inspections=(of_years_ago(now, 0.0079), *now.inspections))).wall
    assert kind.measure("wall") and alone and after
    assert (after.rate_m_per_year, after.life_years, after.history) == (
        alone.rate_m_per_year, alone.life_years, alone.history
    )  # fmt: skip


@given(dossiers(TUBES), st.floats(1.126, 1.5))
def test_a_wall_that_cannot_be_is_never_milder_than_none_read(dossier: Dossier, ratio: float) -> None:
    """It holds besides, and what is reckoned is what would be without it."""
    new = dossier.item.size("wall")
    assume(new and dossier.inspections and dossier.inspections[-1].facts.readings)
    assert new
    last = dossier.inspections[-1]
    walls = [one for one in last.facts.readings if one.measure == "wall"]
    assume(walls and len(last.facts.readings) > len(walls))
    others = tuple(one for one in last.facts.readings if one.measure != "wall")
    thick = tuple(replace(one, figure=replace(one.figure, si=new.si * ratio)) for one in walls)
    with_it, without = (
        verdict_of(replace(dossier, inspections=(*dossier.inspections[:-1], inspection)))
        for inspection in (_reads(last, (*others, *thick)), _reads(last, others))
    )
    assert with_it.outcome.severity >= max(without.outcome.severity, Outcome.HOLD.severity)
    assert with_it.wall and without.wall
    assert (with_it.wall.life_years, with_it.capacity.now_n) == (without.wall.life_years, without.capacity.now_n)


def _reads(inspection: Inspection, readings: tuple[object, ...]) -> Inspection:
    return replace(inspection, facts=replace(inspection.facts, readings=readings))


@pytest.mark.parametrize("at", [1.125, 1.1250000001])
def test_the_limit_itself_may_be_in_any_unit(at: float) -> None:
    verdict = verdict_of(reading("ball_mount", "wall", 0.0064, 0.0064 * at))
    assert "wall-larger-than-new" not in held_by(verdict) and verdict.wall and verdict.wall.points
