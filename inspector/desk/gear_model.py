"""The gear list as Qt's table model: it knows every tag, and asks for the rest of a row only when it is looked at."""

from collections import OrderedDict
from collections.abc import Collection, Mapping
from datetime import date
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, QTimer, Signal
from PySide6.QtGui import QFont

from inspector.desk.gear_list.columns import COLUMNS, TAG, VERDICT, column_names
from inspector.desk.gear_list.listed import PAGE
from inspector.gear.lists import GearRow, Order
from inspector.gear.outcome import Outcome
from inspector.language import tr

OUTCOME_ROLE = int(Qt.ItemDataRole.UserRole)
# numbers, as they are asked for: of each cell eight roles are, and an enum's member is sought by name every time
_FONT_ROLE, _DISPLAY_ROLE = int(Qt.ItemDataRole.FontRole), int(Qt.ItemDataRole.DisplayRole)
_TOOL_TIP_ROLE = int(Qt.ItemDataRole.ToolTipRole)

Index = QModelIndex | QPersistentModelIndex
_TOP = QModelIndex()
_COMING = "…"
_PAGES_KEPT = 48
_PAGES_AT_ONCE = 4  # of those scrolled past at speed, the last ones are in view
_GATHER_MS = 15


class GearModel(QAbstractTableModel):
    """The pieces listed. needed: the numbers of pages that are looked at and not here yet, the last asked for last."""

    needed = Signal(object)

    def __init__(self, today: date, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._today = today
        self.tags: tuple[str, ...] = ()
        self._pages: OrderedDict[int, tuple[GearRow, ...]] = OrderedDict()
        self._missing: OrderedDict[int, None] = OrderedDict()
        self._under_way: set[int] = set()
        self._order, self._falling = Order.DUE, False
        self._gather = QTimer(self, singleShot=True, interval=_GATHER_MS)
        self._gather.timeout.connect(self._ask)

    def show_list(self, tags: tuple[str, ...], pages: Mapping[int, tuple[GearRow, ...]], today: date) -> None:
        """Show other pieces. pages: the rows that are here already, by the number of their page."""
        self.beginResetModel()
        self.tags, self._today = tags, today
        self._pages = OrderedDict(pages)
        self._missing.clear()
        self._under_way.clear()
        self.endResetModel()

    def take(self, number: int, rows: tuple[GearRow, ...]) -> None:
        """Take a page that was asked for. One that does not fit the tags, since a piece was relabelled meanwhile, is
        left out: the next reading brings it."""
        self._under_way.discard(number)
        first, last = number * PAGE, min((number + 1) * PAGE, len(self.tags)) - 1
        if tuple(row.tag for row in rows) != self.tags[first : last + 1] or last < first:
            return
        self._pages[number] = rows
        while len(self._pages) > _PAGES_KEPT:
            self._pages.popitem(last=False)
        self.dataChanged.emit(self.index(first, 0), self.index(last, len(COLUMNS) - 1))

    def forget_asked(self) -> None:
        """What was asked for did not come; it is asked for again when it is looked at."""
        self._under_way.clear()

    def tell_order(self, order: Order, falling: bool) -> None:
        """Say above which column the list is sorted."""
        self._order, self._falling = order, falling
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(COLUMNS) - 1)

    def row_of(self, tag: str) -> int:
        """The number of the row with this tag, else 0."""
        try:
            return self.tags.index(tag)  # gone through once: to ask first whether it is there would be another time
        except ValueError:
            return 0

    def rows_of(self, tags: Collection[str]) -> list[int]:
        """The numbers of the rows of those of these tags that are listed."""
        wanted = set(tags)
        return [row for row, tag in enumerate(self.tags) if tag in wanted] if wanted else []

    def row_at(self, number: int) -> GearRow | None:
        """A row, or None where it is not here yet; then it is asked for."""
        page, within = divmod(number, PAGE)
        rows = self._pages.get(page)
        if rows is not None:
            self._pages.move_to_end(page)
            return rows[within]
        self._missing[page] = None
        self._missing.move_to_end(page)
        if not self._gather.isActive():
            self._gather.start()
        return None

    def rowCount(self, parent: Index = _TOP) -> int:
        """How many pieces are listed."""
        return 0 if parent.isValid() else len(self.tags)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Every column; the view hides those that were not chosen."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell shows, tells on hover, or weighs."""
        if not index.isValid():
            return None
        if role == _FONT_ROLE:
            return _bold() if index.column() == TAG else None
        if role == _DISPLAY_ROLE:
            return self._text(index.row(), index.column())
        if role == _TOOL_TIP_ROLE:
            row = self.row_at(index.row())
            return row.headline if row else None
        if role == OUTCOME_ROLE and index.column() == VERDICT:
            row = self.row_at(index.row())
            return row.outcome.value if row and row.outcome else None
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The columns' names; the one sorted by with an arrow, and in words for who cannot see it."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        if role not in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return None
        name = column_names()[section]
        if COLUMNS[section].order is not self._order:
            return name
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{name} {'▼' if self._falling else '▲'}"
        if self._falling:
            return tr("{column}, sorted by this, last to first", column=name)
        return tr("{column}, sorted by this, first to last", column=name)

    def _text(self, number: int, column: int) -> str:
        if column == TAG:
            return self.tags[number]
        row = self.row_at(number)
        return COLUMNS[column].text(row, self._today) if row else _COMING

    def _ask(self) -> None:
        wanted = [one for one in self._missing if one not in self._under_way][-_PAGES_AT_ONCE:]
        self._missing.clear()
        if wanted:
            self._under_way.update(wanted)
            self.needed.emit(tuple(wanted))


def outcome_at(index: Index) -> Outcome | None:
    """The outcome a verdict cell stands for."""
    value = index.data(OUTCOME_ROLE)
    return Outcome(value) if value else None


def _bold() -> QFont:
    font = QFont()
    font.setBold(True)
    return font
