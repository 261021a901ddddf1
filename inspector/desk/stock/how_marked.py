"""How the next scans are marked: seen, not there or taken back, with another place and a note."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QHBoxLayout, QPushButton, QWidget

from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID
from inspector.desk.plain import button, said, short
from inspector.gear.stock_take import Counted
from inspector.language import tr


class HowMarked(QWidget):
    """chosen: another way to mark was chosen, or Return was pressed in a line: the keys belong to the scans again."""

    chosen = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.place = FaultField(tr("They lie at"), tr("only where it is another place"))
        self.note = FaultField(tr("Note to each mark"))
        self._group = QButtonGroup(self)
        self.buttons: dict[Counted, QPushButton] = {}
        self._warning = said("", bold=True)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.addWidget(short(tr("Mark as"), faint=True), 0, 0)
        grid.addLayout(self._ways(), 0, 1)
        for column, (label, field) in enumerate(((tr("at"), self.place), (tr("note"), self.note))):
            grid.addWidget(short(label, faint=True), 0, 2 + 2 * column)
            grid.addWidget(field, 0, 3 + 2 * column)
            grid.setColumnStretch(3 + 2 * column, 1)
            field.moves.connect(lambda _: self.chosen.emit())
            field.textChanged.connect(lambda _: self._warn())
        grid.addWidget(self.place.fault, 1, 1, 1, 5)
        grid.addWidget(self._warning, 2, 1, 1, 5)
        self.begin()

    @property
    def counted(self) -> Counted:
        """How the next scans are marked."""
        return next(way for way, one in self.buttons.items() if one.isChecked())

    def place_of(self, counted: Counted) -> str:
        """Where what is marked so lies; nobody can say so of what is not there."""
        return self.place.text().strip() if counted is Counted.PRESENT else ""

    def begin(self) -> None:
        """As every count begins: seen, where it ought to lie, without a note."""
        self.buttons[Counted.PRESENT].setChecked(True)
        self.place.clear()
        self.note.clear()
        self.place.tell(None)
        self._warn()

    def _ways(self) -> QHBoxLayout:
        layout = QHBoxLayout()
        layout.setSpacing(GRID // 2)
        words = {
            Counted.PRESENT: tr("&seen"),
            Counted.ABSENT: tr("&not there"),
            Counted.UNKNOWN: tr("mark &back"),
        }
        for way, text in words.items():
            made = button(text, self._turned, rank="grade", name=tr("Mark as: {way}", way=text.replace("&", "")))
            made.setCheckable(True)
            self._group.addButton(made)
            self.buttons[way] = made
            layout.addWidget(made)
        return layout

    def _turned(self) -> None:
        self._warn()
        self.chosen.emit()

    def _warn(self) -> None:
        """Say in words what holds for every scan until it is changed: it is easily forgotten."""
        place, note = self.place.text().strip(), self.note.text().strip()
        lines = []
        if self.counted is Counted.ABSENT:
            lines.append(tr("What is scanned now is marked as NOT THERE."))
        if self.counted is Counted.UNKNOWN:
            lines.append(tr("Of what is scanned now the mark is taken back: it counts as not looked for."))
        if place and self.counted is Counted.PRESENT:
            lines.append(tr("What is marked as seen now lies at {place}, until that line is emptied.", place=place))
        if note:
            lines.append(tr("Each mark gets the note “{note}”.", note=note))
        self._warning.setText(" ".join(lines))
        self._warning.setVisible(bool(lines))
