"""Cells of a list whose words wrap: as high as their words, a hairline below each."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QTableView

from inspector.desk.gear_model import Index
from inspector.desk.look import GRID, Look
from inspector.drawings.shapes import Ink

_BESIDE_PX = 11  # what the style sheet and the table leave free beside the words
_FAR_PX = 100_000


class LinedCells(QStyledItemDelegate):
    """Paints and measures the cells of a table."""

    def __init__(self, look: Look, table: QTableView) -> None:
        super().__init__(table)
        self._look, self._table = look, table

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        whole = QRect(option.rect)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(whole, self._look.colour(Ink.BAND))
        option.rect = whole.adjusted(0, GRID // 2, 0, -GRID // 2)
        super().paint(painter, option, index)
        painter.setPen(self._look.colour(Ink.HAIR))
        painter.drawLine(whole.bottomLeft(), whole.bottomRight())

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As high as the words need in the column's width."""
        font = index.data(Qt.ItemDataRole.FontRole) or self._look.font()
        wide = self._words_px(index)
        flags = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft)
        text = str(index.data() or "")
        high = QFontMetrics(font).boundingRect(QRect(0, 0, wide, _FAR_PX), flags, text).height()
        return QSize(wide, high + 2 * GRID)

    def fit_rows(self) -> None:
        """Every row as high as its words. Most are one line, told by the widths of their words, each measured once."""
        table, model = self._table, self._table.model()
        metrics = QFontMetrics(self._bold())
        wide: dict[str, int] = {}
        line = metrics.lineSpacing() + 2 * GRID
        shown = [column for column in range(model.columnCount()) if not table.isColumnHidden(column)]
        for row in range(model.rowCount()):
            high = line
            for column in shown:
                index = model.index(row, column)
                text = str(index.data() or "")
                if text not in wide:
                    wide[text] = metrics.horizontalAdvance(text) if "\n" not in text else _FAR_PX
                if wide[text] > self._words_px(index):
                    high = max(high, self.sizeHint(QStyleOptionViewItem(), index).height())
            if table.rowHeight(row) != high:
                table.setRowHeight(row, high)

    def _bold(self) -> QFont:
        """The wider type: what fits in bold fits in any case."""
        font = QFont(self._look.font())
        font.setBold(True)
        return font

    def _words_px(self, index: Index) -> int:
        """The room for the words of a cell."""
        tick = self._look.px(3 * GRID) if index.column() == 0 and self._has_tick(index) else 0
        return max(self._room(index) - 2 * self._look.px(_BESIDE_PX) - tick, 1)

    def _room(self, index: Index) -> int:
        """The width of the cell; one that goes across has all of it."""
        across = self._table.columnSpan(index.row(), index.column()) > 1
        return self._table.viewport().width() if across else self._table.columnWidth(index.column())

    def _has_tick(self, index: Index) -> bool:
        return index.data(Qt.ItemDataRole.CheckStateRole) is not None
