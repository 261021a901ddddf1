"""The timeline of a piece, drawn anew for the width there is, so that its type keeps its size."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent

from inspector.desk.look import Look, Type
from inspector.desk.piece.walked import Walked
from inspector.drawings.shapes import Drawing
from inspector.drawings.timeline import LEAST_WIDTH_MM, timeline
from inspector.drawings.wording import LABEL_MM
from inspector.gear.life import Life

_BOUNDLESS_PX = 100_000
_USUAL_MM = 200.0
_MOST_KEPT = 8  # drawings, each for a width
_MARK_MM = 6.0  # a mark is lower, the lines of days are higher


class LifePicture(Walked):
    """As wide as the page; close entries part as it grows."""

    def __init__(self, life: Life, look: Look) -> None:
        self._life = life
        first = timeline(life, _USUAL_MM)
        self._by_width = {first.width_mm: first}
        super().__init__(first, look, _BOUNDLESS_PX)
        look.changed.connect(self._fit)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and Down go to the nearest mark of another row; beyond the last row they scroll the page."""
        ways = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        way = ways.get(Qt.Key(event.key()))
        number = self._beyond(way) if way and self.at is not None else None
        if number is None:
            super().keyPressEvent(event)
        else:
            self.stop_at(number)

    def _beyond(self, way: int) -> int | None:
        """The mark nearest in time of the next row that way; None where there is no such row."""
        here = self.stops[self.at or 0].box.center()
        found = [
            (round((one.box.center().y() - here.y()) * way), abs(one.box.center().x() - here.x()), number)
            for number, one in enumerate(self.stops)
            if one.box.height() < _MARK_MM and (one.box.center().y() - here.y()) * way > _MARK_MM / 2
        ]
        return min(found)[2] if found else None

    def heightForWidth(self, width: int) -> int:
        """The height of the drawing that a width asks for."""
        drawing = self._drawn(width)
        return round(min(width, self._px(drawing.width_mm)) * drawing.height_mm / drawing.width_mm)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw it for this width."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        drawing = self._drawn(self.width())
        if drawing.width_mm != self.drawing.width_mm:
            self.redraw(drawing)
            self.updateGeometry()

    def _drawn(self, width: int) -> Drawing:
        """The drawing for a width; Qt asks for the same few again and again as it lays out a page."""
        wanted_mm = max(round(width / self._px_of_mm(), 1), LEAST_WIDTH_MM)
        if wanted_mm not in self._by_width:
            if len(self._by_width) >= _MOST_KEPT:
                self._by_width.clear()
            self._by_width[wanted_mm] = timeline(self._life, wanted_mm)
        return self._by_width[wanted_mm]

    def _px(self, length_mm: float) -> float:
        return length_mm * self._px_of_mm()

    def _px_of_mm(self) -> float:
        """The smallest type of the drawing is as high as the smallest of the page."""
        return self._look.type_px(Type.SMALL) / LABEL_MM
