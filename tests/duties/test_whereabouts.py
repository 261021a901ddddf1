"""Stories: pieces are put away, go missing, are stolen, sold, given back and found."""

from collections.abc import Callable
from datetime import timedelta

import pytest

from inspector.duties.fit_parts import fit_part
from inspector.duties.give_back import give_back
from inspector.duties.lend import lend, loans
from inspector.duties.look_up import list_gear, open_item, where_is
from inspector.duties.office import Office
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.duties.record_inspection import record_inspection
from inspector.duties.report_incident import report_incident
from inspector.duties.tell_history import history_of
from inspector.duties.trip_readiness import readiness
from inspector.duties.whereabouts import (
    hand_to_owner,
    put_in_store,
    report_found,
    report_missing,
    report_stolen,
    sell,
)
from inspector.duties.work_rigs import pack_trip, pair_trip, propose_rig, work_rig
from inspector.gear.fitting import End, Fitted
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method
from inspector.gear.rig_result import RigOutcome
from inspector.refused import Refused
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, STRAP_READINGS, all_good, point, shackle, strap
from tests.duties.rigs import SNATCH, fit, later, member, ready
from tests.duties.test_vehicles import wagon


def test_a_strap_stolen_and_found_is_held_until_it_is_inspected(office: Office) -> None:
    fit(office, strap(), STRAP_READINGS)
    report_stolen(office, "KS-1", "club trailer", "report 17")
    assert where_is(office, "KS-1") == "stolen since 25 Nov 2026, last seen: club trailer"
    with pytest.raises(Refused, match="stolen"):
        lend(office, ["KS-1"], "Ada Officer", office.today + timedelta(days=1))
    assert report_found(office, "KS-1", "shelf 2").verdict.outcome is Outcome.HOLD
    assert where_is(office, "KS-1") == "in store at shelf 2 since 25 Nov 2026"
    assert "Found again" in [row.what for row in history_of(office, "KS-1")]


def test_a_piece_lost_on_a_loan_is_out_no_more_and_comes_back_only_as_found(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    member(office)
    lend(office, ["SH-1"], "Di Member", office.today + timedelta(days=7))
    report_missing(office, "SH-1", "the beach", "left behind")
    assert loans(office) == ()
    with pytest.raises(Refused, match="not on loan"):
        give_back(office, "SH-1", "Di Member")
    assert report_found(office, "SH-1", "shelf 1").verdict.outcome is Outcome.HOLD


def test_a_sold_piece_takes_nothing_more(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    sell(office, "SH-1", "A buyer", why="two bought, one needed")
    assert where_is(office, "SH-1").startswith("sold to A buyer")
    with pytest.raises(Refused, match="sold"):
        report_found(office, "SH-1", "shelf")
    with pytest.raises(Refused, match="sold"):
        put_in_store(office, "SH-1", "shelf")
    with pytest.raises(Refused, match="sold"):
        report_missing(office, "SH-1", "shelf", "gone")
    with pytest.raises(Refused, match="sold"):
        fit_part(office, "SH-1", Fitted("V-1", End.REAR))


def test_a_retired_piece_is_never_sold_and_one_on_hold_only_as_it_is(office: Office) -> None:
    fit(office, strap(), STRAP_READINGS)
    report_missing(office, "KS-1", "shelf", "not there")
    report_found(office, "KS-1", "shelf")
    with pytest.raises(Refused, match="on hold"):
        sell(office, "KS-1", "A buyer")
    kind = office.kind("kinetic_strap")
    record_inspection(office, "KS-1", all_good(office, kind, STRAP_READINGS, edge_cuts="bad"))
    assert open_item(office, "KS-1").verdict.outcome is Outcome.RETIRE
    with pytest.raises(Refused, match="never sold"):
        sell(office, "KS-1", "A buyer", as_it_is=True)


def test_a_piece_goes_back_only_to_an_owner_other_than_the_club(office: Office) -> None:
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    with pytest.raises(Refused, match="club's own"):
        hand_to_owner(office, "SH-1")
    with pytest.raises(Refused, match="future"):
        put_in_store(office, "SH-1", "shelf", office.today + timedelta(days=1))


def test_a_missing_piece_is_told_by_the_trip_and_never_packed_nor_proposed(office: Office) -> None:
    ready(office)
    assert "KS-1" in [one.tag for one in pack_trip(office, "T-1").takes]
    report_missing(office, "KS-1", "the shed", "an empty hook")
    assert "missing since" in next(one.why for one in readiness(office, "T-1").away if one.tag == "KS-1")
    assert "KS-1" not in [one.tag for one in pack_trip(office, "T-1").takes]
    assert list_gear(office, "KS-1").rows[0].place == "missing, last seen: the shed"
    found = propose_rig(office, "T-1", Method.KINETIC, "V-2", "V-1")
    assert "missing since" in next(one.why for one in found.left_out if one.tag == "KS-1")
    assert all(one.outcome is None for one in pair_trip(office, "T-1").lines)


@pytest.mark.parametrize("spoof", ["shelf\n\n  Fit", "\x1b[2Jshelf", "shelf\u202eDNUOF", "x" * 400])
def test_no_place_name_or_report_number_breaks_out_of_its_line(office: Office, spoof: str) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    fit(office, shackle("SH-2"), SHACKLE_READINGS)
    report_missing(office, "SH-2", "the beach", "left behind")
    tries: dict[str, Callable[[], object]] = {
        "place": lambda: put_in_store(office, "SH-1", spoof),
        "seen at": lambda: report_missing(office, "SH-1", spoof, "it was gone"),
        "report number": lambda: report_stolen(office, "SH-1", "shed", spoof),
        "to": lambda: sell(office, "SH-1", spoof),
        "place it was found at": lambda: report_found(office, "SH-2", spoof),
    }
    for what, attempt in tries.items():
        with pytest.raises(Refused, match="signs"):
            attempt()
        assert where_is(office, "SH-1").startswith("in store"), what


def test_a_rig_with_a_missing_piece_or_a_kept_vehicle_is_unsound_and_says_why(office: Office) -> None:
    """However strong a piece is by its verdict, what nobody has holds nothing."""
    ready(office)
    assert "absent" not in {one.key for one in work_rig(office, SNATCH).findings}
    report_missing(office, "KS-1", "the shed", "an empty hook")
    found = work_rig(office, SNATCH)
    said = next(one for one in found.findings if one.key == "absent")
    assert said.outcome is RigOutcome.UNSOUND and "missing since" in said.says
    assert found.outcome.severity >= RigOutcome.UNSOUND.severity
    report_found(office, "KS-1", "the shed")
    told = NewIncident(office.today, Gravity.ACCIDENT, "a beach", "it let go", ("SH-1",), ("V-1",))
    report_incident(office, told)
    about = {one.about for one in work_rig(office, SNATCH).findings if one.key == "absent"}
    assert ("V-1",) in about and ("SH-1",) in about


def test_a_trip_sheet_asks_nobody_to_check_what_is_not_there(office: Office) -> None:
    ready(office)
    report_missing(office, "KS-1", "the shed", "an empty hook")
    sheet = enter_trip_sheet(office, "T-1")
    assert "KS-1" not in [one.tag for one in sheet.going]
    assert "missing since" in next(one.why for one in sheet.staying if one.tag == "KS-1")


@pytest.mark.parametrize("lost", ["missing", "stolen", "given back"])
def test_what_was_found_is_used_again_only_after_a_competent_look_at_it_since(office: Office, lost: str) -> None:
    """Not after a member's look, nor after one that was made before it was found and is told late."""
    di, kind = member(office), office.kind("kinetic_strap")
    fit(office, strap("KS-1", di.name), STRAP_READINGS)
    office = later(office, 9)
    deeds: dict[str, Callable[[], object]] = {
        "missing": lambda: report_missing(office, "KS-1", "the beach", "left behind"),
        "stolen": lambda: report_stolen(office, "KS-1", "the beach", "report 17"),
        "given back": lambda: hand_to_owner(office, "KS-1"),
    }
    deeds[lost]()
    report_found(office, "KS-1", "shelf")
    late = all_good(office, kind, STRAP_READINGS, office.today - timedelta(days=1))
    for seen in (late, all_good(office, kind, STRAP_READINGS, by=di.name)):
        assert record_inspection(office, "KS-1", seen).verdict.outcome is Outcome.HOLD
        with pytest.raises(Refused, match=r"Hold: .*not yet inspected"):
            lend(office, ["KS-1"], "Ada Officer", office.today + timedelta(days=1))
    assert record_inspection(office, "KS-1", all_good(office, kind, STRAP_READINGS)).verdict.outcome is Outcome.FIT


def test_a_part_that_is_lost_is_on_its_vehicle_no_more_and_comes_back_to_a_shelf(office: Office) -> None:
    for tag in ("V-1", "V-2"):
        wagon(office, tag)
    fit(office, point(), POINT_READINGS)
    fit_part(office, "RP-1", Fitted("V-1", End.REAR))
    assert where_is(office, "RP-1").startswith("on vehicle V-1")
    tries: tuple[Callable[[], object], ...] = (
        lambda: sell(office, "RP-1", "A buyer", as_it_is=True),
        lambda: put_in_store(office, "RP-1", "shelf"),
    )
    for attempt in tries:
        with pytest.raises(Refused, match="fitted to a vehicle"):
            attempt()
    report_stolen(office, "RP-1", "the car park", "report 18")
    assert where_is(office, "RP-1").startswith("stolen")
    with office.book.reading() as page:
        assert page.fittings() == {}
    with pytest.raises(Refused, match="stolen"):
        fit_part(office, "RP-1", Fitted("V-2", End.REAR))
    report_found(office, "RP-1", "shelf 2")
    assert where_is(office, "RP-1").startswith("in store at shelf 2")


def test_a_piece_on_hold_is_sold_to_whoever_knows_it(office: Office) -> None:
    fit(office, strap(), STRAP_READINGS)
    report_missing(office, "KS-1", "shelf", "not there")
    report_found(office, "KS-1", "shelf")
    assert sell(office, "KS-1", "A buyer", as_it_is=True).verdict.outcome is Outcome.HOLD
    assert where_is(office, "KS-1").startswith("sold to A buyer")
    with pytest.raises(Refused, match="sold"):
        record_inspection(office, "KS-1", all_good(office, office.kind("kinetic_strap"), STRAP_READINGS))


def test_evidence_is_neither_packed_sold_nor_given_back(office: Office) -> None:
    ready(office)
    fit(office, strap("KS-9", "Di Member"), STRAP_READINGS)
    assert "KS-1" in [one.tag for one in pack_trip(office, "T-1").takes]
    report_incident(office, NewIncident(office.today, Gravity.ACCIDENT, "a beach", "it let go", ("KS-1",)))
    assert "KS-1" not in [one.tag for one in pack_trip(office, "T-1").takes]
    with pytest.raises(Refused, match="evidence"):
        sell(office, "KS-1", "A buyer", as_it_is=True)
    with pytest.raises(Refused, match="evidence"):
        put_in_store(office, "KS-1", "shelf")
    report_incident(office, NewIncident(office.today, Gravity.ACCIDENT, "a beach", "it let go", ("KS-9",)))
    with pytest.raises(Refused, match="evidence"):
        hand_to_owner(office, "KS-9", as_it_is=True)
    assert where_is(office, "KS-9").startswith("in store")
