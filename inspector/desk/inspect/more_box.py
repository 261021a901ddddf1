"""What an inspection may also say, folded away so that the form stays calm: second name, gauge, next inspection."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from inspector.desk.choice import Choice
from inspector.desk.fault_field import FaultField
from inspector.desk.inspect.how_box import LABEL_PX
from inspector.desk.look import GRID, Type
from inspector.desk.plain import Fold, said, short
from inspector.gear.person import Person
from inspector.language import tr
from inspector.refused import Refused

_PROOF_ROW = 4  # and two more are kept free for it


class MoreBox(QObject):
    """changed: something else was typed or chosen. fold: what the page shows."""

    changed = Signal()

    def __init__(self, people: tuple[Person, ...]) -> None:
        super().__init__()
        nobody: list[tuple[str, str]] = [(tr("nobody"), "")]
        named = [(f"{one.name}, {one.role}" if one.role else one.name, one.id) for one in people]
        self.second = Choice(tr("Second name"), [*nobody, *named])
        self.proof = FaultField(tr("Passphrase of the second name"))
        self.proof.setEchoMode(QLineEdit.EchoMode.Password)
        self.gauge = FaultField(tr("Gauge"), tr("for example the club's gauge, number 3"))
        self.next_within = FaultField(tr("Next inspection within, days"), tr("for example 90"))
        self._second_fault = said("", Type.SMALL, bold=True)
        self._second_fault.hide()
        self._grid = QGridLayout()
        self._inside = self._filled()
        self.fold = Fold(tr("More"), lambda: self._inside)
        self.fold.head.setAccessibleName(tr("More: second name, gauge, next inspection"))
        self.second.box.currentIndexChanged.connect(self.changed)
        for field in (self.proof, self.gauge, self.next_within):
            field.textChanged.connect(self.changed)
            field.setAcceptDrops(False)

    @property
    def gauge_text(self) -> str:
        """Which gauge."""
        return self.gauge.text().strip()

    @property
    def is_written(self) -> bool:
        """Whether anything stands here."""
        return bool(self.second.value or self.gauge_text or self.next_within.text().strip())

    def days(self) -> int | None:
        """Days to the next inspection; None where nothing, or nothing clear, was typed."""
        text = self.next_within.text().strip()
        return int(text) if text.isascii() and text.isdecimal() else None

    def ask_proof(self, asked: bool) -> None:
        """Ask for the passphrase of the second name below it, where it is asked for; no draft ever holds it."""
        if asked:
            alone = said(tr("The club requires it; without it nobody's own gear is passed."), Type.SMALL, faint=True)
            self._line(_PROOF_ROW, tr("Passphrase"), [self.proof, alone, self.proof.fault])
            QWidget.setTabOrder(self.second.box, self.proof)

    def fault(self) -> QWidget | None:
        """The field that cannot be read, where there is one; it says so."""
        text = self.next_within.text().strip()
        if not text or self.days() is not None:
            self.next_within.tell(None)
            return None
        why = tr("“{text}” is no number of days.", text=text)
        self.next_within.tell(Refused(tr("next within"), why, tr("Write whole days, or leave it empty.")))
        self.open()
        return self.next_within

    def refuse(self, refusal: Refused | None) -> None:
        """Show what is not taken of the second name, its passphrase or the days, or nothing."""
        second = refusal is not None and refusal.field == tr("second name")
        self._second_fault.setText(f"{refusal.why} {refusal.what_to_do}" if refusal and second else "")
        self._second_fault.setVisible(second)
        proof = refusal is not None and refusal.field == tr("passphrase of the second name")
        self.proof.tell(refusal if proof else None)
        days = refusal is not None and refusal.field == tr("next within")
        if days or self.fault() is None:
            self.next_within.tell(refusal if days else None)
        if second or proof or days:
            self.open()

    def open(self) -> None:
        """Unfold it."""
        self.fold.head.setChecked(True)

    def _line(self, row: int, label: str, parts: Sequence[QWidget]) -> None:
        """A field with what stands below it, from a row of the grid on."""
        self._grid.addWidget(short(label, faint=True), row, 0)
        for number, part in enumerate(parts):
            self._grid.addWidget(part, row + number, 1)

    def _filled(self) -> QWidget:
        made, grid = QWidget(), self._grid
        made.setLayout(grid)
        grid.setContentsMargins(0, GRID // 2, 0, GRID)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.setColumnMinimumWidth(0, LABEL_PX)
        grid.setColumnStretch(1, 1)
        two = tr("Another competent person who looked as well; needed for one's own gear.")
        hint = said(two, Type.SMALL, faint=True)
        less = said(tr("Only where you ask for fewer days than usual."), Type.SMALL, faint=True)
        self._line(1, tr("Second name"), [self.second.box, hint, self._second_fault])
        self._line(7, tr("Gauge"), [self.gauge])
        self._line(8, tr("Next within"), [self.next_within, less, self.next_within.fault])
        return made
