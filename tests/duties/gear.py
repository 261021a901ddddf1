"""Short words for stories: a shackle, a strap, an inspection by the officer."""

from datetime import date

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.gear.inspection import Answer, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade, Kind
from inspector.units import Dimension, Figure, read


def shackle(tag: str = "SH-1", owner: str = "Club") -> NewItem:
    """A new bow shackle with its certificate."""
    rating = Rating(Basis.WLL, read("4.75 t", Dimension.FORCE, field="r"), 5.0, "certificate")
    sizes = (size("bow_diameter", "19 mm"), size("pin_diameter", "7/8 in"))
    return NewItem(tag, "bow_shackle", rating, sizes=sizes, owner=owner, provenance=Provenance.NEW_CERTIFIED)


def mount(tag: str = "BM-1") -> NewItem:
    """A new ball mount, 5 mm wall."""
    rating = Rating(Basis.TOWED_MASS, read("2000 kg", Dimension.MASS, field="r"), None, "piece")
    sizes = (size("outside", "50 mm"), size("wall", "5 mm"), size("pin_hole", "16.2 mm"))
    return NewItem(
        tag, "ball_mount", rating, sizes=sizes, provenance=Provenance.NEW, in_service_on=date(2020, 1, 1), owner="Club"
    )


def strap(tag: str = "KS-1", owner: str = "Club") -> NewItem:
    """A new kinetic strap with its label."""
    rating = Rating(Basis.MBS, read("8000 kg", Dimension.FORCE, field="r"), None, "piece")
    facts = NewItem(tag, "kinetic_strap", rating, maker_mark="ZUF", serial="Z9-001", sizes=(size("length", "9 m"),))
    new_on = date(2026, 10, 1)  # shortly before the stories: a new strap of which nobody knows the age is held
    return replace(facts, owner=owner, provenance=Provenance.NEW_CERTIFIED, in_service_on=new_on)


def size(key: str, typed: str) -> SizeAsNew:
    """A size as new."""
    return SizeAsNew(key, read(typed, Dimension.LENGTH, field=key))


def all_good(
    office: Office, kind: Kind, readings: dict[str, str], on: date | None = None, by: str = "", **bad: str
) -> NewInspection:
    """A periodic inspection; everything good but what is named. readings: "measure@point" to text."""
    return NewInspection(
        on=on or office.today,
        kind=InspectionKind.PERIODIC,
        by=by or office.officer.id,
        competent=False,
        answers=tuple(Answer(check.key, Grade(bad.get(check.key, "good"))) for check in kind.checks),
        readings=tuple(reading(kind, place, typed) for place, typed in readings.items()),
    )


def reading(kind: Kind, place: str, typed: str) -> Reading:
    """A reading on a dressed face."""
    key, _, point = place.partition("@")
    measure = kind.measure(key)
    dimension = measure.dimension if measure else Dimension.LENGTH
    figure = read(typed, dimension, field=key)
    return Reading(key, figure, point, Method.ULTRASONIC_BARE, Surface.DRESSED, block_checked=True)


STRAP_READINGS = {"length": "9.00 m"}
SHACKLE_READINGS = {"bow_diameter": "19 mm", "pin_diameter": "22.2 mm"}
HOLE = {"pin_hole@left wall": "16.3 mm", "pin_hole@right wall": "16.3 mm"}


def kilograms(typed: str) -> Figure:
    """A mass."""
    return read(typed, Dimension.MASS, field="mass")


def metres(typed: str) -> Figure:
    """A length."""
    return read(typed, Dimension.LENGTH, field="length")


def point(tag: str = "RP-1") -> NewItem:
    """A new recovery point on four bolts."""
    rating = Rating(Basis.MBS, read("8000 kg", Dimension.FORCE, field="r"), None, "piece")
    count = SizeAsNew("bolt_count", read("4", Dimension.COUNT, field="n"))
    sizes = (count, size("bolt_diameter", "14 mm"), size("plate", "16 mm"))
    return NewItem(
        tag, "recovery_point", rating, sizes=sizes, owner="Club", place="Shed, shelf", provenance=Provenance.NEW
    )


POINT_READINGS = {"bolts_sound": "4", "plate": "16 mm"}
