"""One question on one piece: what to look at, and the answers by key or by touch. Nothing is answered beforehand."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QVBoxLayout, QWidget

from inspector.desk.answer_button import AnswerButton
from inspector.desk.inspect.grade_row import grade_word
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import column, said
from inspector.gear.inspection import Answer
from inspector.gear.kind import Check, Grade
from inspector.language import tr

_KEYS = {
    Qt.Key.Key_1: Grade.GOOD,
    Qt.Key.Key_2: Grade.SLIGHT,
    Qt.Key.Key_3: Grade.BAD,
    Qt.Key.Key_0: Grade.NOT_SEEN,
}
_STEPS = {Qt.Key.Key_Return: 1, Qt.Key.Key_Enter: 1, Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}
_ALONG = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}
_NARROW_PX = 760


class Question(QFrame):
    """moves: go so many steps on. reached: the keys are on another part now.

    by_figures: whether the keys 1, 2, 3 and 0 answer. Until it is answered the question itself has the keys.
    """

    moves = Signal(int)
    reached = Signal(QWidget)

    def __init__(self, check: Check, look: Look, *, by_figures: bool) -> None:
        super().__init__()
        self.check, self._by_figures = check, by_figures
        self.grade: Grade | None = None
        self.setObjectName("question")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(check.name)
        self.setAccessibleDescription(check.asks)
        self._told_open = False  # since the question was shown last
        self._hint = said("", bold=True)
        self._hint.hide()
        self.buttons = {grade: self._button(key, grade, look) for key, grade in _KEYS.items() if self._knows(grade)}
        asks = column([said(check.name, faint=True), said(check.asks, Type.HEAD)])
        answers = QWidget()
        lines = QVBoxLayout(answers)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(GRID)
        for part in (*self.buttons.values(), self._hint):
            lines.addWidget(part)
        lines.addStretch(1)
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, GRID, GRID, GRID)
        self._box.setSpacing(4 * GRID)
        self._box.addWidget(asks, 1)
        self._box.addWidget(answers, 2)

    @property
    def answer(self) -> Answer | None:
        """The answer, or None where none was given."""
        return Answer(self.check.key, self.grade) if self.grade else None

    def give(self, grade: Grade | None) -> None:
        """Answer it; None takes the answer away."""
        self.grade = grade
        for one, made in self.buttons.items():
            made.setChecked(one is grade)
        self._hint.hide()

    @property
    def keys(self) -> str:
        """How the keys answer it."""
        if not self._by_figures:
            return tr("Keys: ↑ ↓ and the space bar answer; Return or → next, ← back.")
        if self._knows(Grade.SLIGHT):
            return tr("Keys: 1 good, 2 slight, 3 bad, 0 not seen; Return or → next, ← back.")
        return tr("Keys: 1 good, 3 bad, 0 not seen; Return or → next, ← back.")

    def focus_start(self) -> None:
        """The keys go to the answer given, else to the question: an answer with the keys on it is not chosen yet."""
        self._told_open = False
        self._hint.hide()
        self._reach(self.buttons[self.grade] if self.grade else self)

    def may_be_left(self) -> bool:
        """Whether it goes on from here: without an answer only after it was told, once each time it is shown."""
        if self.grade or self._told_open:
            return True
        self._told_open = True
        self._tell(tr("Nothing is answered yet. Answer it, or go on once more: it then stays open, and the piece is "
                      "not checked."))  # fmt: skip
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Figures answer; Return and right go on, left goes back; up and down go along the answers."""
        key = Qt.Key(event.key())
        if key in _KEYS and self._by_figures:
            self._answer_by_key(_KEYS[key])
        elif key in _STEPS:
            self.moves.emit(_STEPS[key])
        elif key in _ALONG:
            self._go_along(_ALONG[key])
        elif key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self.give(None)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The answers stand beside the question where there is room, else below it."""
        super().resizeEvent(event)
        down, across = QBoxLayout.Direction.TopToBottom, QBoxLayout.Direction.LeftToRight
        self._box.setDirection(down if self.width() < _NARROW_PX else across)

    def _answer_by_key(self, grade: Grade) -> None:
        if self._knows(grade):
            self.give(grade)
            self._reach(self.buttons[grade])
            return
        self._tell(tr("This question knows only good and bad: press 1 or 3."))

    def _tell(self, hint: str) -> None:
        self._hint.setText(hint)
        self._hint.show()
        self.reached.emit(self._hint)

    def _go_along(self, step: int) -> None:
        made = list(self.buttons.values())
        before = -1 if step > 0 else 0  # from the question itself: down to the first answer, up to the last
        at = next((number for number, one in enumerate(made) if one.hasFocus()), before)
        self._reach(made[(at + step) % len(made)])

    def _reach(self, part: QWidget) -> None:
        part.setFocus()
        self.reached.emit(part)

    def _knows(self, grade: Grade) -> bool:
        return grade is not Grade.SLIGHT or bool(self.check.slight)

    def _button(self, key: Qt.Key, grade: Grade, look: Look) -> AnswerButton:
        figure = str(key.value - Qt.Key.Key_0.value) if self._by_figures else ""
        made = AnswerButton(figure, grade_word(grade), _means(self.check, grade), look, self.check.name)
        made.picked.connect(lambda: self.give(grade))
        return made


def _means(check: Check, grade: Grade) -> str:
    means = {
        Grade.GOOD: tr("Yes: it is as the question asks."),
        Grade.SLIGHT: check.slight,
        Grade.BAD: check.bad,
        Grade.NOT_SEEN: tr("Nobody looked. The piece is then not checked."),
    }
    return means[grade]
