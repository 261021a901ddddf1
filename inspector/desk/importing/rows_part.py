"""What becomes of each row: a table with a filter, and below it all of the row in hand, beside what it is like."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QHeaderView, QPushButton, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import bare_grid, button, clear, fill, row, said, scroll, short
from inspector.desk.row_table import RowTable
from inspector.duties.importing.figures import text_of
from inspector.duties.tell_import import fate_word
from inspector.gear.import_list import Fate, Fates, RowFate, Sheet
from inspector.language import tr

Index = QModelIndex | QPersistentModelIndex
_WIDTHS_PX = (56, 144, 120)
_DETAIL_PX = 208
_LEAST_TABLE_PX = 208


class FateModel(QAbstractTableModel):
    """Rows with their fate; only those of one fate where one is chosen."""

    def __init__(self, run: Fates, sheet: Sheet) -> None:
        super().__init__()
        self._run, self._sheet = run, sheet
        self.shown: Sequence[RowFate] = run.rows

    def choose(self, fate: Fate | None) -> None:
        """Show the rows of this fate, or all."""
        self.beginResetModel()
        self.shown = [one for one in self._run.rows if fate is None or one.fate is fate]
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many rows are shown."""
        return 0 if parent.isValid() else len(self.shown)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """Row, fate, tag, what is told."""
        return 0 if parent.isValid() else 4

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words above the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return (tr("Row"), tr("Fate"), tr("Tag"), tr("Why, or what it says"))[section]
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A cell as text."""
        if role not in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole} or not index.isValid():
            return None
        one = self.shown[index.row()]
        texts = (str(one.number), fate_word(one.fate), one.tag, one.why or " · ".join(one.told) or self.cells(one))
        return texts[index.column()]

    def cells(self, one: RowFate) -> str:
        """The row as it stands in the file."""
        return " · ".join(text for cell in self._sheet.rows[one.number - 1] if (text := text_of(cell)))


class FateTable(RowTable):
    """The rows; the one in hand is told below."""

    chosen = Signal(int)

    def __init__(self, model: FateModel, look: Look) -> None:
        super().__init__(model, tr("What becomes of each row"), look, wraps=False)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.selectionModel().currentRowChanged.connect(lambda now, _: self.chosen.emit(now.row()))
        self.spread()

    def spread(self) -> None:
        """The last column takes what is left."""
        self.verticalHeader().setDefaultSectionSize(self._look.px(4 * GRID))
        for column, width in enumerate(_WIDTHS_PX):
            self.setColumnWidth(column, self._look.px(width))
        self.horizontalHeader().setStretchLastSection(True)
        self.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


class RowsPart(QWidget):
    """typed: a letter for the search."""

    typed = Signal(str)

    def __init__(self, run: Fates, sheet: Sheet, look: Look) -> None:
        super().__init__()
        self._look = look
        self.model = FateModel(run, sheet)
        self.table = FateTable(self.model, look)
        self.table.typed.connect(self.typed)
        self.table.chosen.connect(self._tell)
        self._group = QButtonGroup(self)
        self.filters = {one: self._filter(one, run) for one in (None, *Fate)}
        self.filters[None].setChecked(True)
        self._inside = QWidget()
        QVBoxLayout(self._inside)
        self.detail = scroll(self._inside, tr("The row in hand"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(row(list(self.filters.values())))
        layout.addWidget(self.table, 1)
        layout.addWidget(self.detail)
        self._tell(-1)
        self._size()
        look.changed.connect(self._size)

    def _size(self) -> None:
        """Room for some rows and for all of one, in any size of text; a page too low for both is scrolled."""
        self.table.setMinimumHeight(self._look.px(_LEAST_TABLE_PX))
        self.detail.setFixedHeight(self._look.px(_DETAIL_PX))
        self.table.spread()

    def _filter(self, fate: Fate | None, run: Fates) -> QPushButton:
        count = len(run.rows) if fate is None else run.count(fate)
        words = tr("{what} {count}", what=tr("all") if fate is None else fate_word(fate), count=count)
        made = button(words, partial(self._choose, fate), rank="filter")
        made.setCheckable(True)
        self._group.addButton(made)
        return made

    def _choose(self, fate: Fate | None) -> None:
        self.model.choose(fate)
        self._tell(-1)

    def _tell(self, at: int) -> None:
        """All of the row in hand."""
        layout = self._inside.layout()
        if not isinstance(layout, QVBoxLayout):
            return
        clear(layout)
        if not 0 <= at < len(self.model.shown):
            fill(layout, [said(tr("Choose a row to read all of it."), faint=True)])
            return
        one = self.model.shown[at]
        parts: list[QWidget] = [said(self.model.cells(one), Type.SMALL, faint=True)]
        if one.why:
            parts.append(said(f"{one.why} {one.what_to_do}".strip()))
        parts += [said(line) for line in one.told]
        if one.photos:
            parts.append(said(tr("Photos: {names}", names=", ".join(one.photos))))
        if one.beside:
            parts.append(_beside(one))
        fill(layout, parts, GRID // 2)


def _beside(one: RowFate) -> QWidget:
    """The facts of the row beside those of what it is like; those that differ are bold."""
    part, grid = bare_grid(1, 2)
    for column, words in enumerate(("", tr("this row"), one.like)):
        grid.addWidget(short(words, Type.SMALL, faint=True), 0, column)
    for number, fact in enumerate(one.beside, 1):
        is_other = fact.ours != fact.theirs
        grid.addWidget(short(fact.name, Type.SMALL, faint=True), number, 0)
        grid.addWidget(said(fact.ours or "–", Type.SMALL, bold=is_other), number, 1)
        grid.addWidget(said(fact.theirs or "–", Type.SMALL, bold=is_other), number, 2)
    return part
