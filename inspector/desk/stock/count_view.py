"""The list of a count: Space, Delete and Backspace mark the piece under the bar, Return opens its record."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter
from PySide6.QtWidgets import QHeaderView, QStyledItemDelegate, QStyleOptionViewItem, QTableView

from inspector.desk.look import Look
from inspector.desk.row_table import RowTable
from inspector.desk.stock.count_model import KIND, MARK, PLACE, TAG, CountModel, Index
from inspector.drawings.shapes import Ink
from inspector.gear.stock_take import Counted
from inspector.language import tr

_ROW_PX = 36
_ROWS_AT_LEAST = 5
_SHARES = {PLACE: 5, TAG: 3, KIND: 5, MARK: 6}
_MARKS = {
    Qt.Key.Key_Space: Counted.PRESENT,
    Qt.Key.Key_Delete: Counted.ABSENT,
    Qt.Key.Key_Backspace: Counted.UNKNOWN,
}


class _Lines(QStyledItemDelegate):
    """A hairline below each row."""

    def __init__(self, look: Look, parent: QTableView) -> None:
        super().__init__(parent)
        self._look = look

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        super().paint(painter, option, index)
        painter.setPen(self._look.colour(Ink.HAIR))
        painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight())


class CountView(RowTable):
    """marked: a tag and how it is marked. opened: a tag."""

    marked = Signal(str, object)
    opened = Signal(str)

    def __init__(self, model: CountModel, look: Look) -> None:
        super().__init__(model, tr("Pieces of the count"), look, wraps=False)
        self._model = model
        self.setItemDelegate(_Lines(look, self))
        self.setAccessibleDescription(tr("Space: seen. Delete: not there. Backspace: the mark back. Return: open it."))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setStretchLastSection(True)
        self.doubleClicked.connect(lambda index: self.enter(index.row()))
        look.changed.connect(self.spread)
        self.spread()

    def show_again(self) -> None:
        """After other pieces were shown: the bar stays where it was, on the next piece that is left."""
        if self._model.pieces:
            self.choose(min(max(self._row, 0), len(self._model.pieces) - 1))

    def choose(self, row: int) -> None:
        """Put the bar on a row."""
        self._row = row
        self.selectRow(row)
        self.setCurrentIndex(self._model.index(row, TAG))

    def takes(self, event: QKeyEvent) -> bool:
        """The keys that mark."""
        key = Qt.Key(event.key())
        if key not in _MARKS:
            return False
        self._mark(self.currentIndex().row(), _MARKS[key])
        return True

    def changeEvent(self, event: QEvent) -> None:
        """A larger font needs other heights."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self.spread()

    def _mark(self, row: int, counted: Counted) -> None:
        if 0 <= row < len(self._model.pieces):
            self._row = row
            self.marked.emit(self._model.pieces[row].tag, counted)

    def enter(self, row: int) -> None:
        """Return opens the piece."""
        if 0 <= row < len(self._model.pieces):
            self.opened.emit(self._model.pieces[row].tag)

    _row = 0

    def spread(self) -> None:
        """Columns by shares; the last takes what is left."""
        room, shares = self.viewport().width(), sum(_SHARES.values())
        for column, share in _SHARES.items():
            self.setColumnWidth(column, room * share // shares)
        high = self._look.px(_ROW_PX)
        self.verticalHeader().setDefaultSectionSize(high)
        self.setMinimumHeight((_ROWS_AT_LEAST + 1) * high)
