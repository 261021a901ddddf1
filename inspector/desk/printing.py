"""Papers: which one, in the background, and then where it lies."""

from collections.abc import Callable
from functools import partial
from typing import TypeVar

from PySide6.QtCore import QObject, QPoint
from PySide6.QtWidgets import QMenu, QWidget

from inspector.desk.background import Background
from inspector.desk.notice import Notice
from inspector.desk.opened import trips_ahead
from inspector.desk.told_papers import tell_papers
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_rig_sheet import print_rig_sheet
from inspector.duties.print_sheets import WHOLE, print_each_sheet, print_trip_sheet, scope_words, scopes_of
from inspector.duties.retire_item import print_notice
from inspector.gear.papers import SheetScope
from inspector.gear.rig_result import RigResult
from inspector.gear.trip import Trip
from inspector.language import show_day, tr
from inspector.refused import Refused

About = TypeVar("About")


class Printing(QObject):
    """Prints and tells where the paper is. menu: the trips to choose among, when there is more than one.

    sheets: what of a trip with vehicles is to be printed: all on one sheet, of one vehicle, one for each.
    """

    def __init__(self, office: Office, background: Background, notice: Notice, window: QWidget) -> None:
        super().__init__(window)
        self._office, self._background, self._notice = office, background, notice
        self.menu = QMenu(tr("Which trip?"), window)
        self.menu.setAccessibleName(tr("Which trip?"))
        self.sheets = QMenu(tr("Which sheet?"), window)
        self.sheets.setAccessibleName(tr("Which sheet?"))

    def retirement_notice(self, tag: str) -> None:
        """Print the notice of a retired piece."""
        self._print(print_notice, tag, tr("Retirement notice of {tag}", tag=tag))

    def trip_sheet(self, below: QWidget) -> None:
        """Print the sheet of the trip ahead; where there are several, ask which, below the button."""
        place = below.mapToGlobal(QPoint(0, below.height()))
        self._background.run(
            trips_ahead, self._office, done=lambda trips: self._choose(trips, place), failed=self._notice.refuse
        )

    def _choose(self, trips: tuple[Trip, ...], place: QPoint) -> None:
        if not trips:
            why = tr("No trip lies ahead.")
            self._notice.refuse(
                Refused(tr("trip sheet"), why, tr("Write a trip with its kit into the register first."))
            )
        elif len(trips) == 1:
            self._sheet_at(trips[0], place)
        else:
            self._ask(trips, place)

    def _ask(self, trips: tuple[Trip, ...], place: QPoint) -> None:
        self.menu.clear()
        for trip in trips:
            action = self.menu.addAction(f"{trip.name}, {show_day(trip.first_on)}".replace("&", "&&"))
            action.triggered.connect(lambda _checked=False, trip=trip: self._sheet_at(trip, place))
        self.menu.setActiveAction(self.menu.actions()[0])
        self.menu.popup(place)

    def sheet_of(self, trip: Trip, below: QWidget) -> None:
        """Print the sheet of a trip; where it has vehicles, ask which sheet, below the button."""
        self._sheet_at(trip, below.mapToGlobal(QPoint(0, below.height())))

    def _sheet_at(self, trip: Trip, place: QPoint) -> None:
        if not trip.vehicles:
            self._print_sheet(trip, WHOLE)
            return
        self.sheets.clear()
        self._offer(tr("The whole trip on one sheet"), lambda: self._print_sheet(trip, WHOLE))
        self._offer(tr("One sheet for each vehicle"), lambda: self._print_each(trip))
        self.sheets.addSeparator()
        for scope in scopes_of(trip):
            self._offer(scope_words(scope), partial(self._print_sheet, trip, scope))
        self.sheets.setActiveAction(self.sheets.actions()[0])
        self.sheets.popup(place)

    def _offer(self, words: str, deed: Callable[[], object]) -> None:
        self.sheets.addAction(words.replace("&", "&&")).triggered.connect(lambda _checked=False: deed())

    def _print_sheet(self, trip: Trip, scope: SheetScope) -> None:
        title = tr("Trip sheet of {trip}", trip=trip.name)
        self._print(partial(print_trip_sheet, scope=scope), trip.ref, title)

    def _print_each(self, trip: Trip) -> None:
        head = tr("The sheets of {trip} are printed.", trip=trip.name)
        self._background.run(
            print_each_sheet,
            self._office,
            trip.ref,
            done=lambda papers: tell_papers(self._notice, head, "", papers),
            failed=self._notice.refuse,
            says=tr("Printing…"),
        )

    def rig_sheet(self, result: RigResult) -> None:
        """Print the account of a rig as it is shown."""
        self._print(print_rig_sheet, result, tr("Rig sheet of “{name}”", name=result.rig.name))

    def _print(self, deed: Callable[[Office, About], Paper], about: About, title: str) -> None:
        self._background.run(
            deed,
            self._office,
            about,
            done=lambda paper: self._printed(title, paper),
            failed=self._notice.refuse,
            says=tr("Printing…"),
        )

    def _printed(self, title: str, paper: Paper) -> None:
        tell_papers(self._notice, tr("{title} is printed.", title=title), "", (paper,))
