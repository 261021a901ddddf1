"""The time line of forecast retirements: pointed at or chosen by keys it tells each piece, pressed it opens it."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QFocusEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QLabel

from inspector.desk.look import Look
from inspector.desk.pen import Picture
from inspector.desk.plain import said
from inspector.drawings.retire_line import ending_words, retire_line
from inspector.gear.needs import Ending
from inspector.language import tr

WIDEST_PX = 1000
_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Left: -1}
_ENDS = {Qt.Key.Key_Home: 0, Qt.Key.Key_End: -1}
_OPENS = {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}


class RetireChart(Picture):
    """opened: a tag to show. told: below it, what the chosen row says."""

    opened = Signal(str)

    def __init__(self, ends: Sequence[Ending], on: date, last: date, look: Look) -> None:
        self._ends, self._on, self._last = ends, on, last
        self._line = retire_line(ends, on, last)
        super().__init__(self._line.drawing, look, WIDEST_PX)
        self.told: QLabel = said(tr("Choose a piece with the arrow keys, or point at it."), faint=True)
        self.chosen = 0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def choose(self, row: int) -> None:
        """Mark a row and tell it, to eyes and to a screen reader."""
        self.chosen = min(max(row, 0), len(self._ends) - 1)
        text = ending_words(self._ends[self.chosen])
        self.told.setText(text)
        self.setAccessibleDescription(text)
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.DescriptionChanged))
        self._draw(self.chosen)

    def row_at(self, place: QPointF) -> int | None:
        """The row below a place in pixels; None beside them."""
        factor = self._width_of(self.width()) / self.drawing.width_mm
        inside = 0 <= place.x() <= self.drawing.width_mm * factor
        return self._line.row_at(place.y() / factor) if inside else None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The arrows choose, Return opens."""
        key = Qt.Key(event.key())
        if key in _STEPS:
            self.choose(self.chosen + _STEPS[key])
        elif key in _ENDS:
            self.choose(_ENDS[key] % len(self._ends))
        elif key in _OPENS:
            self.opened.emit(self._ends[self.chosen].tag)
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Pressing a row opens its piece."""
        row = self.row_at(event.position())
        if event.button() is Qt.MouseButton.LeftButton and row is not None:
            self.opened.emit(self._ends[row].tag)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The chosen row is marked while the keys are here."""
        super().focusInEvent(event)
        self.choose(self.chosen)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """No mark where the keys are not."""
        super().focusOutEvent(event)
        self._draw(None)

    def _draw(self, chosen: int | None) -> None:
        self.drawing = retire_line(self._ends, self._on, self._last, chosen).drawing
        self.update()
