"""Stories: somebody else's piece comes along on one trip, and on no other."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.judging import judged
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.look_up import trip as trip_called
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.retire_item import print_notice
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.trip_readiness import readiness
from inspector.duties.visit import visit, visit_again
from inspector.duties.whereabouts import hand_to_owner, report_missing
from inspector.gear.item import NewItem, Provenance
from inspector.gear.outcome import Outcome
from inspector.gear.papers import RetirementNotice
from inspector.gear.trip import Ground, Trip
from inspector.paper.printed import Printed
from inspector.refused import Refused
from inspector.register.rows import from_body
from tests.duties.gear import STRAP_READINGS, all_good, strap
from tests.duties.rigs import member, planned
from tests.paper.reading import all_text, squeezed


def own(tag: str = "", owner: str = "Di Member") -> NewItem:
    """A member's own strap, of which nobody tells more than its label."""
    return replace(strap(tag, owner), provenance=Provenance.UNKNOWN, made_on=date(2026, 6, 1))


def words_on(paper: Paper) -> str:
    """All that stands on a document, in one line."""
    return squeezed(all_text(Printed(paper.path.read_bytes(), 1, ())))


def other_trip(office: Office, ref: str = "T-2", start: int = 10, kit: tuple[str, ...] = ()) -> Trip:
    first = office.today + timedelta(days=start)
    return plan_trip(
        office, Trip("", ref, "Later", "Long Sand", Ground.BEACH, first, first, "Di Member", ("V-1", "V-2"), kit)
    )


def passed(office: Office, tag: str) -> None:
    kind = open_item(office, tag).dossier.kind
    record_inspection(office, tag, all_good(office, kind, STRAP_READINGS))


def test_a_members_own_strap_on_one_trip(office: Office) -> None:
    member(office)
    planned(office, kit=(), days=3)
    other_trip(office)
    came = visit(office, "T-1", own())
    assert came.dossier.item.tag == "VG-1"
    assert came.verdict.outcome is Outcome.HOLD
    assert trip_called(office, "T-1").kit == ("VG-1",)
    assert [one.dossier.item.tag for one in readiness(office, "T-1").staying] == ["VG-1"]
    held = {one.rule for one in came.verdict.findings if one.outcome is Outcome.HOLD}
    assert "past-known" in held
    passed(office, "VG-1")
    assert [one.dossier.item.tag for one in readiness(office, "T-1").going] == ["VG-1"]
    assert readiness(office, "T-1").away == ()
    told = {one.label: one.text for one in open_item(office, "VG-1").explanation.piece}
    assert told["Came along"] == "for T-1 alone, to 27 Nov 2026"
    change_trip(office, "T-2", lambda trip: replace(trip, kit=("VG-1",)))
    (away,) = readiness(office, "T-2").away
    assert (away.tag, away.lent) == ("VG-1", True)
    assert "for T-1 alone" in away.why
    assert readiness(office, "T-2").going == ()


def test_the_deed_is_one_line_in_the_ledger(office: Office) -> None:
    planned(office, kit=())
    visit(office, "T-1", own())
    line = told_ledger(office)[0]
    assert line.sentence == "Ada Officer took VG-1 (kinetic strap), Di Member's own, along on the trip T-1 alone."


def test_a_verdict_of_a_visiting_piece_holds_until_its_trip_is_over_and_no_day_longer(office: Office) -> None:
    planned(office, kit=(), days=3)
    visit(office, "T-1", own())
    passed(office, "VG-1")
    found = open_item(office, "VG-1")
    last = office.today + timedelta(days=2)
    assert found.verdict.holds_until == last + timedelta(days=1)
    on_last, after = (judged(office, replace(found.dossier, on=day)) for day in (last, last + timedelta(days=1)))
    assert on_last.verdict.outcome is Outcome.FIT
    assert after.verdict.outcome is Outcome.HOLD
    assert "visit-over" in {one.rule for one in after.verdict.findings if one.outcome is Outcome.HOLD}


def test_a_trip_that_grows_longer_takes_no_visiting_piece_with_it(office: Office) -> None:
    planned(office, kit=(), days=2)
    visit(office, "T-1", own())
    passed(office, "VG-1")
    change_trip(office, "T-1", lambda trip: replace(trip, last_on=trip.last_on + timedelta(days=1)))
    found = readiness(office, "T-1")
    assert found.going == ()
    assert [one.tag for one in found.away] == ["VG-1"]
    assert visit_again(office, "T-1", "VG-1").verdict.outcome is Outcome.HOLD


def test_a_piece_that_comes_along_again_keeps_its_history_and_is_held_until_it_is_inspected(office: Office) -> None:
    planned(office, kit=(), days=1)
    other_trip(office)
    visit(office, "T-1", own())
    passed(office, "VG-1")
    again = visit_again(office, "T-2", "VG-1")
    assert again.verdict.outcome is Outcome.HOLD
    assert "find-inspected" in {one.rule for one in again.verdict.findings if one.outcome is Outcome.HOLD}
    assert len(again.dossier.inspections) == 1
    passed(office, "VG-1")
    assert [one.dossier.item.tag for one in readiness(office, "T-2").going] == ["VG-1"]
    assert [one.tag for one in readiness(office, "T-1").away] == ["VG-1"]


def test_a_retired_piece_comes_back_neither_under_its_tag_nor_under_another(office: Office) -> None:
    planned(office, kit=())
    other_trip(office)
    retired(office)
    with pytest.raises(Refused, match="retired"):
        visit_again(office, "T-2", "VG-1")
    with pytest.raises(Refused, match="already"):
        visit(office, "T-2", own("ANOTHER"))


def retired(office: Office) -> None:
    kind = visit(office, "T-1", own()).dossier.kind
    seen = record_inspection(office, "VG-1", all_good(office, kind, STRAP_READINGS, edge_cuts="bad"))
    assert seen.verdict.outcome is Outcome.RETIRE


REFUSED = [
    ("T-1", own(owner=""), "owner", "Whose it is"),
    ("T-1", own(owner="test  club"), "owner", "Whose it is"),
    ("T-0", own(), "trip", "ended"),
    ("T-1", replace(own(), fitted_to="V-1"), "fitted to", "kit"),
    ("T-1", own("V-1"), "tag", "A vehicle has the tag"),
]


@pytest.mark.parametrize(("ref", "facts", "field", "why"), REFUSED)
def test_what_cannot_come_along_is_refused(office: Office, ref: str, facts: NewItem, field: str, why: str) -> None:
    planned(office, kit=())
    other_trip(office, "T-0", start=-5)
    with pytest.raises(Refused) as refusal:
        visit(office, ref, facts)
    assert refusal.value.field == field
    assert why in refusal.value.why and refusal.value.what_to_do
    assert trip_called(office, "T-1").kit == ()


def test_the_clubs_own_piece_and_a_trip_named_twice_are_no_second_visit(office: Office) -> None:
    planned(office, kit=())
    visit(office, "T-1", own())
    book_in(office, strap("KS-9"))
    with pytest.raises(Refused, match="no visiting piece"):
        visit_again(office, "T-1", "KS-9")
    with pytest.raises(Refused, match="already"):
        visit_again(office, "T-1", "VG-1")


def test_a_visiting_piece_is_lent_for_its_own_trip_alone(office: Office) -> None:
    member(office)
    planned(office, kit=())
    other_trip(office)
    visit(office, "T-1", own())
    passed(office, "VG-1")
    for ref in ("", "T-2"):
        with pytest.raises(Refused, match="for T-1 alone"):
            lend(office, ["VG-1"], "Di Member", office.today + timedelta(days=1), ref)
    assert len(lend(office, ["VG-1"], "Di Member", trip="T-1")) == 1
    with pytest.raises(Refused, match="out on loan"):
        visit_again(office, "T-2", "VG-1")


def test_one_that_went_home_in_between_comes_along_again_and_a_missing_one_is_found_first(office: Office) -> None:
    planned(office, kit=())
    other_trip(office)
    visit(office, "T-1", own())
    hand_to_owner(office, "VG-1", as_it_is=True)
    assert visit_again(office, "T-2", "VG-1").verdict.outcome is Outcome.HOLD
    report_missing(office, "VG-1", "the beach", "not in the box")
    with pytest.raises(Refused, match="missing"):
        visit_again(office, "T-1", "VG-1")


def test_the_notice_of_a_members_piece_goes_to_its_owner_and_asks(office: Office) -> None:
    planned(office, kit=())
    retired(office)
    paper = print_notice(office, "VG-1")
    with office.book.reading() as page:
        kept = page.latest_document("retirement_notice", page.item("VG-1").id)
    assert kept is not None
    assert from_body(kept[1], RetirementNotice).addressed_to == "Di Member"
    text = words_on(paper)
    assert squeezed("Take it out of the store") not in text
    assert squeezed("To its owner, Di Member") in text
    assert squeezed("you decide what becomes of it. On trips of Test Club it does not go") in text


def test_the_notice_of_the_clubs_own_piece_asks_nobody(office: Office) -> None:
    kind = book_in(office, strap("KS-9")).dossier.kind
    record_inspection(office, "KS-9", all_good(office, kind, STRAP_READINGS, edge_cuts="bad"))
    assert squeezed("To its owner") not in words_on(print_notice(office, "KS-9"))
