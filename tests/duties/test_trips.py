"""Stories: trips are planned and changed."""

from collections.abc import Callable
from datetime import timedelta
from functools import partial

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.look_up import open_item, people, trip, trips
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip, plan_trip, retired_in_kit
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_changes import trip_history
from inspector.duties.verify_book import verify_book
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle, strap
from tests.duties.refusals import wrongly_refused
from tests.duties.test_opinions import add
from tests.duties.test_vehicles import wagon


@pytest.fixture
def club(office: Office) -> Office:
    """Two vehicles, a second person, a shackle and two straps."""
    wagon(office, "V-1")
    wagon(office, "V-2")
    add(office, "Bo Second", competent=False)
    for facts in (shackle("SH-1"), strap("KS-1"), strap("KS-2")):
        book_in(office, facts)
    return office


def beach(office: Office, ref: str = "T-1") -> Trip:
    """A weekend with the shackle and one strap."""
    first = office.today + timedelta(days=3)
    days = (first, first + timedelta(days=1))
    return Trip("", ref, "Beach weekend", "the spit", Ground.BEACH, *days, "Bo Second", ("V-1",), ("SH-1", "KS-1"))


def ids(office: Office) -> dict[str, str]:
    return {one.name: one.id for one in people(office)}


def test_a_trip_is_kept_with_tags_as_they_stand_in_the_register_and_people_by_id(club: Office) -> None:
    plan_trip(
        club, replace(beach(club), kit=("sh-1", "KS-1"), vehicles=("v-1",), people=("Bo Second",), note="low tide")
    )
    kept = trip(club, "t-1")
    assert (kept.kit, kept.vehicles, kept.note) == (("SH-1", "KS-1"), ("V-1",), "low tide")
    assert kept.people == (ids(club)["Bo Second"],)


_UNSOUND: tuple[tuple[Callable[[Trip], Trip], str, str], ...] = (
    (lambda one: replace(one, kit=("SH-1", "ZZ-9")), "kit", "No piece has the tag “ZZ-9”"),
    (lambda one: replace(one, kit=("SH-1", "KS-1", "sh-1")), "kit", "“sh-1” stands in it twice"),
    (lambda one: replace(one, vehicles=("V-9",)), "vehicles", "No vehicle has the tag “V-9”"),
    (lambda one: replace(one, vehicles=("V-1", "V-1")), "vehicles", "twice"),
    (lambda one: replace(one, people=("Nobody Here",)), "people", "Nobody called"),
    (lambda one: replace(one, people=("Bo Second", "Bo Second")), "people", "twice"),
    (lambda one: replace(one, last_on=one.first_on - timedelta(days=1)), "last day", "end before it begins"),
    (lambda one: replace(one, name=" "), "name", "empty"),
)


def test_a_plan_that_does_not_hold_together_is_refused_at_its_field_new_or_changed(club: Office) -> None:
    wrong: list[str] = []
    for number, (edit, field, why) in enumerate(_UNSOUND):
        if fault := wrongly_refused(partial(plan_trip, club, edit(beach(club, f"N-{number}"))), field, why):
            wrong.append(f"new, “{why}”: {fault}")
    assert not wrong, "\n".join(wrong)
    assert trips(club) == ()
    kept = plan_trip(club, beach(club))
    for edit, field, why in _UNSOUND:
        if fault := wrongly_refused(partial(change_trip, club, "T-1", edit), field, why):
            wrong.append(f"changed, “{why}”: {fault}")
    assert not wrong, "\n".join(wrong)
    assert trips(club) == (kept,)


def test_a_reference_by_which_no_trip_could_be_called_is_refused(club: Office) -> None:
    wrong: list[str] = []
    for ref in ("", "next", "Next", " T-1", "T" * 25):
        if fault := wrongly_refused(partial(plan_trip, club, beach(club, ref)), "reference", ""):
            wrong.append(f"“{ref}”: {fault}")
    assert not wrong, "\n".join(wrong)


def test_a_reference_is_taken_once_in_any_case(club: Office) -> None:
    plan_trip(club, beach(club))
    with pytest.raises(Refused, match="Another trip has the reference"):
        plan_trip(club, beach(club, "t-1"))


def test_the_last_plan_stands_and_the_plans_before_it_are_told(club: Office) -> None:
    plan_trip(club, replace(beach(club), people=("Ada Officer",)))
    bo = ids(club)["Bo Second"]
    change_trip(club, "T-1", lambda one: replace(one, kit=("SH-1", "KS-2"), people=(*one.people, bo)), "KS-1 is out")
    later = club.today + timedelta(days=40)
    change_trip(club, "T-1", lambda one: replace(one, first_on=later, last_on=later, vehicles=("V-1", "V-2")))
    stands = trip(club, "T-1")
    assert (stands.kit, stands.vehicles, stands.first_on) == (("SH-1", "KS-2"), ("V-1", "V-2"), later)
    last, middle, first = trip_history(club, "T-1")
    assert first.what == "Planned" and "kit SH-1, KS-1" in first.text and "people Ada Officer" in first.text
    assert middle.text == "kit with KS-2; kit without KS-1; people with Bo Second. KS-1 is out"
    assert "first day 4 Jan 2027, before 28 Nov 2026" in last.text and "vehicles with V-2" in last.text
    assert {row.by for row in (last, middle, first)} == {"Ada Officer"}
    assert verify_book(club).faults == ()


def test_a_trip_put_off_moves_in_the_list(club: Office) -> None:
    plan_trip(club, beach(club, "T-1"))
    plan_trip(club, beach(club, "T-2"))
    later = club.today + timedelta(days=9)
    change_trip(club, "T-1", lambda one: replace(one, first_on=later, last_on=later))
    assert [one.ref for one in trips(club)] == ["T-2", "T-1"]
    assert trip(club, "next").ref == "T-2"


def test_what_changes_nothing_or_its_reference_is_refused(club: Office) -> None:
    plan_trip(club, beach(club))
    with pytest.raises(Refused, match="Nothing would change"):
        change_trip(club, "T-1", lambda one: replace(one, kit=("sh-1", "ks-1")))
    with pytest.raises(Refused, match="keeps its reference"):
        change_trip(club, "T-1", lambda one: replace(one, ref="T-2"))
    with pytest.raises(Refused, match="No trip has the reference"):
        change_trip(club, "T-9", lambda one: replace(one, note="x"))
    reordered = change_trip(club, "T-1", lambda one: replace(one, kit=("KS-1", "SH-1")))
    assert reordered.kit == ("KS-1", "SH-1") and trip_history(club, "T-1")[0].text == "kit in another order"


def test_a_retired_piece_may_stand_in_the_kit_and_is_told(club: Office) -> None:
    kind = open_item(club, "SH-1").dossier.kind
    record_inspection(club, "SH-1", all_good(club, kind, SHACKLE_READINGS, cracks="bad"))
    assert retired_in_kit(club, plan_trip(club, beach(club))) == ("SH-1",)
    assert retired_in_kit(club, plan_trip(club, replace(beach(club, "T-2"), kit=("KS-1",)))) == ()
    assert retired_in_kit(club, plan_trip(club, replace(beach(club, "T-3"), kit=()))) == ()


def test_the_sample_s_trips_name_their_people_and_were_planned_before_they_began(sample: Office) -> None:
    names = {one.id: one.name for one in people(sample)}
    for one in trips(sample):
        assert len(one.people) >= 3 and one.leader in {names[key] for key in one.people}
        assert trip_history(sample, one.ref)[-1].on < one.first_on
