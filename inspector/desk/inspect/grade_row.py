"""One check of an inspection: its question, and the grade given by a number key. Nothing is graded beforehand."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QButtonGroup, QFrame, QHBoxLayout, QPushButton, QVBoxLayout

from inspector.desk.look import GRID, Type
from inspector.desk.plain import said
from inspector.duties.last_time import last_answer
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer
from inspector.gear.kind import Check, Grade
from inspector.language import show_day, tr

_KEYS = {
    Qt.Key.Key_1: Grade.GOOD,
    Qt.Key.Key_2: Grade.SLIGHT,
    Qt.Key.Key_3: Grade.BAD,
    Qt.Key.Key_0: Grade.NOT_SEEN,
}
_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Return: 1, Qt.Key.Key_Enter: 1, Qt.Key.Key_Up: -1}


class GradeRow(QFrame):
    """graded: the grade changed. moves: go so many rows on."""

    graded = Signal()
    moves = Signal(int)

    def __init__(self, check: Check, last: str = "") -> None:
        """last: what was seen there last, in words; it is shown and never taken over."""
        super().__init__()
        self.check, self._last = check, last
        self.grade: Grade | None = None
        self.setObjectName("grade")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._hint = said("", Type.SMALL, bold=True)
        self._hint.hide()
        self._group = QButtonGroup(self)
        self.buttons = {grade: self._button(key, grade) for key, grade in _KEYS.items() if self._knows(grade)}
        self._lay_out()
        self._tell()

    @property
    def answer(self) -> Answer | None:
        """The answer, or None where nothing was graded."""
        return Answer(self.check.key, self.grade) if self.grade else None

    def give(self, grade: Grade | None) -> None:
        """Grade the check; None takes the grade away."""
        self.grade = grade
        self._group.setExclusive(False)  # else Qt does not let go of the last one
        for one, made in self.buttons.items():
            made.setChecked(one is grade)
        self._group.setExclusive(True)
        self._hint.hide()
        self._tell()
        self.graded.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """1 good, 2 slight, 3 bad, 0 not seen; arrows move; Delete takes the grade away."""
        key = Qt.Key(event.key())
        if key in _KEYS:
            self._grade_by_key(_KEYS[key])
        elif key in _STEPS:
            self.moves.emit(_STEPS[key])
        elif key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self.give(None)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click anywhere on the row takes the keys there."""
        self.setFocus()

    def _grade_by_key(self, grade: Grade) -> None:
        if not self._knows(grade):
            self._hint.setText(tr("This check knows only good and bad: press 1 or 3."))
            self._hint.show()
            return
        self.give(grade)
        self.moves.emit(1)

    def _knows(self, grade: Grade) -> bool:
        return grade is not Grade.SLIGHT or bool(self.check.slight)

    def _button(self, key: Qt.Key, grade: Grade) -> QPushButton:
        made = QPushButton(f"{key.value - Qt.Key.Key_0.value}  {grade_word(grade)}")
        made.setProperty("rank", "grade")
        made.setCheckable(True)
        made.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the row has the keys
        made.setAccessibleName(tr("{check}: {grade}", check=self.check.name, grade=grade_word(grade)))
        made.clicked.connect(lambda: self.give(grade))
        self._group.addButton(made)
        return made

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(GRID // 2)
        head.addWidget(said(self.check.name, bold=True), 1)
        for made in self.buttons.values():
            head.addWidget(made)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(GRID, GRID, GRID, GRID)
        layout.setSpacing(GRID // 2)
        layout.addLayout(head)
        layout.addWidget(said(self.check.asks))
        for line in self._meanings():
            layout.addWidget(said(line, Type.SMALL, faint=True))
        layout.addWidget(self._hint)

    def _meanings(self) -> list[str]:
        slight = [tr("Slight: {what}", what=self.check.slight)] if self.check.slight else []
        last = [self._last] if self._last else []
        return [*slight, tr("Bad: {what}", what=self.check.bad), *last]

    def _tell(self) -> None:
        """What a screen reader says of the row."""
        given = grade_word(self.grade) if self.grade else tr("not graded")
        self.setAccessibleName(f"{self.check.name}: {given}")
        self.setAccessibleDescription(" ".join([self.check.asks, *self._meanings()]))


def last_grade_words(dossier: Dossier, check: Check) -> str:
    """What was seen at a check last, and when; empty where nobody ever looked."""
    found = last_answer(dossier, check.key)
    if found is None:
        return ""
    return tr("Last: {grade}, {day}", grade=grade_word(found[1].grade).lower(), day=show_day(found[0].on))


def grade_word(grade: Grade) -> str:
    """A grade as it stands on its key."""
    words = {
        Grade.GOOD: tr("Good"),
        Grade.SLIGHT: tr("Slight"),
        Grade.BAD: tr("Bad"),
        Grade.NOT_SEEN: tr("Not seen"),
    }
    return words[grade]
