"""What has left the club or was made unusable: nothing more is said of it, and nobody packs it."""

from datetime import timedelta

import pytest

from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.retire_item import print_notice
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_found, report_stolen
from inspector.duties.work_rigs import pack_trip
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.rigs import fit, ready
from tests.duties.test_opinions import add

GONE = (Where.MISSING, Where.STOLEN, Where.SOLD, Where.GIVEN_BACK)


def moved(office: Office, tag: str, where: Where) -> None:
    """Write down where a piece is."""
    with office.book.page() as page:
        item = page.item(tag)
        page.add_whereabouts(item, NewWhereabouts(office.today, where))
        judge_and_keep(office, page, item)
        page.enter("move", by=office.officer.id, at=office.now, facts={"tag": tag})


def retired(office: Office) -> None:
    """A shackle, bent and retired."""
    fit(office, shackle(), SHACKLE_READINGS)
    kind = office.kind("bow_shackle")
    seen = record_inspection(office, "SH-1", all_good(office, kind, {"bow_diameter": "12 mm", "pin_diameter": "22 mm"}))
    assert seen.verdict.outcome is Outcome.RETIRE


@pytest.mark.parametrize("where", GONE)
def test_a_piece_that_is_gone_is_not_packed(office: Office, where: Where) -> None:
    ready(office)
    assert "KS-1" in {one.tag for one in pack_trip(office, "T-1").takes}
    moved(office, "KS-1", where)
    packed = pack_trip(office, "T-1")
    assert "KS-1" not in {one.tag for one in packed.takes}
    assert dict(packed.stays)["KS-1"]


def test_nobody_doubts_or_answers_for_a_piece_that_was_made_unusable(office: Office) -> None:
    retired(office)
    destroy_item(office, "SH-1", "cut in two")
    before = verify_book(office)
    with pytest.raises(Refused, match="made unusable"):
        doubt(office, "SH-1", "it creaked")
    with pytest.raises(Refused):
        answer_findings(office, "SH-1", ["shackle-body-worn"], "no wear there")
    assert verify_book(office) == before


def test_nobody_doubts_or_strikes_an_entry_of_a_piece_that_was_sold(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    add(office, "Bo Rigger")
    (entry, *_) = [row.ref for row in history_of(office, "SH-1") if row.ref]
    moved(office, "SH-1", Where.SOLD)
    before = verify_book(office)
    with pytest.raises(Refused, match="was sold"):
        doubt(office, "SH-1", "it creaked")
    with pytest.raises(Refused, match="was sold"):
        strike_entry(office, "SH-1", entry, "Bo Rigger", "another shackle")
    assert verify_book(office) == before


def test_a_second_retirement_has_a_notice_of_its_own(office: Office) -> None:
    add(office, "Bo Rigger")
    retired(office)
    first = print_notice(office, "SH-1")
    (entry, *_) = [row.ref for row in history_of(office, "SH-1") if row.ref]
    strike_entry(office, "SH-1", entry, "Bo Rigger", "another shackle was measured")
    later = office.at(office.now + timedelta(days=3))
    kind = office.kind("bow_shackle")
    bad = all_good(later, kind, {"bow_diameter": "13 mm", "pin_diameter": "22 mm"})
    assert record_inspection(later, "SH-1", bad).verdict.outcome is Outcome.RETIRE
    second = print_notice(later, "SH-1")
    assert second.path != first.path
    assert print_notice(later.at(later.now + timedelta(days=1)), "SH-1").path == second.path


def test_a_retired_piece_that_nobody_has_is_not_made_unusable_before_it_is_found(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    report_stolen(office, "SH-1", "trailer", "report 17")
    with pytest.raises(Refused, match="SH-1 is stolen") as refusal:
        destroy_item(office, "SH-1", "cut in two")
    assert "found" in refusal.value.what_to_do
    report_found(office, "SH-1", "shed")
    destroy_item(office, "SH-1", "cut in two")
