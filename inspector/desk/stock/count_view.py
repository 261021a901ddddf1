"""The list of a count: Space, Delete and Backspace mark the piece under the bar, Return opens its record."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QStyledItemDelegate, QStyleOptionViewItem, QTableView

from inspector.desk.keys import search_text
from inspector.desk.look import Look
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


class CountView(QTableView):
    """marked: a tag and how it is marked. opened: a tag. typed: a letter that belongs to the scan line."""

    marked = Signal(str, object)
    opened = Signal(str)
    typed = Signal(str)

    def __init__(self, model: CountModel, look: Look) -> None:
        super().__init__()
        self._look, self._model = look, model
        self.setModel(model)
        self.setItemDelegate(_Lines(look, self))
        self.setAccessibleName(tr("Pieces of the count"))
        self.setAccessibleDescription(tr("Space: seen. Delete: not there. Backspace: the mark back. Return: open it."))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setStretchLastSection(True)
        self.doubleClicked.connect(lambda index: self._open(index.row()))
        look.changed.connect(self._spread)
        self._spread()

    def show_again(self) -> None:
        """After other pieces were shown: the bar stays where it was, on the next piece that is left."""
        if self._model.pieces:
            self.choose(min(max(self._row, 0), len(self._model.pieces) - 1))

    def choose(self, row: int) -> None:
        """Put the bar on a row."""
        self._row = row
        self.selectRow(row)
        self.setCurrentIndex(self._model.index(row, TAG))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Mark, open, or leave letters to the scan line."""
        row, key = self.currentIndex().row(), Qt.Key(event.key())
        if key in _MARKS:
            self._mark(row, _MARKS[key])
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._open(row)
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the columns their room."""
        super().resizeEvent(event)
        self._spread()

    def changeEvent(self, event: QEvent) -> None:
        """A larger font needs other heights."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self._spread()

    def _mark(self, row: int, counted: Counted) -> None:
        if 0 <= row < len(self._model.pieces):
            self._row = row
            self.marked.emit(self._model.pieces[row].tag, counted)

    def _open(self, row: int) -> None:
        if 0 <= row < len(self._model.pieces):
            self.opened.emit(self._model.pieces[row].tag)

    _row = 0

    def _spread(self) -> None:
        """Columns by shares; the last takes what is left."""
        room, shares = self.viewport().width(), sum(_SHARES.values())
        for column, share in _SHARES.items():
            self.setColumnWidth(column, room * share // shares)
        high = self._look.px(_ROW_PX)
        self.verticalHeader().setDefaultSectionSize(high)
        self.setMinimumHeight((_ROWS_AT_LEAST + 1) * high)
