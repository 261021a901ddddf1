"""What goes wrong with the register is said in the window, and it looks after the register by itself."""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton
from pytestqt.qtbot import QtBot

from inspector import app
from inspector.desk.deeds.copies import clock, plan
from inspector.desk.doors import Doors
from inspector.desk.form.values import Values
from inspector.desk.look import Look
from inspector.desk.looking_after import begin_looking_after
from inspector.desk.welcome import Welcome
from inspector.desk.window import DeskWindow
from inspector.duties.back_up import usual_folder
from inspector.duties.copy_by_plan import CopyPlan, copy_if_due, copy_plan
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.tell_register import tell_register

Shows = Callable[[Office], DeskWindow]


def looked_after(qtbot: QtBot, window: DeskWindow, office: Office) -> str:
    """What the notice says after the window has looked after the register."""
    begin_looking_after(window, office)
    qtbot.waitUntil(lambda: window.background.is_idle, timeout=20_000)
    return window.notice.text


def test_the_copy_that_is_due_is_made_as_the_window_opens(qtbot: QtBot, open_desk: Shows, office: Office) -> None:
    window = open_desk(office)
    said = looked_after(qtbot, window, office)
    assert "made by the plan" in said and "planned-2026-11-25" in said
    assert len(list(usual_folder(office).iterdir())) == 1


def test_a_changed_register_is_told_as_the_window_opens(qtbot: QtBot, open_desk: Shows, office: Office) -> None:
    window = open_desk(office)
    copy_if_due(office)
    with office.book.reading() as page:
        page._connection.exec_driver_sql("UPDATE standing SET headline = 'all well'")
        page._connection.commit()
    said = looked_after(qtbot, window, office)
    assert "damaged, or changed by another program" in said and "put the last copy back" in said


def test_a_register_that_is_gone_is_told_and_nothing_is_begun_in_its_place(
    qtbot: QtBot, open_desk: Shows, office: Office
) -> None:
    window = open_desk(office)
    assert office.book.file
    office.book.file.unlink()
    QTest.keyClick(window, Qt.Key.Key_0, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: "not there any more" in window.notice.text)
    assert not office.book.file.exists()


def test_a_clock_that_was_set_back_is_told_with_a_button_to_settle_it(
    qtbot: QtBot, open_desk: Shows, office: Office
) -> None:
    back = office.at(office.now - timedelta(days=3))
    window = open_desk(back)
    assert "Set the machine's date and time right" in looked_after(qtbot, window, back)
    QTest.keyClick(window, Qt.Key.Key_0, Qt.KeyboardModifier.ControlModifier)
    page = window.pages.currentWidget()
    assert page
    qtbot.waitUntil(lambda: "The clock is right" in {one.text() for one in page.findChildren(QPushButton)})
    assert any("the last entry was made" in one.text() for one in page.findChildren(QLabel))
    clock().do(back, None, Values({"why": "The other laptop ran ahead."}))
    assert not tell_register(back).clock_is_back


def test_the_plan_of_the_copies_is_changed_in_its_form(office: Office) -> None:
    done = plan().do(office, copy_plan(office), Values({"days": 2, "last": 3, "months": 0}))
    assert "every 2 days" in done.text and copy_plan(office) == CopyPlan(2, 3, 0)


def test_a_damaged_register_is_saved_from_the_first_page(
    qtbot: QtBot, look: Look, office: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("platformdirs.user_config_dir", lambda *_, **__: str(tmp_path / "config"))
    copy_if_due(office)
    (copy,) = usual_folder(office).iterdir()
    data = copy.read_bytes()
    bad = tmp_path / "bad.db"
    bad.write_bytes(data[: len(data) - 4096])
    doors = Doors(app._begin, app._open, app._sample, app._restore, app._rescue)
    welcome = Welcome(doors, str(tmp_path / "saved"), look)
    qtbot.addWidget(welcome)
    offices: list[Office] = []
    welcome.opened.connect(offices.append)
    welcome.rescue(bad)
    qtbot.waitUntil(
        lambda: bool(offices) or (welcome.told.isVisible() and "Saving" not in welcome.told.text()), timeout=30_000
    )
    assert offices, welcome.told.text()
    assert list_gear(replace(offices[0])).count == list_gear(office).count
    offices[0].book.close()
