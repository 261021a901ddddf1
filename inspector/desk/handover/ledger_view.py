"""The ledger read back: newest first, two hundred lines at a time, of a piece, a person or a trip, since a day."""

from datetime import date
from functools import partial

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter
from PySide6.QtWidgets import (
    QHBoxLayout,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from inspector.desk.background import Background
from inspector.desk.fault_field import FaultField
from inspector.desk.handover.ledger_model import HASH, LINE, WHAT, WHEN, Index, LedgerModel
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.plain import button, said
from inspector.desk.row_table import RowTable
from inspector.drawings.shapes import Ink
from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.typed_day import read_day
from inspector.gear.ledger_line import ToldLine
from inspector.language import tr, tr_n
from inspector.refused import Refused

AT_ONCE = 200
_WIDTHS_PX = {WHEN: 168, LINE: 64, HASH: 96}
_LEAST_WHAT_PX = 320
_FIELD_PX = 260
_SIDE_PX = 11  # as the words above the columns
_HIGHEST_PX = 10_000
_WRAPPED = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)


class _Cells(QStyledItemDelegate):
    """Cells as high as their words at the width there is, with air above and below, and a hairline."""

    def __init__(self, look: Look, parent: QTableView) -> None:
        super().__init__(parent)
        self._look, self._table = look, parent

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, self._look.colour(Ink.BAND))
        painter.setPen(self._look.colour(Ink.HAIR))
        painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight())
        painter.setPen(self._look.colour(Ink.INK))
        painter.setFont(self._look.font())
        painter.drawText(self._room(option.rect), _WRAPPED, str(index.data()))
        painter.restore()

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As high as the words, and the air."""
        wide = self._table.columnWidth(index.column())
        room = self._room(QRect(0, 0, wide, _HIGHEST_PX))
        words = QFontMetrics(self._look.font()).boundingRect(room, _WRAPPED, str(index.data()))
        return QSize(wide, words.height() + 2 * self._look.px(GRID))

    def _room(self, rect: QRect) -> QRect:
        side, air = self._look.px(_SIDE_PX), self._look.px(GRID)
        return rect.adjusted(side, air, -side // 2, -air)


class LedgerTable(RowTable):
    """The lines of the ledger; nothing is done with one."""

    def __init__(self, model: LedgerModel, look: Look) -> None:
        super().__init__(model, tr("The ledger"), look, wraps=True)
        self.setItemDelegate(_Cells(look, self))
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        look.changed.connect(self.spread)

    def spread(self) -> None:
        """What was done takes what is left; where that is too little, the hash yields, then the line's number."""
        room = self.viewport().width()
        shown = {column: self._look.px(wide) for column, wide in _WIDTHS_PX.items()}
        for column in (HASH, LINE):
            if room - sum(shown.values()) < self._look.px(_LEAST_WHAT_PX):
                del shown[column]
        for column in _WIDTHS_PX:
            self.setColumnHidden(column, column not in shown)
            self.setColumnWidth(column, shown.get(column, 0))
        self.setColumnWidth(WHAT, max(room - sum(shown.values()), 0))
        self.resizeRowsToContents()


class LedgerView(QWidget):
    """typed: a letter that belongs to the search."""

    typed = Signal(str)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__()
        self._office, self._background, self._notice, self._look = office, background, notice, look
        self._asked: tuple[str, date | None] = ("", None)
        self._before: list[int | None] = [None]  # of each page gone back to, the line before which it begins
        self.of = FaultField(tr("Of"), tr("Of a piece, a person or a trip"))
        self.since = FaultField(tr("Since"), tr("Since a day"))
        self.show_button = button(tr("Show"), self.read, name=tr("Show these lines"))
        self._is_reading = False
        self.later_button = button(tr("Later lines"), self.read_later)
        self.earlier_button = button(tr("Earlier lines"), self.read_earlier)
        self.foot = said("", faint=True)
        self.model = LedgerModel()
        self.table = LedgerTable(self.model, look)
        self._lay_out()
        self.table.typed.connect(self.typed)
        for field in (self.of, self.since):
            field.moves.connect(lambda step: self.read() if step > 0 else None)
        look.changed.connect(self._resized)
        self._resized()

    def show_of(self, name: str) -> None:
        """What concerns a piece, a person or a trip."""
        self.of.setText(name)
        self.since.clear()
        self.read()

    def read(self) -> None:
        """Read the newest lines of what is asked for."""
        for field in (self.of, self.since):
            field.tell(None)
        try:
            day = read_day(self.since.text(), tr("since"), self._office.today) if self.since.text().strip() else None
        except Refused as refusal:
            self.since.tell(refusal)
            self.since.setFocus()
            return
        self._asked, self._before = (self.of.text(), day), [None]
        self._read()

    def read_earlier(self) -> None:
        """Read the lines before those that are shown; what was asked for then holds."""
        if not self._is_reading:
            self._before.append(self.model.lines[-1].number)
            self._read()

    def read_later(self) -> None:
        """Go back to the lines after those that are shown."""
        if not self._is_reading:
            self._before.pop()
            self._read()

    def _read(self) -> None:
        """No more lines at once than the window lays out between two of its pictures."""
        (of, since), before = self._asked, self._before[-1]
        self._is_reading = True
        self._background.run(
            partial(told_ledger, last=AT_ONCE + 1, of=of, since=since, before=before), self._office,
            done=partial(self._show, self._asked, before), failed=self._refuse, says=tr("Reading the ledger…"),
        )  # fmt: skip

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(GRID)
        for field in (self.of, self.since):
            beside = QVBoxLayout()
            beside.setSpacing(0)
            beside.addWidget(field)
            beside.addWidget(field.fault)
            beside.addStretch(1)
            head.addLayout(beside)
        head.addWidget(self.show_button)
        head.addStretch(1)
        below = QHBoxLayout()
        below.addWidget(self.foot, 1)
        below.addWidget(self.later_button)
        below.addWidget(self.earlier_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addLayout(head)
        layout.addWidget(self.table, 1)
        layout.addLayout(below)

    def _resized(self) -> None:
        for field in (self.of, self.since):
            field.setFixedWidth(self._look.px(_FIELD_PX))

    def _refuse(self, refusal: Refused) -> None:
        self._is_reading = False
        if refusal.field == tr("of"):
            self.of.tell(refusal)
            self.of.setFocus()
        else:
            self._notice.refuse(refusal)
        self._tell_foot(more=False)

    def _show(self, asked: tuple[str, date | None], before: int | None, lines: tuple[ToldLine, ...]) -> None:
        if (asked, before) != (self._asked, self._before[-1]):
            return  # something else was asked for meanwhile
        self._is_reading = False
        self.model.show_lines(lines[:AT_ONCE])
        self.table.spread()
        self.table.scrollToTop()
        if lines:
            self.table.selectRow(0)
        self._tell_foot(more=len(lines) > AT_ONCE)

    def _tell_foot(self, *, more: bool) -> None:
        self.foot.setText(self._words())
        for one, shown in ((self.earlier_button, more), (self.later_button, len(self._before) > 1)):
            if one.hasFocus() and not shown:
                self.table.setFocus()
            one.setVisible(shown)

    def _words(self) -> str:
        if not self.model.lines:
            return tr("No line of the ledger tells of that. Ask for less, or for an earlier day.")
        first, last = self.model.lines[0].number, self.model.lines[-1].number
        count = tr_n("One line is shown", "{count} lines are shown", len(self.model.lines))
        return tr("{count}, from {first} back to {last}.", count=count, first=first, last=last)
