"""Stories: a piece that is fit is of no use to a trip that cannot have it."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.cli.ready import say_ready
from inspector.duties.add_people import add_person
from inspector.duties.lend import lend
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.tell_readiness import answer_words
from inspector.duties.trip_readiness import readiness
from inspector.duties.what_needs_me import what_needs_me
from inspector.duties.work_rigs import pack_trip, pair_trip, propose_rig
from inspector.gear.person import Person
from inspector.gear.rig import Method
from inspector.gear.trip import Ground, Trip
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, shackle, strap
from tests.duties.rigs import KIT, fit, fit_kit, later, member, planned, ready


def away(office: Office, ref: str = "T-1") -> dict[str, str]:
    return {one.tag: one.why for one in readiness(office, ref).away}


def other_trip(office: Office, first: date, last: date, kit: tuple[str, ...]) -> Trip:
    return plan_trip(office, Trip("", "T-2", "Other", "", Ground.MUD, first, last, "", (), kit))


@pytest.mark.parametrize("days", [0, 2, 30])
def test_a_piece_out_on_another_loan_is_told_and_stands_in_no_rig_of_the_trip(office: Office, days: int) -> None:
    ready(office)
    assert away(office) == {}
    lend(office, ["KS-1"], "Di Member", office.today + timedelta(days=days))
    assert list(away(office)) == ["KS-1"] and "Di Member" in away(office)["KS-1"]
    found = propose_rig(office, "T-1", Method.KINETIC, "V-2", "V-1")
    assert "Di Member" in next(one.why for one in found.left_out if one.tag == "KS-1")
    assert all("strap" in one.says and one.outcome is None for one in pair_trip(office, "T-1").lines)
    assert all(one.outcome is None for one in pair_trip(office, "T-1", ready=readiness(office, "T-1")).lines)


def test_what_goes_what_stays_and_what_is_not_at_hand_make_the_kit(
    office: Office, capsys: pytest.CaptureFixture[str]
) -> None:
    """The first page adds up as the trip's own does, and says why it is not ready."""
    planned = ready(office)
    lend(office, ["KS-1"], "Di Member", office.today + timedelta(days=30))
    found, glance = readiness(office, "T-1"), what_needs_me(office).trip
    assert glance is not None
    assert glance.going + glance.staying + glance.gone == len(planned.kit) == 3
    assert (len(found.going), len(found.staying), len(found.gone)) == (2, 0, 1) and glance.may_be_away == 0
    assert "not at hand: KS-1" in answer_words(found, ())
    say_ready(found, ())
    assert "2 pieces of the kit go, 0 stay at home, 1 is not at hand." in capsys.readouterr().out


def test_a_piece_lent_for_the_trip_itself_or_due_before_it_is_at_hand(office: Office) -> None:
    ready(office)
    lend(office, ["KS-1"], "Di Member", trip="T-1")
    other = office.today + timedelta(days=20)
    other_trip(office, other, other, ("SH-1",))
    lend(office, ["SH-1"], "Di Member", other - timedelta(days=1))
    assert list(away(office)) == ["SH-1"] and away(office, "T-2") == {}


def test_a_piece_that_should_have_been_back_is_not_counted_on(office: Office) -> None:
    ready(office)
    lend(office, ["SH-1"], "Di Member", office.today)
    first = office.today + timedelta(days=20)
    other_trip(office, first, first, ("SH-1",))
    assert away(office, "T-2") == {}
    assert list(away(later(office, 5), "T-2")) == ["SH-1"]


def test_a_piece_in_two_kits_on_one_day_is_told_for_both(office: Office) -> None:
    trip = ready(office)
    other_trip(office, trip.last_on, trip.last_on + timedelta(days=3), ("SH-1", "SH-2"))
    assert list(away(office)) == ["SH-1", "SH-2"] and "T-2" in away(office)["SH-1"]
    assert "T-1" in away(office, "T-2")["SH-2"]
    change_trip(office, "T-2", lambda one: replace(one, first_on=trip.last_on + timedelta(days=1)))
    assert away(office) == away(office, "T-2") == {}


def test_a_trip_that_is_over_waits_for_nothing(office: Office) -> None:
    ready(office)
    lend(office, ["SH-1"], "Di Member", office.today + timedelta(days=30))
    assert away(later(office, 3)) == {}


def test_a_kit_is_packed_from_what_the_trip_can_have(office: Office) -> None:
    """The club's and a member's who goes; not a member's who stays at home, nor what another trip takes that day."""
    fit_kit(office)
    goes = member(office, "Jo Goes")
    add_person(office, Person("", "Ann Stays", "member"))
    fit(office, shackle("SH-3", "jo  goes"), SHACKLE_READINGS)
    fit(office, shackle("SH-4", "Ann Stays"), SHACKLE_READINGS)
    fit(office, strap("KS-9", "Ann Stays"), STRAP_READINGS)
    trip = planned(office, kit=())
    change_trip(office, "T-1", lambda one: replace(one, people=(goes.id,)))
    other_trip(office, trip.first_on, trip.first_on, ("SH-2",))
    found = pack_trip(office, "T-1")
    taken = {one.tag for one in found.takes}
    assert "SH-3" in taken and not taken & {"SH-2", "SH-4", "KS-9"}
    stays = dict(found.stays)
    assert "Ann Stays" in stays["SH-4"] and "Ann Stays" in stays["KS-9"] and "T-2" in stays["SH-2"]
    assert set(KIT) & taken
