"""The timeline of a piece, drawn anew for the width there is, so that its type keeps its size."""

from PySide6.QtGui import QResizeEvent

from inspector.desk.look import Look, Type
from inspector.desk.piece.walked import Walked
from inspector.drawings.shapes import Drawing
from inspector.drawings.timeline import timeline
from inspector.drawings.wording import LABEL_MM
from inspector.gear.life import Life

_BOUNDLESS_PX = 100_000
_USUAL_MM = 200.0


class LifePicture(Walked):
    """As wide as the page; close entries part as it grows."""

    def __init__(self, life: Life, look: Look) -> None:
        self._life = life
        super().__init__(timeline(life, _USUAL_MM), look, _BOUNDLESS_PX)
        look.changed.connect(self._fit)

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
        wanted_mm = round(width / self._px_of_mm(), 1)
        same = wanted_mm == self.drawing.width_mm
        return self.drawing if same else timeline(self._life, wanted_mm)

    def _px(self, length_mm: float) -> float:
        return length_mm * self._px_of_mm()

    def _px_of_mm(self) -> float:
        """The smallest type of the drawing is as high as the smallest of the page."""
        return self._look.type_px(Type.SMALL) / LABEL_MM
