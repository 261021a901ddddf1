"""Parts that flow into further lines: the height they are said to take is the one they take now."""

from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from inspector.desk.flow import Flow, flowing


def test_the_height_follows_what_a_part_wants_what_is_hidden_and_what_comes_and_goes(qtbot: QtBot) -> None:
    parts = [QLabel(f"part {number}") for number in range(6)]
    made = flowing(parts)
    qtbot.addWidget(made)
    made.resize(400, 300)
    made.show()
    layout = made.layout()
    assert isinstance(layout, Flow)
    one_line = parts[0].sizeHint().height()
    wide, narrow = layout.sizeHint().width(), layout.minimumSize().width()
    assert layout.heightForWidth(wide) == one_line
    every_line = layout.heightForWidth(narrow)
    assert every_line > 5 * one_line
    parts[2].setText("a part that says a great deal more than it did")
    assert layout.heightForWidth(wide) > one_line
    for part in parts[2:]:
        part.hide()
    assert layout.heightForWidth(wide) == one_line < layout.heightForWidth(narrow) < every_line
    for part in parts[2:]:
        part.show()
    assert layout.heightForWidth(narrow) > every_line - one_line
    before = layout.heightForWidth(narrow)
    more = QLabel("one more")
    layout.addWidget(more)
    more.show()
    assert layout.heightForWidth(narrow) > before
    layout.takeAt(layout.count() - 1)
    assert layout.heightForWidth(narrow) == before
    parts[0].setStyleSheet("font-size: 40px")
    assert layout.heightForWidth(wide) > one_line
