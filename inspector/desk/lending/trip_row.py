"""A trip's own deeds in one row: its kit goes out, comes back, and the trip is told afterwards."""

from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.flow import flowing
from inspector.desk.look import GRID
from inspector.desk.plain import button, hairline, short
from inspector.gear.trip import Trip
from inspector.language import show_day, tr


class TripRow(QWidget):
    """kit_out, kit_back, tell: of the trip with this reference. from_file: a debrief that stands in a file."""

    kit_out = Signal(str)
    kit_back = Signal(str)
    tell = Signal(str)
    from_file = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._trips: tuple[Trip, ...] = ()
        self._out: set[str] = set()
        self._today = date.min
        self._wanted = ""
        self.choice = Choice[str](tr("Trip"), [(tr("no trip"), "")], scans=True)
        self.out_button = button(tr("Hand its kit out"), lambda: self.kit_out.emit(self.choice.value))
        self.back_button = button(tr("Its kit came back"), lambda: self.kit_back.emit(self.choice.value))
        self.tell_button = button(tr("Tell how it went"), lambda: self.tell.emit(self.choice.value))
        self.file_button = button(tr("Told in a file"), self.from_file.emit,
                                  name=tr("Read a file that tells how a trip went"))  # fmt: skip
        self._lay_out()

    def want(self, ref: str) -> None:
        """Choose this trip once the trips are known."""
        self._wanted = ref

    def show_trips(self, trips: tuple[Trip, ...], out: set[str], today: date) -> None:
        """Offer these trips; the one chosen before stays. out: references of trips of which something is out."""
        self._trips, self._out, self._today = trips, out, today
        wanted = self._wanted or self.choice.value or self._likely()
        self._wanted = ""
        box = self.choice.box
        was = box.blockSignals(True)
        self.choice.offer([(_words(one), one.ref) for one in trips] or [(tr("no trip"), "")])
        if any(one.ref == wanted for one in trips):
            self.choice.choose(wanted)
        box.blockSignals(was)
        self._fit_buttons()

    def _likely(self) -> str:
        """The trip of which something is out, else the next one ahead."""
        out = [one.ref for one in self._trips if one.ref in self._out]
        ahead = [one.ref for one in reversed(self._trips) if one.last_on >= self._today]
        return next(iter((*out, *ahead)), "")

    def _fit_buttons(self) -> None:
        """What cannot be done with the trip chosen says why."""
        trip = next((one for one in self._trips if one.ref == self.choice.value), None)
        none = "" if trip else tr("No trip is planned.")
        over = tr("It is over.") if trip and trip.last_on < self._today else ""
        empty = "" if trip is None or trip.kit else tr("It has no kit.")
        home = "" if trip is None or trip.ref in self._out else tr("Nothing is out for it.")
        ahead = tr("It has not begun.") if trip and trip.first_on > self._today else ""
        for made, why in ((self.out_button, none or over or empty), (self.back_button, none or home),
                          (self.tell_button, none or ahead)):  # fmt: skip
            made.setEnabled(not why)
            made.setToolTip(why)
            made.setAccessibleDescription(why)

    def _lay_out(self) -> None:
        self.choice.box.currentIndexChanged.connect(lambda _: self._fit_buttons())
        self.choice.box.moves.connect(lambda _: self.out_button.setFocus())
        label, box = short(tr("Trip"), faint=True), self.choice.box
        line = flowing([label, box, self.out_button, self.back_button, self.tell_button, self.file_button], wide=[box])
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(GRID)
        grid.addWidget(hairline(), 0, 0)
        grid.addWidget(line, 1, 0)


def _words(one: Trip) -> str:
    return tr("{ref}: {name}, {day}", ref=one.ref, name=one.name, day=show_day(one.first_on))
