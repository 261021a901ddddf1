"""The list of what is out: the space bar ticks, Return opens the piece, words wrap."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent

from inspector.desk.lending.loan_model import DUE, HOLDER, KIND, MEANWHILE, SINCE, TAG, TRIP, LoanModel
from inspector.desk.lending.out import Grouped
from inspector.desk.lined_cells import LinedCells
from inspector.desk.look import Look
from inspector.desk.row_table import RowTable
from inspector.language import tr

_SHARES = {TAG: 120, KIND: 160, HOLDER: 140, TRIP: 72, SINCE: 104, DUE: 176, MEANWHILE: 160}
_YIELD_FIRST = (SINCE, KIND)


class LoanView(RowTable):
    """opened: a piece's record is asked for."""

    opened = Signal(str)

    def __init__(self, model: LoanModel, look: Look) -> None:
        super().__init__(model, tr("What is out"), look, wraps=True)
        self._model = model
        self._by = Grouped.PERSON
        self._cells = LinedCells(look, self)
        self.setItemDelegate(self._cells)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.doubleClicked.connect(lambda index: self.enter(index.row()))
        model.modelReset.connect(self._begin)
        look.changed.connect(self._restyle)
        self._restyle()

    def group_by(self, by: Grouped) -> None:
        """What the headings say needs no column."""
        self._by = by

    def takes(self, event: QKeyEvent) -> bool:
        """The space bar ticks the row."""
        row = self.currentIndex().row()
        if event.key() != Qt.Key.Key_Space or row < 0:
            return False
        self._model.turn(row)
        return True

    def enter(self, row: int) -> None:
        """Return opens the piece."""
        if 0 <= row < len(self._model.rows) and (loan := self._model.rows[row].loan):
            self.opened.emit(loan.tag)

    def _begin(self) -> None:
        """Headings go across; the bar begins at the first row."""
        self.clearSpans()
        for number, row in enumerate(self._model.rows):
            if row.loan is None:
                self.setSpan(number, TAG, 1, self._model.columnCount())
        if self._model.rows:
            self.setCurrentIndex(self._model.index(0, TAG))
        self.spread()

    def _restyle(self) -> None:
        self._model.use_font(self._look.font())
        self.spread()

    def spread(self) -> None:
        """Widths by share; where all do not fit, the first ones yield: the record shows what they hold."""
        room = self.viewport().width()
        hidden = {HOLDER} if self._by is Grouped.PERSON else {TRIP}
        shown = {column: self._look.px(width) for column, width in _SHARES.items() if column not in hidden}
        for column in _YIELD_FIRST:
            if sum(shown.values()) > room:
                del shown[column]
        factor = room / sum(shown.values())
        for column in _SHARES:
            self.setColumnHidden(column, column not in shown)
            self.setColumnWidth(column, round(shown.get(column, 0) * factor))
        self._cells.fit_rows()
