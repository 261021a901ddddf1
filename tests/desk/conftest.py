"""A small register for the window: a founded club, a few pieces with a past, two trips ahead."""

from collections.abc import Callable, Iterator
from datetime import date, datetime, timedelta, timezone
from functools import cache
from pathlib import Path
from shutil import copyfile

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk import tidying
from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.look import Look, Scheme, TextSize
from inspector.desk.window import DeskWindow
from inspector.duties.book_in import book_in
from inspector.duties.found_club import found_club
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure
from inspector.gear.inspection import Answer, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade
from inspector.gear.person import Person
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewExposure, Weather
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook, packaged
from inspector.units import Dimension, Figure, read
from tests.fresh import fresh_book

NOW = datetime(2026, 11, 25, 19, 0, tzinfo=timezone(timedelta(hours=10)))
FONTS = Path(__file__).parents[2] / "inspector" / "paper" / "fonts"


def length(text: str) -> Figure:
    """A length as typed."""
    return read(text, Dimension.LENGTH, field="length")


@cache
def rules_in_force() -> Rulebook:
    """The packaged rulebook, read once."""
    return packaged()


def founded(folder: Path) -> Office:
    """An office on an empty register with its officer at the desk."""
    nobody = Person("nobody", "nobody", "")
    office = Office(
        fresh_book(folder / "register.db"), rules_in_force(), folder / "documents", nobody, lambda: NOW, "test"
    )
    officer = found_club(
        office.at(datetime(2017, 6, 1, 19, 0, tzinfo=NOW.tzinfo)), "Dune and Ridge Touring Club", "First officer"
    )
    return Office(office.book, office.rules, office.out_tray, officer, office.clock, office.program)


def shackle(tag: str, owner: str = "club") -> NewItem:
    """A bow shackle as it is booked in."""
    rating = Rating(Basis.WLL, read("4.75 t", Dimension.FORCE, field="rating"), 6.0, "piece")
    sizes = (SizeAsNew("bow_diameter", length("19 mm")), SizeAsNew("pin_diameter", length("22 mm")))
    return NewItem(
        tag, "bow_shackle", rating, sizes=sizes, owner=owner, place="shelf 2", provenance=Provenance.NEW,
        made_on=date(2024, 3, 1), in_service_on=date(2024, 4, 1),
    )  # fmt: skip


def tube(tag: str) -> NewItem:
    """A ball mount as it is booked in."""
    rating = Rating(Basis.TOWED_MASS, read("3500 kg", Dimension.MASS, field="rating"), None, "piece")
    sizes = (
        SizeAsNew("outside", length("50 mm")),
        SizeAsNew("wall", length("5 mm")),
        SizeAsNew("pin_hole", length("16 mm")),
    )
    return NewItem(
        tag, "hitch_receiver", rating, sizes=sizes, owner="club", place="vehicle 2", provenance=Provenance.NEW,
        made_on=date(2017, 5, 1), in_service_on=date(2017, 6, 1),
    )  # fmt: skip


def looked_at(
    office: Office, tag: str, kind: str, on: date, walls: tuple[str, ...] = (), **bad: Grade
) -> NewInspection:
    """A periodic inspection with every check good but those named."""
    checks = office.kind(kind).checks
    answers = tuple(Answer(one.key, bad.get(one.key, Grade.GOOD)) for one in checks)
    points = ("top", "bottom", "left", "right", "at pin hole")
    readings = tuple(
        Reading("wall", length(wall), point, Method.ULTRASONIC_BARE, Surface.DRESSED, block_checked=True)
        for wall, point in zip(walls, points, strict=False)
    )
    if kind == "bow_shackle":
        sizes = {"bow_diameter": "18.9 mm", "pin_diameter": "21.9 mm"}
        readings = tuple(Reading(key, length(text)) for key, text in sizes.items())
    if kind == "hitch_receiver":
        holes = (("left wall", "16.2 mm"), ("right wall", "16.1 mm"))
        readings += tuple(Reading("pin_hole", length(text), point) for point, text in holes)
    return NewInspection(on, InspectionKind.PERIODIC, office.officer.id, False, answers, readings)


def _on(office: Office, day: date, deed: Callable[[Office], object]) -> None:
    deed(office.at(datetime(day.year, day.month, day.day, 19, 0, tzinfo=NOW.tzinfo)))


def stocked(folder: Path) -> Office:
    """A register with a fit shackle SH-001, an uninspected SH-002 and a tube HR-007 thinned until it was retired."""
    office = founded(folder)
    _on(office, date(2024, 4, 2), lambda then: book_in(then, shackle("SH-001")))
    _on(office, date(2024, 4, 2), lambda then: book_in(then, shackle("SH-002", owner="a member")))
    _on(office, date(2017, 6, 2), lambda then: book_in(then, tube("HR-007")))
    _on(
        office,
        date(2020, 1, 9),
        lambda then: record_exposure(then, "HR-007", NewExposure(then.today, Weather.SALT, 90)),
    )
    years = (
        (date(2019, 6, 3), ("5.0 mm", "4.9 mm", "5.0 mm", "5.0 mm", "4.9 mm")),
        (date(2022, 6, 7), ("5.0 mm", "4.9 mm", "5.0 mm", "5.0 mm", "4.9 mm")),
        (date(2026, 11, 20), ("2.9 mm", "2.2 mm", "3.1 mm", "3.0 mm", "2.4 mm")),
    )
    for day, walls in years:
        facts = looked_at(office, "HR-007", "hitch_receiver", day, walls)
        _on(office, day, lambda then, facts=facts: record_inspection(then, "HR-007", facts))  # type: ignore[misc]
    record_inspection(office, "SH-001", looked_at(office, "SH-001", "bow_shackle", date(2026, 11, 24)))
    return office


def with_trips(office: Office, count: int) -> Office:
    """The office with so many trips ahead."""
    add_vehicle(office, "V1", "wagon", "club", read("3200 kg", Dimension.MASS, field="mass"), None)
    for number in range(1, count + 1):
        first = date(2026, 12, number)
        plan_trip(
            office,
            Trip("", f"T{number}", f"Beach day {number}", "the long beach", Ground.BEACH, first, first, "leader",
                 ("V1",), ("SH-001", "HR-007")),
        )  # fmt: skip
    return office


@pytest.fixture(autouse=True)
def collector(qapp: object) -> Iterator[None]:
    """Every test here has an application. One that leaves a door to a worker open, its threads and its timer, fails."""
    yield
    left = tidying.holders()
    tidying.forget_holders()
    assert not left, f"{left} doors to a worker were left open, each with its threads and a timer that goes on"


@pytest.fixture
def look(qapp: object) -> Iterator[Look]:
    """The look with the packaged type. Whatever a test takes, the next one begins with the usual size and colours."""
    made = Look(tuple(sorted(FONTS.glob("*.ttf"), reverse=True)))
    yield made
    if made.text is not TextSize.USUAL or made.scheme is not Scheme.SYSTEM:
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)  # what was closed is not dressed once more
        made.scheme = Scheme.SYSTEM
        made.set_text(TextSize.USUAL)


@pytest.fixture
def empty_office(tmp_path: Path) -> Iterator[Office]:
    """A founded register without gear."""
    office = founded(tmp_path)
    yield office
    office.book.close()


@pytest.fixture(scope="session")
def stocked_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The register with three pieces, built once for all tests; each works on a copy."""
    folder = tmp_path_factory.mktemp("stocked")
    stocked(folder).book.close()
    return folder / "register.db"


@pytest.fixture
def office(stocked_once: Path, tmp_path: Path) -> Iterator[Office]:
    """A register with three pieces."""
    copyfile(stocked_once, tmp_path / "register.db")
    book = open_book(tmp_path / "register.db")
    with book.reading() as page:
        officer = page.people()[0]
    office = Office(book, rules_in_force(), tmp_path / "documents", officer, lambda: NOW, "test")
    yield office
    office.book.close()


@pytest.fixture(scope="session")
def outing_once(tmp_path_factory: pytest.TempPathFactory) -> Office:
    """The register of outing.py, built once for all tests and closed; each works on a copy."""
    from tests.desk.outing import outing  # it is made of parts of this module

    office = outing(tmp_path_factory.mktemp("outing"))
    office.book.close()
    return office


@pytest.fixture
def one_trip(office: Office) -> Office:
    """The register with one trip ahead."""
    return with_trips(office, 1)


@pytest.fixture
def two_trips(office: Office) -> Office:
    """The register with two trips ahead."""
    return with_trips(office, 2)


@pytest.fixture
def show_desk(qtbot: QtBot, look: Look) -> Callable[[Office], DeskWindow]:
    """Opens the window on an office and waits for nothing."""

    def shown(office: Office) -> DeskWindow:
        window = DeskWindow(office, look)
        qtbot.addWidget(window, before_close_func=_close)
        window.show()
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        return window

    return shown


@pytest.fixture
def open_desk(qtbot: QtBot, show_desk: Callable[[Office], DeskWindow]) -> Callable[[Office], DeskWindow]:
    """Opens the window on an office and waits for its list."""

    def opened(office: Office) -> DeskWindow:
        window = show_desk(office)
        qtbot.waitUntil(lambda: window.background.is_idle)
        return window

    return opened


def _close(window: QWidget) -> None:
    """Close for good, whatever is written in a form."""
    if isinstance(window, DeskWindow):
        window._may_close = True


@pytest.fixture
def desk(open_desk: Callable[[Office], DeskWindow], office: Office) -> DeskWindow:
    """The window on the register with three pieces."""
    return open_desk(office)


@pytest.fixture
def form_of(qtbot: QtBot, desk: DeskWindow) -> Iterator[Callable[[str], InspectForm]]:
    """Opens the form of a piece."""

    def opened(tag: str) -> InspectForm:
        desk.pages.open_tag(tag)
        qtbot.waitUntil(lambda: desk.pages.piece is not None)
        desk.pages.inspect()
        assert desk.pages.form
        return desk.pages.form

    yield opened
    desk._may_close = True


@pytest.fixture
def form(form_of: Callable[[str], InspectForm]) -> InspectForm:
    """The form of a shackle."""
    return form_of("SH-002")
