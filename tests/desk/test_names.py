"""Whoever cannot see the window: every control has a name."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.window import DeskWindow
from inspector.duties.office import Office

_CONTROLS = {
    QAccessible.Role.Button,
    QAccessible.Role.PushButton,
    QAccessible.Role.CheckBox,
    QAccessible.Role.RadioButton,
    QAccessible.Role.ComboBox,
    QAccessible.Role.EditableText,
    QAccessible.Role.SpinBox,
    QAccessible.Role.Table,
    QAccessible.Role.ProgressBar,
}


def controls(top: QAccessibleInterface) -> Iterator[QAccessibleInterface]:
    """Every control at or below an interface that can be met."""
    if top.state().invisible:
        return
    if top.role() in _CONTROLS:
        yield top
    for number in range(top.childCount()):
        child = top.child(number)
        if child.isValid():
            yield from controls(child)


def unnamed(widget: QWidget) -> list[str]:
    """The controls without a name."""
    found = list(controls(QAccessible.queryAccessibleInterface(widget)))
    assert len(found) > 3, "the walk must meet the controls it judges"
    nameless = [one for one in found if not one.text(QAccessible.Text.Name)]
    return [f"{one.role()} {type(one.object()).__name__}" for one in nameless]


def to_list(qtbot: QtBot, desk: DeskWindow) -> None:
    """The list."""


def to_record(qtbot: QtBot, desk: DeskWindow) -> None:
    """A retired tube's record."""
    desk.pages.open_tag("HR-007")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)


def to_form(qtbot: QtBot, desk: DeskWindow) -> None:
    """The form, with a message above it."""
    to_record(qtbot, desk)
    desk.pages.inspect()
    desk.notice.tell("Something came about.")


@pytest.mark.parametrize("go", [to_list, to_record, to_form])
def test_every_control_has_a_name(qtbot: QtBot, desk: DeskWindow, go: Callable[[QtBot, DeskWindow], None]) -> None:
    """Buttons, fields, boxes and tables, on every page."""
    go(qtbot, desk)
    assert unnamed(desk) == []


def test_a_nameless_button_would_be_found(qtbot: QtBot, desk: DeskWindow) -> None:
    """The test above can fail."""
    desk.pages.table.filter.buttons[None].setText("")
    desk.pages.table.filter.buttons[None].setAccessibleName("")
    assert len(unnamed(desk)) == 1


def test_a_graded_row_says_its_grade(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office) -> None:
    """The grade is heard, not only seen."""
    desk = open_desk(office)
    to_form(qtbot, desk)
    assert desk.pages.form
    row = desk.pages.form.rows[0]
    assert row.accessibleName().endswith("not graded")
    QTest.keyClicks(row, "3")
    assert row.accessibleName().endswith("Bad")
    desk._may_close = True
