"""The fields of an inspection from top to bottom: head, checks, measures, note, photos; and how the keys go through."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.inspect.caution_line import CautionLine
from inspector.desk.inspect.form_head import FormHead
from inspector.desk.inspect.grade_row import GradeRow, last_grade_words
from inspector.desk.inspect.measure_box import MeasureBox, Past, Stop
from inspector.desk.inspect.photo_strip import PhotoStrip
from inspector.desk.look import GRID, Look, Type
from inspector.desk.opened import Opened
from inspector.desk.plain import column, hairline, said, scroll
from inspector.duties.office import Office
from inspector.duties.plausible import DAY, Caution
from inspector.gear.inspection import NewInspection
from inspector.language import tr
from inspector.refused import Refused


class FormBody(QWidget):
    """changed: something was typed, graded, chosen or put in."""

    changed = Signal()

    def __init__(self, office: Office, opened: Opened, look: Look, background: Background) -> None:
        super().__init__()
        dossier, wall = opened.judged.dossier, opened.judged.verdict.wall
        past = Past(dossier, wall, look)
        self.head = FormHead(opened, office.officer, office.today)
        self.rows = [GradeRow(check, last_grade_words(dossier, check)) for check in dossier.kind.checks]
        self.boxes = [MeasureBox(one, dossier.item, office.decimal, past) for one in dossier.kind.measures]
        self.photos = PhotoStrip(office, opened.tag, background, look)
        self.area = scroll(self._page(), tr("Inspection"))
        self._stops: list[GradeRow | Stop] = [*self.rows, *(stop for box in self.boxes for stop in box.stops)]
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.area)
        self._connect()

    @property
    def is_written(self) -> bool:
        """Whether anything was graded, typed or put in."""
        graded = any(row.grade for row in self.rows)
        measured = any(not box.is_empty for box in self.boxes)
        return graded or measured or bool(self.head.note_text or self.photos.photos) or self.head.more.is_written

    @property
    def open_count(self) -> int:
        """How many checks are not graded."""
        return sum(row.grade is None for row in self.rows)

    def facts(self) -> tuple[NewInspection, int]:
        """What is clear of what was typed, and how many fields are not; the faults are shown there."""
        answers = tuple(row.answer for row in self.rows if row.answer)
        found = [box.readings() for box in self.boxes]
        readings = tuple(reading for clear, _ in found for reading in clear)
        return self.head.inspection(answers, readings), sum(faults for _, faults in found)

    def caution(self, found: Sequence[Caution]) -> None:
        """Say at each field what is out of the ordinary there."""
        places = {(one.measure, one.point): one for one in found}
        for box in self.boxes:
            box.caution(places)
        self.head.caution.tell(places.get((DAY, "")))

    @property
    def confirmed(self) -> tuple[Caution, ...]:
        """The cautions of which somebody said that he looked again."""
        return tuple(one for line in self._cautions() if (one := line.confirmed))

    def open_caution(self) -> CautionLine | None:
        """The first caution that still waits for a second look."""
        return next((line for line in self._cautions() if line.is_open), None)

    def refuse(self, refusal: Refused | None) -> None:
        """Show a refusal at the field it names, or take it away from the head."""
        for box in self.boxes:
            if refusal and box.is_named_by(refusal):
                box.refuse(refusal)
        self.head.refuse(refusal)

    def focus_start(self) -> None:
        """Begin at the first check."""
        self._stops[0].setFocus()

    def focus_again(self) -> None:
        """Go back to the first check that is open, else to the first stop."""
        self.area.setFocus()
        target: QWidget = next((row for row in self.rows if row.grade is None), self._stops[0])
        target.setFocus()
        self.area.ensureWidgetVisible(target)

    def go_to_fault(self) -> None:
        """To the first field that cannot be read, else to the first caution that waits."""
        fault = next((found for box in self.boxes if (found := box.first_fault())), None) or self.head.more.fault()
        if fault is None and (line := self.open_caution()):
            fault = line.again
        if fault:
            fault.setFocus()
            self.area.ensureWidgetVisible(fault, 0, 10 * GRID)  # with what is said below it

    def keep_in_sight(self) -> None:
        """Where the keys go must be seen, with what is said below it."""
        focused = self.focusWidget()
        if self.area.isAncestorOf(focused):
            self.area.ensureWidgetVisible(focused, 0, 10 * GRID)

    def _cautions(self) -> list[CautionLine]:
        return [self.head.caution, *(field.caution for box in self.boxes for field in box.fields)]

    def _page(self) -> QWidget:
        parts: list[QWidget] = [self.head, hairline(), said(tr("Look"), Type.HEAD), *self.rows]
        if self.boxes:
            parts += [hairline(), said(tr("Measure"), Type.HEAD), *self.boxes]
        parts += [hairline(), self.head.note_label, self.head.note]
        parts += [hairline(), said(tr("Photos"), Type.HEAD), self.photos]
        page = column(parts, GRID)
        layout = page.layout()
        if layout:
            layout.setContentsMargins(0, 0, 2 * GRID, 3 * GRID)
        return page

    def _connect(self) -> None:
        for stop in self._stops:
            stop.moves.connect(lambda step, stop=stop: self._move(stop, step))
        for row in self.rows:
            row.graded.connect(self.changed)
        for box in self.boxes:
            box.typed.connect(self.changed)
        self.head.changed.connect(self.changed)
        self.head.note.textChanged.connect(self.changed)
        self.photos.changed.connect(self.changed)

    def _move(self, stop: QWidget, step: int) -> None:
        """Go to the next check or field that is shown; after the last one to the note."""
        place = [one is stop for one in self._stops].index(True) + step
        while 0 <= place < len(self._stops) and not self._stops[place].isVisibleTo(self):
            place += step
        target: QWidget = self._stops[place] if 0 <= place < len(self._stops) else self.head.note
        if place >= 0:
            target.setFocus()
            self.area.ensureWidgetVisible(target, 0, 6 * GRID)
