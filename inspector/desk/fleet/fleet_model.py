"""The vehicles as Qt's table model."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, Qt

from inspector.desk.gear_model import Index
from inspector.duties.vehicle_record import VehicleLine
from inspector.language import tr

_TOP = QModelIndex()
TAG, NAME, MASS, GVM = range(4)


class FleetModel(QAbstractTableModel):
    """A row a vehicle: tag, what it is with owner and warning, mass, GVM."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.lines: tuple[VehicleLine, ...] = ()

    def show_lines(self, lines: tuple[VehicleLine, ...]) -> None:
        """Show other vehicles."""
        self.beginResetModel()
        self.lines = lines
        self.endResetModel()

    def row_of(self, tag: str) -> int:
        """The row of a vehicle, else the first."""
        return next((row for row, one in enumerate(self.lines) if one.vehicle.tag == tag), 0)

    def rowCount(self, parent: Index = _TOP) -> int:
        """How many vehicles."""
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = _TOP) -> int:
        """Four, none below a cell."""
        return 0 if parent.isValid() else 4

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell says."""
        if not index.isValid():
            return None
        line = self.lines[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return _text(line, index.column())
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The columns' names."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return (tr("Tag"), tr("Vehicle"), tr("As weighed"), tr("GVM"))[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        return None


def _text(line: VehicleLine, column: int) -> str:
    one = line.vehicle
    if column == NAME:
        return "\n".join(filter(None, (one.name, one.owner, warning_words(line))))
    return {TAG: one.tag, MASS: one.mass.as_typed if one.mass else tr("not known"), GVM: one.gvm.as_typed}[column]


def warning_words(line: VehicleLine) -> str:
    """What must be said of a vehicle, in two or three words; empty for nothing."""
    kept = tr("Kept as found: {refs}", refs=", ".join(line.kept_by)) if line.kept_by else ""
    return ". ".join(filter(None, (tr("Overloaded") if line.overloaded else "", kept)))
