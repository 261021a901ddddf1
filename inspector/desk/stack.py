"""The pages of the window, one shown at a time: the gear list, and each other made when somebody first goes there."""

from collections.abc import Callable
from typing import TYPE_CHECKING, cast

from PySide6.QtWidgets import QStackedWidget, QWidget

from inspector.desk.gear_table import GearTable
from inspector.desk.made_places import MadePlaces
from inspector.desk.place import Place
from inspector.desk.places import CHECK, DEED, GEAR, PIECE, RIG, TRIP, PlaceEntry

if TYPE_CHECKING:
    from inspector.desk.form.form_page import FormPage
    from inspector.desk.record import Record
    from inspector.desk.rig_page import RigPage
    from inspector.desk.trailhead import Trailhead
    from inspector.desk.trip_page import TripPage


class Stack(QStackedWidget):
    """entries: what may be made, and how; table: the gear list. Whoever asks for a page by its name has it made."""

    def __init__(
        self, entries: tuple[PlaceEntry, ...], table: GearTable, make: Callable[[PlaceEntry], QWidget]
    ) -> None:
        super().__init__()
        self.places = MadePlaces(entries, make)
        self.table = table
        self.addWidget(table)

    @property
    def record(self) -> "Record":
        """The page of one piece."""
        return cast("Record", self.places.page(PIECE))

    @property
    def deed_page(self) -> "FormPage":
        """The page of every form."""
        return cast("FormPage", self.places.page(DEED))

    @property
    def trailhead(self) -> "Trailhead":
        """The check before a trip."""
        return cast("Trailhead", self.places.page(CHECK))

    @property
    def trip(self) -> "TripPage":
        """The page of trips."""
        return cast("TripPage", self.places.page(TRIP))

    @property
    def rig(self) -> "RigPage":
        """The page of rigs."""
        return cast("RigPage", self.places.page(RIG))

    @property
    def place_shown(self) -> str:
        """The key of the place that is shown; empty for a record or a form."""
        pages = [(GEAR, self.table), *((key, page) for key, page in self.places.items() if isinstance(page, Place))]
        return next((key for key, page in pages if self.currentWidget() is page and key != DEED), "")

    def set_aside(self) -> None:
        """Let go of the form of a deed; what was typed into it stands there again the next time."""
        if DEED in self.places:
            self.deed_page.stop()

    def _is(self, key: str, page: QWidget | None) -> bool:
        return key in self.places and page is self.places.page(key)

    def _shows(self, key: str) -> bool:
        """Whether the page of a place, a record or a form was made and is shown."""
        return self._is(key, self.currentWidget())
