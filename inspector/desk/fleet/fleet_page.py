"""The place of the vehicles: the list, and beside it the record of the one chosen."""

from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.columns import Columns
from inspector.desk.deeds import vehicles as deeds
from inspector.desk.fleet.fleet_model import FleetModel
from inspector.desk.fleet.fleet_view import FleetView
from inspector.desk.fleet.record_page import record_page
from inspector.desk.form.deed import Deed
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import button, column, said, scroll
from inspector.duties.office import Office
from inspector.duties.vehicle_record import VehicleLine, VehicleRecord, fleet, vehicle_record
from inspector.language import tr

_SHARES = (2, 3)
_NARROW_PX = 760


class FleetPage(Place):
    """Who the vehicles are, what they weigh, what sits on them, and what changed."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.record: VehicleRecord | None = None
        self._wanted = ""
        self.model = FleetModel(self)
        self.view = FleetView(self.model, look)
        self.add_button = button(tr("Enter a vehicle"), lambda: self._ask(deeds.add(), None))
        self.change_button = button(tr("Change it"), self._change, rank="first")
        self.fit_button = button(tr("Fit a part"), self._fit)
        self.off_button = button(tr("Take a part off"), self._take_off)
        self._area = scroll(QWidget(), tr("The vehicle"))
        self._stack = QStackedLayout(self)
        self._stack.addWidget(self._list_page())
        self._stack.addWidget(self._empty_page())
        self.view.chosen.connect(self._read)
        self.view.entered.connect(self.change_button.setFocus)
        self.view.typed.connect(self.typed)

    def begin(self, what: Any = None) -> None:
        """Read the vehicles anew; what: the tag of the one to show."""
        self._wanted = str(what or self.view.tag or self._wanted)
        self._background.run(fleet, self._office, done=self._show, failed=self._notice.refuse)

    def focus_start(self) -> None:
        """The keys go to the list."""
        if self._stack.currentIndex() == 0:
            self.view.setFocus()

    def _list_page(self) -> QWidget:
        head = QWidget()
        line = QHBoxLayout(head)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(said(tr("Vehicles"), Type.DISPLAY), 1)
        line.addWidget(self.add_button)
        left = QWidget()
        inside = QVBoxLayout(left)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(GRID)
        inside.addWidget(head)
        inside.addWidget(self.view, 1)
        right = QWidget()
        beside = QVBoxLayout(right)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.setSpacing(GRID)
        beside.addWidget(self._deeds())
        beside.addWidget(self._area, 1)
        page = QWidget()
        layout = QVBoxLayout(page)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        layout.addWidget(Columns(left, right, self._look, _SHARES, _NARROW_PX))
        return page

    def _deeds(self) -> QWidget:
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, GRID // 2, 0, GRID // 2)
        layout.setSpacing(GRID)
        for made in (self.change_button, self.fit_button, self.off_button):
            layout.addWidget(made)
        layout.addStretch(1)
        return line

    def _empty_page(self) -> QWidget:
        first = button(tr("Enter the first vehicle"), lambda: self._ask(deeds.add(), None), rank="first")
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, GRID, 0, 0)
        layout.addWidget(first)
        layout.addStretch(1)
        why = tr("A vehicle with its mass and its recovery points is half of every rig: without it nobody can say what "
                 "a pull does to it.")  # fmt: skip
        page = column([said(tr("No vehicle stands in the register yet."), Type.DISPLAY), said(why), line])
        if inside := page.layout():
            inside.setContentsMargins(3 * GRID, 3 * GRID, 3 * GRID, 0)
        return page

    def _show(self, lines: tuple[VehicleLine, ...]) -> None:
        self._stack.setCurrentIndex(0 if lines else 1)
        wanted = self._wanted
        self.model.show_lines(lines)
        self.view.choose(wanted)
        if self.view.tag:
            self._read(self.view.tag)

    def _read(self, tag: str) -> None:
        self._wanted = tag
        self._background.run(vehicle_record, self._office, tag, done=self._show_record, failed=self._notice.refuse)

    def _show_record(self, record: VehicleRecord) -> None:
        if record.vehicle.tag != self._wanted:
            return  # the bar went on meanwhile
        is_same = self.record is not None and self.record.vehicle.tag == record.vehicle.tag
        at = self._area.verticalScrollBar().value() if is_same else 0
        self.record = record
        self.off_button.setEnabled(bool(record.parts))
        self.off_button.setToolTip("" if record.parts else tr("No part is written down for it."))
        self._area.setWidget(record_page(record, self._look, self._office.today, self.opened.emit))
        self._area.verticalScrollBar().setValue(at)

    def _change(self) -> None:
        if self.record:
            self._ask(deeds.change(self.record.vehicle), self.record.vehicle)

    def _fit(self) -> None:
        if self.record:
            self._ask(deeds.fit_onto(self.record.vehicle), self.record.vehicle)

    def _take_off(self) -> None:
        if self.record:
            self._ask(deeds.take_off_of(self.record), self.record)

    def _ask(self, deed: Deed[Any], about: object) -> None:
        self.go.emit(Go(DEED, (deed, about, self._wanted if about else "")))
