"""A returned sheet as a form: who looked and when, then its pieces in the order of the paper.

It is typed in by keys, or stands there as it was read from files, to be looked through before it is kept.
"""

from datetime import date

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QWidget

from inspector.desk.choice import Choice
from inspector.desk.fault_field import FaultField, fault_label
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, over_foot, said, scroll
from inspector.desk.returned.piece_block import PieceBlock
from inspector.desk.returned.signed_part import signed_part
from inspector.desk.rig_conditions import labelled
from inspector.duties.office import Office
from inspector.duties.read_returned import SheetBack
from inspector.duties.returned_sheet import ReturnedSheet
from inspector.duties.typed_day import read_day
from inspector.gear.kit_check import KitPiece, Seen
from inspector.gear.person import Person
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused

_WIDEST_PX = 760


class SheetForm(QWidget):
    """keep: who looked, what was seen by tag, and on which day."""

    keep = Signal(object, object, object)

    def __init__(self, office: Office, sheet: ReturnedSheet, look: Look, back: SheetBack | None = None) -> None:
        super().__init__()
        self.sheet, self._office, self._look, self._back = sheet, office, look, back
        unsaid: list[tuple[str, Person | None]] = [(tr("the name under the sheet"), None)]
        self.by = Choice(tr("Who looked"), [*unsaid, *((one.name, one) for one in sheet.people)])
        self.by_fault, self.fault = fault_label(), fault_label()
        self.day = FaultField(tr("Day on which it was looked at"), tr("for example 28 Nov 2026, or yesterday"))
        came = {one.tag: one for one in back.pieces} if back else {}
        self.blocks = [PieceBlock(one, office.decimal, look, came.get(one.tag)) for one in _asked(sheet, back)]
        self.keep_button = button(tr("Keep the sheet"), self.try_keep, rank="first")
        self.left = said("", Type.SMALL, faint=True)
        self._area = self._laid_out()
        self._connect()
        self._tell()

    @property
    def stops(self) -> list[QWidget]:
        """Where the keys go in turn."""
        return [self.by.box, self.day, *(stop for block in self.blocks for stop in block.stops), self.keep_button]

    @property
    def is_written(self) -> bool:
        """Whether something would be lost."""
        return any(block.is_written for block in self.blocks)

    def focus_start(self) -> None:
        """The keys go to who looked."""
        self.by.box.setFocus()

    def try_keep(self) -> None:
        """Hand all of it on, unless something cannot be read: all or nothing."""
        self.refuse(None)
        found = {block: block.seen() for block in self.blocks}
        wrong = next((field for _, field in found.values() if field), None)
        day = self._read_day()
        pieces = {block.piece.tag: seen for block, (seen, _) in found.items() if block.is_written}
        if self.by.value is None:
            self.by_fault.setText(tr("Choose who looked: the check stands under that name."))
            self.by_fault.show()
            self._reach(self.by.box)
        elif day is None or wrong:
            self._reach(wrong if day and wrong else self.day)
        elif not pieces:
            why = tr("Nothing of the sheet is typed in yet.")
            self.refuse(Refused(tr("sheet"), why, tr("Answer at least one question, or write one reading.")))
        elif self.keep_button.isEnabled():
            self._hand_on(pieces, day)

    def refuse(self, refusal: Refused | None) -> None:
        """Say what is not taken: above the pieces, and at each piece that it names. All that was typed stays."""
        self.keep_button.setEnabled(True)
        self.by_fault.hide()
        self.fault.setText(f"{refusal.why}\n{refusal.what_to_do}" if refusal else "")
        self.fault.setVisible(refusal is not None)
        lines = refusal.why.splitlines() if refusal else []
        for block in self.blocks:
            head = f"{block.piece.tag}: "
            block.tell(" ".join(line.removeprefix(head) for line in lines if line.startswith(head)))
        if refusal:
            QTimer.singleShot(0, self, lambda: self._area.ensureWidgetVisible(self.fault, 0, GRID))

    def _hand_on(self, pieces: dict[str, Seen], day: date) -> None:
        self.keep_button.setEnabled(False)
        self.keep.emit(self.by.value, pieces, day)

    def _read_day(self) -> date | None:
        try:
            found = read_day(self.day.text(), self.day.accessibleName(), self._office.today)
        except Refused as refusal:
            self.day.tell(refusal)
            return None
        self.day.tell(None)
        return found

    def _move(self, stop: QWidget, by: int) -> None:
        at = self.stops.index(stop) + by
        if 0 <= at < len(self.stops):
            self._reach(self.stops[at])

    def _reach(self, stop: QWidget) -> None:
        stop.setFocus()
        self._area.ensureWidgetVisible(stop, 0, 6 * GRID)

    def _tell(self) -> None:
        """How far it is typed in; what has no answer is not taken for good."""
        done = sum(block.is_written for block in self.blocks)
        text = tr("{done} of {count} pieces have an answer. A question without one is kept as not looked at.",
                  done=done, count=len(self.blocks))  # fmt: skip
        self.left.setText(text)

    def _connect(self) -> None:
        self.by.box.moves.connect(lambda by: self._move(self.by.box, by))
        self.day.moves.connect(lambda by: self._move(self.day, by))
        for block in self.blocks:
            block.moves.connect(self._move)
            block.changed.connect(self._tell)

    def _laid_out(self) -> QScrollArea:
        sheet = self.sheet
        told = tr("{trip}, {place}; printed on {day}. Keys: 1 good, 2 slight, 3 bad, 0 not seen; Return goes on.",
                  trip=sheet.trip.name, place=sheet.trip.place, day=show_day(sheet.printed_on))  # fmt: skip
        parts: list[QWidget] = [
            said(tr("Sheet {number}", number=sheet.number), Type.DISPLAY),
            said(told),
            labelled(tr("Who looked"), self.by.box, self.by_fault),
            labelled(tr("Day on which it was looked at"), self.day, self.day.fault),
            self.fault,
        ]
        parts[-1].setProperty("weight", "bold")
        if self._back:
            parts[2:2] = signed_part(self._back, self._look)
        if sheet.gone:
            parts.append(said(_gone(sheet.gone)))
        inside = column([*parts, *self.blocks], GRID + GRID // 2)
        inside.setMaximumWidth(self._look.px(_WIDEST_PX))
        page = QWidget()
        beside = QHBoxLayout(page)
        beside.setContentsMargins(0, 0, GRID, 2 * GRID)
        beside.addWidget(inside, 1)
        beside.addStretch(0)
        area = scroll(page, tr("The sheet"))
        over_foot(self, area, (self.keep_button, self.left))
        return area


def _asked(sheet: ReturnedSheet, back: SheetBack | None) -> list[KitPiece]:
    """All its pieces, but those that this very sheet was read for before."""
    return [one for one in sheet.pieces if back is None or one.tag not in back.already]


def _gone(tags: tuple[str, ...]) -> str:
    first = tr_n("One piece of the sheet is no longer in the kit of the trip: {tags}.",
                 "{count} pieces of the sheet are no longer in the kit of the trip: {tags}.",
                 len(tags), tags=", ".join(tags))  # fmt: skip
    return tr("{which} What was seen of it is logged as an inspection of that piece.", which=first)
