"""The pieces of a count as Qt's table model, the place written once above those that lie there."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QFont

from inspector.duties.tell_count import CountedPiece
from inspector.gear.stock_take import Counted
from inspector.language import tr

PLACE, TAG, KIND, MARK = range(4)
Index = QModelIndex | QPersistentModelIndex
_TOP = QModelIndex()


def mark_words(one: CountedPiece) -> str:
    """What its mark says, where it was seen and what was noted."""
    words = {Counted.PRESENT: tr("seen"), Counted.ABSENT: tr("not there"), Counted.UNKNOWN: tr("not looked for yet")}
    at = tr("at {place}", place=one.seen_at) if one.seen_at else ""
    return ", ".join(filter(None, (words[one.counted], at, one.note)))


def _place(one: CountedPiece) -> str:
    return one.place or tr("place not written down")


_TEXTS: dict[int, Callable[[CountedPiece], str]] = {
    PLACE: _place,
    TAG: lambda one: one.tag,
    KIND: lambda one: one.kind_name,
    MARK: mark_words,
}


class CountModel(QAbstractTableModel):
    """Pieces of a count in the order in which their places are walked."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.pieces: tuple[CountedPiece, ...] = ()

    def show_pieces(self, pieces: tuple[CountedPiece, ...]) -> None:
        """Show other pieces."""
        self.beginResetModel()
        self.pieces = pieces
        self.endResetModel()

    def rowCount(self, parent: Index = _TOP) -> int:
        """How many pieces are shown."""
        return 0 if parent.isValid() else len(self.pieces)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Four, and none below a cell."""
        return 0 if parent.isValid() else len(_TEXTS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell shows; a screen reader hears the place in every row."""
        if not index.isValid():
            return None
        row, column = index.row(), index.column()
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return _TEXTS[column](self.pieces[row])
        if role == Qt.ItemDataRole.DisplayRole:
            return "" if column == PLACE and self._is_same_place(row) else _TEXTS[column](self.pieces[row])
        if role == Qt.ItemDataRole.ToolTipRole:
            return _TEXTS[column](self.pieces[row])
        if role == Qt.ItemDataRole.FontRole and column == TAG:
            return _bold()
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The columns' names."""
        if role == Qt.ItemDataRole.DisplayRole and orientation is Qt.Orientation.Horizontal:
            return (tr("Where the register has it"), tr("Tag"), tr("Piece"), tr("Mark"))[section]
        if role == Qt.ItemDataRole.TextAlignmentRole and orientation is Qt.Orientation.Horizontal:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        return None

    def _is_same_place(self, row: int) -> bool:
        return row > 0 and _place(self.pieces[row]) == _place(self.pieces[row - 1])


def _bold() -> QFont:
    font = QFont()
    font.setBold(True)
    return font
