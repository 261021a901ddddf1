"""A picture whose marks can be read by keys: Left and Right go from one that tells something to the next."""

from msgspec import Struct
from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.look import Look, Type
from inspector.desk.outline import outline
from inspector.desk.pen import Picture
from inspector.desk.plain import fill, said
from inspector.drawings.shapes import Drawing, Ink, Shape
from inspector.language import tr

_ROOM_PX = 3.0  # between a mark and the frame round it


class Stop(Struct, frozen=True):
    """A mark that tells something, with the room it takes in mm."""

    tells: str
    box: QRectF


def stops_of(drawing: Drawing) -> tuple[Stop, ...]:
    """Everything a drawing tells, each once, in the order in which it is drawn."""
    found: dict[str, QRectF] = {}
    for shape in drawing.shapes:
        if shape.tells:
            found[shape.tells] = found.get(shape.tells, QRectF()).united(_box(shape))
    return tuple(Stop(tells, box) for tells, box in found.items())


def _box(shape: Shape) -> QRectF:
    """A level or upright line has no area of its own; without one Qt would not unite it."""
    edge = max(shape.width_mm, 0.1) / 2
    return outline(shape).boundingRect().adjusted(-edge, -edge, edge, edge)


class Walked(Picture):
    """told: what the mark under the keys tells; empty when the keys leave the picture."""

    told = Signal(str)

    def __init__(self, drawing: Drawing, look: Look, widest_px: int) -> None:
        super().__init__(drawing, look, widest_px)
        self.stops = stops_of(drawing)
        self.at: int | None = None
        if self.stops:
            self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and Right go one mark back or on, Home and End to the first and the last."""
        last = len(self.stops) - 1
        at = -1 if self.at is None else self.at
        wanted = {
            Qt.Key.Key_Right: min(at + 1, last),
            Qt.Key.Key_Left: max(at - 1, 0),
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }.get(Qt.Key(event.key()))
        if wanted is None or not self.stops:
            super().keyPressEvent(event)
        else:
            self.stop_at(wanted)

    def stop_at(self, number: int) -> None:
        """Read the mark of this number."""
        self.at = number
        said_now = self.stops[number].tells
        self.setAccessibleDescription(said_now)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, said_now))
        self.told.emit(said_now)
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click on a mark reads it too, for whoever cannot hold the pointer still."""
        tells = self.tells(QPointF(event.position()))
        number = next((number for number, one in enumerate(self.stops) if one.tells == tells), None)
        if number is not None:
            self.stop_at(number)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Say what the keys do here, or go on where they were."""
        super().focusInEvent(event)
        hint = tr("Left and Right read the {count} marks of this picture one by one.", count=len(self.stops))
        self.told.emit(hint if self.at is None else self.stops[self.at].tells)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The picture describes itself as a whole again."""
        super().focusOutEvent(event)
        if event.reason() is Qt.FocusReason.ActiveWindowFocusReason:
            return  # another window has the keys for a while; what is read stays
        self.setAccessibleDescription(self.drawing.describes)
        self.told.emit("")
        self.update()

    def redraw(self, drawing: Drawing) -> None:
        """Show another drawing of the same things; the keys stay on the same mark where it is still there."""
        here = self.stops[self.at].tells if self.at is not None else ""
        self.drawing, self.stops = drawing, stops_of(drawing)
        self.at = next((number for number, one in enumerate(self.stops) if one.tells == here), None)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The drawing, and a frame round the mark that is read; round the picture while none is."""
        super().paintEvent(event)
        if not self.hasFocus():
            return
        factor = self._width_of(self.width()) / self.drawing.width_mm
        full = QRectF(0, 0, self.drawing.width_mm * factor, self.drawing.height_mm * factor)
        box = full if self.at is None else self._frame(self.stops[self.at], factor).intersected(full)
        painter = QPainter(self)
        painter.setPen(QPen(self._look.colour(Ink.INK), 2))
        painter.drawRect(box.adjusted(1, 1, -1, -1))
        painter.end()

    def _frame(self, stop: Stop, factor: float) -> QRectF:
        box, room = stop.box, self._look.px(_ROOM_PX)
        corner = QPointF(box.left() * factor - room, box.top() * factor - room)
        return QRectF(corner.x(), corner.y(), box.width() * factor + 2 * room, box.height() * factor + 2 * room)


class Readable(QWidget):
    """A picture with a line below it that says what the keys are on; the line is there only while they are."""

    def __init__(self, picture: Walked) -> None:
        super().__init__()
        self.picture = picture
        self.line = said("", Type.SMALL)
        self.line.hide()
        fill(QVBoxLayout(self), [picture, self.line], 4)
        picture.told.connect(self._tell)

    def _tell(self, text: str) -> None:
        self.line.setText(text)
        self.line.setVisible(bool(text))


def readable(drawing: Drawing, look: Look, widest_px: int = 520) -> Readable:
    """A drawing to be walked through."""
    return Readable(Walked(drawing, look, widest_px))
