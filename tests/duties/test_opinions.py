"""Doubts and opinions: anybody holds a piece, only a second competent person answers what was seen, nothing lasts."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import InspectionKind
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.use import NewUse
from inspector.gear.verdict import Status
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap

RULE = "label-worn"
GROUND = "the batch is stamped on the sleeve as well"


def add(office: Office, name: str, *, competent: bool = True) -> Person:
    held = (Competence("all", office.today - timedelta(days=900)),) if competent else ()
    return add_person(office, Person("", name, "Member", held), "course certificate" if competent else "")


def held_strap(office: Office, owner: str = "Club") -> str:
    """A strap whose label is half worn, seen by the officer."""
    piece = strap(owner=owner)
    kind = book_in(office, piece).dossier.kind
    seen = record_inspection(office, piece.tag, all_good(office, kind, STRAP_READINGS, label_legible="slight"))
    assert [one.rule for one in seen.verdict.findings if one.outcome is not Outcome.FIT] == [RULE]
    assert "a second one's opinion" in seen.explanation.plain
    return piece.tag


def test_a_second_competent_person_answers_what_was_seen(office: Office) -> None:
    tag, other = held_strap(office), add(office, "Bo Second")
    answered = answer_findings(office, tag, [RULE], GROUND, other.name)
    assert answered.verdict.outcome is Outcome.FIT
    finding = next(one for one in answered.verdict.findings if one.rule == RULE)
    assert finding.status is Status.ANSWERED
    told = next(one.sentence for one in answered.explanation.passes if one.rule == RULE)
    assert "answered by Bo Second on 25 Nov 2026" in told and GROUND in told
    assert verify_book(office).faults == ()
    rows = [row for row in history_of(office, tag) if row.what == "Opinion"]
    assert len(rows) == 1 and rows[0].by == "Bo Second" and GROUND in rows[0].text


def test_whoever_saw_the_fault_cannot_answer_it_himself(office: Office) -> None:
    tag = held_strap(office)
    with pytest.raises(Refused, match="made an inspection"):
        answer_findings(office, tag, [RULE], GROUND)


def test_a_member_cannot_answer_and_an_owner_is_not_his_own_judge(office: Office) -> None:
    tag = held_strap(office, "Cy Owner")
    add(office, "Di Member", competent=False)
    add(office, "Cy Owner")
    with pytest.raises(Refused, match="not entered as competent"):
        answer_findings(office, tag, [RULE], GROUND, "Di Member")
    with pytest.raises(Refused, match="judge of his own gear"):
        answer_findings(office, tag, [RULE], GROUND, "Cy Owner")
    assert open_item(office, tag).verdict.outcome is Outcome.HOLD


@pytest.mark.parametrize("named", [(), ("inspection-current",), ("stitching-broken",), ("no-such-rule",)])
def test_an_opinion_answers_only_what_holds_and_was_seen(office: Office, named: tuple[str, ...]) -> None:
    tag, other = held_strap(office), add(office, "Bo Second")
    with pytest.raises(Refused, match=RULE):
        answer_findings(office, tag, named, GROUND, other.name)


def test_an_opinion_needs_a_reason(office: Office) -> None:
    tag, other = held_strap(office), add(office, "Bo Second")
    with pytest.raises(Refused, match="empty"):
        answer_findings(office, tag, [RULE], "  ", other.name)


def test_a_retirement_a_bad_fault_and_an_overdue_inspection_cannot_be_answered(office: Office) -> None:
    other = add(office, "Bo Second")
    kind = book_in(office, shackle()).dossier.kind
    with pytest.raises(Refused, match="takes an inspection"):
        answer_findings(office, "SH-1", ["inspection-current"], "looks good", other.name)
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, pin_matched="bad"))
    with pytest.raises(Refused, match="only a slight fault"):
        answer_findings(office, "SH-1", ["shackle-pin-own"], "it will do", other.name)
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    with pytest.raises(Refused, match="a retirement is final"):
        answer_findings(office, "SH-1", ["steel-cracked"], "a scratch", other.name)


def test_an_opinion_lapses_with_any_new_fact(office: Office) -> None:
    tag, other = held_strap(office), add(office, "Bo Second")
    answer_findings(office, tag, [RULE], GROUND, other.name)
    used = record_use(office, tag, NewUse(office.today, 1))
    assert used.verdict.outcome is Outcome.HOLD
    again = answer_findings(office, tag, [RULE], GROUND, other.name)
    assert again.verdict.outcome is Outcome.FIT
    assert doubt(office, tag, "it feels stiff", other.name).verdict.outcome is Outcome.HOLD


def test_an_opinion_does_not_outlive_the_inspection_it_speaks_of(office: Office) -> None:
    tag, other = held_strap(office), add(office, "Bo Second")
    answered = answer_findings(office, tag, [RULE], GROUND, other.name)
    due = answered.verdict.next_inspection_due
    assert due is not None
    from inspector.duties.judge_anew import judge_anew

    late = office.at(office.now + timedelta(days=(due - office.today).days + 1))
    judge_anew(late)
    assert open_item(late, tag).verdict.outcome is Outcome.HOLD


def test_anybody_s_doubt_holds_a_piece_until_it_is_inspected(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    assert record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.FIT
    add(office, "Di Member", competent=False)
    doubted = doubt(office, "SH-1", "it fell from the roof", "Di Member")
    assert doubted.verdict.outcome is Outcome.HOLD
    assert "Doubts voiced and not yet inspected" in doubted.explanation.headline
    assert "after the doubt was voiced" in doubted.explanation.plain
    after = replace(all_good(office, kind, SHACKLE_READINGS), kind=InspectionKind.AFTER_EVENT)
    assert record_inspection(office, "SH-1", after).verdict.outcome is Outcome.FIT


def test_a_line_of_rust_beside_a_weld_takes_a_test_and_no_opinion(sample: Office) -> None:
    assert "a second one's opinion" not in open_item(sample, "RP-05").explanation.plain
    with pytest.raises(Refused, match="holds nothing here"):
        answer_findings(sample, "RP-05", ["weld-rust-line"], "it is only paint", "Ilse Farrowby")
