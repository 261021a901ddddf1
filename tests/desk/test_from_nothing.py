"""The officer's first evening: from no register at all to the printed notice of a receiver that salt has thinned."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton, QWidget
from pytestqt.qtbot import QtBot

from inspector import app
from inspector.desk.booking.book_page import BookPage
from inspector.desk.doors import Doors, Start
from inspector.desk.form.form_page import FormPage
from inspector.desk.look import Look
from inspector.desk.open_desk import OpenDesk
from inspector.desk.preview import Preview
from inspector.desk.welcome import Welcome
from inspector.desk.window import DeskWindow
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.gear.inspection import Method
from inspector.gear.outcome import Outcome

CTRL = Qt.KeyboardModifier.ControlModifier
NEW = {"size outside": "63.5 mm", "size wall": "5 mm", "size pin_hole": "16.2 mm"}
READ = {"wall": "2.1 mm", "pin_hole": "16.2 mm"}


@pytest.fixture
def desk(qtbot: QtBot, look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DeskWindow:
    """The window on a register that was begun on the first page, a moment ago."""
    monkeypatch.setattr("platformdirs.user_config_dir", lambda *_, **__: str(tmp_path / "config"))
    monkeypatch.setattr("platformdirs.user_data_dir", lambda *_, **__: str(tmp_path / "data"))
    doors = Doors(app._begin, app._open, app._sample, app._restore, app._rescue)
    welcome, offices = Welcome(doors, str(tmp_path / "shed"), look), list[Office]()
    welcome.opened.connect(offices.append)
    qtbot.addWidget(welcome)
    welcome.show()
    QTest.keyClicks(welcome.club, "Dune and Ridge Touring Club")
    QTest.keyClicks(welcome.officer, "First officer")
    QTest.mouseClick(welcome.begin_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: bool(offices))
    welcome.close()
    opened = OpenDesk(offices[0], look, Start(doors, str(tmp_path / "shed"), ()))
    opened.show()
    qtbot.addWidget(opened.window)
    qtbot.waitUntil(lambda: opened.window.background.is_idle)
    return opened.window


def _settle(qtbot: QtBot, desk: DeskWindow) -> None:
    qtbot.waitUntil(lambda: desk.background.is_idle)


def _shown(desk: DeskWindow) -> QWidget:
    page = desk.pages.currentWidget()
    assert page
    return page


def _book(qtbot: QtBot, desk: DeskWindow) -> None:
    QTest.keyClick(desk, Qt.Key.Key_N, CTRL)
    page = _shown(desk)
    assert isinstance(page, BookPage)
    QTest.keyClicks(page.line, "hitch receiver")
    QTest.keyClick(page.line, Qt.Key.Key_Return)
    _settle(qtbot, desk)
    form = _shown(desk)
    assert isinstance(form, FormPage)
    for key, text in {"tag": "HR-100", **NEW}.items():
        form.box(key).give(text)
    QTest.keyClick(desk, Qt.Key.Key_S, CTRL)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    _settle(qtbot, desk)


def _inspect(qtbot: QtBot, desk: DeskWindow) -> None:
    """Every check good, the wall read at every point, one of them far too thin."""
    QTest.keyClick(desk, Qt.Key.Key_I, CTRL)
    form = desk.pages.form
    assert form
    for row in form.rows:
        row.setFocus()
        QTest.keyClick(row, Qt.Key.Key_1)
    for box in form.boxes:
        for field in box.fields if box.measure.key in READ else ():
            field.setFocus()
            QTest.keyClicks(field, READ[box.measure.key])
        if box.measure.key == "wall":
            box.how_box.method.choose(Method.ULTRASONIC_BARE)
    QTest.keyClick(desk, Qt.Key.Key_S, CTRL)


def _press(qtbot: QtBot, within: QWidget, word: str) -> None:
    """Press a button with this word once it is there."""

    def shown() -> list[QPushButton]:
        return [one for one in within.findChildren(QPushButton) if one.text() == word and one.isVisible()]

    qtbot.waitUntil(lambda: bool(shown()))
    QTest.mouseClick(shown()[0], Qt.MouseButton.LeftButton)


def test_a_thinned_receiver_from_an_empty_register_to_its_printed_notice(qtbot: QtBot, desk: DeskWindow) -> None:
    office: Office = desk._office
    _book(qtbot, desk)
    assert open_item(office, "HR-100").verdict.outcome is Outcome.HOLD, "nobody has inspected it"

    _inspect(qtbot, desk)
    qtbot.waitUntil(lambda: open_item(office, "HR-100").verdict.outcome is Outcome.RETIRE)
    _settle(qtbot, desk)

    QTest.keyClick(desk, Qt.Key.Key_P, CTRL | Qt.KeyboardModifier.ShiftModifier)
    qtbot.waitUntil(lambda: "is printed" in desk.notice.text)
    _press(qtbot, desk.notice, "Look at it")
    preview = next(one for one in desk.findChildren(Preview))
    qtbot.waitUntil(lambda: bool(preview.pages) and preview.is_drawn(0))
    assert preview.windowTitle().startswith("R-")
    desk.close_for_good()
