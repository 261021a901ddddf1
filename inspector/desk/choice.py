"""A box of choices that gives back the chosen value itself; rolling the wheel over it changes nothing."""

from collections.abc import Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QDateEdit

from inspector.desk.keys import search_text

Value = TypeVar("Value")


class StillBox(QComboBox):
    """A box that the wheel passes over: a page scrolled by must not change what was chosen. moves: go so many on.

    scans: a letter belongs to the page, which takes it for a tag, and chooses nothing.
    """

    moves = Signal(int)

    def __init__(self, *, scans: bool = False) -> None:
        super().__init__()
        self._scans = scans

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return goes on; the arrows choose."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.moves.emit(1)
        elif self._scans and search_text(event):
            event.ignore()
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the page."""
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The box with a sign that it opens; the style's own arrow knows nothing of the look."""
        super().paintEvent(event)
        painter = QPainter(self)
        room = self.rect().adjusted(0, 0, -self.fontMetrics().height() // 2, 0)
        painter.drawText(room, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, "▾")
        painter.end()


class StillDate(QDateEdit):
    """A day that the wheel passes over."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the page."""
        event.ignore()


class Choice(Generic[Value]):
    """Words to choose among, each for a value. Values stay on this side: Qt would make plain text of our words."""

    def __init__(self, name: str, choices: Sequence[tuple[str, Value]], *, scans: bool = False) -> None:
        self._values = [value for _, value in choices]
        self.box = StillBox(scans=scans)
        self.box.setAccessibleName(name)
        self.box.addItems([word for word, _ in choices])

    @property
    def value(self) -> Value:
        """The value chosen."""
        return self._values[self.box.currentIndex()]

    def choose(self, value: Value) -> None:
        """Choose a value."""
        self.box.setCurrentIndex(self._values.index(value))
