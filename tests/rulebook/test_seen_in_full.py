"""A piece is looked over only when a competent person has seen all of it; a part answers for that part alone."""

from datetime import timedelta

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, Reading
from inspector.gear.kind import Grade
from inspector.gear.opinion import NewOpinion, Opinion, Stance
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewUse, Use, Weather
from inspector.gear.verdict import Finding, Verdict
from inspector.rulebook.case import Case
from inspector.rulebook.judge import judge
from inspector.rulebook.wording import explain
from inspector.units import Dimension, read
from tests.rulebook import sound as make
from tests.rulebook.dossiers import BOOK, TODAY, dossiers
from tests.rulebook.test_laws import check_never_milder, verdict_of

STRAP = BOOK.kind("kinetic_strap")
SHACKLE = BOOK.kind("bow_shackle")
RECEIVER = BOOK.kind("hitch_receiver")


def judged(dossier: Dossier) -> Verdict:
    return judge(dossier, BOOK, "test")


def finding(dossier: Dossier, rule: str) -> Finding:
    return next(one for one in judged(dossier).findings if one.rule == rule)


def glance(dossier: Dossier, check: str, key: str = "z-glance") -> Dossier:
    """A competent person answers one check today, and nothing else."""
    last = dossier.inspections[-1]
    facts = replace(last.facts, on=TODAY, kind=InspectionKind.AFTER_EVENT, readings=())
    facts = replace(facts, answers=(Answer(check, Grade.GOOD),), next_within_days=None)
    return replace(dossier, inspections=(*dossier.inspections, Inspection(key, dossier.item.id, facts)))


def seen(kind_days_ago: int) -> Dossier:
    """A sound strap, looked over in full so many days ago."""
    then = make.sound_inspection(STRAP, TODAY - timedelta(days=kind_days_ago))
    return replace(make.sound(STRAP), inspections=(then,))


def test_one_check_answers_no_event_no_doubt_no_exposure_and_no_strike() -> None:
    dossier = make.with_exposure(seen(10), Weather.CHEMICAL, on=TODAY - timedelta(days=5))
    dossier = make.with_strike(make.with_use(dossier, event=Event.OVERLOAD))
    dossier = replace(dossier, opinions=make.with_doubt(dossier).opinions)
    for one in (dossier, glance(dossier, "label_legible")):
        for rule in ("event-answered", "doubt-answered", "heat-or-chemical-answered-fibre", "strike-inspected"):
            assert finding(one, rule).outcome is Outcome.HOLD, rule


def test_one_check_makes_no_other_grade_fresh_and_moves_no_date() -> None:
    dossier = make.with_exposure(seen(95), Weather.SALT, on=TODAY - timedelta(days=100))
    assert judged(dossier).outcome is Outcome.HOLD
    after = judged(glance(dossier, "knots"))
    assert after.outcome is Outcome.HOLD
    assert after.next_inspection_due == judged(dossier).next_inspection_due


def test_a_shorter_time_that_was_asked_for_outlives_a_glance() -> None:
    last = make.sound_inspection(STRAP, TODAY - timedelta(days=10))
    asked = replace(last, facts=replace(last.facts, next_within_days=20))
    dossier = replace(make.sound(STRAP), inspections=(asked,))
    due = TODAY + timedelta(days=10)
    assert judged(dossier).next_inspection_due == due
    assert judged(glance(dossier, "label_legible")).next_inspection_due == due


def test_parts_seen_on_several_days_are_a_whole_look_of_the_first_day() -> None:
    whole = make.sound_inspection(STRAP, TODAY)
    half = len(whole.facts.answers) // 2
    first = replace(whole, id="a", facts=replace(whole.facts, on=TODAY - timedelta(days=4), readings=()))
    first = replace(first, facts=replace(first.facts, answers=first.facts.answers[:half]))
    second = replace(whole, id="b", facts=replace(whole.facts, answers=whole.facts.answers[half:]))
    dossier = replace(make.sound(STRAP), inspections=(first, second))
    assert judged(dossier).outcome is Outcome.FIT
    assert judged(dossier).next_inspection_due == TODAY - timedelta(days=4) + timedelta(days=STRAP.every_days)
    alone = finding(replace(dossier, inspections=(second,)), "inspection-current")
    assert alone.value is None and "No competent person has seen all of it yet" in alone.why_unknown


@given(dossiers(), st.data())
def test_an_inspection_of_a_part_never_frees_what_the_rest_could_show(dossier: Dossier, data: st.DataObject) -> None:
    assume(dossier.inspections and len(dossier.kind.checks) > 1)
    check = data.draw(st.sampled_from(dossier.kind.checks)).key
    oldest = [Case(one, BOOK).looked_over for one in (dossier, glance(dossier, check))]
    assume(bool(oldest[0].missing) == bool(oldest[1].missing))  # a look at the last missing part completes the whole
    assume(oldest[0].at == oldest[1].at)  # as does one at the part that was seen longest ago
    before, after = verdict_of(dossier), verdict_of(glance(dossier, check))
    freed = {one.rule for one in after.findings if one.outcome is Outcome.FIT}
    rests_on_it = {"strength_left"} if check == "abrasion" else set()  # what abrasion takes away is a sum of its own
    held = [one for one in before.findings if one.outcome is not Outcome.FIT and one.observation != check]
    held = [one for one in held if one.quantity not in rests_on_it]
    assert not {one.rule for one in held} & freed
    if after.outcome is not Outcome.RETIRE and before.next_inspection_due:
        assert after.next_inspection_due is None or after.next_inspection_due <= before.next_inspection_due


def test_a_point_never_measured_lets_nothing_pass_and_is_named() -> None:
    sound = make.sound(RECEIVER)
    last = sound.inspections[-1]
    kept = tuple(one for one in last.facts.readings if one.point != "right wall")
    one_wall = replace(sound, inspections=(replace(last, facts=replace(last.facts, readings=kept)),))
    found = finding(one_wall, "pin-hole-grown")
    assert found.outcome is Outcome.HOLD
    said = [one.sentence for one in explain(one_wall, judged(one_wall), BOOK).reasons]
    assert any("Never read at: right wall." in sentence for sentence in said)


def test_a_point_measured_long_ago_makes_the_measure_old() -> None:
    sound = make.sound(RECEIVER)
    old = make.sound_inspection(RECEIVER, TODAY - timedelta(days=800))
    last = sound.inspections[-1]
    kept = tuple(one for one in last.facts.readings if one.point != "right wall")
    fresh = replace(last, facts=replace(last.facts, readings=kept))
    item = replace(sound.item, booked_on=TODAY - timedelta(days=801))
    dossier = replace(sound, item=item, inspections=(replace(old, id="i-0"), fresh))
    assert finding(dossier, "pin-hole-grown").outcome is Outcome.HOLD


@pytest.mark.parametrize("order", [1, -1])
def test_of_two_readings_of_one_point_in_one_inspection_the_worse_counts(order: int) -> None:
    sound = make.sound(SHACKLE)
    last = sound.inspections[-1]
    pins = [Reading("pin_diameter", read(text, Dimension.LENGTH, field="p")) for text in ("20 mm", "22 mm")][::order]
    others = tuple(one for one in last.facts.readings if one.measure != "pin_diameter")
    twice = replace(last, facts=replace(last.facts, readings=(*others, *pins)))
    assert judged(replace(sound, inspections=(twice,))).outcome is Outcome.RETIRE


@pytest.mark.parametrize("grades", [(Grade.BAD, Grade.GOOD), (Grade.GOOD, Grade.BAD)])
def test_of_two_grades_of_one_check_in_one_inspection_the_worse_counts(grades: tuple[Grade, Grade]) -> None:
    sound = make.sound(SHACKLE)
    last = sound.inspections[-1]
    others = tuple(one for one in last.facts.answers if one.check != "cracks")
    twice = replace(last, facts=replace(last.facts, answers=(*others, *(Answer("cracks", one) for one in grades))))
    assert judged(replace(sound, inspections=(twice,))).outcome is Outcome.RETIRE


@pytest.mark.parametrize(("key", "outcome"), [("a-before", Outcome.FIT), ("zz-after", Outcome.HOLD)])
def test_on_one_day_only_what_was_entered_before_the_look_is_answered_by_it(key: str, outcome: Outcome) -> None:
    sound = make.sound(SHACKLE)
    last = sound.inspections[-1]
    looked = replace(last, id="m-look", facts=replace(last.facts, kind=InspectionKind.AFTER_EVENT))
    dropped = Use(key, "item-1", NewUse(TODAY, 0, Event.DROPPED))
    doubt = Opinion(key, "item-1", NewOpinion(TODAY, "m", Stance.DOUBTS, "it fell"))
    dossier = replace(sound, inspections=(looked,))
    assert judged(replace(dossier, uses=(dropped,))).outcome is outcome
    assert judged(replace(dossier, opinions=(doubt,))).outcome is outcome


def looked_over(key: str, kind: InspectionKind, answers: slice = slice(None)) -> Inspection:
    """All of a sound shackle, or some of its checks, seen today in an inspection of that kind."""
    sound = make.sound_inspection(SHACKLE, TODAY)
    return replace(sound, id=key, facts=replace(sound.facts, kind=kind, answers=sound.facts.answers[answers]))


def test_what_was_seen_after_the_event_is_not_undone_by_another_look_of_the_same_day() -> None:
    """Below: the look before the event alone; at: the look after it; above: another one after that; in any order."""
    dropped = Use("d-dropped", "item-1", NewUse(TODAY, 0, Event.DROPPED))
    doubt = Opinion("d-doubt", "item-1", NewOpinion(TODAY, "m", Stance.DOUBTS, "it fell"))
    dossier = replace(make.sound(SHACKLE), inspections=(), uses=(dropped,), opinions=(doubt,))
    periodic, before = looked_over("f", InspectionKind.PERIODIC), looked_over("b", InspectionKind.PERIODIC)
    early, after = looked_over("c", InspectionKind.AFTER_EVENT), looked_over("e", InspectionKind.AFTER_EVENT)
    held = [(before,), (periodic,), (early, periodic), (before, early)]
    for looks in held:
        assert finding(replace(dossier, inspections=looks), "event-answered").outcome is Outcome.HOLD
    for looks in [(after,), (after, periodic), (before, after, periodic), (early, after)]:
        assert judged(replace(dossier, inspections=looks)).outcome is Outcome.FIT
    again = replace(dossier, uses=(dropped, replace(dropped, id="g-dropped-again")), inspections=(after, periodic))
    assert finding(again, "event-answered").outcome is Outcome.HOLD


def test_on_the_day_of_the_event_only_the_parts_seen_for_it_are_answered() -> None:
    dropped = Use("d-dropped", "item-1", NewUse(TODAY, 0, Event.DROPPED))
    dossier = replace(make.sound(SHACKLE), uses=(dropped,))
    half = looked_over("e", InspectionKind.AFTER_EVENT, slice(2))
    rest = looked_over("f", InspectionKind.PERIODIC, slice(2, None))
    rest_for_it = looked_over("g", InspectionKind.AFTER_EVENT, slice(2, None))
    assert finding(replace(dossier, inspections=(half, rest)), "event-answered").outcome is Outcome.HOLD
    assert finding(replace(dossier, inspections=(half, rest_for_it)), "event-answered").outcome is Outcome.FIT


def test_the_worse_verdict_is_never_milder_for_a_glance_after_an_event() -> None:
    dossier = make.with_use(make.sound(STRAP), event=Event.OVERLOAD)
    check_never_milder(judged(glance(dossier, "label_legible")), judged(dossier))
