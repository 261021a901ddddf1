"""Reading points on the drawing: the one whose field has the keys is ringed, a click goes to the field of a point."""

from collections.abc import Callable, Mapping
from math import dist

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QMouseEvent

from inspector.desk.look import Look
from inspector.desk.pen import Picture
from inspector.drawings.reading_points import PointsPicture

_WIDE_PX = 224
_NEAR_MM = 4.0

Draw = Callable[[str | None, Mapping[str, str]], PointsPicture | None]


class ReadingPoints(Picture):
    """chosen: the point that was clicked. draw: the picture for the point with the keys and what is typed by point."""

    chosen = Signal(str)

    def __init__(self, first: PointsPicture, draw: Draw, look: Look) -> None:
        super().__init__(first.drawing, look, _WIDE_PX)
        self._draw = draw
        self.spots = first.spots
        look.changed.connect(self._size)
        self._size()
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def _size(self) -> None:
        wide = self._look.px(_WIDE_PX)
        self.setFixedSize(wide, self.heightForWidth(wide))

    def show_points(self, at: str | None, typed: Mapping[str, str]) -> None:
        """Draw anew. at: the point whose field has the keys, or None."""
        if made := self._draw(at, typed):
            self.drawing, self.spots = made.drawing, made.spots
            self.setAccessibleDescription(self.drawing.describes)
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The nearest point, where one is near."""
        factor = self._width_of(self.width()) / self.drawing.width_mm
        place = (event.position().x() / factor, event.position().y() / factor)
        nearest = min(self.spots, key=lambda spot: dist(spot.at, place), default=None)
        if nearest and dist(nearest.at, place) <= _NEAR_MM:
            self.chosen.emit(nearest.point)
