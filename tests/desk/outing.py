"""A register for the pages of trips and rigs: two vehicles with points, a fit kit, a trip ahead and one over."""

from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.desk.window import DeskWindow
from inspector.duties.book_in import book_in
from inspector.duties.fit_parts import fit_part
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.item import NewItem
from inspector.gear.trip import Ground, Trip
from inspector.units import Dimension, read
from tests.desk.conftest import founded
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, STRAP_READINGS, all_good, mount, point, shackle, strap
from tests.fresh import copied

KIT = ("KS-1", "SH-1", "SH-2", "SH-3")


def fit(office: Office, piece: NewItem, readings: dict[str, str]) -> None:
    """Book a piece and pass it."""
    kind = book_in(office, piece).dossier.kind
    record_inspection(office, piece.tag, all_good(office, kind, readings))


def outing(folder: Path) -> Office:
    """V-1 and V-2 of 3 t, a point at each end; the kit with SH-3 never inspected; BM-1, a ball mount, in the shed."""
    office = founded(folder)
    for tag in ("V-1", "V-2"):
        weighs = read("3000 kg", Dimension.MASS, field="mass")
        add_vehicle(office, tag, f"wagon {tag}", "Club", weighs, weighs)
        for end in (End.FRONT, End.REAR):
            name = f"RP-{tag[-1]}{end.value[0].upper()}"
            book_in(office, point(name))
            kind = fit_part(office, name, Fitted(tag, end, Side.LEFT)).dossier.kind
            record_inspection(office, name, all_good(office, kind, POINT_READINGS))
    fit(office, strap("KS-1"), STRAP_READINGS)
    for tag in ("SH-1", "SH-2"):
        fit(office, shackle(tag), SHACKLE_READINGS)
    book_in(office, shackle("SH-3"))
    book_in(office, mount("BM-1"))
    first = office.today + timedelta(days=3)
    over = office.today - timedelta(days=9)
    trip = Trip("", "T-1", "Beach days", "the spit", Ground.BEACH, first, first, "leader", ("V-1", "V-2"), KIT)
    plan_trip(office, trip)
    plan_trip(office, replace(trip, ref="T-0", name="Last beach days", first_on=over, last_on=over))
    return office


@pytest.fixture
def beach(outing_once: Office, tmp_path: Path) -> Iterator[Office]:
    """That register."""
    office = copied(outing_once, tmp_path)
    yield office
    office.book.close()


def without_kit(trip: Trip) -> Trip:
    """The trip with nothing packed."""
    return replace(trip, kit=())


@pytest.fixture(name="desk")
def beach_desk(open_desk: Callable[[Office], DeskWindow], beach: Office) -> DeskWindow:
    """The window on that register, wide enough for form and account."""
    window = open_desk(beach)
    window.resize(1280, 720)
    return window
