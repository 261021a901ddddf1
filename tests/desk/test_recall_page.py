"""Recalls in the window: look by a notice, hold what it means, write, keep answers, settle each piece, close."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.deeds.marks import marks
from inspector.desk.opened import opened as piece_opened
from inspector.desk.place import Go
from inspector.desk.places import INCIDENTS, NEEDS, RECALLS
from inspector.desk.recall.recall_page import RecallPage
from inspector.desk.window import DeskWindow
from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.call_in import call_in
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_tags import enter_tags
from inspector.duties.record_inspection import record_inspection
from inspector.duties.settle_recall import ReadOnIt, not_of_it
from inspector.duties.tell_recall import recall_told, recalls
from inspector.gear.person import Competence, Person
from inspector.gear.recall_notice import Issuer, Meant, NewRecall
from tests.desk.conftest import shackle
from tests.desk.deed_forms import form_of_deed, keep
from tests.desk.test_incident_page import done, give, idle, press, refused_at, texts
from tests.duties.gear import SHACKLE_READINGS, all_good


@pytest.fixture
def made(office: Office) -> Office:
    """One of the notice, which a member owns, one that nobody can read, one of another row."""
    for tag, serial, owner in (
        ("SH-003", "KS240150", "Di Member"),
        ("SH-004", "", "club"),
        ("SH-005", "KS230007", "club"),
    ):
        book_in(office, replace(shackle(tag, owner), maker_mark="Kelpline", serial=serial))
    return office


def opened(qtbot: QtBot, desk: DeskWindow) -> RecallPage:
    """The list of recalls, by its key."""
    QTest.keyClick(desk, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    idle(qtbot, desk)
    found = desk.pages.currentWidget()
    assert isinstance(found, RecallPage)
    return found


def entered(qtbot: QtBot, desk: DeskWindow) -> RecallPage:
    """The notice, looked by and entered."""
    place = opened(qtbot, desk)
    form = press(qtbot, desk, place, "Look by a notice")
    for key, text in {"mark": "KELP-LINE", "first": "KS240100", "last": "KS240199"}.items():
        give(form.box(key), text)
    done(qtbot, desk, form, place)
    form = press(qtbot, desk, place, "Hold them: enter the notice")
    give(form.box("why"), "Pins of this row may snap.")
    give(form.box("remedy"), "Send the pin back.")
    done(qtbot, desk, form, place)
    return place


def ref_of(office: Office) -> str:
    """The reference of the only recall."""
    (row,) = recalls(office)
    return row.ref


def test_first_is_looked_and_nothing_held_then_all_that_is_meant_or_unreadable_is_held_at_once(
    qtbot: QtBot, made: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(made)
    place = opened(qtbot, desk)
    assert "No recall was entered." in texts(place)
    form = press(qtbot, desk, place, "Look by a notice")
    give(form.box("mark"), "??")
    assert "tells no piece from another" in refused_at(qtbot, form, "mark")
    give(form.box("mark"), "Kelpline")
    give(form.box("first"), "KS240199")
    give(form.box("last"), "KS240100")
    assert "comes before" in refused_at(qtbot, form, "last")
    give(form.box("first"), "KS240100")
    give(form.box("last"), "KS240199")
    done(qtbot, desk, form, place)

    said = texts(place)
    assert "Meant for certain (1)" in said and "its serial KS240150 lies within KS240100 to KS240199" in said
    assert "SH-004" in said and "its serial is not known" in said and recalls(made) == ()

    form = press(qtbot, desk, place, "Hold them: enter the notice")
    assert form.box("mark").draft == "Kelpline"
    assert "It is needed" in refused_at(qtbot, form, "why")
    give(form.box("why"), "Pins of this row may snap.")
    done(qtbot, desk, form, place)

    assert place.is_record_shown and "pieces are held" in desk.notice.text
    told = recall_told(made, ref_of(made))
    assert {"SH-003", "SH-004"} <= {one.tag for one in told.pieces} and "SH-005" not in {one.tag for one in told.pieces}
    assert "Close the recall: Not settled yet:" in texts(place)
    assert [one for one in place.findChildren(QPushButton) if one.isVisible() and not one.accessibleName()] == []


def test_letters_answers_and_reminders_are_tracked(
    qtbot: QtBot, made: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(made)
    place = entered(qtbot, desk)
    ref = ref_of(made)
    assert "Remind who has not answered: Nobody who was written to" in texts(place)
    form = press(qtbot, desk, place, "Write letters")
    done(qtbot, desk, form, place)
    assert "Di Member" in {one.name for one in recall_told(made, ref).letters}
    assert "no answer, remind on 9 Dec 2026" in texts(place)

    form = press(qtbot, desk, place, "Write letters")
    assert "was written to" in refused_at(qtbot, form, "send_to")
    desk.back()
    form = press(qtbot, desk, place, "Keep an answer")
    give(form.box("name"), "Di Member")
    assert "Nothing is ticked" in refused_at(qtbot, form, "tag SH-003")
    form.box("tag SH-003").give("yes")
    form.box("answer").give("passed it on")
    assert "to whom it was passed on" in refused_at(qtbot, form, "text")
    give(form.box("text"), "Cal Buyer")
    done(qtbot, desk, form, place)
    assert "passed it on – Cal Buyer" in texts(place)
    (letter,) = [one for one in recall_told(made, ref).letters if one.name == "Di Member"]
    assert letter.answers.startswith("SH-003: passed it on") and letter.due is None

    desk.pages.go(Go(NEEDS))
    idle(qtbot, desk)
    qtbot.waitUntil(lambda: "Recalls still open (1)" in texts(desk.pages))


def test_what_is_read_on_a_piece_lets_it_go_and_once_all_is_settled_it_is_closed(
    qtbot: QtBot, made: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    meant = Meant("Kelpline", ("bow_shackle",), first="KS240100", last="KS240199")
    ref = call_in(made, NewRecall(made.today, Issuer.MAKER, meant, "Pins may snap.")).recall.ref
    for one in recall_told(made, ref).pieces:
        if one.tag not in {"SH-003", "SH-004"}:
            not_of_it(made, ref, one.tag, ReadOnIt("X1", "Other maker"))
    desk = open_desk(made)
    desk.pages.go(Go(RECALLS, ref))
    idle(qtbot, desk)
    place = desk.pages.currentWidget()
    assert isinstance(place, RecallPage)
    form = press(qtbot, desk, place, "Read on it: not meant")
    form.box("tag").give("SH-004 · Bow shackle")
    assert "No serial was read" in refused_at(qtbot, form, "serial")
    give(form.box("serial"), "KS240177")
    assert "is meant" in refused_at(qtbot, form, "serial")
    give(form.box("serial"), "KS230177")
    done(qtbot, desk, form, place)
    assert open_item(made, "SH-004").dossier.item.facts.serial == "KS230177"

    form = press(qtbot, desk, place, "Done as the notice asks")
    give(form.box("done"), "The maker's new pin is in.")
    done(qtbot, desk, form, place)
    form = press(qtbot, desk, place, "Close the recall")
    give(form.box("text"), "One pin replaced.")
    done(qtbot, desk, form, place)
    assert recall_told(made, ref).is_closed and "The recall is closed." in texts(place)


def test_one_more_piece_is_held_and_escape_goes_back_to_the_list(
    qtbot: QtBot, made: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(made)
    place = entered(qtbot, desk)
    form = press(qtbot, desk, place, "Hold one more piece")
    give(form.box("tag"), "SH-005")
    give(form.box("why"), "Bought in the same box.")
    done(qtbot, desk, form, place)
    assert "SH-005" in {one.tag for one in recall_told(made, ref_of(made)).pieces}
    desk.notice.hide()
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    idle(qtbot, desk)
    assert not place.is_record_shown
    press(qtbot, desk, place, f"Open the recall {ref_of(made)}")
    assert place.is_record_shown


def test_the_incidents_lead_to_the_recalls(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.go(Go(INCIDENTS))
    idle(qtbot, desk)
    page = desk.pages.currentWidget()
    assert page
    press(qtbot, desk, page, "Go to the recalls")
    assert isinstance(desk.pages.currentWidget(), RecallPage)


def test_marks_that_are_read_anew_may_bring_a_piece_under_an_open_recall(
    qtbot: QtBot, made: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(made)
    entered(qtbot, desk)
    piece = piece_opened(made, "SH-005")
    form = form_of_deed(qtbot, desk, marks(piece), piece)
    give(form.box("serial"), "KS240111")
    give(form.box("why"), "cleaned")
    keep(qtbot, desk)
    assert "SH-005" in {one.tag for one in recall_told(made, ref_of(made)).pieces}


def test_a_wrong_entry_is_withdrawn_by_two_and_whoever_was_written_to_is_told(
    qtbot: QtBot, made: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    add_person(made, Person("", "Bo Second", "Member", (Competence("all", made.today - timedelta(days=900)),)), "paper")
    record_inspection(made, "SH-003", all_good(made, made.kind("bow_shackle"), SHACKLE_READINGS))
    before = {tag: open_item(made, tag).verdict.findings for tag in ("SH-003", "SH-004")}
    desk = open_desk(made)
    place = entered(qtbot, desk)
    ref = ref_of(made)
    assert "Write that it is withdrawn" not in texts(place)
    done(qtbot, desk, press(qtbot, desk, place, "Write letters"), place)
    enter_tags(made, ["SH-003"])
    form = press(qtbot, desk, place, "Withdraw the recall")
    assert "It is needed" in refused_at(qtbot, form, "why")
    give(form.box("why"), "It is another maker's notice.")
    form.box("second").give("First officer")
    assert "cannot be both names" in refused_at(qtbot, form, "second")
    form.box("second").give("Bo Second")
    done(qtbot, desk, form, place)
    assert "SH-003: A hold tag printed on 25 Nov 2026 may still hang on it: take it off." in desk.notice.text
    assert f"{ref} is withdrawn." in desk.notice.text and "Write to them that it was withdrawn: Di" in desk.notice.text
    assert {tag: open_item(made, tag).verdict.findings for tag in before} == before
    said = texts(place)
    assert "Withdrawn on 25 Nov 2026 by First officer and Bo Second: It is another maker's notice." in said
    assert "Not told yet that it was withdrawn: Di Member" in said and "not held by it any more" in said
    for name in ("Withdraw the recall", "Keep an answer", "Close the recall", "Hold one more piece"):
        assert f"{name}: The recall was withdrawn." in said, name
    done(qtbot, desk, press(qtbot, desk, place, "Write that it is withdrawn"), place)
    assert "Not told yet" not in texts(place) and recall_told(made, ref).untold == ()
    assert "Write that it is withdrawn: Nobody who was written to has still to be told." in texts(place)
    number = recall_told(made, ref).numbers[-1]
    press(qtbot, desk, place, f"Print {number} again")
    assert number.startswith("W-") and f"The letter {number} is printed." in desk.notice.text
    desk.notice.hide()
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    idle(qtbot, desk)
    assert "Withdrawn" in texts(place) and "Still open" not in texts(place)
