"""The head of an inspection: which piece, who looked, when, on what occasion; and the note at its end."""

from datetime import date

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QGridLayout, QPlainTextEdit, QVBoxLayout, QWidget

from inspector.desk.choice import Choice, day_box
from inspector.desk.inspect.caution_line import CautionLine
from inspector.desk.inspect.how_box import LABEL_PX
from inspector.desk.inspect.more_box import MoreBox
from inspector.desk.look import GRID, Type
from inspector.desk.opened import Opened
from inspector.desk.plain import said, short
from inspector.gear.inspection import Answer, InspectionKind, NewInspection, Reading
from inspector.gear.person import Person
from inspector.language import tr
from inspector.refused import Refused


class FormHead(QWidget):
    """changed: somebody else, another day or another occasion."""

    changed = Signal()

    def __init__(self, opened: Opened, officer: Person, today: date) -> None:
        super().__init__()
        dossier = opened.judged.dossier
        people = _people(opened.people, officer)
        self._people = [one for _, one in people]
        self.by = Choice(tr("Inspected by"), people)
        self.occasion = Choice(tr("Occasion"), _occasions())
        self.occasion.choose(InspectionKind.PERIODIC)
        self.on = day_box(tr("Inspected on"), today)
        self.note, self.note_label = _NoteEdit(), short(tr("Note"), Type.HEAD)
        self.more = MoreBox(opened.people)
        self.fault = said("", Type.SMALL, bold=True)
        self.fault.hide()
        self.caution = CautionLine()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(short(tr("Inspect {tag}", tag=dossier.item.tag), Type.DISPLAY))
        layout.addWidget(said(dossier.kind.name, Type.HEAD, faint=True))
        layout.addLayout(self._grid())
        layout.addWidget(self.more.fold)
        self._connect()

    @property
    def inspector(self) -> Person:
        """Who looked."""
        return self.by.value

    def choose_inspector(self, person_id: str) -> None:
        """Choose who looked, where that person is in the register."""
        place = next((number for number, one in enumerate(self._people) if one.id == person_id), None)
        if place is not None:
            self.by.box.setCurrentIndex(place)

    @property
    def note_text(self) -> str:
        """What was noted."""
        return self.note.toPlainText().strip()

    @property
    def day(self) -> date:
        """The day of the inspection."""
        day = self.on.date()
        return date(day.year(), day.month(), day.day())

    def inspection(self, answers: tuple[Answer, ...], readings: tuple[Reading, ...]) -> NewInspection:
        """The inspection; whether the inspector was competent is for the register to say."""
        return NewInspection(
            on=self.day,
            kind=self.occasion.value,
            by=self.inspector.id,
            competent=False,
            answers=answers,
            readings=tuple(replace(one, gauge=self.more.gauge_text) for one in readings),
            note=self.note_text,
            second=self.more.second.value,
            next_within_days=self.more.days(),
        )

    def refuse(self, refusal: Refused | None) -> None:
        """Show what is not taken of the day, the person or what stands under More, or nothing."""
        self.more.refuse(refusal)
        mine = refusal is not None and refusal.field in {tr("inspected on"), tr("inspected by")}
        self.fault.setText(f"{refusal.why} {refusal.what_to_do}" if refusal and mine else "")
        self.fault.setVisible(mine)

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setContentsMargins(0, 2 * GRID, 0, GRID)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.setColumnMinimumWidth(0, LABEL_PX)
        grid.setColumnStretch(1, 1)
        lines = ((tr("By"), self.by.box), (tr("On"), self.on), (tr("Occasion"), self.occasion.box))
        for row, (label, box) in enumerate(lines):
            grid.addWidget(short(label, faint=True), row, 0)
            grid.addWidget(box, row, 1)
        grid.addWidget(self.fault, len(lines), 1)
        grid.addWidget(self.caution, len(lines) + 1, 1)
        return grid

    def _connect(self) -> None:
        self.by.box.currentIndexChanged.connect(self.changed)
        self.occasion.box.currentIndexChanged.connect(self.changed)
        self.on.dateChanged.connect(self.changed)
        self.more.changed.connect(self.changed)
        self.caution.changed.connect(self.changed)


class _NoteEdit(QPlainTextEdit):
    """A few lines; Tab leaves it."""

    def __init__(self) -> None:
        super().__init__()
        self.setTabChangesFocus(True)
        self.setAccessibleName(tr("Note"))
        self.setFixedHeight(10 * GRID)
        self.setAcceptDrops(False)  # a picture dropped here belongs to the form
        self.viewport().setAcceptDrops(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape belongs to the page, and a picture that is pasted to the form."""
        pastes = event.matches(QKeySequence.StandardKey.Paste)
        if event.key() == Qt.Key.Key_Escape or (pastes and not QGuiApplication.clipboard().mimeData().hasText()):
            event.ignore()
        else:
            super().keyPressEvent(event)


def _people(people: tuple[Person, ...], officer: Person) -> list[tuple[str, Person]]:
    """Everybody, the officer at the desk first."""
    others = [one for one in people if one.id != officer.id]
    return [(f"{one.name}, {one.role}" if one.role else one.name, one) for one in (officer, *others)]


def _occasions() -> list[tuple[str, InspectionKind]]:
    return [
        (tr("periodic inspection"), InspectionKind.PERIODIC),
        (tr("inspection after an overload, a drop or an exposure"), InspectionKind.AFTER_EVENT),
        (tr("check before use"), InspectionKind.BEFORE_USE),
    ]
