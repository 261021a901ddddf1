"""Paints drawings: shapes in millimetres become lines in the window, in the inks of the look in force."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QHelpEvent, QIcon, QPainter, QPaintEvent, QPen, QPixmap
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from inspector.desk.look import Look
from inspector.desk.outline import outline, tells_at
from inspector.drawings.marks import outcome_mark
from inspector.drawings.shapes import Anchor, Drawing, Polyline, Shape, Text
from inspector.gear.outcome import Outcome

if TYPE_CHECKING:
    from inspector.gear.rig_result import RigOutcome

_WIDEST_PX = 520
_READS_PX = 380


def paint(drawing: Drawing, painter: QPainter, left: float, top: float, width: float, look: Look) -> None:
    """The drawing with its top left corner at left, top, as wide as width; all in pixels."""
    factor = width / drawing.width_mm
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(left, top)
    for shape in drawing.shapes:
        if isinstance(shape, Text):
            _text(shape, painter, factor, look)
        else:
            _path(shape, painter, factor, look)
    painter.restore()


def _path(shape: Shape, painter: QPainter, factor: float, look: Look) -> None:
    painter.save()
    painter.scale(factor, factor)
    painter.setPen(_pen(shape, factor, look))
    hollow = shape.fill is None or isinstance(shape, Polyline)
    painter.setBrush(Qt.BrushStyle.NoBrush if hollow or shape.fill is None else look.colour(shape.fill))
    painter.drawPath(outline(shape))
    painter.restore()


def _pen(shape: Shape, factor: float, look: Look) -> QPen:
    if shape.ink is None:
        return QPen(Qt.PenStyle.NoPen)
    width_mm = max(shape.width_mm, 1 / factor)  # never thinner than a pixel
    pen = QPen(look.colour(shape.ink), width_mm)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    if shape.dash_mm:
        pattern = [part / width_mm for part in shape.dash_mm]
        pen.setDashPattern(pattern * (1 if len(pattern) % 2 == 0 else 2))
    return pen


def _text(text: Text, painter: QPainter, factor: float, look: Look) -> None:
    if text.ink is None:
        return
    font = look.font_of_height(round(text.size_mm * factor), bold=text.bold)
    wide = QFontMetricsF(font).horizontalAdvance(text.text)
    back = {Anchor.START: 0.0, Anchor.MIDDLE: wide / 2, Anchor.END: wide}[text.anchor]
    painter.setFont(font)
    painter.setPen(look.colour(text.ink))
    painter.drawText(QPointF(text.at[0] * factor - back, text.at[1] * factor), text.text)


def mark_of(outcome: "Outcome | RigOutcome") -> Drawing:
    """The mark of a piece's or a rig's outcome."""
    if isinstance(outcome, Outcome):
        return outcome_mark(outcome, 10.0)
    from inspector.drawings.rig_words import rig_mark

    return rig_mark(outcome, 10.0)


def mark_icon(outcome: "Outcome | RigOutcome", look: Look, size_px: int) -> QIcon:
    """The mark of an outcome as an icon, sharp on a dense screen too."""
    icon = QIcon()
    for density in look.densities():
        pixmap = QPixmap(size_px * density, size_px * density)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        paint(mark_of(outcome), painter, 0, 0, size_px * density, look)
        painter.end()
        pixmap.setDevicePixelRatio(density)
        icon.addPixmap(pixmap)
    return icon


class Picture(QWidget):
    """A drawing, as wide as its place and no wider than it reads well (widest_px). Hovering tells what a shape is."""

    def __init__(self, drawing: Drawing, look: Look, widest_px: int = _WIDEST_PX) -> None:
        super().__init__()
        self.drawing, self._look, self._widest_px = drawing, look, widest_px
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(drawing.title)
        self.setAccessibleDescription(drawing.describes)
        look.changed.connect(self.update)

    def show_drawing(self, drawing: Drawing) -> None:
        """Another drawing in the same place."""
        changes_shape = (drawing.width_mm, drawing.height_mm) != (self.drawing.width_mm, self.drawing.height_mm)
        self.drawing = drawing
        self.setAccessibleDescription(drawing.describes)
        if changes_shape:
            self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        """Its height follows from its width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height that keeps the drawing's shape."""
        return round(self._width_of(width) * self.drawing.height_mm / self.drawing.width_mm)

    def sizeHint(self) -> QSize:
        """A width that reads well."""
        wide = self._look.px(min(self._widest_px, _READS_PX))
        return QSize(wide, self.heightForWidth(wide))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the drawing."""
        painter = QPainter(self)
        paint(self.drawing, painter, 0, 0, self._width_of(self.width()), self._look)
        painter.end()

    def event(self, event: QEvent) -> bool:
        """On hover, tell what lies under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            QToolTip.showText(event.globalPos(), self.tells(QPointF(event.pos())), self)
            return True
        return super().event(event)

    def tells(self, place: QPointF) -> str:
        """What lies under a place in pixels."""
        factor = self._width_of(self.width()) / self.drawing.width_mm
        return tells_at(self.drawing, place / factor)

    def _width_of(self, width: int) -> float:
        return min(width, self._look.px(self._widest_px))


class Mark(Picture):
    """The mark of an outcome at one size; its word stands beside it."""

    def __init__(self, outcome: "Outcome | RigOutcome", look: Look, size_px: int) -> None:
        self.outcome, self._size_px = outcome, size_px
        super().__init__(mark_of(outcome), look)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self._resized()
        look.changed.connect(self._resized)

    def _resized(self) -> None:
        size = self._look.px(self._size_px)
        self.setFixedSize(size, size)
