"""The laws of judgement, held for every kind and rule: worse is never better, silence is not consent."""

import math
from datetime import date, timedelta

from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.evidence import Release
from inspector.gear.fitting import End, Fitted, Fitting, NewFitting
from inspector.gear.inspection import Inspection, InspectionKind, Reading
from inspector.gear.item_change import Altered, ItemChange
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import NewPieceCall, PieceCall, Step, Sure
from inspector.gear.use import Exposure, NewExposure, Weather
from inspector.gear.verdict import Known, Status, Verdict
from inspector.rulebook.bearable import rating_over_sizes
from inspector.rulebook.case import Case, purposes_of
from inspector.rulebook.judge import judge
from inspector.rulebook.wording import explain
from inspector.units import Dimension, read
from tests.rulebook.dossiers import (
    BOOK,
    KINDS,
    TODAY,
    YEAR,
    Entry,
    answered,
    days_ago,
    dossiers,
    doubts,
    exposures,
    inspections,
    strikes,
    swaps,
    untold_returns,
    uses,
    with_entry,
    year_entries,
)
from tests.rulebook.profiles import count_judged

TUBES = [kind for kind in KINDS if kind.family == "tube"]


def verdict_of(dossier: Dossier) -> Verdict:
    verdict = judge(dossier, BOOK, "test")
    count_judged(verdict)
    return verdict


def check_never_milder(worse: Verdict, better: Verdict) -> None:
    """Outcome, capacity and due date of the worse case are no better than those of the better one."""
    assert worse.outcome.severity >= better.outcome.severity
    for one, other in zip(worse.by_purpose, better.by_purpose, strict=True):
        assert one.outcome.severity >= other.outcome.severity
    if worse.capacity.now_n is not None and better.capacity.now_n is not None:
        assert worse.capacity.now_n <= better.capacity.now_n * (1 + 1e-12)
    if worse.outcome is not Outcome.RETIRE and better.next_due is not None:
        assert worse.next_due is not None and worse.next_due <= better.next_due


def changed(dossier: Dossier, place: int, inspection: Inspection) -> Dossier:
    listed = list(dossier.inspections)
    listed[place] = inspection
    return replace(dossier, inspections=tuple(listed))


@given(dossiers(), st.integers(1, 2500))
def test_a_later_day_is_never_milder(dossier: Dossier, days: int) -> None:
    check_never_milder(verdict_of(replace(dossier, on=TODAY + timedelta(days=days))), verdict_of(dossier))


@given(dossiers(), st.data())
def test_a_fault_added_to_the_latest_inspection_is_never_milder(dossier: Dossier, data: st.DataObject) -> None:
    assume(dossier.inspections and dossier.inspections[-1].facts.answers)
    last = dossier.inspections[-1]
    place = data.draw(st.integers(0, len(last.facts.answers) - 1))
    answers = list(last.facts.answers)
    assume(answers[place].grade is Grade.GOOD)
    answers[place] = replace(answers[place], grade=Grade.BAD)
    worse = replace(last, facts=replace(last.facts, answers=tuple(answers)))
    check_never_milder(verdict_of(changed(dossier, -1, worse)), verdict_of(dossier))


@given(dossiers(TUBES), st.floats(0.3, 0.99), st.data())
def test_a_thinner_latest_reading_is_never_milder(dossier: Dossier, ratio: float, data: st.DataObject) -> None:
    assume(dossier.inspections and dossier.inspections[-1].facts.readings)
    last = dossier.inspections[-1]
    listed = list(last.facts.readings)
    place = data.draw(st.integers(0, len(listed) - 1))
    assume(listed[place].measure == "wall")
    new = dossier.item.size("wall")
    assume(new and listed[place].figure.si <= 1.125 * new.si)  # what cannot be true is held, and is no reading
    listed[place] = scaled(listed[place], ratio)
    worse = replace(last, facts=replace(last.facts, readings=tuple(listed)))
    check_never_milder(verdict_of(changed(dossier, -1, worse)), verdict_of(dossier))


def scaled(reading: Reading, ratio: float) -> Reading:
    return replace(reading, figure=replace(reading.figure, si=reading.figure.si * ratio, as_typed="thinner"))


@given(dossiers(), st.data())
def test_more_use_is_never_milder(dossier: Dossier, data: st.DataObject) -> None:
    added = data.draw(uses(dossier.item))
    check_never_milder(verdict_of(replace(dossier, uses=(*dossier.uses, added))), verdict_of(dossier))


@given(dossiers(), st.data())
def test_more_exposure_is_never_milder(dossier: Dossier, data: st.DataObject) -> None:
    added = data.draw(exposures(dossier.item))
    check_never_milder(verdict_of(replace(dossier, exposures=(*dossier.exposures, added))), verdict_of(dossier))


@given(dossiers(), st.data())
def test_a_loan_of_which_nobody_told_the_weather_is_never_milder(dossier: Dossier, data: st.DataObject) -> None:
    added = data.draw(untold_returns(dossier.item))
    check_never_milder(verdict_of(replace(dossier, untold=(*dossier.untold, added))), verdict_of(dossier))


@given(dossiers(TUBES), st.data())
def test_of_a_tube_an_untold_loan_is_never_milder_than_salt_that_was_told(
    dossier: Dossier, data: st.DataObject
) -> None:
    silent = data.draw(untold_returns(dossier.item))
    assert silent.facts.since is not None
    sea = Exposure(silent.id, silent.item_id, NewExposure(silent.facts.since, Weather.SALT))
    told = replace(dossier, exposures=(*dossier.exposures, sea))
    check_never_milder(verdict_of(replace(dossier, untold=(*dossier.untold, silent))), verdict_of(told))


@given(dossiers())
def test_a_new_place_is_never_milder(dossier: Dossier) -> None:
    """Put on a vehicle after all that is known: never milder than before."""
    moved = Fitting("zz", dossier.item.id, NewFitting(TODAY, Fitted("V-2", End.REAR)))
    moves = tuple(one for one in dossier.fittings if one.facts.to is not None)
    before = replace(dossier, fittings=moves)
    check_never_milder(verdict_of(replace(before, fittings=(*moves, moved))), verdict_of(before))


@given(dossiers(), st.data())
def test_a_doubt_is_never_milder(dossier: Dossier, data: st.DataObject) -> None:
    added = data.draw(doubts(dossier.item))
    check_never_milder(verdict_of(replace(dossier, opinions=(*dossier.opinions, added))), verdict_of(dossier))


@given(dossiers(), st.sampled_from(YEAR), st.data())
def test_a_find_a_repair_a_new_marking_and_evidence_hold_until_a_thorough_inspection(
    dossier: Dossier, name: str, data: st.DataObject
) -> None:
    added = data.draw(year_entries(dossier.item, name))
    verdict, before = verdict_of(with_entry(dossier, name, added)), verdict_of(dossier)
    if not _relaxes(added):
        check_never_milder(verdict, before)
    counts = not isinstance(added, ItemChange) or added.facts.what is Altered.LABEL_NEW
    counts = counts and not isinstance(added, PieceCall)  # held whatever is inspected: below
    if counts and not [one for one in dossier.inspections if one.facts.competent and one.on >= added.facts.on]:
        assert verdict.outcome.severity >= Outcome.HOLD.severity


def _relaxes(added: Entry) -> bool:
    """A release, and an answer to a recall, take one hold away; a release and a remedy put their own in its place."""
    return isinstance(added, Release) or (isinstance(added, PieceCall) and added.facts.step is not Step.CALLED)


@given(dossiers(), st.data())
def test_a_part_put_in_after_all_that_is_known_makes_nothing_milder(dossier: Dossier, data: st.DataObject) -> None:
    """Whatever day is told for it: the readings of the part before stand until the new one was read in full."""
    swap = data.draw(swaps(dossier, "zz"))
    verdict, before = verdict_of(with_entry(dossier, "repairs", swap)), verdict_of(dossier)
    check_never_milder(verdict, before)
    quantities = {one.quantity: one.value for one in before.findings if one.quantity.startswith(("loss.", "growth."))}
    assert quantities == {one.quantity: one.value for one in verdict.findings if one.quantity in quantities}


@given(dossiers())
def test_a_label_that_is_lost_makes_nothing_milder(dossier: Dossier) -> None:
    """The rating as it was read, and the same figure as it is remembered."""
    item = dossier.item
    assume(item.rating.figure is not None and item.rating.stated_on != "memory")
    facts = replace(item.facts, rating=replace(item.rating, stated_on="memory"))
    check_never_milder(verdict_of(replace(dossier, item=replace(item, facts=facts))), verdict_of(dossier))


@given(dossiers(), st.data())
def test_no_inspection_lets_a_piece_of_evidence_go(dossier: Dossier, data: st.DataObject) -> None:
    kept = data.draw(year_entries(dossier.item, "quarantines"))
    bound = with_entry(replace(dossier, quarantines=(), evidence_releases=()), "quarantines", kept)
    assert verdict_of(bound).outcome.severity >= Outcome.HOLD.severity


@given(dossiers(), st.data())
def test_no_inspection_lets_a_recalled_piece_go_and_a_remedy_asks_for_one(
    dossier: Dossier, data: st.DataObject
) -> None:
    called = data.draw(year_entries(dossier.item, "calls"))
    assert isinstance(called, PieceCall)
    called = replace(called, facts=replace(called.facts, step=Step.CALLED))
    bound = with_entry(replace(dossier, calls=()), "calls", called)
    assert verdict_of(bound).outcome.severity >= Outcome.HOLD.severity
    remedied = NewPieceCall(TODAY, called.facts.recall, Step.REMEDIED, Sure.CERTAIN, "a new pin", "p")
    done = with_entry(bound, "calls", PieceCall("zz", dossier.item.id, remedied))
    assert verdict_of(done).outcome.severity >= Outcome.HOLD.severity
    check_never_milder(verdict_of(done), verdict_of(replace(dossier, calls=())))


@given(dossiers(), st.data())
def test_a_strike_holds_until_a_thorough_inspection(dossier: Dossier, data: st.DataObject) -> None:
    struck = data.draw(strikes(dossier.item))
    later = [one.on for one in dossier.inspections if one.facts.competent and one.on >= struck.facts.on]
    assume(not later)
    verdict = verdict_of(replace(dossier, strikes=(*dossier.strikes, struck)))
    assert verdict.outcome.severity >= Outcome.HOLD.severity


@given(dossiers(), st.data())
def test_an_opinion_answers_no_silence_no_retirement_and_lapses_with_any_fact(
    dossier: Dossier, data: st.DataObject
) -> None:
    before = verdict_of(dossier)
    spoken = data.draw(answered(dossier))
    verdict = verdict_of(spoken)
    for was, now in zip(before.findings, verdict.findings, strict=True):
        freed = was.outcome is not now.outcome
        assert not freed or (was.outcome is Outcome.HOLD and was.status is Status.FAILS and was.value is not None)
        assert freed == (now.status is Status.ANSWERED and was.status is not Status.ANSWERED)
    added = (*spoken.uses, data.draw(uses(dossier.item)))
    assert Status.ANSWERED not in {one.status for one in verdict_of(replace(spoken, uses=added)).findings}


@given(dossiers(), st.data())
def test_a_member_s_check_can_only_tighten(dossier: Dossier, data: st.DataObject) -> None:
    added = data.draw(inspections(dossier.kind, dossier.item, 99))
    members = replace(added, facts=replace(added.facts, competent=False, kind=InspectionKind.BEFORE_USE))
    listed = tuple(sorted((*dossier.inspections, members), key=lambda one: one.on))
    check_never_milder(verdict_of(replace(dossier, inspections=listed)), verdict_of(dossier))


def is_beyond_its_sizes(dossier: Dossier) -> bool:
    over = rating_over_sizes(Case(dossier, BOOK)).value
    return over is not None and over.number is not None and over.number > 1


@given(dossiers([kind for kind in KINDS if kind.family != "tube"]), st.floats(0.2, 0.99))
def test_a_lower_rating_is_never_milder(dossier: Dossier, ratio: float) -> None:
    """But for one that its sizes cannot bear: that was misread, and whoever reads it right writes down less."""
    rating = dossier.item.rating
    assume(rating.figure is not None and not is_beyond_its_sizes(dossier))
    assert rating.figure is not None
    lower = replace(rating, figure=replace(rating.figure, si=rating.figure.si * ratio))
    item = replace(dossier.item, facts=replace(dossier.item.facts, rating=lower))
    check_never_milder(verdict_of(replace(dossier, item=item)), verdict_of(dossier))


@given(dossiers(), st.data())
def test_silence_is_never_milder_than_a_good_grade_and_never_fit(dossier: Dossier, data: st.DataObject) -> None:
    assume(dossier.inspections)
    checks = dossier.kind.checks
    key = data.draw(st.sampled_from([check.key for check in checks]))
    check_never_milder(
        verdict_of(with_grade(dossier, key, Grade.NOT_SEEN)), verdict_of(with_grade(dossier, key, Grade.GOOD))
    )
    silent = verdict_of(with_grade(dossier, key, Grade.NOT_SEEN))
    required = [rule for rule in BOOK.rules_for(dossier.kind) if rule.quantity == f"check.{key}"]
    spoken = {
        purpose for rule in required if rule.missing == "hold" for purpose in rule.purposes or purposes_of(dossier)
    }
    for one in silent.by_purpose:
        assert one.purpose not in spoken or one.outcome.severity >= Outcome.HOLD.severity


def with_grade(dossier: Dossier, key: str, grade: Grade) -> Dossier:
    listed = tuple(
        replace(
            one,
            facts=replace(
                one.facts,
                answers=tuple(replace(a, grade=grade) if a.check == key else a for a in one.facts.answers),
            ),
        )
        for one in dossier.inspections
    )
    return replace(dossier, inspections=listed)


@given(dossiers(), st.data())
def test_nothing_changes_before_the_day_a_verdict_says_it_holds_until(dossier: Dossier, data: st.DataObject) -> None:
    now = verdict_of(dossier)
    longest = 4000 if now.holds_until is None else (now.holds_until - dossier.on).days - 1
    assert longest >= 0
    assume(longest > 0 and now.outcome is not Outcome.RETIRE)
    later = verdict_of(replace(dossier, on=dossier.on + timedelta(days=data.draw(st.integers(1, min(longest, 4000))))))
    assert [one.outcome for one in later.findings] == [one.outcome for one in now.findings]
    assert later.by_purpose == now.by_purpose
    assert later.capacity == now.capacity
    if now.holds_until is not None and later.holds_until is not None:
        assert later.holds_until >= now.holds_until


@given(dossiers(), days_ago)
def test_retirement_is_final(dossier: Dossier, day: date) -> None:
    retired = replace(dossier, retired_on=day, retired_why="Retire: worn out")
    assert verdict_of(retired).outcome is Outcome.RETIRE
    assert {one.outcome for one in verdict_of(retired).by_purpose} == {Outcome.RETIRE}


@given(dossiers())
def test_every_verdict_has_reasons_with_value_limit_and_source(dossier: Dossier) -> None:
    verdict = verdict_of(dossier)
    words = explain(dossier, verdict, BOOK)
    assert len(words.reasons) + len(words.passes) == len(verdict.findings) > 0
    assert bool(words.reasons) or verdict.outcome is Outcome.FIT
    for reason in (*words.reasons, *words.passes):
        assert reason.sentence and reason.value and reason.limit and reason.source
        assert "not known" not in reason.limit.partition(" (")[0]  # where a limit comes from may be unknown
    assert words.headline and words.plain and len(words.cautions) == 3


@given(dossiers())
def test_every_value_tells_how_it_is_known_and_what_people_saw_tells_by_whom(dossier: Dossier) -> None:
    entries = {one.id: one for one in dossier.inspections}
    for finding in verdict_of(dossier).findings:
        if finding.value is None:
            assert finding.why_unknown
            continue
        assert finding.known is not None and finding.came_from, finding.rule
        if finding.known in {Known.SEEN, Known.MEASURED}:
            assert finding.by == entries[finding.rests_on].facts.by
            assert finding.measured_on == entries[finding.rests_on].on


@given(dossiers())
def test_the_same_facts_give_the_same_verdict_word_for_word(dossier: Dossier) -> None:
    first, second = verdict_of(dossier), verdict_of(replace(dossier))
    assert first == second
    assert explain(dossier, first, BOOK) == explain(dossier, second, BOOK)


@given(dossiers())
def test_inches_and_millimetres_give_the_same_verdict(dossier: Dossier) -> None:
    listed = tuple(
        replace(one, facts=replace(one.facts, readings=tuple(in_inches(r) for r in one.facts.readings)))
        for one in dossier.inspections
    )
    metric, imperial = verdict_of(dossier), verdict_of(replace(dossier, inspections=listed))
    assert imperial.by_purpose == metric.by_purpose
    assert [one.outcome for one in imperial.findings] == [one.outcome for one in metric.findings]
    assert (imperial.next_due, imperial.holds_until) == (metric.next_due, metric.holds_until)
    if metric.capacity.now_n is not None and imperial.capacity.now_n is not None:
        assert math.isclose(imperial.capacity.now_n, metric.capacity.now_n, rel_tol=1e-9)


def in_inches(reading: Reading) -> Reading:
    if reading.figure.dimension is not Dimension.LENGTH:
        return reading
    return replace(reading, figure=read(f"{reading.figure.si / 0.0254:.15f} in", Dimension.LENGTH, field="r"))


@given(dossiers(TUBES))
def test_an_estimate_never_retires_and_never_passes_a_pull_in_salt(dossier: Dossier) -> None:
    unread = replace(
        dossier,
        inspections=tuple(
            replace(one, facts=replace(one.facts, readings=tuple(r for r in one.facts.readings if r.measure != "wall")))
            for one in dossier.inspections
        ),
    )
    verdict = verdict_of(unread)
    by_wall = [one for one in verdict.findings if one.quantity.startswith("wall")]
    assert Outcome.RETIRE not in {one.outcome for one in by_wall}
    overdue = [one for one in by_wall if one.quantity == "wall_reading_age" and one.status is not Status.PASSES]
    if overdue:
        pulls = [one for one in verdict.by_purpose if one.purpose.value in {"kinetic", "static"}]
        assert all(one.outcome.severity >= Outcome.HOLD.severity for one in pulls)
