"""The first start: a register is begun, opened, or made of the sample, before there is a desk to sit down at."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.doors import Doors
from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, hairline, row, said, scroll, short
from inspector.duties.office import Office
from inspector.duties.register_place import place_of
from inspector.language import tr
from inspector.refused import Refused

_USUAL_SIZE = (960, 720)
_LABEL_PX = 20 * GRID


class Welcome(QWidget):
    """opened: the office of the register that is to be worked on."""

    opened = Signal(object)

    def __init__(self, doors: Doors, place: str, look: Look) -> None:
        super().__init__()
        self._doors, self._look = doors, look
        self.background = Background(self)
        self.setObjectName("page")
        self.setWindowTitle(tr("Recovery gear register"))
        self.resize(*_USUAL_SIZE)
        self.club, self.officer = FaultField(tr("Name of the club")), FaultField(tr("Your name"))
        self.folder = FaultField(tr("Folder or address"))
        self.folder.setText(place)
        self.told = said("", bold=True)
        self.told.hide()
        self.begin_button = button(tr("Begin a register"), self.begin, rank="first")
        self.open_button = button(tr("Open the register that lies there"), self.open)
        self.sample_button = button(tr("Make the sample register here"), self.sample)
        self.head = FaultField(tr("Ledger head on a paper"))
        self.restore_button = button(tr("Put a copy back into this folder…"), self._ask_copy)
        self.rescue_button = button(tr("Save what can be read of a damaged register…"), self._ask_damaged)
        self._buttons = (
            self.begin_button, self.open_button, self.sample_button, self.restore_button, self.rescue_button,
        )  # fmt: skip
        layout = QVBoxLayout(self)
        layout.setContentsMargins(4 * GRID, 3 * GRID, 2 * GRID, 2 * GRID)
        layout.addWidget(scroll(self._page(), tr("First start")))
        look.dress(self)

    def begin(self) -> None:
        """Begin an empty register with its club and its officer."""
        given = (self.club.text().strip(), self.officer.text().strip())
        self._do(self._doors.begin, *given, says=tr("Beginning the register…"))

    def open(self) -> None:
        """Open a register that is there."""
        self._do(self._doors.open, says=tr("Opening the register…"))

    def sample(self) -> None:
        """Make the sample register, to look around in."""
        self._do(self._doors.sample, says=tr("Making the sample register; it takes half a minute…"))

    def restore(self, file: Path) -> None:
        """Put a copy into the folder, where no register lies, and open it."""
        given = (file, self.head.text().strip())
        self._do(self._doors.restore, *given, says=tr("Putting the copy back and checking it…"))

    def _ask_copy(self) -> None:
        kinds = tr("Copies and archives (*.db *.zip)")
        if found := QFileDialog.getOpenFileName(self, tr("Copy of a register"), self.folder.text(), kinds)[0]:
            self.restore(Path(found))

    def rescue(self, file: Path) -> None:
        """Save what can be proved of a damaged register into the folder, where none lies, and open it."""
        self._do(self._doors.rescue, file, says=tr("Saving what can be read and proved…"))

    def _ask_damaged(self) -> None:
        if found := QFileDialog.getOpenFileName(self, tr("Damaged register"), self.folder.text(), "*.db")[0]:
            self.rescue(Path(found))

    def choose(self) -> None:
        """Choose the folder."""
        if found := QFileDialog.getExistingDirectory(self, tr("Folder"), self.folder.text()):
            self.folder.setText(found)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Let what is under way end."""
        self.background.close()
        super().closeEvent(event)

    def _do(self, deed: Callable[..., Office], *given: object, says: str) -> None:
        for field in (self.club, self.officer, self.folder, self.head):
            field.tell(None)
        try:
            place = place_of(self.folder.text().strip())
        except Refused as refusal:
            self._refuse(refusal)
            return
        for one in self._buttons:
            one.setEnabled(False)
        self.told.setText(says)
        self.told.show()
        self.background.run(deed, place, *given, done=self.opened.emit, failed=self._refuse, says=says)

    def _refuse(self, refusal: Refused) -> None:
        """Say it at the field it names, else below the buttons; nothing typed is lost."""
        for one in self._buttons:
            one.setEnabled(True)
        fields = {tr("club"): self.club, tr("name"): self.officer, tr("folder"): self.folder}
        fields |= {tr("head"): self.head, tr("officer"): self.officer, tr("register"): self.folder}
        field = fields.get(refusal.field)
        self.told.setVisible(field is None)
        self.told.setText(f"{refusal.why} {refusal.what_to_do}")
        if field:
            field.tell(refusal)
            field.setFocus()

    def _page(self) -> QWidget:
        choose = button(tr("Choose…"), self.choose, name=tr("Choose the folder"))
        return column(
            [
                said(tr("Recovery gear register"), Type.DISPLAY),
                said(tr("It keeps what each piece of gear is, what it went through, and what is left of it.")),
                hairline(),
                said(tr("Where it lies"), Type.HEAD),
                _labelled(self.folder, self._look, choose),
                said(tr("One folder holds the register, its papers and its copies. Carry copies to another disk."),
                     Type.SMALL, faint=True),
                said(tr("Where several clubs share a server: postgresql://LOGIN@SERVER/DATABASE, without a password."),
                     Type.SMALL, faint=True),
                hairline(),
                said(tr("Begin"), Type.HEAD),
                _labelled(self.club, self._look),
                _labelled(self.officer, self._look),
                said(tr("Whoever begins it is its equipment officer and is entered as competent, as stated here."),
                     Type.SMALL, faint=True),
                row([self.begin_button]),
                hairline(),
                said(tr("Or"), Type.HEAD),
                row([self.open_button, self.sample_button]),
                said(tr("The sample is a club that we made up, with a few years of its own, to look around in."),
                     Type.SMALL, faint=True),
                hairline(),
                said(tr("After a loss"), Type.HEAD),
                _labelled(self.head, self._look),
                said(tr("Type it where a paper shows one: a copy that lacks it is refused. Else it stays empty."),
                     Type.SMALL, faint=True),
                row([self.restore_button]),
                said(tr("Where no copy is left: what can be proved is saved into this folder, what is lost is listed "
                        "there, and every piece that it may touch is held until inspected."),
                     Type.SMALL, faint=True),
                row([self.rescue_button]),
                self.told,
            ]
        )  # fmt: skip


def _labelled(field: FaultField, look: Look, *others: QWidget) -> QWidget:
    """Label, field and what belongs to it, with what is wrong below."""
    line = QWidget()
    layout = QHBoxLayout(line)
    layout.setContentsMargins(0, 0, 0, 0)
    label = short(field.accessibleName(), faint=True)
    look.fit(label, QWidget.setMinimumWidth, _LABEL_PX)
    layout.addWidget(label)
    layout.addWidget(field, 1)
    for one in others:
        layout.addWidget(one)
    return column([line, field.fault], GRID // 2)
