"""Cells of a list whose words wrap: as high as their words, a hairline below each."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter
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
        font = option.font
        if self._table.model().data(index, Qt.ItemDataRole.FontRole):
            font = self._table.model().data(index, Qt.ItemDataRole.FontRole)
        beside = 2 * self._look.px(_BESIDE_PX) + (self._look.px(3 * GRID) if self._has_tick(index) else 0)
        wide = max(self._room(index) - beside, 1)
        flags = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft)
        text = str(index.data() or "")
        high = QFontMetrics(font).boundingRect(QRect(0, 0, wide, _FAR_PX), flags, text).height()
        return QSize(wide, high + 2 * GRID)

    def _room(self, index: Index) -> int:
        """The width of the cell; one that goes across has all of it."""
        across = self._table.columnSpan(index.row(), index.column()) > 1
        return self._table.viewport().width() if across else self._table.columnWidth(index.column())

    def _has_tick(self, index: Index) -> bool:
        return index.data(Qt.ItemDataRole.CheckStateRole) is not None
