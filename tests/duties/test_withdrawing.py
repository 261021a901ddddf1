"""Stories: an import that was wrong is withdrawn; tags and serials are free, and nothing of it is lost."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.gear_list import answers
from inspector.duties.give_opinion import doubt
from inspector.duties.import_list import take
from inspector.duties.judge_anew import judge_anew
from inspector.duties.look_up import open_item, where_is
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.recall_answers import under_recall
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.settle_recall import remedied
from inspector.duties.tell_history import history_of
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import put_in_store
from inspector.duties.withdraw_import import what_withdrawing_does, withdraw_import
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.import_list import Fate, Imported
from inspector.gear.lists import Wanted
from inspector.gear.recall_notice import Meant, Recall
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewUse
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.lists import HEADS, fates, listed, run, shackle_line
from tests.duties.notices import entered
from tests.duties.test_opinions import add


def brought(office: Office, folder: Path, *tags: str) -> Imported:
    lines = [f"{shackle_line(tag)};Q {tag}" for tag in tags]
    return take(office, run(office, listed(folder, *lines, heads=f"{HEADS};Serial no.")))


def called(office: Office, recall: Recall) -> list[str]:
    with office.book.reading() as page:
        return [one.item.tag for one in under_recall(page, recall)]


def tags_listed(office: Office) -> set[str]:
    return set(answers(office, Wanted(gone_too=True)).tags)


def test_a_withdrawn_piece_is_gone_from_every_list_and_its_history_still_tells_it(
    office: Office, tmp_path: Path
) -> None:
    made = brought(office, tmp_path, "A-1", "A-2")
    assert tags_listed(office) == {"A-1", "A-2"}
    done = withdraw_import(office, made.number, "the list of another club")
    assert done.free == ("A-1", "A-2") and not tags_listed(office)
    with office.book.reading() as page:
        assert page.every_item() == () and not page.not_retired() and len(page.withdrawn([made.pieces[0].id])) == 1
    assert where_is(office, "A-1").startswith("withdrawn: it was booked in by mistake")
    assert any("withdrawn" in one.text for one in history_of(office, "A-1"))
    told = told_ledger(office, last=1)[0].sentence
    assert told == (
        f"Ada Officer withdrew 2 pieces of the import {made.number}: A-1 and A-2: “the list of another club”."
    )
    assert verify_book(office).faults == ()
    judge_anew(replace(office, clock=lambda: office.now.replace(year=2031)))
    assert not tags_listed(office) and verify_book(office).faults == ()


def test_tag_and_serial_are_free_again_for_a_booking_and_for_another_import(office: Office, tmp_path: Path) -> None:
    first = brought(office, tmp_path, "A-1", "A-2")
    with pytest.raises(Refused, match="already has the tag"):
        book_in(office, shackle("a-1"))
    withdraw_import(office, first.number, "wrong")
    booked = book_in(office, shackle("a-1"))
    second = brought(office, tmp_path, "A-2")
    assert open_item(office, "A-1").dossier.item.id == booked.dossier.item.id
    assert open_item(office, "a-2").dossier.item.id == second.pieces[0].id != first.pieces[1].id
    with office.book.reading() as page:
        by_tag = page.items(["A-1", "a-1", "A-2"])
        assert {tag: one.id for tag, one in by_tag.items()} == {
            "A-1": booked.dossier.item.id, "a-1": booked.dossier.item.id, "A-2": second.pieces[0].id,
        }  # fmt: skip
    with pytest.raises(Refused, match="already has the tag"):
        book_in(office, shackle("A-1"))
    assert tags_listed(office) == {"a-1", "A-2"} and verify_book(office).faults == ()
    again = run(office, listed(tmp_path, f"{shackle_line('A-3')};Q A-2", heads=f"{HEADS};Serial no."))
    assert fates(again) == [(Fate.DUPLICATE, "A-3")]


def test_nothing_more_is_logged_of_a_withdrawn_piece(office: Office, tmp_path: Path) -> None:
    made = brought(office, tmp_path, "A-1")
    kind = open_item(office, "A-1").dossier.kind
    withdraw_import(office, made.number, "wrong")
    before = verify_book(office)
    for deed in (
        lambda: record_inspection(office, "A-1", all_good(office, kind, SHACKLE_READINGS)),
        lambda: record_use(office, "A-1", NewUse(office.today, 1)),
        lambda: put_in_store(office, "A-1", "shelf 2"),
        lambda: withdraw_import(office, made.number, "once more"),
    ):
        with pytest.raises(Refused):
            deed()
    assert verify_book(office) == before


def test_a_piece_of_which_more_was_written_down_stays(office: Office, tmp_path: Path) -> None:
    made = brought(office, tmp_path, "A-1", "A-2", "A-3")
    record_inspection(office, "A-1", all_good(office, open_item(office, "A-1").dossier.kind, SHACKLE_READINGS))
    day = office.today
    plan_trip(office, Trip("", "T-01", "Sand", "Dunes", Ground.BEACH, day, day, office.officer.id, kit=("A-2",)))
    told = what_withdrawing_does(office, made.number)
    assert told.free == ("A-3",) and told.later == (("A-1", "an inspection"), ("A-2", "a trip"))
    before = verify_book(office)
    with pytest.raises(Refused, match="A-1 \\(an inspection\\); A-2 \\(a trip\\)"):
        withdraw_import(office, made.number, "wrong")
    assert verify_book(office) == before
    done = withdraw_import(office, made.number, "wrong", leave_later=True)
    assert done.free == ("A-3",) and tags_listed(office) == {"A-1", "A-2"}
    assert "these stay: A-1 and A-2" in told_ledger(office, last=1)[0].sentence


def test_a_hold_by_a_recall_that_came_with_the_booking_is_no_later_entry(office: Office, tmp_path: Path) -> None:
    recall = entered(office, Meant(kinds=("bow_shackle",))).recall
    made = brought(office, tmp_path, "A-1", "A-2")
    assert called(office, recall) == ["A-1", "A-2"]
    assert what_withdrawing_does(office, made.number).free == ("A-1", "A-2")
    remedied(office, recall.ref, "A-2", "The pin was replaced.")
    assert what_withdrawing_does(office, made.number).later == (("A-2", "another entry"),)
    withdraw_import(office, made.number, "the list of another club", leave_later=True)
    assert called(office, recall) == ["A-2"]
    assert verify_book(office).faults == ()


def test_a_recall_that_was_withdrawn_is_no_later_entry_either(office: Office, tmp_path: Path) -> None:
    add(office, "Bo Second")
    before = entered(office, Meant(kinds=("bow_shackle",))).recall
    made = brought(office, tmp_path, "A-1", "A-2", "A-3")
    since = entered(office, Meant(kinds=("bow_shackle",))).recall
    assert [tag for tag, _ in what_withdrawing_does(office, made.number).later] == ["A-1", "A-2", "A-3"]
    remedied(office, since.ref, "A-2", "The pin was replaced.")
    doubt(office, "A-3", "It clicked.")
    for one in (before, since):
        withdraw_recall(office, one.ref, "another maker's", second="Bo Second")
    assert [tag for tag, _ in what_withdrawing_does(office, made.number).later] == ["A-2", "A-3"]
    withdraw_import(office, made.number, "the list of another club", leave_later=True)
    assert called(office, since) == ["A-2", "A-3"] and verify_book(office).faults == ()


def test_a_withdrawal_needs_a_reason_and_a_known_number(office: Office, tmp_path: Path) -> None:
    made = brought(office, tmp_path, "A-1")
    with pytest.raises(Refused, match="empty"):
        withdraw_import(office, made.number, " ")
    for number in ("I-NONE-0001", "", "A-1"):
        with pytest.raises(Refused, match="No import"):
            withdraw_import(office, number, "wrong")
    assert withdraw_import(office, made.number.lower(), "wrong").free == ("A-1",)
