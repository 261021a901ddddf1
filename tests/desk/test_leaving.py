"""Leaving a form in which something is written: asked first, whatever the way out."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.window import DeskWindow


def choice(desk: DeskWindow, text: str) -> QPushButton:
    """The button of the message with this text."""
    return next(one for one in desk.notice.findChildren(QPushButton) if one.text() == text and one.isVisible())


def test_escape_asks_before_anything_typed_is_thrown_away(qtbot: QtBot, desk: DeskWindow, form: InspectForm) -> None:
    """The answer that loses nothing has the focus, and a second Escape gives it."""
    QTest.keyClicks(form.rows[0], "1")
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    assert desk.notice.is_asking
    assert choice(desk, "Keep writing").hasFocus()
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    assert desk.pages.form is form
    assert not desk.notice.is_asking
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    choice(desk, "Throw it away").click()
    qtbot.waitUntil(lambda: desk.pages.form is None)
    assert desk.pages.piece is not None


def test_escape_leaves_an_empty_form_without_a_question(qtbot: QtBot, desk: DeskWindow, form: InspectForm) -> None:
    """Nothing written, nothing asked."""
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    assert desk.pages.form is None
    assert desk.notice.isHidden()


def test_closing_the_window_asks_as_well(qtbot: QtBot, desk: DeskWindow, form: InspectForm) -> None:
    """The window stays until the officer says so."""
    QTest.keyClicks(form.rows[0], "1")
    desk.close()
    assert desk.isVisible()
    assert desk.notice.is_asking
    choice(desk, "Throw it away").click()
    qtbot.waitUntil(lambda: not desk.isVisible())


def test_a_scanned_tag_does_not_throw_a_written_form_away(qtbot: QtBot, desk: DeskWindow, form: InspectForm) -> None:
    """Opening another piece asks first."""
    QTest.keyClicks(form.rows[0], "1")
    QTest.keyClicks(desk.search, "SH-001")
    QTest.keyClick(desk.search, Qt.Key.Key_Return)
    assert desk.notice.is_asking
    assert desk.pages.form is form
