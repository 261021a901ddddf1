"""The table of pairs: in each cell the mark beside its word, below it the speed that it holds up to."""

from PySide6.QtCore import QModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QSizePolicy,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pair_model import Index, PairModel, pair_word, up_to_words
from inspector.desk.pen import mark_of, paint
from inspector.drawings.shapes import Ink
from inspector.gear.rig_result import PairLine
from inspector.units import System

_MARK_PX = 20
_ROW_PX = 52
_LEAST_PX = 112
_HEAD_PX = 28


class _Cells(QStyledItemDelegate):
    """Paints a pair."""

    def __init__(self, look: Look, system: System, parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self._system = look, system

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The mark, the word, the speed; a frame round the chosen one."""
        model = index.model()
        line = model.line_at(index) if isinstance(model, PairModel) else None
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, self._look.colour(Ink.BAND))
            foot = option.rect.adjusted(0, option.rect.height() - self._look.px(3), 0, 0)
            painter.fillRect(foot, self._look.colour(Ink.INK))
        painter.setPen(self._look.colour(Ink.HAIR))
        painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight())
        if line is None:
            middle = option.rect.center()
            painter.drawLine(middle.x() - self._look.px(GRID), middle.y(), middle.x() + self._look.px(GRID), middle.y())
        else:
            self._pair(line, painter, option.rect)
        painter.restore()

    def _pair(self, line: PairLine, painter: QPainter, rect: QRect) -> None:
        size, gap = self._look.px(_MARK_PX), self._look.px(GRID)
        if line.outcome:
            top = rect.center().y() - size / 2 + 1
            paint(mark_of(line.outcome), painter, rect.left() + gap, top, size, self._look)
        words = rect.adjusted(size + 2 * gap, 0, -gap // 2, 0)
        speed = up_to_words(line, self._system)
        painter.setPen(self._look.colour(Ink.INK if line.outcome else Ink.FAINT))
        painter.setFont(self._look.font(bold=line.outcome is not None))
        at = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        upper = words.adjusted(0, 0, 0, -words.height() // 3) if speed else words
        painter.drawText(upper, at, pair_word(line))
        if speed:
            painter.setFont(self._look.font(Type.SMALL))
            painter.drawText(words.adjusted(0, words.height() // 3, 0, 0), at, speed)


class PairView(QTableView):
    """chosen: another pair; nobody: the place where this vehicle would pull itself. opened: a pair's rig is asked for.

    typed: a letter that belongs to the search.
    """

    chosen = Signal(object)
    nobody = Signal(str)
    opened = Signal(object)
    typed = Signal(str)

    def __init__(self, model: PairModel, name: str, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._model, self._system = look, model, system
        self.setObjectName("pairs")
        self.setModel(model)
        self.setItemDelegate(_Cells(look, system, self))
        self.setAccessibleName(name)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        for header in (self.horizontalHeader(), self.verticalHeader()):
            header.setHighlightSections(False)
            header.setSectionsClickable(False)
            header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.doubleClicked.connect(self._open)
        look.changed.connect(self._spread)
        self._spread()

    @property
    def line(self) -> PairLine | None:
        """The pair chosen."""
        return self._model.line_at(self.currentIndex())

    def choose(self, line: PairLine) -> None:
        """Put the bar on a pair."""
        self.setCurrentIndex(
            self._model.index(self._model.pulling.index(line.pulling), self._model.bogged.index(line.bogged))
        )

    def currentChanged(self, current: QModelIndex, previous: QModelIndex) -> None:  # type: ignore[override]
        """Tell of the pair the bar is on."""
        super().currentChanged(current, previous)
        if line := self.line:
            self.chosen.emit(line)
        elif current.isValid():
            self.nobody.emit(self._model.pulling[current.row()])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return opens the rig; letters go to the search; the arrows move the bar."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._open(self.currentIndex())
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the columns their room."""
        super().resizeEvent(event)
        self._spread()

    def minimumSizeHint(self) -> QSize:
        """As high as its rows; as narrow as one column, the rest is scrolled to."""
        return QSize(self._look.px(_LEAST_PX), self.height())

    def _open(self, index: Index) -> None:
        if line := self._model.line_at(index):
            self.opened.emit(line)

    def _spread(self) -> None:
        """Columns as wide as their words, wider where there is room; the table as high as its rows."""
        small = QFontMetrics(self._look.font(Type.SMALL))
        aside = max((small.horizontalAdvance(str(self._head(row))) for row in range(self._model.rowCount())), default=0)
        self.verticalHeader().setFixedWidth(aside + self._look.px(4 * GRID))
        count = max(self._model.columnCount(), 1)
        room = self.width() - self.verticalHeader().width() - 2
        least = self._least_column()
        wide = max(room // count, least)
        for column in range(count):
            self.setColumnWidth(column, min(wide, 2 * least))
        for row in range(self._model.rowCount()):
            self.setRowHeight(row, self._look.px(_ROW_PX))
        head = self._look.px(_HEAD_PX)
        self.horizontalHeader().setFixedHeight(head)
        bar = self.horizontalScrollBar().sizeHint().height() if wide * count > room else 0
        self.setFixedHeight(head + self._model.rowCount() * self._look.px(_ROW_PX) + bar + 2)

    def _least_column(self) -> int:
        """The mark and the widest words beside it."""
        bold, small = QFontMetrics(self._look.font(bold=True)), QFontMetrics(self._look.font(Type.SMALL))
        words = [bold.horizontalAdvance(pair_word(one)) for one in self._model.lines]
        words += [small.horizontalAdvance(up_to_words(one, self._system)) for one in self._model.lines]
        return max(words, default=0) + self._look.px(_MARK_PX + 3 * GRID)

    def _head(self, row: int) -> object:
        return self._model.headerData(row, Qt.Orientation.Vertical)
