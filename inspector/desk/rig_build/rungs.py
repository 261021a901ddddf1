"""What a chain is made of on the bench: its parts and the places between them. Each has the keys and a name."""

from PySide6.QtCore import QMimeData, QPoint, Qt, Signal
from PySide6.QtGui import QDrag, QDragEnterEvent, QDragLeaveEvent, QDropEvent, QFocusEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import said
from inspector.drawings.rig_words import rig_word
from inspector.gear.rig_result import JointUse, RigOutcome
from inspector.language import tr

PART_FORMAT = "application/x-rig-part"  # a part of the bench or of the chain on its way, by tag
FROM_FORMAT = "application/x-rig-part-from"  # the number in the run that it comes from
_CTRL = Qt.KeyboardModifier.ControlModifier
_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1}
_MARK_PX = 20


class Rung(QFrame):
    """A part or a place. step: the keys go on. typed: a part is looked for by this letter. reached: the keys came."""

    step = Signal(int)
    typed = Signal(str)
    reached = Signal()

    def __init__(self, at: int) -> None:
        super().__init__()
        self.at = at
        self.setObjectName("grade")  # looks as any row that has the keys
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The arrows go along the chain; a letter looks for a part."""
        step = _STEPS.get(Qt.Key(event.key()), 0)
        if step and not event.modifiers() & _CTRL:
            self.step.emit(step)
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keys came."""
        super().focusInEvent(event)
        self.reached.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click takes the keys here."""
        self.setFocus()


class PlaceRung(Rung):
    """A place between two parts, which says what does not go together there. dropped: a part, and the number in the run
    that it was drawn from, -1 from the bench. seek: Return was pressed."""

    dropped = Signal(str, int)
    seek = Signal()

    def __init__(self, at: int, before: str, behind: str, joint: JointUse | None, look: Look) -> None:
        super().__init__(at)
        self.joint = joint
        self._words = _between(before, behind)
        self._label = said(self._words, Type.SMALL, faint=True)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID // 4, GRID, GRID // 4)
        layout.setSpacing(GRID)
        if joint and joint.outcome is not RigOutcome.SOUND:
            fault = said(f"{rig_word(joint.outcome)}: {joint.says}", bold=True)
            fault.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
            layout.addWidget(Mark(joint.outcome, look, _MARK_PX), 0, Qt.AlignmentFlag.AlignTop)
            words = QVBoxLayout()
            words.setSpacing(0)
            words.addWidget(self._label)
            words.addWidget(fault)
            layout.addLayout(words, 1)
        else:
            layout.addWidget(self._label, 1)
        self._label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAcceptDrops(True)
        self.setAccessibleName(self._words)
        self.setAccessibleDescription(self._described())

    @property
    def is_lit(self) -> bool:
        """Whether a part that is drawn would fall in here."""
        return self.property("lit") is True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return goes to the parts."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.seek.emit()
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """It lights up, and says that the part goes in here."""
        if event.mimeData().hasFormat(PART_FORMAT):
            event.acceptProposedAction()
            self._light(True)

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """The part is drawn on."""
        self._light(False)

    def dropEvent(self, event: QDropEvent) -> None:
        """The part goes in here."""
        self._light(False)
        event.acceptProposedAction()
        data = event.mimeData()
        tag = bytes(data.data(PART_FORMAT).data()).decode()
        came = int(bytes(data.data(FROM_FORMAT).data())) if data.hasFormat(FROM_FORMAT) else -1
        self.dropped.emit(tag, came)

    def light(self, lit: bool) -> None:
        """Show, while a part is drawn, that it can go in here."""
        self.setProperty("open", lit)
        self._restyle()

    def _light(self, lit: bool) -> None:
        self.setProperty("lit", lit)
        self._label.setText(tr("It goes in here.") if lit else self._words)
        self._restyle()

    def _restyle(self) -> None:
        self.style().unpolish(self)
        self.style().polish(self)

    def _described(self) -> str:
        if self.joint is None:
            return ""
        return f"{self.joint.name}. {rig_word(self.joint.outcome)}: {self.joint.says}"


class PartRung(Rung):
    """A part of the chain. take: out of it. shift: so many places on. drawn: it is drawn away, or no longer."""

    take = Signal()
    shift = Signal(int)
    drawn = Signal(bool)

    def __init__(self, at: int, tag: str, head: str, tells: str) -> None:
        super().__init__(at)
        self.tag = tag
        self._pressed = QPoint()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(GRID, GRID // 2, GRID, GRID // 2)
        layout.setSpacing(0)
        for label in (said(head, bold=True), *((said(tells, Type.SMALL),) if tells else ())):
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)  # the part itself is drawn
            layout.addWidget(label)
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.setAccessibleName(tr("Part {number}: {head}", number=at + 1, head=head))
        self.setAccessibleDescription(tells)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete takes it out; Ctrl and an arrow move it."""
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self.take.emit()
        elif key in _STEPS and event.modifiers() & _CTRL:
            self.shift.emit(_STEPS[key])
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """It may be drawn from here."""
        super().mousePressEvent(event)
        self._pressed = event.position().toPoint()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Draw it to another place."""
        far = (event.position().toPoint() - self._pressed).manhattanLength() >= QApplication.startDragDistance()
        if event.buttons() & Qt.MouseButton.LeftButton and far:
            self.drawn.emit(True)
            draw(self, part_data(self.tag, self.at))
            self.drawn.emit(False)


def part_data(tag: str, came_from: int = -1) -> QMimeData:
    """A part on its way."""
    data = QMimeData()
    data.setData(PART_FORMAT, tag.encode())
    if came_from >= 0:
        data.setData(FROM_FORMAT, str(came_from).encode())
    return data


def draw(source: QWidget, data: QMimeData) -> None:
    """Draw a part until it is let go."""
    drag = QDrag(source)
    drag.setMimeData(data)
    if isinstance(source, PartRung):
        drag.setPixmap(source.grab())
    drag.exec(Qt.DropAction.CopyAction)


def _between(before: str, behind: str) -> str:
    if before and behind:
        return tr("between {one} and {other}", one=before, other=behind)
    if before:
        return tr("behind {one}", one=before)
    return tr("before {one}", one=behind) if behind else tr("the first part of the run, at the stuck vehicle")
