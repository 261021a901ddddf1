"""One question on one piece: what to look at, and the answers by key or by touch. Nothing is answered beforehand."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QVBoxLayout, QWidget

from inspector.desk.answer_button import AnswerButton
from inspector.desk.flow import flowing
from inspector.desk.inspect.grade_row import grade_word
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import column, said, scroll
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
_NARROW_PX, _GAP = 760, 4 * GRID
_ACROSS, _DOWN = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_RESIZED = {QEvent.Type.Resize, QEvent.Type.LayoutRequest, QEvent.Type.StyleChange}


class Question(QFrame):
    """moves: go so many steps on.

    about: what a screen reader calls it. by_figures: whether the keys 1, 2, 3 and 0 answer. Until it is answered the
    question itself has the keys. The question and every answer are in sight at once: where the page is too low for
    that, the answers are their words alone, below what each of them means.
    """

    moves = Signal(int)

    def __init__(self, check: Check, look: Look, about: str, *, by_figures: bool) -> None:
        super().__init__()
        self.check, self._by_figures, self._look = check, by_figures, look
        self.grade: Grade | None = None
        self.setObjectName("question")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(check.name)
        self.setAccessibleDescription(check.asks)
        self._told_open = False  # since the question was shown last
        self._hint = said("", bold=True)
        self._hint.hide()
        self.buttons = {grade: self._button(key, grade, look) for key, grade in _KEYS.items() if self._knows(grade)}
        self._name, self._asks = said(check.name, faint=True), said(check.asks, Type.HEAD)
        told = [one for one in self.buttons if one is not Grade.GOOD]  # good is as the question asks
        self._means = {grade: said(f"{grade_word(grade)}: {_means(check, grade)}") for grade in told}
        self._is_low: bool | None = None
        self._beside, self._below = QWidget(), flowing([])
        beside, layout = QVBoxLayout(self._beside), QVBoxLayout(self)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.setSpacing(GRID)
        layout.setContentsMargins(GRID, 0, 0, 0)
        layout.setSpacing(GRID)
        self._box = QBoxLayout(_ACROSS)
        self._area = scroll(self._inside(), about)
        self._area.installEventFilter(self)
        for part in (self._area, self._hint, self._below):
            layout.addWidget(part)
        self._set_low(False)

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

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The keys are the question's, not those of what it is scrolled in."""
        if event.type() is QEvent.Type.KeyPress:
            event.ignore()
            return True
        return super().eventFilter(watched, event)

    def event(self, event: QEvent) -> bool:
        """Arrange it anew whenever its place or its type has another size."""
        taken = super().event(event)
        if event.type() in _RESIZED:
            self._arrange()
        return taken

    def _arrange(self) -> None:
        """The answers stand beside the question where there is room, else below it."""
        is_narrow = self.width() < self._look.px(_NARROW_PX)
        self._box.setDirection(_DOWN if is_narrow else _ACROSS)
        wide = self.width() - 4 * GRID
        third = wide if is_narrow else (wide - _GAP) // 3
        rest = wide if is_narrow else wide - _GAP - third
        asks = sum(one.heightForWidth(third) + GRID for one in (self._name, self._asks))
        answers = sum(one.full_height(rest) + GRID for one in self.buttons.values())
        self._set_low((asks + answers if is_narrow else max(asks, answers)) + 2 * GRID > self.height())

    def _set_low(self, is_low: bool) -> None:
        """Where the page is low the answers stand bare below all that is scrolled."""
        place = (self._below if is_low else self._beside).layout()
        if is_low is self._is_low or place is None:
            return
        self._is_low = is_low
        has_keys = self.focusWidget()
        for made in self.buttons.values():
            made.make_bare(is_low)
            place.addWidget(made)
        self._beside.setHidden(is_low)
        self._name.setHidden(is_low)
        for label in self._means.values():
            label.setVisible(is_low)
        if has_keys in self.buttons.values():
            has_keys.setFocus()

    def _inside(self) -> QWidget:
        """What is scrolled where it is higher than its place."""
        inside = QWidget()
        inside.setLayout(self._box)
        self._box.setContentsMargins(0, GRID, GRID, GRID)
        self._box.setSpacing(_GAP)
        self._box.addWidget(column([self._name, self._asks, *self._means.values()]), 1)
        self._box.addWidget(self._beside, 2, Qt.AlignmentFlag.AlignTop)
        return inside

    def _answer_by_key(self, grade: Grade) -> None:
        if self._knows(grade):
            self.give(grade)
            self._reach(self.buttons[grade])
            return
        self._tell(tr("This question knows only good and bad: press 1 or 3."))

    def _tell(self, hint: str) -> None:
        self._hint.setText(hint)
        self._hint.show()

    def _go_along(self, step: int) -> None:
        made = list(self.buttons.values())
        before = -1 if step > 0 else 0  # from the question itself: down to the first answer, up to the last
        at = next((number for number, one in enumerate(made) if one.hasFocus()), before)
        self._reach(made[(at + step) % len(made)])

    def _reach(self, part: QWidget) -> None:
        """Give a part the keys, and bring what it means into sight."""
        part.setFocus()
        means = next((self._means[one] for one in self._means if self.buttons[one] is part), self._asks)
        self._area.ensureWidgetVisible(means if self._is_low else part, 0, 3 * GRID)

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
