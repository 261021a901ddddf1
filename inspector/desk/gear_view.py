"""The table of the gear list: the mark beside its word, one or several rows chosen, columns that yield for want of
room."""

from collections.abc import Iterable

from PySide6.QtCore import QEvent, QItemSelection, QItemSelectionModel, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QPainter, QPen, QPixmap
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from inspector.desk.gear_list.columns import COLUMNS, MARKED, OWNER, PLACE, TAG, USUAL, VERDICT, known
from inspector.desk.gear_list.listed import Sight
from inspector.desk.gear_model import GearModel, Index, outcome_at
from inspector.desk.look import GRID, Look
from inspector.desk.pen import mark_icon
from inspector.desk.row_table import RowTable
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.language import tr

_MARK_PX = 18
_ROW_PX = 36
_HAIR_BEFORE_PX = 40  # the line goes on below the mark before the word
_YIELD_FIRST = (PLACE, OWNER, MARKED)


class _Cells(QStyledItemDelegate):
    """Paints cells: a hairline below each, and in the verdict's column the mark before the word."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._marks: dict[Outcome, QPixmap] = {}
        self._take_look()
        look.changed.connect(self._take_look)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        outcome = outcome_at(index) if index.column() == VERDICT else None
        if outcome:
            size = self._look.px(_MARK_PX)
            band = self._look.colour(Ink.BAND)
            if option.state & QStyle.StateFlag.State_Selected:
                painter.fillRect(option.rect, band)
            left, top = option.rect.left() + self._look.px(GRID), option.rect.center().y() - size / 2 + 1
            painter.drawPixmap(left, round(top), self._mark(outcome, size))
            option.rect = option.rect.adjusted(size + self._look.px(GRID), 0, 0, 0)
        super().paint(painter, option, index)
        painter.setPen(self._hair)
        painter.drawLine(
            option.rect.left() - self._before, option.rect.bottom(), option.rect.right(), option.rect.bottom()
        )

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Rows stand on the grid."""
        return QSize(super().sizeHint(option, index).width(), self._look.px(_ROW_PX))

    def _take_look(self) -> None:
        """What is the same for all cells is asked for once a look: a hundred cells are painted at every turn."""
        self._marks.clear()
        self._hair, self._before = QPen(self._look.colour(Ink.HAIR)), self._look.px(_HAIR_BEFORE_PX)

    def _mark(self, outcome: Outcome, size: int) -> QPixmap:
        """The mark, drawn once a look: drawing it anew in each cell takes longer than all the rest."""
        if outcome not in self._marks:
            self._marks[outcome] = mark_icon(outcome, self._look, size).pixmap(size)
        return self._marks[outcome]


class GearView(RowTable):
    """The list. opened: a row was chosen by Return or double click. typed: a letter that belongs to the search.

    head_clicked: the number of a column whose head was clicked. copies: the chosen rows are to be copied.
    """

    opened = Signal(str)
    head_clicked = Signal(int)
    copies = Signal()

    def __init__(self, model: GearModel, look: Look) -> None:
        super().__init__(model, tr("Gear list"), look, wraps=False)
        self._model = model
        self.columns = USUAL
        self.setItemDelegate(_Cells(look, self))
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self._set_head()
        self.doubleClicked.connect(lambda index: self.enter(index.row()))
        look.changed.connect(self.spread)
        self.spread()

    def show_columns(self, keys: Iterable[str]) -> None:
        """Show these columns; the tag and the verdict always."""
        self.columns = known(keys)
        self.spread()

    def choose(self, row: int) -> None:
        """Put the bar on a row, and choose it alone, whatever keys are held down."""
        if 0 <= row < len(self._model.tags):
            index, flags = self._model.index(row, TAG), QItemSelectionModel.SelectionFlag
            self.selectionModel().setCurrentIndex(index, flags.ClearAndSelect | flags.Rows)
            self.scrollTo(index)

    def choose_also(self, rows: Iterable[int]) -> None:
        """Add rows to those that are chosen."""
        more, last = QItemSelection(), len(COLUMNS) - 1
        for row in rows:
            more.select(self._model.index(row, 0), self._model.index(row, last))
        self.selectionModel().select(more, QItemSelectionModel.SelectionFlag.Select)

    @property
    def chosen(self) -> tuple[str, ...]:
        """The tags of the chosen rows, from top to bottom."""
        spans = sorted((one.top(), one.bottom()) for one in self.selectionModel().selection().toList())
        return tuple(tag for top, bottom in spans for tag in self._model.tags[top : bottom + 1])

    @property
    def chosen_count(self) -> int:
        """How many rows are chosen."""
        return sum(one.bottom() - one.top() + 1 for one in self.selectionModel().selection().toList())

    @property
    def sight(self) -> Sight:
        """What part of the list is looked at."""
        row, top = self.currentIndex().row(), self.verticalScrollBar().value()
        count = self.viewport().height() // max(self.verticalHeader().defaultSectionSize(), 1) + 1
        if not 0 <= row < len(self._model.tags):
            return Sight(count=count)
        return Sight(self._model.tags[row], row - top if 0 <= row - top < count else 0, count)

    def stand(self, sight: Sight) -> None:
        """Put the bar on the piece of this sight, as many rows below the top as it was."""
        row = self._model.row_of(sight.tag)
        self.verticalScrollBar().setValue(row - sight.above)
        self.choose(row)

    def takes(self, event: QKeyEvent) -> bool:
        """The space bar adds a row or takes it away; the chosen rows are copied."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copies.emit()
        elif event.key() == Qt.Key.Key_Space:
            flags = QItemSelectionModel.SelectionFlag.Toggle | QItemSelectionModel.SelectionFlag.Rows
            self.selectionModel().select(self.currentIndex(), flags)
        else:
            return False
        return True

    def changeEvent(self, event: QEvent) -> None:
        """A larger font needs other widths."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self.spread()

    def _set_head(self) -> None:
        head = self.horizontalHeader()
        head.setHighlightSections(False)
        head.setSectionsClickable(True)
        head.sectionPressed.disconnect()  # Qt would choose the whole column, which is every piece
        head.setStretchLastSection(True)
        # a head that is painted asks of every row whether its column is chosen; of a selection of its own, of none
        head.setSelectionModel(QItemSelectionModel(self._model, head))
        head.sectionClicked.connect(self.head_clicked)

    def enter(self, row: int) -> None:
        """Return opens the piece."""
        if 0 <= row < len(self._model.tags):
            self.opened.emit(self._model.tags[row])

    def spread(self) -> None:
        """Widths by need. Where the usual columns do not all fit, the last ones yield: the record shows what they hold.
        Columns that somebody chose stay, and the list can be moved sideways."""
        room = self.viewport().width()
        widths = {n: self._look.px(one.width_px) for n, one in enumerate(COLUMNS) if one.key in self.columns}
        for column in _YIELD_FIRST if self.columns == USUAL else ():
            if sum(widths.values()) > room:
                del widths[column]
        spare = max(room - sum(widths.values()), 0) // len(widths)
        for column in range(len(COLUMNS)):
            self.setColumnHidden(column, column not in widths)
            self.setColumnWidth(column, widths.get(column, 0) + spare)
        bar = Qt.ScrollBarPolicy
        self.setHorizontalScrollBarPolicy(bar.ScrollBarAlwaysOff if self.columns == USUAL else bar.ScrollBarAsNeeded)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setDefaultSectionSize(self._look.px(_ROW_PX))
