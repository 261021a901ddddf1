"""Once a preview held or retired a piece, a changed value keeps its first one in sight."""

import sqlite3
from contextlib import closing

from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.preview_verdict import first_values, leave_preview, note_first, preview_verdict
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import FirstValue, NewInspection
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Status
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle

THIN = {"bow_diameter": "16 mm", "pin_diameter": "22.2 mm"}


def seen(office: Office, noted: tuple[FirstValue, ...], facts: NewInspection) -> tuple[FirstValue, ...]:
    """The preview of the facts, as the form asks for it."""
    dossier = open_item(office, "SH-1").dossier
    return note_first(noted, preview_verdict(office, dossier, facts), facts)


def test_a_reading_changed_after_the_preview_retired_the_piece_stays_in_the_history(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    noted = seen(office, (), all_good(office, kind, THIN))
    assert noted == (FirstValue("bow_diameter", "", "16 mm", Outcome.RETIRE),)
    final = all_good(office, kind, SHACKLE_READINGS)
    noted = seen(office, noted, final)
    logged = record_inspection(office, "SH-1", replace(final, first_values=first_values(noted, final)))
    assert logged.verdict.outcome is Outcome.FIT
    note = next(one for one in logged.verdict.findings if one.rule == "figures-changed")
    assert note.status is Status.NOTE
    row = next(row for row in history_of(office, "SH-1") if row.what == "Inspection")
    assert "was first typed “16 mm” (Retire)" in row.text and "19 mm" in row.text


def test_the_first_value_stays_however_often_it_is_typed_again(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    noted: tuple[FirstValue, ...] = ()
    for typed in ("16 mm", "16.5 mm", "17.4 mm", "19 mm"):
        noted = seen(office, noted, all_good(office, kind, {"bow_diameter": typed, "pin_diameter": "22.2 mm"}))
    assert [one.typed for one in noted] == ["16 mm"]


def test_a_grade_changed_after_the_preview_is_kept_as_well(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    noted = seen(office, (), all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    final = all_good(office, kind, SHACKLE_READINGS)
    assert first_values(noted, final) == (FirstValue("cracks", "", "bad", Outcome.RETIRE),)


def test_what_is_only_missing_so_far_or_typed_on_is_no_change(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    half = replace(all_good(office, kind, {}), answers=())
    half = replace(half, readings=all_good(office, kind, SHACKLE_READINGS).readings)
    assert seen(office, (), half) == ()
    stood = (FirstValue("bow_diameter", "", "1", Outcome.RETIRE),)
    assert first_values(stood, all_good(office, kind, SHACKLE_READINGS)) == ()


def test_a_value_that_stands_unchanged_is_not_told_twice(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    facts = all_good(office, kind, THIN)
    assert first_values(seen(office, (), facts), facts) == ()


def test_an_inspection_thrown_away_after_the_preview_retired_it_stands_in_the_ledger(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    noted = seen(office, (), all_good(office, kind, THIN))
    before = verify_book(office).line_count
    leave_preview(office, "SH-1", ())
    assert verify_book(office).line_count == before
    leave_preview(office, "SH-1", noted)
    found = verify_book(office)
    assert found.line_count == before + 1 and found.faults == ()
    with closing(sqlite3.connect(office.out_tray.parent / "register.db")) as connection:
        deed, body = connection.execute("SELECT deed, body FROM ledger ORDER BY id DESC").fetchone()
    assert deed == "leave inspection" and "16 mm" in body and "SH-1" in body
