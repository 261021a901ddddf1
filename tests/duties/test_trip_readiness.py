"""Whether a trip is ready: the verdicts of its last day, what turns and falls due, and what sits on its vehicles."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.before_use import goes
from inspector.duties.book_in import book_in
from inspector.duties.fit_parts import fit_part
from inspector.duties.judging import judged
from inspector.duties.keep_vehicles import change_vehicle
from inspector.duties.look_up import open_item, trip, trips
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure
from inspector.duties.tell_readiness import answer_words
from inspector.duties.trip_readiness import PartReady, Ready, readiness
from inspector.gear.falls_due import Due
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewExposure, Weather
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.page_style import PageSize
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, all_good, point, shackle
from tests.duties.test_opinions import add
from tests.duties.test_vehicles import wagon, weighs
from tests.paper.reading import all_text, squeezed

FRONT = Fitted("V-1", End.FRONT, Side.LEFT)


@pytest.fixture
def club(office: Office) -> Office:
    """A vehicle with a recovery point, a shackle; both inspected today and fit."""
    wagon(office)
    for facts, readings in ((shackle("SH-1"), SHACKLE_READINGS), (point("RP-1"), POINT_READINGS)):
        kind = book_in(office, facts).dossier.kind
        record_inspection(office, facts.tag, all_good(office, kind, readings))
    return office


def ready(office: Office, days: int, kit: tuple[str, ...] = ("SH-1",), length: int = 0) -> Ready:
    """A trip so many days ahead."""
    first = office.today + timedelta(days=days)
    last = first + timedelta(days=length)
    plan_trip(office, Trip("", "T-1", "Weekend", "", Ground.ROCK, first, last, "", ("V-1",), kit))
    return readiness(office, "T-1")


def test_whether_it_is_ready_is_answered_and_why_not(club: Office) -> None:
    fit_part(club, "RP-1", FRONT)
    assert "on the vehicles may not be used: RP-1" in answer_words(ready(club, 1), ()), (
        "nobody looked how it was fitted"
    )
    record_inspection(club, "RP-1", all_good(club, club.kind("recovery_point"), POINT_READINGS))
    assert answer_words(readiness(club, "T-1"), ()) == "Yes. Nothing in the register speaks against it."
    change_vehicle(club, "V-1", weighs("3,000 kg"), "weighed loaded")
    record_inspection(club, "SH-1", all_good(club, club.kind("bow_shackle"), SHACKLE_READINGS, cracks="bad"))
    said = answer_words(readiness(club, "T-1"), ())
    assert said.startswith("No, not as planned: 1 piece of the kit stays; V-1 is overloaded: it weighs 3,000 kg")


def test_what_falls_due_and_what_the_kit_lacks_speak_against_it(club: Office) -> None:
    fit_part(club, "RP-1", FRONT)
    record_inspection(club, "RP-1", all_good(club, club.kind("recovery_point"), POINT_READINGS))
    assert answer_words(ready(club, 1), ("a damper",)) == "No, not as planned: 1 need is not met."
    due = open_item(club, "SH-1").verdict.next_inspection_due
    assert due is not None
    far = replace(trip(club, "T-1"), ref="T-2", id="", first_on=due, last_on=due)
    plan_trip(club, far)
    assert "due by then: " in answer_words(readiness(club, "T-2"), ())


def test_an_empty_trip_is_not_ready(club: Office) -> None:
    said = answer_words(ready(club, 1, ()), ())
    assert said == "No, not as planned: no piece goes along; no part is written down for V-1."


def test_the_sheet_tells_an_overloaded_vehicle_and_where_no_place_was_named(club: Office) -> None:
    change_vehicle(club, "V-1", weighs("3,000 kg"), "weighed loaded")
    ready(club, 1)
    sheet = enter_trip_sheet(club, "T-1")
    assert "V-1 is overloaded: it weighs 3,000 kg" in sheet.vehicles[0].warning
    text = squeezed(all_text(inspection_sheet(sheet, PageSize.A4)))
    assert "Weekend," not in text and "Placenotwrittendown" in text


def part(found: Ready) -> PartReady:
    (only,) = found.vehicles[0].parts
    return only


def test_a_piece_that_is_fit_today_and_overdue_on_the_last_day_stays_and_is_said_to_turn(club: Office) -> None:
    due = open_item(club, "SH-1").verdict.next_inspection_due
    assert due is not None
    until_due = (due - club.today).days
    found = ready(club, until_due, length=1)
    assert found.going == ()
    (turn,) = found.turning
    assert (turn.today, turn.then.verdict.outcome) == (Outcome.FIT, Outcome.HOLD)
    assert turn.then.verdict.on == due + timedelta(days=1) == found.on
    assert (Due.INSPECTION, due, False) in [(one.what, one.on, one.overdue) for one in found.due]


def test_on_the_day_it_falls_due_it_still_goes(club: Office) -> None:
    due = open_item(club, "SH-1").verdict.next_inspection_due
    assert due is not None
    found = ready(club, (due - club.today).days)
    assert [one.dossier.item.tag for one in found.going] == ["SH-1"] and found.turning == ()
    assert [(one.what, one.on) for one in found.due] == [(Due.INSPECTION, due)]


def test_what_falls_due_after_the_last_day_is_not_told(club: Office) -> None:
    found = ready(club, 3)
    assert (found.due, found.turning, found.staying) == ((), (), ())


def test_time_ahead_makes_no_piece_milder(sample: Office) -> None:
    for one in trips(sample):
        for turn in readiness(sample, one.ref).turning:
            assert turn.then.verdict.outcome.severity >= turn.today.severity


def fitted_and_seen(club: Office) -> None:
    """The point is put on the vehicle, and a competent person looks at it there."""
    kind = fit_part(club, "RP-1", FRONT).dossier.kind
    assert open_item(club, "RP-1").verdict.outcome is Outcome.HOLD
    record_inspection(club, "RP-1", all_good(club, kind, POINT_READINGS))


def test_a_part_on_a_vehicle_of_the_trip_is_judged_for_the_last_day_as_well(club: Office) -> None:
    fitted_and_seen(club)
    due = open_item(club, "RP-1").verdict.next_inspection_due
    assert due is not None
    found = ready(club, (due - club.today).days + 1, kit=())
    assert (part(found).place, part(found).judged.verdict.outcome) == ("front left", Outcome.HOLD)
    assert "RP-1" in {one.tag for one in found.due}
    assert [turn.then.dossier.item.tag for turn in found.turning] == ["RP-1"]


def test_a_part_that_is_in_the_kit_as_well_is_told_in_both_places_and_judged_once(club: Office) -> None:
    fitted_and_seen(club)
    found = ready(club, 3, kit=("RP-1", "SH-1"))
    assert part(found).judged is next(one for one in found.going if one.dossier.item.tag == "RP-1")


def test_a_part_fitted_after_its_last_inspection_is_said_to_be_unseen_there(club: Office) -> None:
    fit_part(club, "RP-1", FRONT)
    found = ready(club, 3)
    assert part(found).moved_on == club.today, "it was inspected before it was fitted, on the same day"
    kind = open_item(club, "RP-1").dossier.kind
    member = replace(all_good(club, kind, POINT_READINGS), by="Bo Member")
    add(club, "Bo Member", competent=False)
    record_inspection(club, "RP-1", member)
    assert part(readiness(club, "T-1")).moved_on == club.today, "a member's look settles nothing"
    record_inspection(club, "RP-1", all_good(club, kind, POINT_READINGS))
    assert part(readiness(club, "T-1")).moved_on is None


def test_parts_of_other_vehicles_are_left_out_and_an_overload_is_told(club: Office) -> None:
    wagon(club, "V-2")
    fit_part(club, "RP-1", Fitted("V-2"))
    change_vehicle(club, "V-1", weighs("2,750 kg"), "loaded for a week")
    (vehicle,) = ready(club, 3).vehicles
    assert vehicle.parts == () and "overloaded" in vehicle.warning


def test_a_trip_that_is_over_is_judged_for_today(sample: Office) -> None:
    found = readiness(sample, "T-01")
    assert found.on == sample.today and found.turning == ()
    assert {one.verdict.on for one in (*found.going, *found.staying)} == {sample.today}


def test_a_retired_piece_stays_and_nothing_falls_due_of_it(sample: Office) -> None:
    found = readiness(sample, "T-05")
    staying = {one.dossier.item.tag for one in found.staying}
    assert "HP-01" in staying and "HP-01" not in {one.tag for one in found.due}


def test_what_is_overdue_already_is_told_as_overdue(sample: Office) -> None:
    due = {(one.tag, one.what): one for one in readiness(sample, "T-06").due}
    assert due["HR-02", Due.READING].overdue and due["KS-07", Due.INSPECTION].overdue
    assert not due["SH-08", Due.INSPECTION].overdue


def test_every_piece_comes_out_as_if_it_were_judged_by_itself(sample: Office) -> None:
    found = readiness(sample, "T-06")
    for one in (*found.going, *found.staying):
        with sample.book.reading() as page:
            item = page.item(one.dossier.item.tag)
            dossier = page.dossier(item, sample.kind(item.facts.kind), trip(sample, "T-06").last_on)
        assert judged(sample, dossier) == one
        assert goes(one) is (one in found.going)


def test_what_happens_meanwhile_is_seen_at_the_next_look(club: Office) -> None:
    assert [one.dossier.item.tag for one in ready(club, 100).going] == ["SH-1"]
    record_exposure(club, "SH-1", NewExposure(club.today, Weather.SALT, rinsed=False))
    assert readiness(club, "T-1").going == ()
    change_trip(club, "T-1", lambda one: replace(one, kit=()))
    assert readiness(club, "T-1").staying == ()
