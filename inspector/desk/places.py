"""The places of the window in the order of the side: what each is called, its key, and how its page is made.

A page is made when somebody first goes there, so that the window opens without waiting for pages nobody looks at.
"""

from collections.abc import Callable
from dataclasses import dataclass

from inspector.desk.background import Background
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.desk.place import Place
from inspector.duties.office import Office
from inspector.language import tr

MakePage = Callable[[Office, Background, Notice, Look], Place]

STOCK, INCIDENTS = "stock", "incidents"
GEAR, TRIP, RIG, CHECK = "gear", "trip", "rig", "check"
PIECE, DEED = "piece", "deed"  # no places of the side: the record of a piece, the form of a deed


@dataclass(frozen=True, slots=True)
class PlaceEntry:
    """key: by which others go there. name: at the side; menu: in the menu with its letter; keys: its shortcut.

    make: makes the page; None for those that are made with the window.
    """

    key: str
    name: str
    menu: str
    keys: str
    make: MakePage | None = None


def _book(office: Office, background: Background, notice: Notice, look: Look) -> Place:
    from inspector.desk.booking.book_page import BookPage

    return BookPage(office, background, notice, look)


def places() -> tuple[PlaceEntry, ...]:
    """Every place, in the order of the side."""
    return (
        PlaceEntry(GEAR, tr("Gear"), tr("&Gear list"), "Ctrl+L"),
        PlaceEntry(TRIP, tr("Trip"), tr("Is the &trip ready?"), "Ctrl+J"),
        PlaceEntry(RIG, tr("Rig"), tr("&Rig"), "Ctrl+R"),
        PlaceEntry(CHECK, tr("Check"), tr("&Check before a trip"), "Ctrl+K"),
        PlaceEntry("book", tr("Book in"), tr("&Book a piece in"), "Ctrl+N", _book),
        PlaceEntry(STOCK, tr("Stock-take"), tr("&Stock-take"), "Ctrl+6", _stock_page),
        PlaceEntry(INCIDENTS, tr("Incidents"), tr("&Incidents"), "Ctrl+7", _incident_page),
    )


def _stock_page(office: Office, background: Background, notice: Notice, look: Look) -> Place:
    from inspector.desk.stock.stock_page import StockPage

    return StockPage(office, background, notice, look)


def _incident_page(office: Office, background: Background, notice: Notice, look: Look) -> Place:
    from inspector.desk.incident.incident_page import IncidentPage

    return IncidentPage(office, background, notice, look)
