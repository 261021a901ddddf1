"""The small parts of a page: a text is marked by mouse and copied, and weighs nothing before."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.plain import said, short

_LEFT, _NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


def test_a_text_is_marked_by_mouse_and_copied_by_key(qtbot: QtBot) -> None:
    text = short("WLL 4.75 t")
    qtbot.addWidget(text)
    with qtbot.waitActive(text):
        text.show()
        text.activateWindow()
    assert Qt.TextInteractionFlag.TextSelectableByMouse not in text.textInteractionFlags()
    middle = text.height() // 2
    QTest.mousePress(text, _LEFT, _NONE, QPoint(0, middle))
    QTest.mouseMove(text, QPoint(text.width(), middle))
    QTest.mouseRelease(text, _LEFT, _NONE, QPoint(text.width(), middle))
    assert text.selectedText() == "WLL 4.75 t" and text.hasFocus()
    QGuiApplication.clipboard().clear()
    QTest.keyClick(text, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == "WLL 4.75 t"


def test_a_word_is_marked_by_a_double_click(qtbot: QtBot) -> None:
    text = said("pin in double shear")
    qtbot.addWidget(text)
    text.show()
    QTest.mouseDClick(text, _LEFT, _NONE, QPoint(3, text.fontMetrics().height() // 2))
    assert text.selectedText() == "pin"


def test_marking_moves_nothing(qtbot: QtBot) -> None:
    page = QWidget()
    qtbot.addWidget(page)
    layout = QVBoxLayout(page)
    texts = [said("The wall has thinned from inside; nothing of it is seen. " * often) for often in (1, 4, 9)]
    for one in texts:
        layout.addWidget(one)
    page.resize(300, 500)
    with qtbot.waitExposed(page):
        page.show()
    before = [one.geometry() for one in texts]
    for one in texts:
        QTest.mouseClick(one, _LEFT, _NONE, QPoint(5, 5))
        qtbot.wait(1)
        assert one.textInteractionFlags() == Qt.TextInteractionFlag.TextSelectableByMouse
    assert [one.geometry() for one in texts] == before
