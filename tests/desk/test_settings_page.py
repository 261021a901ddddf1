"""What can be set: the look holds at once and is remembered; what the club wants is a deed and opens the desk anew."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk.gear_table import GearTable
from inspector.desk.look import Look, Scheme, TextSize
from inspector.desk.place import Go
from inspector.desk.places import SETTINGS
from inspector.desk.remember import recall, recall_columns
from inspector.desk.settings.settings_page import SettingsPage
from inspector.desk.window import DeskWindow
from inspector.duties.club_settings import as_the_club_wants
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger
from inspector.units import System


def _page(qtbot: QtBot, desk: DeskWindow) -> SettingsPage:
    desk.pages.go(Go(SETTINGS))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    page = desk.pages.currentWidget()
    assert isinstance(page, SettingsPage)
    return page


def test_the_look_holds_at_once_and_the_menu_agrees(qtbot: QtBot, desk: DeskWindow) -> None:
    page = _page(qtbot, desk)
    page.scheme.choose(Scheme.DARK)
    assert desk.look.is_dark
    desk.look.choose(Scheme.LIGHT)
    assert page.scheme.value is Scheme.LIGHT
    page.text.choose(TextSize.LARGE)
    assert desk.look.text is TextSize.LARGE
    page.text.choose(TextSize.USUAL)


def test_what_the_club_wants_is_kept_told_and_opens_the_desk_anew(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    page = _page(qtbot, desk)
    offices: list[Office] = []
    desk.seated.connect(offices.append)
    page.change_button.click()
    qtbot.waitUntil(lambda: bool(desk.pages.deed_page.boxes))
    form = desk.pages.deed_page
    form.box("units").give("inches, pounds")
    form.box("paper").give("Letter, 8.5 × 11 in")

    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: bool(offices))

    assert (offices[0].system, offices[0].page) == (System.IMPERIAL, "letter")
    assert as_the_club_wants(office).page == "letter"
    assert "its paper is letter" in told_ledger(office, last=1)[0].sentence


def test_nothing_changed_is_refused_at_a_field(qtbot: QtBot, desk: DeskWindow) -> None:
    page = _page(qtbot, desk)
    page.change_button.click()
    qtbot.waitUntil(lambda: bool(desk.pages.deed_page.boxes))
    desk.pages.deed_page.try_do()
    qtbot.waitUntil(lambda: bool(desk.pages.deed_page.box("decimal").fault_text))


def test_this_machine_remembers_the_look_and_the_columns(
    qtbot: QtBot, desk: DeskWindow, look: Look, tmp_path: Path
) -> None:
    file = tmp_path / "window.json"
    recall(look, MachineSettings(file))
    look.choose(Scheme.DARK)
    look.set_text(TextSize.LARGE)
    table: GearTable = desk.pages.table
    recall_columns(table, MachineSettings(file))

    other = Look()
    recall(other, MachineSettings(file))
    assert (other.scheme, other.text) == (Scheme.DARK, TextSize.LARGE)
    look.choose(Scheme.LIGHT)
    look.set_text(TextSize.USUAL)


def test_columns_chosen_once_stand_again(qtbot: QtBot, desk: DeskWindow, tmp_path: Path) -> None:
    machine = MachineSettings(tmp_path / "window.json")
    recall_columns(desk.pages.table, machine)
    desk.pages.table.columns_chosen.emit(("tag", "verdict", "serial"))

    recall_columns(desk.pages.table, MachineSettings(tmp_path / "window.json"))
    assert desk.pages.table.columns == ("tag", "verdict", "serial")


def test_a_broken_file_costs_nothing(tmp_path: Path) -> None:
    file = tmp_path / "window.json"
    file.write_text("{broken", encoding="utf-8")
    machine = MachineSettings(file)
    assert machine.get("look", "system") == "system"
    machine.put("look", "dark")
    assert MachineSettings(file).get("look") == "dark"
    assert MachineSettings(Path("/proc/nowhere/window.json")).get("look") == ""


def test_the_language_is_kept_for_the_next_start(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    page = _page(qtbot, desk)
    assert page.language.value == ""
    page.language.choose("de")

    assert office.machine.language == "de"
    assert "next start" in desk.notice.text
