"""What is out as Qt's table model: headings and, below each, its loans with a tick for those that are chosen."""

from datetime import date
from typing import Any

from msgspec import Struct
from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, Qt, Signal
from PySide6.QtGui import QFont

from inspector.desk.gear_model import Index
from inspector.desk.lending.out import Group, due_words, group_words, meanwhile_words
from inspector.gear.custody import Loan
from inspector.language import show_day, tr

_TOP = QModelIndex()
TAG, KIND, HOLDER, TRIP, SINCE, DUE, MEANWHILE = range(7)
_Role = Qt.ItemDataRole


class Row(Struct, frozen=True):
    """A heading (loan None) or a loan, and the group it belongs to."""

    group: Group
    loan: Loan | None = None


class LoanModel(QAbstractTableModel):
    """picked: other pieces are ticked. The tick of a heading stands for all below it."""

    picked = Signal()

    def __init__(self, today: date, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._today = today
        self._font = QFont()
        self._font.setBold(True)
        self.rows: tuple[Row, ...] = ()
        self.chosen: tuple[str, ...] = ()

    def show_groups(self, groups: tuple[Group, ...], today: date) -> None:
        """Show other loans; what is still out stays ticked."""
        self.beginResetModel()
        self._today = today
        self.rows = tuple(row for group in groups for row in (Row(group), *(Row(group, one) for one in group.loans)))
        out = {row.loan.tag for row in self.rows if row.loan}
        self.chosen = tuple(tag for tag in self.chosen if tag in out)
        self.endResetModel()
        self.picked.emit()

    def turn(self, number: int) -> None:
        """Tick a row or take its tick away; with a heading go all below it."""
        row = self.rows[number]
        tags = [row.loan.tag] if row.loan else [one.tag for one in row.group.loans]
        if all(tag in self.chosen for tag in tags):
            self.chosen = tuple(tag for tag in self.chosen if tag not in tags)
        else:
            self.chosen = (*self.chosen, *(tag for tag in tags if tag not in self.chosen))
        last = self.index(len(self.rows) - 1, TAG)
        self.dataChanged.emit(self.index(0, TAG), last, [_Role.CheckStateRole])
        self.picked.emit()

    def rowCount(self, parent: Index = _TOP) -> int:
        """Headings and loans."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Seven, none below a cell."""
        return 0 if parent.isValid() else len(_names())

    def flags(self, index: Index) -> Qt.ItemFlag:
        """The first column can be ticked."""
        found = super().flags(index)
        return found | Qt.ItemFlag.ItemIsUserCheckable if index.isValid() and index.column() == TAG else found

    def setData(self, index: Index, value: Any, role: int = _Role.EditRole) -> bool:
        """A tick was pressed."""
        if role != _Role.CheckStateRole or not index.isValid():
            return False
        self.turn(index.row())
        return True

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        """What a cell says."""
        if not index.isValid():
            return None
        row, column = self.rows[index.row()], index.column()
        if role == _Role.DisplayRole:
            return self._text(row, column)
        if role == _Role.CheckStateRole and column == TAG:
            return self._tick(row)
        if role == _Role.FontRole and (row.loan is None or column == TAG):
            return self._font
        if role == _Role.AccessibleTextRole:
            return self._spoken(row, column)
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole) -> Any:
        """The columns' names."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == _Role.DisplayRole:
            return _names()[section]
        if role == _Role.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        return None

    def use_font(self, font: QFont) -> None:
        """The type of the look, for what stands bold."""
        self._font = QFont(font)
        self._font.setBold(True)

    def _text(self, row: Row, column: int) -> str:
        one = row.loan
        if one is None:
            return group_words(row.group) if column == TAG else ""
        texts = (one.tag, one.kind_name, one.holder, one.trip or "–", show_day(one.since),
                 due_words(one, self._today), meanwhile_words(one, self._today))  # fmt: skip
        return texts[column]

    def _tick(self, row: Row) -> Qt.CheckState:
        tags = [row.loan.tag] if row.loan else [one.tag for one in row.group.loans]
        ticked = sum(tag in self.chosen for tag in tags)
        if ticked == len(tags):
            return Qt.CheckState.Checked
        return Qt.CheckState.PartiallyChecked if ticked else Qt.CheckState.Unchecked

    def _spoken(self, row: Row, column: int) -> str:
        words = self._text(row, column)
        if column != TAG:
            return words
        chosen = self._tick(row) is Qt.CheckState.Checked
        return tr("{tag}, chosen", tag=words) if chosen else words


def _names() -> tuple[str, ...]:
    return (
        tr("Tag"), tr("Kind"), tr("Who has it"), tr("Trip"), tr("Since"), tr("To be back by"), tr("Due while out"),
    )  # fmt: skip
