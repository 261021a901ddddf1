"""Short words for stories of rigs and trips: a club with two vehicles, a fit kit and a beach trip."""

from datetime import timedelta

from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.gear.item import NewItem
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.rig import Conditions, Footing, Method, Rig
from inspector.gear.trip import Ground, Trip
from inspector.units import Dimension, read
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap

KIT = ("KS-1", "SH-1", "SH-2")
SNATCH = Rig(
    "Beach snatch", Method.KINETIC, "V-2", "V-1", (("tie_down@V-1", "SH-1", "KS-1", "SH-2", "towing_eye@V-2"),)
)
SAND = Conditions(bogged_in=Footing.SOFT_DRY_SAND, speed=read("6 km/h", Dimension.SPEED, field="s"), wet=False)


def fit(office: Office, piece: NewItem, readings: dict[str, str]) -> None:
    """Book a piece and pass it."""
    kind = book_in(office, piece).dossier.kind
    seen = record_inspection(office, piece.tag, all_good(office, kind, readings))
    assert seen.verdict.outcome is Outcome.FIT


def fit_kit(office: Office) -> None:
    """A strap and two shackles, fit."""
    fit(office, strap("KS-1"), STRAP_READINGS)
    for tag in ("SH-1", "SH-2"):
        fit(office, shackle(tag), SHACKLE_READINGS)


def member(office: Office, name: str = "Di Member") -> Person:
    """Somebody who may borrow and tell, and judge nothing."""
    return add_person(office, Person("", name, "member"))


def planned(office: Office, kit: tuple[str, ...] = KIT, days: int = 3) -> Trip:
    """A beach trip from today on, with two vehicles."""
    for tag in ("V-1", "V-2"):
        add_vehicle(office, tag, f"Truck {tag}", "Club", read("3000 kg", Dimension.MASS, field="m"), None)
    last = office.today + timedelta(days=days - 1)
    trip = Trip(
        "", "T-1", "Beach days", "Long Sand", Ground.BEACH, office.today, last, "Di Member", ("V-1", "V-2"), kit
    )
    return plan_trip(office, trip)


def ready(office: Office) -> Trip:
    """The kit, a member and the trip."""
    fit_kit(office)
    member(office)
    return planned(office)


def later(office: Office, days: int) -> Office:
    """The same office days later."""
    return office.at(office.now + timedelta(days=days))


def named(rig: Rig, **changes: object) -> Rig:
    """The rig with some words changed."""
    return replace(rig, **changes)
