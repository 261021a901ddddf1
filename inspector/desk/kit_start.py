"""Where the check before a trip begins: which trip, and who looks."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QStyledItemDelegate, QVBoxLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.kit_opened import Choices
from inspector.desk.look import GRID, Type
from inspector.desk.plain import button, clear, row, said, scroll, short
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.language import show_day, tr, tr_n

_WIDEST_PX = 720


class KitStart(QWidget):
    """begin: the trip and the person were chosen. again: read the trips again. leave: back to the list. plan: one."""

    begin = Signal(object, object)
    again = Signal()
    leave = Signal()
    plan = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.trip: Choice[Trip] | None = None
        self.by: Choice[Person | None] | None = None
        self._fault = said("", bold=True)
        self._inside = QVBoxLayout()
        self._inside.setSpacing(GRID)
        asked = QWidget()
        asked.setLayout(self._inside)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, GRID, 0, 0)
        outer.addWidget(scroll(asked, tr("Check before a trip")))

    def show_choices(self, found: Choices, ref: str = "") -> None:
        """Show what there is to choose among, or what to do where no trip lies ahead. ref: the trip to choose first."""
        clear(self._inside)
        self._inside.addWidget(said(tr("Check before a trip"), Type.DISPLAY))
        if found.trips:
            self._choose(found, ref)
        else:
            self._nothing()
        self._inside.addStretch(1)

    def focus_start(self) -> None:
        """The keys go to who looks: the next trip is chosen already."""
        if self.by:
            self.by.box.setFocus()

    def _nothing(self) -> None:
        self.trip = self.by = None
        self._inside.addWidget(said(tr("No trip lies ahead."), Type.HEAD))
        self._inside.addWidget(said(tr("Plan a trip with its kit first: each of its pieces is then looked at here.")))
        plan = button(tr("Plan a trip"), self.plan.emit, rank="first")
        self._buttons(plan, button(tr("Look again"), self.again.emit), button(tr("Gear list"), self.leave.emit))
        plan.setFocus()

    def _choose(self, found: Choices, ref: str) -> None:
        asks = tr(
            "Each piece of the kit is looked at once more before it is used. What you answer can keep a piece back; "
            "only a competent person's inspection releases one."
        )
        self._inside.addWidget(said(asks))
        self.trip = Choice(tr("Trip"), [(_trip_words(one), one) for one in found.trips])
        wanted = next((one for one in found.trips if one.ref == ref), found.trips[0])
        self.trip.choose(wanted)
        unsaid: list[tuple[str, Person | None]] = [(tr("choose your name"), None)]
        self.by = Choice(tr("Who looks"), [*unsaid, *((one.name, one) for one in found.people)])
        grid = QGridLayout()
        grid.setContentsMargins(0, 2 * GRID, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID)
        grid.setColumnStretch(1, 1)
        for number, box in enumerate((self.trip.box, self.by.box)):
            grid.addWidget(short(box.accessibleName(), faint=True), number, 0)
            grid.addWidget(box, number, 1)
            box.setItemDelegate(QStyledItemDelegate(box))  # the style's own gives a finger no room
        self.trip.box.moves.connect(lambda _: self.focus_start())
        self.by.box.moves.connect(lambda _: self._begin())
        self._fault = said("", bold=True)
        self._inside.addLayout(grid)
        self._inside.addWidget(self._fault)
        self._buttons(button(tr("Begin"), self._begin, rank="first"), button(tr("Leave"), self.leave.emit))

    def _buttons(self, *made: QWidget) -> None:
        line = row(made, 2 * GRID)
        line.setContentsMargins(0, 2 * GRID, 0, 0)
        self._inside.addWidget(line, 0, Qt.AlignmentFlag.AlignTop)

    def _begin(self) -> None:
        if self.trip is None or self.by is None:
            return
        if self.by.value is None:
            self._fault.setText(tr("Choose who looks: the check stands under that name."))
            self.by.box.setFocus()
            return
        self.begin.emit(self.trip.value, self.by.value)


def _trip_words(trip: Trip) -> str:
    kit = tr_n("one piece", "{count} pieces", len(trip.kit))
    return tr("{day}: {name}, {place} ({kit})", day=show_day(trip.first_on), name=trip.name, place=trip.place, kit=kit)
