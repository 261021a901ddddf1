"""Where each piece of a trip's kit rides: planned, told, taken along by changes, and on the sheets."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.change_item import retag
from inspector.duties.check_kit import kit_check
from inspector.duties.exchange_trip import export_trip, import_trip
from inspector.duties.fit_parts import fit_part
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.look_up import trip
from inspector.duties.office import Office
from inspector.duties.plan_rides import NOWHERE, plan_rides
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.tell_changes import trip_history
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.trip_readiness import readiness
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import put_in_store
from inspector.gear.fitting import End, Fitted
from inspector.gear.trip import Ground, Ride, Trip
from inspector.refused import Refused
from inspector.register.rows import from_body
from inspector.units import Dimension, read
from tests.duties.gear import point, shackle, strap


@pytest.fixture
def office(office: Office) -> Office:
    """Two vehicles, a point on V-1, and a trip with two shackles and a strap."""
    weighs = read("2000 kg", Dimension.MASS, field="mass")
    for tag in ("V-1", "V-2"):
        add_vehicle(office, tag, f"wagon {tag}", "Club", weighs, weighs)
    for facts in (shackle("SH-1"), shackle("SH-2"), strap("KS-1"), shackle("SH-9"), point("RP-1")):
        book_in(office, facts)
    fit_part(office, "RP-1", Fitted("V-1", End.FRONT))
    day = office.today + timedelta(days=3)
    kit = ("SH-1", "SH-2", "KS-1", "RP-1")
    plan_trip(office, Trip("", "T-1", "Day", "spit", Ground.BEACH, day, day, "", vehicles=("V-1", "V-2"), kit=kit))
    return office


def where(office: Office, tag: str) -> str:
    """What the check says of where a piece rides."""
    found = kit_check(office, "T-1").piece(tag)
    assert found
    return found.where


def refused(says: str, deed: Callable[[], object]) -> None:
    with pytest.raises(Refused) as fault:
        deed()
    assert says in f"{fault.value.why} {fault.value.what_to_do}"


def test_what_is_planned_stands_by_the_registers_own_tags_and_in_the_order_of_the_kit(office: Office) -> None:
    plan_rides(office, "t-1", {"ks-1": "v-2"}, "the strap first")
    kept = plan_rides(office, "T-1", {"sh-1": "V-1"})
    assert kept.rides == (Ride("SH-1", "V-1"), Ride("KS-1", "V-2"))
    assert trip(office, "T-1") == kept and kept.rides_on("SH-2") == ""
    assert plan_rides(office, "T-1", {"SH-1": NOWHERE}).rides == (Ride("KS-1", "V-2"),)
    assert verify_book(office).faults == ()


def test_a_trip_of_before_has_no_rides_and_reads_all_the_same() -> None:
    old = '{"id":"1","ref":"T","name":"n","place":"","ground":"mud","first_on":"2026-01-01","last_on":"2026-01-01"'
    assert from_body(f'{old},"leader":""}}', Trip).rides == ()


def test_it_is_told_in_the_ledger_and_in_the_trips_history(office: Office) -> None:
    plan_rides(office, "T-1", {"KS-1": "V-2", "SH-1": "V-2", "SH-2": "V-1"}, "weight")
    plan_rides(office, "T-1", {"KS-1": NOWHERE})
    last, before = (one.sentence for one in told_ledger(office, last=2))
    assert "planned what rides where on the trip T-1: KS-1 on no vehicle." in last
    assert before.endswith("on the trip T-1: KS-1 and SH-1 on V-2; SH-2 on V-1: “weight”.")
    told = [row.text for row in trip_history(office, "T-1")]
    assert told[0] == "rides without KS-1 on V-2" and told[1].startswith("rides with SH-1 on V-2, SH-2 on V-1, KS-1")


def test_what_leaves_the_kit_or_a_vehicle_that_leaves_takes_its_entry_along(office: Office) -> None:
    plan_rides(office, "T-1", {"SH-1": "V-1", "SH-2": "V-2", "KS-1": "V-1"})
    left = change_trip(office, "T-1", lambda one: replace(one, kit=("SH-2", "KS-1")))
    assert left.rides == (Ride("SH-2", "V-2"), Ride("KS-1", "V-1"))
    assert change_trip(office, "T-1", lambda one: replace(one, vehicles=("V-2",))).rides == (Ride("SH-2", "V-2"),)


def test_another_tag_for_a_piece_keeps_where_it_rides(office: Office) -> None:
    plan_rides(office, "T-1", {"SH-1": "V-1"})
    retag(office, "SH-1", "QX-9", "the label was lost")
    assert trip(office, "T-1").rides == (Ride("QX-9", "V-1"),)
    assert change_trip(office, "T-1", lambda one: replace(one, place="bay")).rides == (Ride("QX-9", "V-1"),)


def test_what_cannot_ride_there_is_refused(office: Office) -> None:
    refused("SH-9 is not in the kit", lambda: plan_rides(office, "T-1", {"SH-9": "V-1"}))
    refused(
        "V-7 does not go on the trip T-1. Use one of: V-1, V-2.", lambda: plan_rides(office, "T-1", {"SH-1": "V-7"})
    )
    refused("RP-1 sits on V-1", lambda: plan_rides(office, "T-1", {"RP-1": "V-2"}))
    refused("Nothing would change", lambda: plan_rides(office, "T-1", {"SH-1": NOWHERE}))
    assert trip(office, "T-1").rides == ()


def test_the_check_and_the_kit_say_where_each_piece_rides_sits_or_lies(office: Office) -> None:
    plan_rides(office, "T-1", {"SH-1": "V-2"})
    put_in_store(office, "KS-1", "shelf 2")
    assert where(office, "SH-1") == "Rides on V-2"
    assert where(office, "KS-1") == "Not planned where it rides; now in store at shelf 2"
    assert where(office, "RP-1").startswith("On V-1, front.")
    ready = readiness(office, "T-1")
    assert ready.sits == {"RP-1": "V-1"} and ready.lies["KS-1"] == "in store at shelf 2"


def test_a_file_carries_what_rides_where_into_another_trip(office: Office) -> None:
    plan_rides(office, "T-1", {"SH-1": "V-2", "KS-1": "V-1"})
    text = export_trip(office, "T-1")
    assert import_trip(office, text.encode(), "trip.toml", "T-2").rides == trip(office, "T-1").rides
    wrong = text.replace('V-2 = [\n    "SH-1",', 'V-2 = [\n    "SH-9",')
    assert wrong != text
    refused("“SH-9” stands neither in its kit", lambda: import_trip(office, wrong.encode(), "trip.toml", "T-3"))
    twice = text.replace('V-2 = [\n    "SH-1",', 'V-2 = [\n    "SH-1", "KS-1",')
    refused("“KS-1” stands in it twice.", lambda: import_trip(office, twice.encode(), "trip.toml", "T-3"))
    refused("no table", lambda: import_trip(office, b"rides = 3\n" + text.partition("[rides]")[0].encode(), "t", "T-3"))
