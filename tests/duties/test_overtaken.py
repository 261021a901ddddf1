"""Two people change the same: on a file and on a server nobody's word is written over unseen."""

from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_note, change_owner, change_value, label_anew, retag
from inspector.duties.change_person import change_person
from inspector.duties.club_settings import change_club_settings, club_settings
from inspector.duties.found_club import found_club
from inspector.duties.keep_contact import contact_of, write_contact
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle, vehicle_fields
from inspector.duties.look_up import list_gear, open_item, people, trip, vehicles
from inspector.duties.office import Office
from inspector.duties.overtaken import Overtaken, typed_anew
from inspector.duties.plan_rides import plan_rides
from inspector.duties.plan_trip import change_trip, plan_trip, trip_fields
from inspector.duties.value_gear import read_worth
from inspector.gear.item import Rating
from inspector.gear.kind import Basis
from inspector.gear.person import Contact, Person
from inspector.gear.trip import Ground, Trip
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, System, read
from tests.conftest import EVENING
from tests.duties.gear import strap
from tests.server import Database


@pytest.fixture(scope="module", params=["file", "server"])
def club(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Iterator[Office]:
    """A club with a piece, a vehicle and a trip, on either make of database."""
    folder = tmp_path_factory.mktemp("club")
    place: Path | str = folder / "register.db"
    if request.param == "server":
        database: Database = request.getfixturevalue("database")
        place = database.url
    made = Office(open_book(place), rules, folder / "documents", Person("x", "x", ""), lambda: EVENING, "test")
    office = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    book_in(office, strap("KS-1"))
    mass = read("2.5 t", Dimension.MASS, field="mass")
    for tag in ("V1", "V2"):
        add_vehicle(office, tag, "wagon", "Club", mass)
    day = date(2026, 12, 1)
    plan_trip(office, Trip("", "T-1", "Dunes", "here", Ground.BEACH, day, day, "Ada", ("V1", "V2"), ("KS-1",)))
    add_person(office, Person("", "Ro Other", "member"))
    yield office
    office.book.close()


def rating(text: str) -> Rating:
    return Rating(Basis.MBS, read(text, Dimension.FORCE, field="rating"), None, "piece")


def test_the_same_field_of_a_piece(club: Office) -> None:
    seen = open_item(club, "KS-1").dossier.item.facts
    change_note(club, "KS-1", "theirs", seen=seen)
    with pytest.raises(Overtaken) as lost:
        change_note(club, "KS-1", "mine", seen=seen)
    assert "“theirs”" in lost.value.why and "“mine”" in lost.value.why and lost.value.field == "note"
    assert open_item(club, "KS-1").dossier.item.facts.note == "theirs"
    known = lost.value.seen
    assert known == replace(seen, note="theirs")
    change_note(club, "KS-1", "mine", seen=replace(seen, note="theirs"))
    assert open_item(club, "KS-1").dossier.item.facts.note == "mine"


def test_another_field_of_a_piece_is_no_race(club: Office) -> None:
    seen = open_item(club, "KS-1").dossier.item.facts
    change_note(club, "KS-1", "another note", seen=seen)
    change_value(club, "KS-1", read_worth("120 EUR"), seen=seen)
    now = open_item(club, "KS-1").dossier.item.facts
    assert (now.note, now.worth.as_typed if now.worth else "") == ("another note", "120 EUR")


@pytest.mark.parametrize("what", ["owner", "worth", "rating", "tag"])
def test_every_change_of_a_piece_knows_what_it_was_opened_on(club: Office, what: str) -> None:
    current = list_gear(club).rows[0].tag
    seen = open_item(club, current).dossier.item.facts
    if what == "rating":
        seen = replace(seen, rating=rating("90 kN"))  # as somebody saw it before it was read anew
    else:
        stale: dict[str, object] = {"owner": "Somebody", "worth": read_worth("1 EUR"), "tag": "OLD-1"}
        seen = replace(seen, **{what: stale[what]})
    changes: dict[str, Callable[[], object]] = {
        "owner": lambda: change_owner(club, current, "Ro Other", "given", seen=seen),
        "worth": lambda: change_value(club, current, read_worth("7 EUR"), seen=seen),
        "rating": lambda: label_anew(club, current, rating("70 kN"), "read", seen=seen),
        "tag": lambda: retag(club, current, "KS-77", "lost", seen=seen),
    }
    with pytest.raises(Overtaken):
        changes[what]()


def test_the_same_field_of_a_vehicle_a_person_a_contact_and_the_clubs_wants(club: Office) -> None:
    vehicle = vehicles(club)[0]
    change_vehicle(club, "V1", lambda one: replace(one, owner="Ro Other"), "sold")
    with pytest.raises(Overtaken):
        own = replace(vehicle, owner="Ada Officer", name="wagon, grey")
        change_vehicle(club, "V1", typed_anew(vehicle, own, vehicle_fields()), "sold")
    change_vehicle(club, "V1", typed_anew(vehicle, replace(vehicle, name="wagon, grey"), vehicle_fields()), "painted")
    assert (vehicles(club)[0].owner, vehicles(club)[0].name) == ("Ro Other", "wagon, grey")

    person = next(one for one in people(club) if one.name == "Ro Other")
    change_person(club, person.id, role="trainer", why="course", seen=person)
    with pytest.raises(Overtaken):
        change_person(club, person.id, role="guest", why="left", seen=person)
    change_person(club, person.id, name="Ro Third", role="member", why="married", seen=person)
    assert next((one.name, one.role) for one in people(club) if one.id == person.id) == ("Ro Third", "trainer")

    write_contact(club, person.id, phone="1", seen=Contact())
    with pytest.raises(Overtaken):
        write_contact(club, person.id, phone="2", seen=Contact())
    write_contact(club, person.id, mail="ro@example.org", seen=Contact())
    assert contact_of(club, person.id) == Contact("1", "ro@example.org")

    wants = club_settings(club)
    change_club_settings(club, replace(wants, club="Their Club"), wants)
    with pytest.raises(Overtaken):
        change_club_settings(club, replace(wants, club="My Club"), wants)
    change_club_settings(club, replace(wants, system=System.IMPERIAL), wants)
    assert (club_settings(club).club, club_settings(club).system) == ("Their Club", System.IMPERIAL)


def test_the_same_field_of_a_trip_and_where_a_piece_rides(club: Office) -> None:
    seen = trip(club, "T-1")
    change_trip(club, "T-1", lambda one: replace(one, place="there"))
    with pytest.raises(Overtaken):
        change_trip(club, "T-1", typed_anew(seen, replace(seen, place="elsewhere"), trip_fields()))
    tag = seen.kit[0]
    plan_rides(club, "T-1", {tag: "V1"}, seen=seen)
    with pytest.raises(Overtaken) as lost:
        plan_rides(club, "T-1", {tag: "V2"}, seen=seen)
    assert "V1" in lost.value.why and "V2" in lost.value.why
    assert isinstance(lost.value.seen, Trip)
    plan_rides(club, "T-1", {tag: "V2"}, seen=lost.value.seen)
    assert trip(club, "T-1").rides_on(tag) == "V2"
