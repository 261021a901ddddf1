"""The check of one piece, a step at a time: each question, each measure, and at the end all that was answered."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.inspect.grade_row import grade_word
from inspector.desk.inspect.measure_box import MeasureBox
from inspector.desk.keys import search_text
from inspector.desk.kit_question import Question
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, clear, column, facts, fill, said, scroll
from inspector.duties.check_again import CheckAhead
from inspector.duties.plausible import Caution, confirmed_words, reading_name
from inspector.gear.inspection import Answer
from inspector.gear.kind import Grade
from inspector.gear.kit_check import AskedMeasure, KitPiece, Seen
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n
from inspector.refused import Refused

LookAhead = Callable[[Seen], CheckAhead]


class _Measure(QWidget):
    """One measure with its limit. moves: go so many steps on. reached: the keys are in another field now."""

    moves = Signal(int)
    reached = Signal(QWidget)

    def __init__(self, asked: AskedMeasure, piece: KitPiece, decimal: str) -> None:
        super().__init__()
        self.box = MeasureBox(asked.measure, piece.judged.dossier.item, decimal)
        limit = said(tr("{name}: {limit}", name=asked.measure.name, limit=asked.limit), Type.HEAD)
        without = said(tr("Without a calliper or a tape, leave it empty: it counts as not measured."), faint=True)
        fill(QVBoxLayout(self), [limit, self.box, without], GRID)
        for number, field in enumerate(self.box.fields):
            field.moves.connect(lambda step, number=number: self._go(number + step))
            field.caution.again.moves.connect(lambda step, number=number: self._go(number + max(step, 0)))

    def focus_start(self) -> None:
        """The keys go to the first field."""
        self._reach(self.box.fields[0])

    def focus_fault(self) -> None:
        """The keys go to what cannot be taken, or is to be read again."""
        fault = self.box.first_fault()
        if fault and fault not in self.box.fields and self.box.how_box.how.method:
            fault = self.box.fields[0]  # it is said how it was taken: what is not taken is the figure
        waits = next((one.caution.again for one in self.box.fields if one.caution.is_open), None)
        if found := fault or waits:
            self._reach(found)

    @property
    def confirmed(self) -> list[Caution]:
        """What was read again."""
        return [one for field in self.box.fields if (one := field.caution.confirmed)]

    def is_done(self, look: LookAhead) -> bool:
        """Whether all is clear and nothing waits to be read again; what is not is shown at its field."""
        clear_ones, faults = self.box.readings()
        try:
            odd = look(Seen(readings=tuple(clear_ones))).odd if clear_ones and not faults else ()
        except Refused as refusal:
            self.box.refuse(refusal)
            return False
        self.box.caution({(one.measure, one.point): one for one in odd})
        return not faults and not any(field.caution.is_open for field in self.box.fields)

    def _go(self, number: int) -> None:
        """To the next field of several; past the ends to the next step."""
        if 0 <= number < len(self.box.fields):
            self._reach(self.box.fields[number])
        else:
            self.moves.emit(1 if number > 0 else -1)

    def _reach(self, field: QWidget) -> None:
        field.setFocus()
        self.reached.emit(field)


class _Review(QWidget):
    """All answers on one page, and a note. moves: go so many steps on."""

    moves = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.note = QLineEdit()
        self.note.setAccessibleName(tr("Note"))
        self.note.setPlaceholderText(tr("A note, if there is something to say"))
        self.note.returnPressed.connect(lambda: self.moves.emit(1))
        self._heads, self._told = QVBoxLayout(), QVBoxLayout()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, GRID, GRID, GRID)
        layout.setSpacing(GRID)
        layout.addLayout(self._heads)
        layout.addWidget(self.note)
        layout.addLayout(self._told)
        layout.addStretch(1)

    def tell(
        self, questions: list[Question], figures: list[tuple[str, str]], ahead: CheckAhead | None, again: list[Caution]
    ) -> None:
        """Show what was answered and measured; first what it does to the piece, what is open, what was read again."""
        clear(self._told)
        left = [one.check.name for one in questions if one.grade in {None, Grade.NOT_SEEN}]
        head = tr_n("One question is open", "{count} questions are open", len(left)) if left else tr("All is answered")
        parts: list[QWidget] = [said(head, Type.HEAD)]
        if ahead and ahead.judged.verdict.outcome is Outcome.RETIRE:
            parts.append(said(tr("Kept like this, it retires the piece for good."), bold=True))
            parts.append(said(ahead.judged.explanation.reasons[0].sentence, bold=True))
        parts += [said(confirmed_words(one), bold=True) for one in again]
        if left:
            parts.append(said(tr("Like this the piece is not checked: {what}.", what=", ".join(left)), bold=True))
        for grade in (Grade.BAD, Grade.SLIGHT):
            if named := [one.check.name for one in questions if one.grade is grade]:
                parts.append(said(f"{grade_word(grade)}: {', '.join(named)}", bold=True))
        lines = [(one.check.name, grade_word(one.grade or Grade.NOT_SEEN)) for one in questions]
        clear(self._heads)
        fill(self._heads, parts, GRID)
        fill(self._told, [_in_two([*lines, *figures])], GRID)


class PieceForm(QWidget):
    """The steps of one piece. turned: another step is shown. keep: the last step was left forwards. typed: a letter.

    by_figures: whether 1, 2, 3 and 0 answer; not where a tag of the kit begins with a figure, or a scan would answer.
    """

    turned = Signal()
    keep = Signal()
    typed = Signal(str)

    def __init__(self, piece: KitPiece, look: Look, decimal: str, look_ahead: LookAhead, *, by_figures: bool) -> None:
        super().__init__()
        self.piece, self._look_ahead = piece, look_ahead
        about, asked = tr("Check of {tag}", tag=piece.tag), piece.open or piece.asked
        self.questions = [Question(one, look, about, by_figures=by_figures) for one in asked]
        self.measures = [_Measure(one, piece, decimal) for one in piece.measures]
        self.review = _Review()
        self.steps: list[Question | _Measure | _Review] = [*self.questions, *self.measures, self.review]
        self._stack = QStackedWidget()
        for step in self.steps:
            self._stack.addWidget(step if isinstance(step, Question) else scroll(column([step], 0), about))
            step.moves.connect(self.go)
            if isinstance(step, _Measure):
                step.reached.connect(self._keep_in_sight)
        self.back_button = button("‹ " + tr("Back"), lambda: self.go(-1), name=tr("Back to the last question"))
        self.next_button = button(tr("Next"), lambda: self.go(1), rank="first")
        self._hint = said("", faint=True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(self._stack, 1)
        layout.addLayout(self._foot())
        self._tell()

    @property
    def at(self) -> int:
        """The number of the step shown, from 0."""
        return self._stack.currentIndex()

    @property
    def is_written(self) -> bool:
        """Whether something would be lost by throwing it away."""
        given = any(one.grade for one in self.questions)
        return given or any(not one.box.is_empty for one in self.measures) or bool(self.review.note.text().strip())

    @property
    def progress(self) -> str:
        """Which step of how many."""
        if self.at < len(self.questions):
            return tr("question {at} of {count}", at=self.at + 1, count=len(self.questions))
        at = self.at - len(self.questions) + 1
        if at <= len(self.measures):
            return tr("measure {at} of {count}", at=at, count=len(self.measures))
        return tr("all answers")

    @property
    def confirmed(self) -> tuple[Caution, ...]:
        """What was read again, of all measures."""
        return tuple(one for step in self.measures for one in step.confirmed)

    @property
    def ahead(self) -> CheckAhead | None:
        """At the last step, what keeping it would come to; None before, and where it cannot be kept."""
        if self.steps[self.at] is not self.review:
            return None
        readings = [one for step in self.measures for one in step.box.readings()[0]]
        try:
            return self._look_ahead(Seen(self._answers, tuple(readings)))
        except Refused:
            return None

    @property
    def _answers(self) -> tuple[Answer, ...]:
        return tuple(answer for one in self.questions if (answer := one.answer))

    @property
    def told(self) -> str:
        """How far it has come, for the list of pieces."""
        given = sum(one.grade is not None for one in self.questions)
        return tr("begun: {given} of {count} answered, not kept yet", given=given, count=len(self.questions))

    def seen(self) -> Seen | None:
        """What was seen; None where a reading is not clear or waits to be read again: its step is then shown."""
        readings = []
        for number, step in enumerate(self.measures):
            if not step.is_done(self._look_ahead):
                self.show_step(len(self.questions) + number)
                step.focus_fault()
                return None
            readings += step.box.readings()[0]
        return Seen(self._answers, tuple(readings), self.review.note.text().strip())

    def show_step(self, number: int) -> None:
        """Show a step."""
        self._stack.setCurrentIndex(number)
        self._tell()
        self.focus_start()
        self.turned.emit()

    def focus_start(self) -> None:
        """The keys go to the step shown; at the end to the button, so that a scan does not land in the note."""
        step = self.steps[self.at]
        if isinstance(step, _Review):
            self.next_button.setFocus()
        else:
            step.focus_start()

    def go(self, by: int) -> None:
        """Go on or back; a reading that is not clear is mended first, and after the last step all is kept."""
        step = self.steps[self.at]
        if isinstance(step, Question) and by > 0 and not step.may_be_left():
            return
        if isinstance(step, _Measure) and by > 0 and not step.is_done(self._look_ahead):
            step.focus_fault()
        elif self.at + by >= len(self.steps):
            self.keep.emit()
        elif self.at + by >= 0:
            self.show_step(self.at + by)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A letter begins a search: a tag may be scanned at any time."""
        if text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def _keep_in_sight(self, part: QWidget) -> None:
        """Where the keys go must be seen, with what is said below it."""
        area = self._stack.currentWidget()
        if isinstance(area, QScrollArea):
            area.ensureWidgetVisible(part, 0, 3 * GRID)

    def _foot(self) -> QHBoxLayout:
        foot = QHBoxLayout()
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.back_button)
        foot.addWidget(self.next_button)
        foot.addWidget(self._hint, 1, Qt.AlignmentFlag.AlignVCenter)
        return foot

    def _tell(self) -> None:
        """What stands on the buttons, and how the keys work here."""
        last = self.steps[self.at] is self.review
        if last:
            figures = [line for one in self.measures for line in _figures(one)]
            self.review.tell(self.questions, figures, self.ahead, list(self.confirmed))
        self.back_button.setEnabled(self.at > 0)
        self.next_button.setText(tr("Keep this check") if last else tr("Next"))
        self.next_button.setAccessibleName(self.next_button.text())
        step, otherwise = self.steps[self.at], tr("Return keeps it.") if last else tr("Return goes on.")
        self._hint.setText(step.keys if isinstance(step, Question) else otherwise)


def _figures(step: _Measure) -> list[tuple[str, str]]:
    measure = step.box.measure
    typed = [(reading_name(measure, one.point), one.text().strip()) for one in step.box.fields]
    return [(label, text or tr("not measured")) for label, text in typed]


def _in_two(lines: list[tuple[str, str]]) -> QWidget:
    """The lines in two columns, read downwards."""
    half = -(-len(lines) // 2)
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(4 * GRID)
    for part in (lines[:half], lines[half:]):
        layout.addWidget(facts(part), 1, Qt.AlignmentFlag.AlignTop)
    return made
