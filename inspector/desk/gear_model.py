"""The gear list as Qt's table model: rows come in whole, the view asks cell by cell."""

from collections.abc import Callable
from datetime import date
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QFont

from inspector.drawings.marks import outcome_word
from inspector.gear.lists import GearRow
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr

TAG, KIND, VERDICT, DUE, MARKED, OWNER, PLACE = range(7)
OUTCOME_ROLE = int(Qt.ItemDataRole.UserRole)

Index = QModelIndex | QPersistentModelIndex
_TOP = QModelIndex()


def _verdict(row: GearRow, today: date) -> str:
    if row.outcome is None:
        return tr("not judged yet")
    word = outcome_word(row.outcome)
    return tr("{outcome}, loosened", outcome=word) if row.unloosened else word


def _due(row: GearRow, today: date) -> str:
    if row.next_due is None:
        return "–"
    day = show_day(row.next_due)
    return tr("{day}, overdue", day=day) if row.next_due < today else day


_TEXTS: dict[int, Callable[[GearRow, date], str]] = {
    TAG: lambda row, today: row.tag,
    KIND: lambda row, today: row.kind_name,
    VERDICT: _verdict,
    DUE: _due,
    MARKED: lambda row, today: row.marked,
    OWNER: lambda row, today: row.owner,
    PLACE: lambda row, today: row.place,
}


class GearModel(QAbstractTableModel):
    """Rows of the gear list. today: the day that tells what is overdue."""

    def __init__(self, today: date, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._today = today
        self.rows: tuple[GearRow, ...] = ()

    def show_rows(self, rows: tuple[GearRow, ...], today: date) -> None:
        """Show other rows."""
        self.beginResetModel()
        self.rows, self._today = rows, today
        self.endResetModel()

    def row_of(self, tag: str) -> int:
        """The number of the row with this tag, else 0."""
        return next((number for number, row in enumerate(self.rows) if row.tag == tag), 0)

    def rowCount(self, parent: Index = _TOP) -> int:
        """How many pieces are shown."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Seven, and none below a cell."""
        return 0 if parent.isValid() else len(_TEXTS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell shows, tells on hover, or weighs."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return _TEXTS[index.column()](row, self._today)
        if role == Qt.ItemDataRole.ToolTipRole:
            return row.headline
        if role == OUTCOME_ROLE and index.column() == VERDICT and row.outcome:
            return row.outcome.value
        if role == Qt.ItemDataRole.FontRole and index.column() == TAG:
            return _bold()
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The columns' names."""
        if role == Qt.ItemDataRole.DisplayRole and orientation is Qt.Orientation.Horizontal:
            return column_names()[section]
        if role == Qt.ItemDataRole.TextAlignmentRole and orientation is Qt.Orientation.Horizontal:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        return None


def column_names() -> tuple[str, ...]:
    """What stands above the columns."""
    return (tr("Tag"), tr("Kind"), tr("Verdict"), tr("Next due"), tr("Marked"), tr("Owner"), tr("Place"))


def outcome_at(index: Index) -> Outcome | None:
    """The outcome a verdict cell stands for."""
    value = index.data(OUTCOME_ROLE)
    return Outcome(value) if value else None


def _bold() -> QFont:
    font = QFont()
    font.setBold(True)
    return font
