"""A list of very many pieces shows its first rows before it has counted all of them."""

from collections.abc import Callable
from threading import Event

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk import gear_table
from inspector.desk.gear_list.listed import PAGE, Listed, listed
from inspector.desk.gear_table import GearTable
from inspector.desk.window import DeskWindow
from inspector.duties import gear_list
from inspector.duties.gear_list import answers
from inspector.duties.office import Office
from inspector.gear.lists import Wanted


@pytest.fixture
def counted(monkeypatch: pytest.MonkeyPatch) -> Event:
    """A register that takes a while to be counted: until this is set."""
    may_go_on = Event()

    def slowly(office: Office, *given: object) -> Listed:
        assert may_go_on.wait(20)
        return listed(office, *given)  # type: ignore[arg-type]

    monkeypatch.setattr(gear_list, "_SOON_COUNTED", 0)
    monkeypatch.setattr(gear_table, "listed", slowly)
    return may_go_on


def test_the_first_rows_can_be_used_before_all_are_counted(
    qtbot: QtBot, counted: Event, show_desk: Callable[[Office], DeskWindow], sample: Office
) -> None:
    whole = answers(sample, Wanted())
    desk = show_desk(sample)
    table = desk.pages.table
    qtbot.waitUntil(lambda: table.model.rowCount() > 0)
    assert table.model.tags == whole.tags[:PAGE]
    assert table._told.text() == f"The first {PAGE} pieces; all are being counted."
    assert table.view.chosen == whole.tags[:1] and not table.clear_button.isVisible()
    assert all(table.model.row_at(number) for number in range(PAGE))
    table.enter(whole.tags[3])
    counted.set()
    qtbot.waitUntil(lambda: table.model.tags == whole.tags)
    assert "being counted" not in table._told.text()
    assert table._current_tag() == whole.tags[3], "the bar stays on its piece"


def test_who_narrows_the_list_meanwhile_gets_what_he_asked_for(
    qtbot: QtBot, counted: Event, show_desk: Callable[[Office], DeskWindow], sample: Office
) -> None:
    table: GearTable = show_desk(sample).pages.table
    qtbot.waitUntil(lambda: table.model.rowCount() > 0)
    table.search("shackle")
    counted.set()
    found = answers(sample, Wanted(search="shackle")).tags
    qtbot.waitUntil(lambda: table.model.tags == found)
    assert len(found) > 1


def test_a_piece_among_the_first_rows_opens(
    qtbot: QtBot, counted: Event, show_desk: Callable[[Office], DeskWindow], sample: Office
) -> None:
    desk = show_desk(sample)
    table = desk.pages.table
    qtbot.waitUntil(lambda: table.model.rowCount() > 0)
    table.enter(table.model.tags[2])
    QTest.keyClick(table.view, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert desk.pages.piece and desk.pages.piece.tag == answers(sample, Wanted()).tags[2]
    counted.set()
