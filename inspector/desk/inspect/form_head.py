"""The head of an inspection: which piece, who looked, when, on what occasion; and the note at its end."""

from datetime import date

from PySide6.QtCore import QDate, QLocale, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QPlainTextEdit, QVBoxLayout, QWidget

from inspector.desk.choice import Choice, StillDate
from inspector.desk.inspect.how_box import LABEL_PX
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
        self.by = Choice(tr("Inspected by"), _people(opened.people, officer))
        self.occasion = Choice(tr("Occasion"), _occasions())
        self.occasion.choose(InspectionKind.PERIODIC)
        self.on = _day_box(today)
        self.note, self.note_label = _NoteEdit(), short(tr("Note"), Type.HEAD)
        self.fault = said("", Type.SMALL, bold=True)
        self.fault.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(short(tr("Inspect {tag}", tag=dossier.item.tag), Type.DISPLAY))
        layout.addWidget(said(dossier.kind.name, Type.HEAD, faint=True))
        layout.addLayout(self._grid())
        self._connect()

    @property
    def inspector(self) -> Person:
        """Who looked."""
        return self.by.value

    @property
    def note_text(self) -> str:
        """What was noted."""
        return self.note.toPlainText().strip()

    def inspection(self, answers: tuple[Answer, ...], readings: tuple[Reading, ...]) -> NewInspection:
        """The inspection; whether the inspector was competent is for the register to say."""
        day = self.on.date()
        return NewInspection(
            on=date(day.year(), day.month(), day.day()),
            kind=self.occasion.value,
            by=self.inspector.id,
            competent=False,
            answers=answers,
            readings=readings,
            note=self.note_text,
        )

    def refuse(self, refusal: Refused | None) -> None:
        """Show what is not taken of the day or the person, or nothing."""
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
        return grid

    def _connect(self) -> None:
        self.by.box.currentIndexChanged.connect(self.changed)
        self.occasion.box.currentIndexChanged.connect(self.changed)
        self.on.dateChanged.connect(self.changed)


class _NoteEdit(QPlainTextEdit):
    """A few lines; Tab leaves it."""

    def __init__(self) -> None:
        super().__init__()
        self.setTabChangesFocus(True)
        self.setAccessibleName(tr("Note"))
        self.setFixedHeight(10 * GRID)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape belongs to the page."""
        if event.key() == Qt.Key.Key_Escape:
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


def _day_box(today: date) -> StillDate:
    box = StillDate(QDate(today.year, today.month, today.day))
    box.setLocale(QLocale.c())
    box.setDisplayFormat("d MMM yyyy")
    box.setAccessibleName(tr("Inspected on"))
    box.lineEdit().setTextMargins(GRID, 0, 0, 0)
    return box
