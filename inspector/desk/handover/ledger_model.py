"""The ledger as sentences in a table: when, what was done, the line's number and its short hash."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from inspector.gear.ledger_line import ToldLine
from inspector.language import tr

Index = QModelIndex | QPersistentModelIndex
_TOP = QModelIndex()
WHEN, WHAT, LINE, HASH = range(4)
_HASH_SIGNS = 8
_ALIGNED = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)


class LedgerModel(QAbstractTableModel):
    """Lines, the newest first."""

    def __init__(self) -> None:
        super().__init__()
        self.lines: tuple[ToldLine, ...] = ()

    def show_lines(self, lines: tuple[ToldLine, ...]) -> None:
        """Show other lines."""
        self.beginResetModel()
        self.lines = lines
        self.endResetModel()

    def rowCount(self, parent: Index = _TOP) -> int:
        """How many lines are shown."""
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Four, and none below a cell."""
        return 0 if parent.isValid() else HASH + 1

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell shows; the whole hash on hover."""
        if not index.isValid():
            return None
        line = self.lines[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return (line.when, line.sentence, str(line.number), line.hash[:_HASH_SIGNS])[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole and index.column() == HASH:
            return line.hash
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _ALIGNED
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The columns' names."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return (tr("When"), tr("What was done"), tr("Line"), tr("Hash"))[section]
        return _ALIGNED if role == Qt.ItemDataRole.TextAlignmentRole else None
