"""The form of an inspection: graded by number keys, measured field by field, the verdict beside it while one types."""

from dataclasses import replace

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QHideEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.choice import StillBox
from inspector.desk.inspect.form_head import FormHead
from inspector.desk.inspect.grade_row import GradeRow
from inspector.desk.look import GRID, Look, Type
from inspector.desk.inspect.measure_box import MeasureBox, PointField
from inspector.desk.opened import Opened
from inspector.desk.plain import button, column, hairline, said, scroll
from inspector.desk.inspect.preview_pane import PreviewPane
from inspector.duties.office import Office
from inspector.duties.preview_verdict import first_values, note_first, preview_verdict
from inspector.gear.inspection import FirstValue, NewInspection
from inspector.language import tr, tr_n
from inspector.refused import Refused

_PAUSE_MS = 400
_NARROW_PX = 800
_ROOMY_PX = 1100
_STRIP_PX = 136


class InspectForm(QWidget):
    """save: an inspection to keep, as (tag, facts). cancel: leave the form. refused: something stands in the way."""

    save = Signal(str, object)
    cancel = Signal()
    refused = Signal(object)

    def __init__(self, office: Office, opened: Opened, look: Look) -> None:
        super().__init__()
        self.setObjectName("page")
        self._office, self._opened, self._look = office, opened, look
        self._dossier = opened.judged.dossier
        self.head = FormHead(opened, office.officer, office.today)
        self.rows = [GradeRow(check) for check in self._dossier.kind.checks]
        self.boxes = [MeasureBox(one, self._dossier.item, office.decimal) for one in self._dossier.kind.measures]
        self.preview = PreviewPane(look)
        self.noted: tuple[FirstValue, ...] = ()  # what held or retired the piece in a preview
        self.save_button = button(tr("Save inspection"), self.try_save, rank="first")
        self._left = said("", Type.SMALL, faint=True)
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self.look_ahead)
        self._waits = False
        self._area = self._form()
        self._lay_out()
        self._connect()
        self.look_ahead()

    @property
    def tag(self) -> str:
        """The tag of the piece."""
        return self._opened.tag

    @property
    def is_written(self) -> bool:
        """Whether something would be lost by leaving."""
        graded = any(row.grade for row in self.rows)
        return graded or any(not box.is_empty for box in self.boxes) or bool(self.head.note_text)

    def focus_start(self) -> None:
        """Begin at the first check."""
        self._stops[0].setFocus()

    def focus_again(self) -> None:
        """Go back to the first check that is open, else to the first stop."""
        self._area.setFocus()
        target = next((row for row in self.rows if row.grade is None), self._stops[0])
        target.setFocus()
        self._area.ensureWidgetVisible(target)

    def hideEvent(self, event: QHideEvent) -> None:
        """A form that was left previews nothing any more: what it reads may be closed by then."""
        self._waits = self._pause.isActive()
        self._pause.stop()
        super().hideEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        """Back again, it previews what was typed last."""
        super().showEvent(event)
        if self._waits:
            self._pause.start()

    def facts(self) -> tuple[NewInspection, int]:
        """What is clear of what was typed, and how many readings are not; these are shown at their fields."""
        answers = tuple(row.answer for row in self.rows if row.answer)
        found = [box.readings() for box in self.boxes]
        readings = tuple(reading for clear, _ in found for reading in clear)
        return self.head.inspection(answers, readings), sum(faults for _, faults in found)

    def look_ahead(self) -> None:
        """Show what the verdict would be."""
        self._pause.stop()
        facts, faults = self.facts()
        QTimer.singleShot(0, self, self._keep_in_sight)  # once faults and choices have taken their room
        self._tell_left()
        self.head.refuse(None)
        if not facts.answers and not facts.readings:
            self.preview.wait(_nothing_yet(faults))
            return
        seated = replace(self._office, officer=self.head.inspector)
        try:
            judged = preview_verdict(seated, self._dossier, facts)
        except Refused as refusal:
            self._tell(refusal)
            self.preview.refuse(refusal)
        else:
            self.noted = note_first(self.noted, judged, facts)
            self.preview.show_verdict(judged, _left_out(faults))

    def try_save(self) -> None:
        """Hand the inspection on to be kept, unless a field cannot be read."""
        facts, faults = self.facts()
        if faults:
            why = tr_n("One reading cannot be taken as it stands.", "{count} readings cannot be taken.", faults)
            self.refused.emit(Refused(tr("readings"), why, tr("Mend it, or empty the field. Nothing else is lost.")))
            QTimer.singleShot(0, self, self._go_to_fault)  # once the message above has taken its room
            return
        self.save_button.setEnabled(False)
        self.save.emit(self.tag, replace(facts, first_values=first_values(self.noted, facts)))

    def not_saved(self, refusal: Refused) -> None:
        """Show why nothing was kept; all that was typed stays."""
        self.save_button.setEnabled(True)
        self._tell(refusal)

    def _tell(self, refusal: Refused) -> None:
        """Show a refusal at the field it names."""
        for box in self.boxes:
            if box.measure.name == refusal.field:
                box.refuse(refusal)
        self.head.refuse(refusal)

    def _tell_left(self) -> None:
        """How many checks are still open, beside the button."""
        left = sum(row.grade is None for row in self.rows)
        text = tr_n(
            "One check is open; it counts as not seen.", "{count} checks are open; they count as not seen.", left
        )
        self._left.setText(text if left else tr("Every check is graded."))

    def _go_to_fault(self) -> None:
        fault = next((found for box in self.boxes if (found := box.first_fault())), None)
        if fault:
            fault.setFocus()
            self._area.ensureWidgetVisible(fault, 0, 10 * GRID)  # with what is said below it

    def _keep_in_sight(self) -> None:
        """Where the keys go must be seen, with what is said below it."""
        focused = self.focusWidget()
        if self._area.isAncestorOf(focused):
            self._area.ensureWidgetVisible(focused, 0, 6 * GRID)

    def _form(self) -> QScrollArea:
        parts: list[QWidget] = [self.head, hairline(), said(tr("Look"), Type.HEAD), *self.rows]
        if self.boxes:
            parts += [hairline(), said(tr("Measure"), Type.HEAD), *self.boxes]
        parts += [hairline(), self.head.note_label, self.head.note]
        page = column(parts, GRID)
        layout = page.layout()
        if layout:
            layout.setContentsMargins(0, 0, 2 * GRID, 3 * GRID)
        return scroll(page, tr("Inspection"))

    def _lay_out(self) -> None:
        foot = QHBoxLayout()
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.save_button)
        foot.addWidget(button(tr("Leave"), self.cancel.emit, name=tr("Leave without saving")))
        foot.addWidget(self._left, 1)
        left = QVBoxLayout()
        left.addWidget(self._area, 1)
        left.addWidget(hairline())
        left.addLayout(foot)
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(2 * GRID, GRID, 0, GRID)
        self._box.addLayout(left)
        self._box.addWidget(self.preview)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Beside the form where there is room for both, else below it."""
        super().resizeEvent(event)
        wide = self.width() >= self._look.px(_NARROW_PX)
        self._box.setDirection(QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom)
        self.preview.setMinimumHeight(0 if wide else self._look.px(_STRIP_PX))
        even = not wide or self.width() >= self._look.px(_ROOMY_PX)
        self._box.setStretch(0, 3 if even else 2)
        self._box.setStretch(1, 2 if even else 1)

    def _connect(self) -> None:
        self._stops: list[GradeRow | StillBox | PointField] = [*self.rows]
        self._stops += [stop for box in self.boxes for stop in box.stops]
        for stop in self._stops:
            stop.moves.connect(lambda step, stop=stop: self._move(stop, step))
        for row in self.rows:
            row.graded.connect(self._pause.start)
        for box in self.boxes:
            box.typed.connect(self._pause.start)
        self.head.changed.connect(self._pause.start)

    def _move(self, stop: QWidget, step: int) -> None:
        """Go to the next check or field; after the last one to the note."""
        place = [one is stop for one in self._stops].index(True) + step
        target: QWidget = self._stops[place] if 0 <= place < len(self._stops) else self.head.note
        if place >= 0:
            target.setFocus()
            self._area.ensureWidgetVisible(target, 0, 6 * GRID)


def _nothing_yet(faults: int) -> str:
    if faults:
        return tr("What is written cannot be judged yet; the field says why.")
    return tr("Nothing is written yet. Grade a check with the keys: 1 good, 2 slight, 3 bad, 0 not seen.")


def _left_out(faults: int) -> str:
    if not faults:
        return ""
    return tr_n("Without one reading that is not clear.", "Without {count} readings that are not clear.", faults)
