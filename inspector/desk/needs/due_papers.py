"""What is made of the calendar: a file for another calendar, letters to holders, slips for the pieces."""

from datetime import date
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID, Type
from inspector.desk.needs.day_choice import DayChoice
from inspector.desk.needs.lines import in_line
from inspector.desk.plain import button, fill, said
from inspector.desk.record_parts import section
from inspector.language import tr
from inspector.refused import Refused

_FILE_NAME = "falls-due.ics"


class DuePapers(QWidget):
    """Options beside the calendar. export: into the file named. letters, slips: new ones; again: as kept before."""

    export = Signal()
    letters = Signal()
    letters_again = Signal()
    slips = Signal()
    slips_again = Signal()

    def __init__(self, today: date, folder: Path) -> None:
        super().__init__()
        self.file = FaultField(tr("Calendar file"))
        self.file.setText(str(folder / _FILE_NAME))
        self.bring_to = FaultField(tr("Bring to"), tr("the shed, Thursday evening"))
        weeks = ((tr("in one week"), 7), (tr("in two weeks"), 14), (tr("in four weeks"), 28))
        self.bring_by = DayChoice(tr("Bring by"), today, weeks, none=tr("no day named"))
        self.to_whom = said("", Type.SMALL, faint=True)
        self.which = said("", Type.SMALL, faint=True)
        self.file.moves.connect(lambda _: self.export.emit())
        self.bring_to.moves.connect(lambda _: self.bring_by.choice.box.setFocus())
        fill(QVBoxLayout(self), [self._bring(), self._letters(), self._slips(), self._file()], 3 * GRID)

    @property
    def path(self) -> Path:
        """The file named."""
        return Path(self.file.text().strip())

    def narrow(self, person: str, place: str) -> None:
        """Say to whom letters go, and which pieces get slips."""
        everybody = tr("To everybody of whose pieces anything is asked.")
        whom = tr("To {name}.", name=person) if person else everybody
        if place:
            whom = tr("{whom} A letter tells all that a person has, wherever it is.", whom=whom)
        self.to_whom.setText(whom)
        which = [tr("of {name}", name=person)] if person else []
        which += [tr("at {place}", place=place)] if place else []
        every = tr("One for each piece of which anything is due.")
        self.which.setText(tr("For the pieces {which}.", which=", ".join(which)) if which else every)

    def tell(self, refusal: Refused) -> bool:
        """Say a refusal at the field that it belongs to; False where it is of none of these."""
        fields = {tr("file"): self.file, tr("bring to"): self.bring_to}
        if field := fields.get(refusal.field):
            field.tell(refusal)
            field.setFocus()
        return refusal.field in fields

    def tell_nothing(self) -> None:
        """No fault stands any more."""
        for field in (self.file, self.bring_to):
            field.tell(None)

    def _bring(self) -> QWidget:
        told = said(tr("Printed on letters and slips; may be left empty."), Type.SMALL, faint=True)
        return section(
            tr("What to ask for"), said(tr("Bring to")), self.bring_to, self.bring_to.fault, said(tr("Bring by")),
            self.bring_by, told,
        )  # fmt: skip

    def _letters(self) -> QWidget:
        prints = button(tr("Print letters"), self.letters.emit)
        again = button(tr("Print again"), self.letters_again.emit, name=tr("Print the last letters again"))
        return section(tr("Letters"), self.to_whom, in_line(prints, again))

    def _slips(self) -> QWidget:
        prints = button(tr("Print slips"), self.slips.emit)
        again = button(tr("Print again"), self.slips_again.emit, name=tr("Print the last slips again"))
        return section(tr("Slips"), self.which, in_line(prints, again))

    def _file(self) -> QWidget:
        told = said(tr("What is shown, for a calendar program. An older calendar file is written over."), Type.SMALL,
                    faint=True)  # fmt: skip
        save = button(tr("Save calendar file"), self.export.emit)
        choose = button(tr("Choose where"), self._choose, name=tr("Choose where the calendar file goes"))
        return section(tr("Calendar file"), told, self.file, self.file.fault, in_line(save, choose))

    def _choose(self) -> None:
        title, kinds = tr("Save calendar file"), tr("Calendar files (*.ics)")
        named, _ = QFileDialog.getSaveFileName(self, title, self.file.text(), kinds)
        if named:
            self.file.setText(named)
