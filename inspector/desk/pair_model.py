"""Who can bring out whom, as Qt's table model: a row for who pulls, a column for who is stuck, one method a table."""

from collections.abc import Collection, Sequence
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from inspector.drawings.rig_words import rig_word
from inspector.gear.rig import Method
from inspector.gear.rig_result import PairLine
from inspector.language import tr
from inspector.units import Dimension, System, show

Index = QModelIndex | QPersistentModelIndex
_TOP = QModelIndex()


class PairModel(QAbstractTableModel):
    """The pairs of one method."""

    def __init__(self, lines: Sequence[PairLine], vehicles: Sequence[str], system: System, parent: QObject) -> None:
        super().__init__(parent)
        self._lines = {(one.pulling, one.bogged): one for one in lines}
        self._system = system
        self.pulling = [tag for tag in vehicles if any(one.pulling == tag for one in lines)]
        self.bogged = list(vehicles)

    @property
    def lines(self) -> Collection[PairLine]:
        """Every pair."""
        return self._lines.values()

    def line_at(self, index: Index) -> PairLine | None:
        """The pair of a cell; None where a vehicle would pull itself."""
        if not index.isValid():
            return None
        return self._lines.get((self.pulling[index.row()], self.bogged[index.column()]))

    def rowCount(self, parent: Index = _TOP) -> int:
        """Those that can pull."""
        return 0 if parent.isValid() else len(self.pulling)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Those that may be stuck."""
        return 0 if parent.isValid() else len(self.bogged)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The word of a cell, and the whole of it for whoever cannot see the table."""
        line = self.line_at(index)
        if role == Qt.ItemDataRole.DisplayRole:
            return "" if line is None else pair_word(line)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return tr("no pair") if line is None else f"{pair_title(line)}: {pair_words(line, self._system)}"
        if role == Qt.ItemDataRole.ToolTipRole:
            return line.says if line else None
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Tags of vehicles."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if orientation is Qt.Orientation.Horizontal:
            return tr("{tag} stuck", tag=self.bogged[section])
        return tr("{tag} pulls", tag=self.pulling[section])


def pair_word(line: PairLine) -> str:
    """The word of the best rig's outcome, or that there is none."""
    return tr("None") if line.outcome is None else rig_word(line.outcome)


def up_to_words(line: PairLine, system: System) -> str:
    """The speed that it holds up to, where that is less than usual; empty otherwise."""
    speed = line.up_to_m_per_s
    return "" if speed is None else tr("up to {speed}", speed=show(speed, Dimension.SPEED, system))


def pair_words(line: PairLine, system: System) -> str:
    """Word and speed in one."""
    return " ".join(filter(None, (pair_word(line), up_to_words(line, system))))


def pair_title(line: PairLine) -> str:
    """Who pulls whom, and how."""
    by = {Method.KINETIC: tr("by strap"), Method.WINCH: tr("by winch"), Method.TOW_OUT: tr("by a steady pull")}
    return tr("{pulling} pulls {bogged} {by}", pulling=line.pulling, bogged=line.bogged, by=by[Method(line.method)])
