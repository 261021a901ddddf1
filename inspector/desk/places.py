"""The places of the window in the order of the side: what each is called, its key, and how its page is made.

A page is made when somebody first goes there, so that the window opens without waiting for pages nobody looks at.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from msgspec import Struct
from PySide6.QtWidgets import QWidget

from inspector.desk.look import Look
from inspector.language import tr

if TYPE_CHECKING:
    from inspector.desk.background import Background
    from inspector.desk.notice import Notice
    from inspector.duties.office import Office

MakePage = Callable[["Office", "Background", "Notice", Look], QWidget]

NEEDS, GEAR, BOOK, TRIP, RIG, CHECK, LENDING, FLEET = (
    "needs", "gear", "book", "trip", "rig", "check", "lending", "vehicles",
)  # fmt: skip
DUE, STOCK, INCIDENTS, WHY, PEOPLE, REGISTER, RUN = "due", "stock", "incidents", "why", "people", "register", "run"
RECALLS = "recalls"
RETURNED = "returned"  # a trip sheet that came back on paper
IMPORT = "import"  # a list that the club kept before
RULES, SETTINGS = "rules", "settings"
PIECE, DEED = "piece", "deed"  # no pages of their own: the record of a piece, the form of a deed


class PlaceEntry(Struct, frozen=True):
    """key: by which others go there. name: at the side; empty for a page that has no place there. menu: in the menu
    with its letter; keys: its shortcut.

    make: makes the page; None for the gear list, which is made with the window.
    """

    key: str
    name: str
    menu: str
    keys: str
    make: MakePage | None = None


def places() -> tuple[PlaceEntry, ...]:
    """Every place, in the order of the side."""
    return (
        PlaceEntry(NEEDS, tr("What needs me"), tr("What &needs me"), "Ctrl+1", _needs),
        PlaceEntry(DUE, tr("Falls due"), tr("What falls &due"), "Ctrl+2", _due),
        PlaceEntry(GEAR, tr("Gear"), tr("&Gear list"), "Ctrl+L"),
        PlaceEntry(BOOK, tr("Book in"), tr("&Book a piece in"), "Ctrl+N", _book),
        PlaceEntry(TRIP, tr("Trip"), tr("Is the &trip ready?"), "Ctrl+J", _trip),
        PlaceEntry(RIG, tr("Rig"), tr("&Rig"), "Ctrl+R", _rig),
        PlaceEntry(CHECK, tr("Check"), tr("&Check before a trip"), "Ctrl+K", _check),
        PlaceEntry(LENDING, tr("Lending"), tr("&Lending"), "Ctrl+3", _lending),
        PlaceEntry(FLEET, tr("Vehicles"), tr("&Vehicles"), "Ctrl+4", _fleet),
        PlaceEntry(STOCK, tr("Stock-take"), tr("Stoc&k-take"), "Ctrl+6", _stock),
        PlaceEntry(INCIDENTS, tr("Incidents"), tr("&Incidents"), "Ctrl+7", _incidents),
        PlaceEntry(WHY, tr("Why"), tr("&Why"), "Ctrl+8", _why),
        PlaceEntry(PEOPLE, tr("People"), tr("P&eople"), "Ctrl+5", _people),
        PlaceEntry(REGISTER, tr("Register"), tr("The regi&ster itself"), "Ctrl+0", _register),
        PlaceEntry(RULES, tr("Rules"), tr("R&ules"), "Ctrl+9", _rules),
        PlaceEntry(SETTINGS, tr("Settings"), tr("Settin&gs"), "Ctrl+,", _settings),
        PlaceEntry(RECALLS, "", tr("Recal&ls"), "Ctrl+B", _recalls),
        PlaceEntry(RUN, "", tr("Inspect one &after another"), "", _run),
        PlaceEntry(RETURNED, "", tr("A &sheet came back"), "", _returned),
        PlaceEntry(IMPORT, "", tr("Bring in an &old list"), "", _import),
    )


def _needs(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.needs.needs_page import NeedsPage

    return NeedsPage(office, background, notice, look)


def _due(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.needs.due_page import DuePage

    return DuePage(office, background, notice, look)


def _book(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.booking.book_page import BookPage

    return BookPage(office, background, notice, look)


def _lending(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.lending.lending_page import LendingPage

    return LendingPage(office, background, notice, look)


def _fleet(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.fleet.fleet_page import FleetPage

    return FleetPage(office, background, notice, look)


def _stock(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.stock.stock_page import StockPage

    return StockPage(office, background, notice, look)


def _incidents(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.incident.incident_page import IncidentPage

    return IncidentPage(office, background, notice, look)


def _recalls(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.recall.recall_page import RecallPage

    return RecallPage(office, background, notice, look)


def _why(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.bench.page import BenchPage

    return BenchPage(office, background, notice, look)


def _people(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.people.people_page import PeoplePage

    return PeoplePage(office, background, notice, look)


def _register(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.handover.register_page import RegisterPage

    return RegisterPage(office, background, notice, look)


def _rules(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.rules.rules_page import RulesPage

    return RulesPage(office, background, notice, look)


def _settings(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.settings.settings_page import SettingsPage

    return SettingsPage(office, background, notice, look)


def _run(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.inspect.run import InspectRun

    return InspectRun(office, background, notice, look)


def _returned(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.returned.returned_page import ReturnedPage

    return ReturnedPage(office, background, notice, look)


def _import(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.importing.import_page import ImportPage

    return ImportPage(office, background, notice, look)


def _trip(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.trip_page import TripPage

    return TripPage(office, background, notice, look)


def _rig(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.rig_page import RigPage

    return RigPage(office, background, notice, look)


def _check(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.trailhead import Trailhead

    return Trailhead(office, background, notice, look)


def _record(office: "Office", _background: "Background", _notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.record import Record

    return Record(look, office.system)


def _form(office: "Office", background: "Background", notice: "Notice", look: Look) -> QWidget:
    from inspector.desk.form.form_page import FormPage

    return FormPage(office, background, notice, look)


OWN = (PlaceEntry(PIECE, "", "", "", _record), PlaceEntry(DEED, "", "", "", _form))  # nobody goes there by name
