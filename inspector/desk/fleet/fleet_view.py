"""The list of vehicles: words wrap, a hairline below each row, Return goes to what can be done."""

from PySide6.QtCore import QModelIndex, Qt, Signal

from inspector.desk.fleet.fleet_model import GVM, MASS, NAME, TAG, FleetModel
from inspector.desk.lined_cells import LinedCells
from inspector.desk.look import Look
from inspector.desk.row_table import RowTable
from inspector.language import tr

_WIDTHS_PX = {TAG: 64, MASS: 88, GVM: 88}
_LEAST_NAME_PX = 128


class FleetView(RowTable):
    """chosen: another vehicle's tag. entered: Return was pressed."""

    chosen = Signal(str)
    entered = Signal()

    def __init__(self, model: FleetModel, look: Look) -> None:
        super().__init__(model, tr("Vehicles"), look, wraps=True)
        self._model = model
        self._cells = LinedCells(look, self)
        self.setItemDelegate(self._cells)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        model.modelReset.connect(self.spread)
        look.changed.connect(self.spread)
        self.spread()

    @property
    def tag(self) -> str:
        """The vehicle the bar is on."""
        row = self.currentIndex().row()
        return self._model.lines[row].vehicle.tag if 0 <= row < len(self._model.lines) else ""

    def choose(self, tag: str) -> None:
        """Put the bar on a vehicle."""
        if self._model.lines:
            self.setCurrentIndex(self._model.index(self._model.row_of(tag), TAG))

    def currentChanged(self, current: QModelIndex, previous: QModelIndex) -> None:  # type: ignore[override]
        """Tell which vehicle the bar is on."""
        super().currentChanged(current, previous)
        if current.isValid() and current.row() != previous.row():
            self.chosen.emit(self.tag)

    def enter(self, row: int) -> None:
        """Return goes to the record."""
        self.entered.emit()

    def spread(self) -> None:
        """What the vehicle is takes what the figures leave; where there is no room, the record tells the figures."""
        room, least = self.viewport().width(), self._look.px(_LEAST_NAME_PX)
        heads = self.horizontalHeader()
        for column in _WIDTHS_PX:
            self.setColumnHidden(column, False)  # what is hidden has no width of its own
        widths = {
            column: max(self._look.px(width), heads.sectionSizeHint(column)) for column, width in _WIDTHS_PX.items()
        }
        is_narrow = room - sum(widths.values()) < least
        for column, width in widths.items():
            self.setColumnHidden(column, is_narrow and column != TAG)
            self.setColumnWidth(column, width)
        beside = widths[TAG] if is_narrow else sum(widths.values())
        self.setColumnWidth(NAME, max(room - beside, least))
        self._cells.fit_rows()
