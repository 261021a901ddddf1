"""Booking in from the window: the kind by typing, its form, what is refused where, and the record it ends on."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk.booking.book_page import BookPage
from inspector.desk.form.form_page import FormPage
from inspector.desk.form.lines import LineBox
from inspector.desk.place import Go
from inspector.desk.window import DeskWindow
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.gear.outcome import Outcome
from tests.desk.test_evening import shown_texts
from tests.each import each


def _began(desk: DeskWindow, qtbot: QtBot, words: str) -> FormPage:
    QTest.keyClick(desk, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    page = desk.pages.currentWidget()
    assert isinstance(page, BookPage)
    QTest.keyClicks(page.line, words)
    QTest.keyClick(page.line, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    form = desk.pages.currentWidget()
    assert isinstance(form, FormPage)
    return form


def _write(form: FormPage, **texts: str) -> None:
    for key, text in texts.items():
        box = form.box(key.replace("size_", "size "))
        assert isinstance(box, LineBox)
        box.line.setText(text)


def test_a_shackle_is_booked_in_by_keys_and_its_record_opens(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = _began(desk, qtbot, "bow")
    _write(form, tag="SH-050", rating="4.75 t", factor="5", size_bow_diameter="19 mm", size_pin_diameter="22 mm")
    form.box("stated_on").give("on the piece itself")

    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)

    assert desk.pages.piece and desk.pages.piece.tag == "SH-050"
    assert open_item(office, "SH-050").verdict.outcome is Outcome.HOLD  # nobody has inspected it
    assert "SH-050 is booked in." in desk.notice.text


def test_a_tag_that_is_taken_and_a_rating_without_a_unit_are_said_at_their_fields(
    qtbot: QtBot, desk: DeskWindow
) -> None:
    form = _began(desk, qtbot, "bow")
    _write(form, tag="SH-001", rating="4.75", size_bow_diameter="19 mm", size_pin_diameter="22 mm")
    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("rating").fault_text))

    _write(form, rating="4.75 t")
    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("stated_on").fault_text))  # where it is read is asked, never presumed
    form.box("stated_on").give("on the piece itself")
    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("tag").fault_text))
    assert "already has the tag" in form.box("tag").fault_text
    assert form.box("rating").draft == "4.75 t"


def test_a_size_by_which_wear_is_told_is_needed(qtbot: QtBot, desk: DeskWindow) -> None:
    form = _began(desk, qtbot, "bow")
    _write(form, tag="SH-051")

    form.try_do()

    assert form.box("size pin_diameter").fault_text
    assert not form.box("size jaw").fault_text


def test_a_borrowed_piece_is_asked_until_when(qtbot: QtBot, desk: DeskWindow) -> None:
    form = _began(desk, qtbot, "damper")
    _write(form, tag="DM-050", from_whom="the club over the bay")
    form.box("provenance").give("borrowed")

    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("borrowed_until").fault_text))
    assert form.box("borrowed_until").isVisible()  # the fold that hid it is open


def test_every_kind_has_a_form_that_opens(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    desk.pages.go(Go("book"))
    page = desk.pages.currentWidget()
    assert isinstance(page, BookPage)
    assert page.list.count() == len(office.rules.kinds)
    for row in range(page.list.count()):
        desk.pages.go(Go("book"))
        page.list.setCurrentRow(row)
        page._choose()
        qtbot.waitUntil(lambda: desk.background.is_idle)
        form = desk.pages.deed_page
        assert desk.pages.currentWidget() is form
        assert len(form.boxes) >= 15


def test_a_word_that_no_kind_has_says_what_to_try(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.go(Go("book"))
    page = desk.pages.currentWidget()
    assert isinstance(page, BookPage)
    QTest.keyClicks(page.line, "anchor chain of a ship")

    assert page._none.isVisible()
    QTest.keyClick(page.line, Qt.Key.Key_Return)
    assert desk.pages.currentWidget() is page


@each("words", ["jack", "recovery board", "shovel"])
def test_gear_that_no_pull_goes_through_is_said_to_be_outside_the_register(desk: DeskWindow, words: str) -> None:
    QTest.keyClick(desk, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    page = desk.pages.currentWidget()
    assert isinstance(page, BookPage)
    QTest.keyClicks(page.line, words)
    assert page.list.count() == 0 and "outside this register" in shown_texts(page)
