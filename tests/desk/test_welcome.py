"""The first start without a register: begin one, open one, or make the sample; what is wrong is said at its field."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtGui import QAction
from pytestqt.qtbot import QtBot

from inspector import app
from inspector.desk.doors import Doors, Start
from inspector.desk.look import Look
from inspector.desk.open_desk import OpenDesk
from inspector.desk.welcome import Welcome
from inspector.duties.back_up import back_up
from inspector.duties.look_up import register_facts
from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger

Show = Callable[[Path], Welcome]


@pytest.fixture
def show(qtbot: QtBot, look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Show:
    """Shows the first page for a folder; nothing outside the test's own folder is touched."""
    monkeypatch.setattr("platformdirs.user_config_dir", lambda *_, **__: str(tmp_path / "config"))
    monkeypatch.setattr("platformdirs.user_data_dir", lambda *_, **__: str(tmp_path / "data"))

    def shown(folder: Path) -> Welcome:
        doors = Doors(app._begin, app._open, app._sample, app._restore, app._rescue)
        welcome = Welcome(doors, str(folder), look)
        qtbot.addWidget(welcome)
        welcome.show()
        return welcome

    return shown


def _opened(qtbot: QtBot, welcome: Welcome, press: Callable[[], object]) -> Office:
    offices: list[Office] = []
    welcome.opened.connect(offices.append)
    press()
    qtbot.waitUntil(lambda: bool(offices))
    return offices[0]


def test_a_register_is_begun_and_is_the_one_that_opens_the_next_time(qtbot: QtBot, show: Show, tmp_path: Path) -> None:
    welcome = show(tmp_path / "shed")
    welcome.club.setText("Dune and Ridge Touring Club")
    welcome.officer.setText("First officer")

    office = _opened(qtbot, welcome, welcome.begin_button.click)

    assert register_facts(office).club == "Dune and Ridge Touring Club"
    assert office.officer.name == "First officer"
    assert app._usual_place() == (tmp_path / "shed").resolve()
    office.book.close()


def test_a_club_without_a_name_is_refused_at_its_field_and_can_be_begun_then(
    qtbot: QtBot, show: Show, tmp_path: Path
) -> None:
    welcome = show(tmp_path / "shed")
    welcome.officer.setText("First officer")

    welcome.begin_button.click()
    qtbot.waitUntil(lambda: welcome.club.is_faulty)
    assert welcome.officer.text() == "First officer"

    welcome.club.setText("Dune and Ridge Touring Club")
    office = _opened(qtbot, welcome, welcome.begin_button.click)
    assert office.officer.name == "First officer"
    office.book.close()


def test_an_officer_without_a_name_is_refused_at_his_field(qtbot: QtBot, show: Show, tmp_path: Path) -> None:
    welcome = show(tmp_path / "shed")
    welcome.club.setText("Dune and Ridge Touring Club")
    welcome.begin_button.click()
    qtbot.waitUntil(lambda: welcome.officer.is_faulty)


def test_a_folder_without_a_register_cannot_be_opened(qtbot: QtBot, show: Show, tmp_path: Path) -> None:
    welcome = show(tmp_path / "empty")
    welcome.open_button.click()
    qtbot.waitUntil(lambda: welcome.folder.is_faulty)
    assert "no register" in welcome.folder.fault.text()
    assert welcome.open_button.isEnabled()


def test_a_register_that_is_there_is_opened_and_never_begun_again(
    qtbot: QtBot, show: Show, tmp_path: Path, office: Office
) -> None:
    office.book.close()
    folder = office.out_tray.parent
    welcome = show(folder)
    welcome.club.setText("Another club")
    welcome.officer.setText("Somebody")
    for press in (welcome.begin_button.click, welcome.sample_button.click):
        press()
        qtbot.waitUntil(lambda: welcome.folder.is_faulty)
        welcome.folder.tell(None)

    again = _opened(qtbot, welcome, welcome.open_button.click)
    assert register_facts(again).club == "Dune and Ridge Touring Club"
    again.book.close()


def test_a_copy_is_put_back_into_a_folder_without_a_register(
    qtbot: QtBot, show: Show, office: Office, tmp_path: Path
) -> None:
    made = back_up(office)
    welcome = show(tmp_path / "new shed")
    welcome.head.setText(made.head[:12])

    restored = _opened(qtbot, welcome, lambda: welcome.restore(made.file))

    assert register_facts(restored) == register_facts(office)
    assert told_ledger(restored)[0].deed == "restore"
    restored.book.close()


def test_a_copy_that_lacks_the_head_of_a_paper_is_refused(
    qtbot: QtBot, show: Show, office: Office, tmp_path: Path
) -> None:
    made = back_up(office)
    welcome = show(tmp_path / "new shed")
    welcome.head.setText("0123456789ab")
    welcome.restore(made.file)

    qtbot.waitUntil(welcome.restore_button.isEnabled)
    assert welcome.head.text() == "0123456789ab"
    assert "0123456789ab" in welcome.told.text() + welcome.head.fault.text()
    assert not (tmp_path / "new shed" / "register.db").exists()


def test_a_copy_never_takes_the_place_of_a_register(qtbot: QtBot, show: Show, office: Office, tmp_path: Path) -> None:
    made = back_up(office)
    welcome = show(office.out_tray.parent)
    welcome.restore(made.file)

    qtbot.waitUntil(welcome.restore_button.isEnabled)
    assert "holds a register already" in welcome.folder.fault.text()


def test_another_register_takes_the_place_of_the_one_that_is_open(
    qtbot: QtBot, show: Show, office: Office, look: Look, tmp_path: Path
) -> None:
    first = show(tmp_path / "other")  # as its folders are the test's own
    desk = OpenDesk(office, look, Start(first._doors, str(tmp_path / "other"), ()))
    desk.show()
    before = desk.window
    next(one for one in before.findChildren(QAction) if one.text().startswith("&Open another")).trigger()
    assert desk.welcome and desk.welcome.isVisible()
    desk.welcome.club.setText("Second club")
    desk.welcome.officer.setText("Second officer")
    desk.welcome.begin_button.click()

    qtbot.waitUntil(lambda: desk.window is not before)
    qtbot.addWidget(desk.window)
    qtbot.waitUntil(lambda: desk.window.background.is_idle)
    assert "Second club" in desk.window.status.facts.text()
    assert desk.welcome is None
    desk.window.close_for_good()
