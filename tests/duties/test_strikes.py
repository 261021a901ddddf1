"""A wrong entry is struck by two competent persons; nothing is erased, the piece is inspected anew, ash stays ash."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.retire_item import print_notice
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import InspectionKind
from inspector.gear.kind import Kind
from inspector.gear.lists import HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.use import NewUse
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.rigs import later
from tests.duties.test_opinions import add

WHY = "the readings of SH-9 were written under this tag"


def entry(office: Office, tag: str, what: str = "Inspection") -> HistoryRow:
    return next(row for row in history_of(office, tag) if row.what == what)


def retired_by_mistake(office: Office) -> Kind:
    kind = book_in(office, shackle()).dossier.kind
    readings = {"bow_diameter": "16 mm", "pin_diameter": "22.2 mm"}
    seen = record_inspection(office, "SH-1", all_good(office, kind, readings))
    assert seen.verdict.outcome is Outcome.RETIRE
    return kind


def test_two_competent_persons_strike_a_misread_gauge_and_the_piece_stands_on_hold(office: Office) -> None:
    kind = retired_by_mistake(office)
    notice = print_notice(office, "SH-1")
    add(office, "Bo Second")
    struck = strike_entry(office, "SH-1", entry(office, "SH-1").ref, "Bo Second", WHY)
    assert struck.verdict.outcome is Outcome.HOLD
    assert {"strike-inspected", "inspection-current"} <= {
        one.rule for one in struck.verdict.findings if one.outcome is Outcome.HOLD
    }
    rows = history_of(office, "SH-1")
    assert any(row.text.startswith("STRUCK, does not count.") and "16 mm" in row.text for row in rows)
    assert any(row.what == "Entry struck" and row.by == "Ada Officer, Bo Second" and WHY in row.text for row in rows)
    assert notice.path.exists() and any(row.text == "Retirement notice printed" for row in rows)
    assert verify_book(office).faults == ()
    after = replace(all_good(office, kind, SHACKLE_READINGS), kind=InspectionKind.AFTER_EVENT)
    assert record_inspection(office, "SH-1", after).verdict.outcome is Outcome.FIT


def test_a_name_entered_as_competent_today_is_none_of_two_until_tomorrow(office: Office) -> None:
    """Below: since today; at: since yesterday; above: since long ago. Whoever it is, first name or second."""
    retired_by_mistake(office)
    ref = entry(office, "SH-1").ref
    add_person(office, Person("", "Anke New", "Member", (Competence("all", office.today),)))
    yesterday = Competence("all", office.today - timedelta(days=1))
    add_person(office, Person("", "Bo Second", "Member", (yesterday,)), "course, card 12")
    anke = next(one for one in people(office) if one.name == "Anke New")
    for desk, by, second in ((office, "", "Anke New"), (office, "Anke New", "Bo Second"),
                             (replace(office, officer=anke), "", "Ada Officer")):  # fmt: skip
        with pytest.raises(Refused, match="only since today"):
            strike_entry(desk, "SH-1", ref, second, WHY, by)
    assert open_item(office, "SH-1").verdict.outcome is Outcome.RETIRE
    tomorrow = later(office, 1)
    assert strike_entry(tomorrow, "SH-1", ref, "Anke New", WHY).verdict.outcome is Outcome.HOLD


def test_since_yesterday_is_long_enough_for_a_second_name(office: Office) -> None:
    retired_by_mistake(office)
    yesterday = Competence("all", office.today - timedelta(days=1))
    add_person(office, Person("", "Bo Second", "Member", (yesterday,)), "course, card 12")
    assert strike_entry(office, "SH-1", entry(office, "SH-1").ref, "Bo Second", WHY).verdict.outcome is Outcome.HOLD


def test_a_retirement_that_rests_on_more_than_the_struck_entry_stands(office: Office) -> None:
    kind = retired_by_mistake(office)
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    add(office, "Bo Second")
    first = [row for row in history_of(office, "SH-1") if row.what == "Inspection"][-1]
    assert strike_entry(office, "SH-1", first.ref, "Bo Second", WHY).verdict.outcome is Outcome.RETIRE


def test_striking_a_use_does_not_bring_a_worn_piece_back(office: Office) -> None:
    retired_by_mistake(office)
    record_use(office, "SH-1", NewUse(office.today, 2))
    add(office, "Bo Second")
    struck = strike_entry(office, "SH-1", entry(office, "SH-1", "Use").ref, "Bo Second", "it was another shackle")
    assert struck.verdict.outcome is Outcome.RETIRE


def test_nobody_is_second_name_for_himself_nor_judge_of_his_own_gear(office: Office) -> None:
    kind = book_in(office, shackle("SH-2", owner="Cy Owner")).dossier.kind
    record_inspection(office, "SH-2", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    add(office, "Cy Owner")
    add(office, "Di Member", competent=False)
    ref = entry(office, "SH-2").ref
    for second, why in (
        ("Ada Officer", "both names"),
        ("Cy Owner", "judge of his own gear"),
        ("Di Member", "not entered as competent"),
        ("Nobody Known", "Nobody called"),
    ):
        with pytest.raises(Refused, match=why):
            strike_entry(office, "SH-2", ref, second, WHY)
    assert open_item(office, "SH-2").verdict.outcome is Outcome.RETIRE


@pytest.mark.parametrize("ref", ["", "abc", "zzzzzz", "a verdict"])
def test_only_an_entry_of_the_piece_can_be_struck(office: Office, ref: str) -> None:
    retired_by_mistake(office)
    add(office, "Bo Second")
    with pytest.raises(Refused, match="not an entry"):
        strike_entry(office, "SH-1", ref, "Bo Second", WHY)


def test_an_entry_is_struck_once_and_with_a_reason(office: Office) -> None:
    retired_by_mistake(office)
    add(office, "Bo Second")
    ref = entry(office, "SH-1").ref
    with pytest.raises(Refused, match="empty"):
        strike_entry(office, "SH-1", ref, "Bo Second", " ")
    strike_entry(office, "SH-1", ref, "Bo Second", WHY)
    with pytest.raises(Refused, match="not an entry"):
        strike_entry(office, "SH-1", ref, "Bo Second", WHY)


def test_what_was_destroyed_cannot_be_struck_back(office: Office) -> None:
    retired_by_mistake(office)
    add(office, "Bo Second")
    destroy_item(office, "SH-1", "cut through the bow", witness="Bo Second")
    with pytest.raises(Refused, match="made unusable"):
        strike_entry(office, "SH-1", entry(office, "SH-1").ref, "Bo Second", WHY)
    with pytest.raises(Refused, match="already"):
        destroy_item(office, "SH-1", "cut again")
    row = entry(office, "SH-1", "Made unusable")
    assert row.text == "cut through the bow" and row.by == "Ada Officer, Bo Second"


def test_only_a_retired_piece_is_destroyed_and_not_before_its_day(office: Office) -> None:
    book_in(office, shackle("SH-3"))
    with pytest.raises(Refused, match="not retired"):
        destroy_item(office, "SH-3", "cut in two")
    retired_by_mistake(office)
    for on in (office.today + timedelta(days=1), office.today - timedelta(days=1)):
        with pytest.raises(Refused, match="future or before"):
            destroy_item(office, "SH-1", "cut in two", on)
    with pytest.raises(Refused, match="empty"):
        destroy_item(office, "SH-1", "")


def test_an_owner_passes_his_own_gear_only_with_a_second_name(office: Office) -> None:
    kind = book_in(office, shackle("SH-2", owner="Cy Owner")).dossier.kind
    add(office, "Cy Owner")
    alone = all_good(office, kind, SHACKLE_READINGS, by="Cy Owner")
    assert record_inspection(office, "SH-2", alone).verdict.outcome is Outcome.HOLD
    with pytest.raises(Refused, match="both names"):
        record_inspection(office, "SH-2", replace(alone, second="Cy Owner"))
    both = replace(alone, second="Ada Officer")
    assert record_inspection(office, "SH-2", both).verdict.outcome is Outcome.FIT
    assert entry(office, "SH-2").by == "Cy Owner, Ada Officer"
