"""The table of the gear list: the mark beside its word, columns that yield when the window is narrow."""

from PySide6.QtCore import QEvent, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from inspector.desk.gear_model import DUE, KIND, MARKED, OWNER, PLACE, TAG, VERDICT, GearModel, Index, outcome_at
from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look
from inspector.desk.pen import paint
from inspector.drawings.marks import outcome_mark
from inspector.drawings.shapes import Ink
from inspector.language import tr

_MARK_PX = 18
_ROW_PX = 36
_WIDTHS_PX = {TAG: 104, KIND: 160, VERDICT: 108, DUE: 168, MARKED: 170, OWNER: 130, PLACE: 130}
_YIELD_FIRST = (PLACE, OWNER, MARKED)


class _Cells(QStyledItemDelegate):
    """Paints cells: a hairline below each, and in the verdict's column the mark before the word."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        if outcome := outcome_at(index):
            size = self._look.px(_MARK_PX)
            band = self._look.colour(Ink.BAND)
            if option.state & QStyle.StateFlag.State_Selected:
                painter.fillRect(option.rect, band)
            left, top = option.rect.left() + self._look.px(GRID), option.rect.center().y() - size / 2 + 1
            paint(outcome_mark(outcome, 10.0), painter, left, top, size, self._look)
            option.rect = option.rect.adjusted(size + self._look.px(GRID), 0, 0, 0)
        super().paint(painter, option, index)
        self._hairline(painter, option.rect, index)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Rows stand on the grid."""
        return QSize(super().sizeHint(option, index).width(), self._look.px(_ROW_PX))

    def _hairline(self, painter: QPainter, rect: QRect, index: Index) -> None:
        painter.setPen(self._look.colour(Ink.HAIR))
        painter.drawLine(rect.left() - self._look.px(40), rect.bottom(), rect.right(), rect.bottom())


class GearView(QTableView):
    """The list. opened: a row was chosen by Return or double click. typed: a letter that belongs to the search."""

    opened = Signal(str)
    typed = Signal(str)

    def __init__(self, model: GearModel, look: Look) -> None:
        super().__init__()
        self._look, self._model = look, model
        self.setModel(model)
        self.setItemDelegate(_Cells(look, self))
        self.setAccessibleName(tr("Gear list"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        self.horizontalHeader().setHighlightSections(False)
        self.doubleClicked.connect(lambda index: self._open(index.row()))
        look.changed.connect(self._spread)
        self._spread()

    def choose(self, row: int) -> None:
        """Put the bar on a row."""
        if 0 <= row < len(self._model.rows):
            self.selectRow(row)
            self.setCurrentIndex(self._model.index(row, TAG))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return opens; letters go to the search; the rest moves the bar."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._open(self.currentIndex().row())
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the columns their room."""
        super().resizeEvent(event)
        self._spread()

    def changeEvent(self, event: QEvent) -> None:
        """A larger font needs other widths."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self._spread()

    def _open(self, row: int) -> None:
        if 0 <= row < len(self._model.rows):
            self.opened.emit(self._model.rows[row].tag)

    def _spread(self) -> None:
        """Widths by need; where all do not fit, the last columns yield: the record shows what they hold."""
        room, header = self.viewport().width(), self.horizontalHeader()
        shown = {column: self._look.px(width) for column, width in _WIDTHS_PX.items()}
        for column in _YIELD_FIRST:
            if sum(shown.values()) > room:
                del shown[column]
        spare = max(room - sum(shown.values()), 0) // len(shown)
        for column in _WIDTHS_PX:
            self.setColumnHidden(column, column not in shown)
            self.setColumnWidth(column, shown.get(column, 0) + spare)
        header.setStretchLastSection(True)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setDefaultSectionSize(self._look.px(_ROW_PX))
