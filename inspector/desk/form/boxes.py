"""The fields of a form: label, control, hint, and below them what is wrong. Nothing typed is ever taken away."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QMouseEvent, QTextCursor
from PySide6.QtWidgets import QCheckBox, QGridLayout, QHBoxLayout, QLabel, QPlainTextEdit, QWidget

from inspector.desk.choice import Choice
from inspector.desk.fault_field import fault_label, tell_fault
from inspector.desk.form.asked import Asked, OneOf, Tick
from inspector.desk.inspect.how_box import LABEL_PX
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import said
from inspector.language import tr
from inspector.refused import Refused

_TOP = Qt.AlignmentFlag.AlignTop
_LINES = 3


class Box(QWidget):
    """One field. changed: something else stands here. moves: go so many fields on."""

    changed = Signal()
    moves = Signal(int)

    def __init__(self, asked: Asked, look: Look, control: QWidget, fault: QWidget | None = None) -> None:
        super().__init__()
        self.asked, self.control, self._look = asked, control, look
        self._own_fault = fault_label()
        control.setAccessibleName(asked.label)
        control.setAccessibleDescription(asked.hint)
        self._grid = grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 4)
        grid.setColumnStretch(1, 1)
        grid.addWidget(control, 0, 1)
        grid.addWidget(fault or self._own_fault, 1, 1)
        self._label = self._labelled()
        grid.addWidget(self._label, 0, 0, _TOP)
        if asked.hint:
            grid.addWidget(said(asked.hint, Type.SMALL, faint=True), 2, 1)
        look.changed.connect(self._resized)
        self._resized()

    def value(self) -> object:
        """What stands here; refused where it cannot be read."""
        raise NotImplementedError

    @property
    def draft(self) -> str:
        """What stands here as text, to be kept in a draft."""
        raise NotImplementedError

    def give(self, draft: str) -> None:
        """Let what was kept stand here again."""
        raise NotImplementedError

    @property
    def fault_text(self) -> str:
        """What is said to be wrong here; empty for nothing."""
        return "" if self._own_fault.isHidden() else self._own_fault.text()

    def tell(self, refusal: Refused | None) -> None:
        """Say what is wrong here, or nothing."""
        tell_fault(self._own_fault, refusal)
        self.control.setAccessibleDescription(" ".join(filter(None, (self.asked.hint, self.fault_text))))

    def take_keys(self) -> None:
        """Let the keys go here."""
        self.control.setFocus()

    def _labelled(self) -> QWidget:
        words = tr("{label} *", label=self.asked.label) if self.asked.needed else self.asked.label
        label = said(words, faint=True)
        label.setBuddy(self.control)
        label.setAccessibleName(tr("{label}, needed", label=self.asked.label) if self.asked.needed else words)
        return label

    def _resized(self) -> None:
        """All labels of a form are as wide as one another, so that its fields stand in one line."""
        self._label.setFixedWidth(self._look.px(LABEL_PX))


class LinesEdit(QPlainTextEdit):
    """A text of so many lines; Tab goes on to the next field."""

    def __init__(self, lines: int, look: Look) -> None:
        super().__init__()
        self._lines, self._look = lines, look
        self.setTabChangesFocus(True)
        look.changed.connect(self._resize)
        self._resize()

    def _resize(self) -> None:
        """By the look's own type: the widget's is known only once it is shown, too late for the page around it."""
        self.setFixedHeight(QFontMetrics(self._look.font()).lineSpacing() * self._lines + 3 * GRID)


class ProseBox(Box):
    """A text of several lines."""

    def __init__(self, asked: Asked, look: Look, stands: str = "", lines: int = _LINES) -> None:
        self.text = LinesEdit(lines, look)
        super().__init__(asked, look, self.text)
        self.text.setPlainText(stands)
        self.text.moveCursor(QTextCursor.MoveOperation.End)
        self.text.textChanged.connect(self.changed)

    def value(self) -> object:
        """The text."""
        return self.draft

    @property
    def draft(self) -> str:
        """The text."""
        return self.text.toPlainText()

    def give(self, draft: str) -> None:
        """Write a text."""
        self.text.setPlainText(draft)


class ChoiceBox(Box):
    """One of several."""

    def __init__(self, asked: OneOf, look: Look) -> None:
        self._words = [word for word, _ in asked.choices]
        self.choice = Choice[object](asked.label, list(asked.choices))
        super().__init__(asked, look, self.choice.box)
        if asked.stands is not None:
            self.choice.choose(asked.stands)
        self.choice.box.currentIndexChanged.connect(lambda _: self.changed.emit())
        self.choice.box.moves.connect(self.moves)

    def value(self) -> object:
        """The value chosen."""
        return self.choice.value

    @property
    def draft(self) -> str:
        """The word chosen."""
        return self.choice.box.currentText()

    def give(self, draft: str) -> None:
        """Choose by the word, if it is still offered."""
        if draft in self._words:
            self.choice.box.setCurrentIndex(self._words.index(draft))


class _Statement(QCheckBox):
    """Return goes on."""

    moves = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space states it or takes it back."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.moves.emit(1)
        else:
            super().keyPressEvent(event)


class _Words(QLabel):
    """Words of a statement; pressing them is pressing its box."""

    pressed = Signal()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Press the box."""
        self.pressed.emit()


class TickBox(Box):
    """A statement."""

    def __init__(self, asked: Tick, look: Look) -> None:
        self.tick = _Statement()
        words = _Words(asked.label)
        words.setWordWrap(True)  # a box of the toolkit would cut them off
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.tick, 0, _TOP)
        layout.addWidget(words, 1)
        line.setFocusProxy(self.tick)
        super().__init__(asked, look, line)
        self.tick.setAccessibleName(asked.label)
        self.tick.setChecked(asked.stands)
        self.tick.toggled.connect(lambda _: self.changed.emit())
        self.tick.moves.connect(self.moves)
        words.pressed.connect(self.tick.toggle)

    def value(self) -> object:
        """Whether it is made."""
        return self.tick.isChecked()

    @property
    def draft(self) -> str:
        """A sign for a statement made."""
        return "yes" if self.tick.isChecked() else ""

    def give(self, draft: str) -> None:
        """Make it or not."""
        self.tick.setChecked(draft == "yes")

    def _labelled(self) -> QWidget:
        """The statement stands beside its box, so that it is read as one."""
        return said("")
