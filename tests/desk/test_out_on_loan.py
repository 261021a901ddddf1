"""A piece that is out says so in the list and on its record."""

from collections.abc import Callable

from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from inspector.desk.window import DeskWindow
from inspector.duties.gear_list import rows_of
from inspector.duties.lend import lend
from inspector.duties.office import Office


def test_the_list_and_the_record_tell_with_whom_a_piece_is(
    open_desk: Callable[[Office], DeskWindow], qtbot: QtBot, sample: Office
) -> None:
    lend(sample, ["SH-04"], "Nell Hobbery", sample.today)
    assert [row.place for row in rows_of(sample, ("SH-04",))] == ["on loan to Nell Hobbery"]
    desk = open_desk(sample)
    desk.pages.open_tag("SH-04")
    qtbot.waitUntil(lambda: desk.pages.piece is not None and desk.pages.piece.tag == "SH-04")
    said = [one.text() for one in desk.pages.record.findChildren(QLabel) if one.isVisibleTo(desk)]
    assert "Where it is" in said
    assert "on loan to Nell Hobbery since 25 Nov 2026, to be back by 25 Nov 2026" in said
    desk.pages.open_tag("SH-07")
    qtbot.waitUntil(lambda: desk.pages.piece is not None and desk.pages.piece.tag == "SH-07")
    said = [one.text() for one in desk.pages.record.findChildren(QLabel) if one.isVisibleTo(desk)]
    assert "in store at Shed, hook 3" in said
