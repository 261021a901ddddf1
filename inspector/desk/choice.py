"""A box of choices that gives back the chosen value itself; rolling the wheel over it changes nothing."""

from collections.abc import Sequence
from datetime import date
from typing import Generic, TypeVar

from PySide6.QtCore import QDate, QLocale, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QDateEdit, QStyle, QStyleOptionComboBox, QStylePainter

from inspector.desk.keys import search_text
from inspector.desk.look import GRID
from inspector.language import spoken

Value = TypeVar("Value")

_TEXT_EDGE_PX = 4
_LEAST_SIGNS = 18


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

    def minimumSizeHint(self) -> QSize:
        """Narrower than its longest words: those are read in full in the list."""
        least = super().minimumSizeHint()
        return QSize(min(least.width(), _LEAST_SIGNS * self.fontMetrics().averageCharWidth()), least.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        """The box with a sign that it opens; the style's own arrow knows nothing of the look. Words too long for it end
        in an ellipsis."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        place = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox, option, QStyle.SubControl.SC_ComboBoxEditField, self
        )
        elide = Qt.TextElideMode.ElideRight
        option.currentText = self.fontMetrics().elidedText(self.currentText(), elide, place.width() - _TEXT_EDGE_PX)
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        room = self.rect().adjusted(0, 0, -self.fontMetrics().height() // 2, 0)
        painter.drawText(room, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, "▾")
        painter.end()

    def showPopup(self) -> None:
        """The list as wide as its words, so that each is read in full."""
        self.view().setMinimumWidth(self.view().sizeHintForColumn(0) + 2 * self.fontMetrics().height())
        super().showPopup()


class StillDate(QDateEdit):
    """A day that the wheel passes over."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the page."""
        event.ignore()


def day_box(name: str, day: date) -> StillDate:
    """A box for a day, its month in the officer's words."""
    box = StillDate(QDate(day.year, day.month, day.day))
    box.setLocale(QLocale(spoken()))
    box.setDisplayFormat("d MMM yyyy")
    box.setAccessibleName(name)
    box.lineEdit().setTextMargins(GRID, 0, 0, 0)
    return box


class Choice(Generic[Value]):
    """Words to choose among, each for a value. Values stay on this side: Qt would make plain text of our words."""

    def __init__(self, name: str, choices: Sequence[tuple[str, Value]], *, scans: bool = False) -> None:
        self._values: list[Value] = []
        self.box = StillBox(scans=scans)
        self.box.setAccessibleName(name)
        self.offer(choices)

    def offer(self, choices: Sequence[tuple[str, Value]]) -> None:
        """Offer other words; the first one is chosen, and nobody is told of it."""
        self._values = [value for _, value in choices]
        self.box.blockSignals(True)
        self.box.clear()
        self.box.addItems([word for word, _ in choices])
        self.box.blockSignals(False)

    @property
    def value(self) -> Value:
        """The value chosen."""
        return self._values[self.box.currentIndex()]

    def has(self, value: Value) -> bool:
        """Whether a value is offered."""
        return value in self._values

    def choose(self, value: Value) -> None:
        """Choose a value."""
        self.box.setCurrentIndex(self._values.index(value))
