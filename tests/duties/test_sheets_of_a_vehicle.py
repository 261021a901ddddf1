"""The pre-trip sheet: the parts on the vehicles, one sheet for each vehicle, and the rigs that the trip plans."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.check_kit import kit_check, tell_piece, tell_progress
from inspector.duties.check_piece import check_piece
from inspector.duties.fit_parts import fit_part
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.look_up import open_item, trip
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.plan_rides import plan_rides
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.print_sheets import enter_trip_sheet, print_each_sheet, print_trip_sheet, scopes_of
from inspector.duties.read_returned import read_returned
from inspector.duties.record_inspection import record_inspection
from inspector.duties.take_returned import seen_of, take_returned
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.whereabouts import put_in_store
from inspector.duties.work_rigs import work_rig
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.kit_check import KitPiece
from inspector.gear.outcome import Outcome
from inspector.gear.papers import RigLine, SheetScope
from inspector.gear.rig import Conditions, Method, Rig
from inspector.gear.rig_result import RigOutcome
from inspector.gear.sheet_back import Incoming
from inspector.gear.sheet_code import read_code
from inspector.gear.sheet_fields import signed_name
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, STRAP_READINGS, all_good, point, shackle, strap
from tests.duties.returned import kept, names
from tests.duties.test_checking_the_kit import good
from tests.paper.filling import by_library

BY = "Ada Officer"
V1, REST = SheetScope("V-1"), SheetScope(is_rest=True)
SLOW = Conditions(speed=read("1 km/h", Dimension.SPEED, field="speed"))
SNATCH = Rig("Snatch", Method.KINETIC, "V-2", "V-1", (("RP-1R", "SH-1", "KS-1", "SH-2", "RP-2F"),), SLOW)
PARTS = ("RP-1F", "RP-1R", "RP-2F", "RP-2R")


@pytest.fixture
def club(office: Office) -> Office:
    """Two vehicles with a fit point at each end; SH-1 and KS-1 ride on V-1, SH-2 on V-2, SH-3, never inspected, on
    none."""
    weighs = read("3000 kg", Dimension.MASS, field="mass")
    for tag in ("V-1", "V-2"):
        add_vehicle(office, tag, f"wagon {tag}", "Club", weighs, weighs)
        for end in (End.FRONT, End.REAR):
            name = f"RP-{tag[-1]}{end.value[0].upper()}"
            book_in(office, point(name))
            kind = fit_part(office, name, Fitted(tag, end, Side.LEFT)).dossier.kind
            record_inspection(office, name, all_good(office, kind, POINT_READINGS))
    pieces = ((strap("KS-1"), STRAP_READINGS), (shackle("SH-1"), SHACKLE_READINGS), (shackle("SH-2"), SHACKLE_READINGS))
    for facts, readings in pieces:
        kind = book_in(office, facts).dossier.kind
        record_inspection(office, facts.tag, all_good(office, kind, readings))
    book_in(office, shackle("SH-3"))
    day = office.today + timedelta(days=3)
    kit = ("KS-1", "SH-1", "SH-2", "SH-3")
    plan_trip(office, Trip("", "T-1", "Day", "spit", Ground.BEACH, day, day, "", vehicles=("V-1", "V-2"), kit=kit))
    plan_rides(office, "T-1", {"KS-1": "V-1", "SH-1": "V-1", "SH-2": "V-2"})
    return office


def piece(office: Office, tag: str) -> KitPiece:
    """The piece or part as the check of the trip has it."""
    found = kit_check(office, "T-1").piece(tag)
    assert found
    return found


def asked(office: Office, paper: Paper) -> tuple[list[str], list[str]]:
    """What a printed sheet asks about, and what it says must not be used."""
    sheet = kept(office, paper.path.stem)
    return [one.tag for one in sheet.going], [one.tag for one in sheet.staying]


def rigs_of(office: Office, scope: SheetScope = SheetScope()) -> tuple[RigLine, ...]:  # noqa: B008 - frozen
    return enter_trip_sheet(office, "T-1", scope).rigs


def refused(says: str, deed: Callable[[], object]) -> None:
    with pytest.raises(Refused) as fault:
        deed()
    assert says in f"{fault.value.why} {fault.value.what_to_do}"


def test_the_walk_goes_round_each_vehicle_front_to_rear_and_then_through_the_bag(club: Office) -> None:
    found = kit_check(club, "T-1")
    assert [one.tag for one in found.pieces] == [*PARTS, "SH-1", "SH-2", "SH-3", "KS-1"]
    assert [one.part_of for one in found.pieces] == ["V-1", "V-1", "V-2", "V-2", "", "", "", ""]
    assert piece(club, "RP-1F").where == "On V-1, front left." and piece(club, "RP-1F").asked
    assert [one.tag for one in found.staying] == ["SH-3"] and found.barred == ()


def test_counts_say_what_they_count(club: Office) -> None:
    check_piece(club, "T-1", "RP-1F", BY, good(club.kind("recovery_point")))
    assert tell_progress(kit_check(club, "T-1")) == "1 of 7 checked (3 pieces, 4 parts on the vehicles)"
    change_trip(club, "T-1", lambda one: replace(one, vehicles=()))
    assert tell_progress(kit_check(club, "T-1")) == "0 of 3 pieces checked"


def test_a_part_is_checked_like_a_piece_and_a_check_only_tightens(club: Office) -> None:
    kind = club.kind("recovery_point")
    assert check_piece(club, "T-1", "rp-1f", BY, good(kind)).verdict.outcome is Outcome.FIT
    assert tell_piece(piece(club, "RP-1F")).startswith("May be used: ")
    key = next(one.key for one in kind.checks if one.before_use and not one.hidden and one.bad)
    first = check_piece(club, "T-1", "RP-1R", BY, good(kind, **{key: "bad"})).verdict.outcome
    assert first.severity >= Outcome.HOLD.severity
    assert tell_piece(piece(club, "RP-1R")).startswith("Must n")
    if first is not Outcome.RETIRE:
        assert check_piece(club, "T-1", "RP-1R", BY, good(kind)).verdict.outcome is first
    assert [one.tag for one in kit_check(club, "T-1").barred] == ["RP-1R"]
    assert "RP-1R" in asked(club, print_trip_sheet(club, "T-1"))[1]


def test_a_part_half_looked_at_is_not_good(club: Office) -> None:
    kind = club.kind("recovery_point")
    check_piece(club, "T-1", "RP-2F", BY, replace(good(kind), answers=good(kind).answers[:1]))
    assert "It must not be used like this." in tell_piece(piece(club, "RP-2F"))
    assert piece(club, "RP-2F") in kit_check(club, "T-1").unchecked


def test_a_part_of_a_vehicle_that_stays_at_home_is_no_part_of_the_check(club: Office) -> None:
    change_trip(club, "T-1", lambda one: replace(one, vehicles=("V-2",)))
    refused(
        "sits on none of its vehicles", lambda: check_piece(club, "T-1", "RP-1F", BY, good(club.kind("recovery_point")))
    )
    assert kit_check(club, "T-1").piece("RP-1F") is None


def test_a_part_in_the_kit_stands_once_on_its_vehicle(club: Office) -> None:
    change_trip(club, "T-1", lambda one: replace(one, kit=(*one.kit, "RP-1F")))
    assert [one.part_of for one in kit_check(club, "T-1").pieces if one.tag == "RP-1F"] == ["V-1"]
    assert asked(club, print_trip_sheet(club, "T-1"))[0].count("RP-1F") == 1


def test_each_vehicle_has_its_sheet_and_what_rides_on_none_another(club: Office) -> None:
    assert scopes_of(trip(club, "T-1")) == (V1, SheetScope("V-2"), REST)
    one, two, rest = print_each_sheet(club, "T-1")
    assert asked(club, one) == (["RP-1F", "RP-1R", "SH-1", "KS-1"], [])
    assert asked(club, two) == (["RP-2F", "RP-2R", "SH-2"], [])
    assert asked(club, rest) == ([], ["SH-3"])
    assert [[car.tag for car in kept(club, paper.path.stem).vehicles] for paper in (one, two, rest)] == [
        ["V-1"],
        ["V-2"],
        [],
    ]
    assert len({paper.path.stem for paper in (one, two, rest)}) == 3
    whole = asked(club, print_trip_sheet(club, "T-1"))
    assert whole == ([*PARTS, "SH-1", "SH-2", "KS-1"], ["SH-3"])
    said = [line.sentence for line in told_ledger(club, last=4)]
    assert said[0].endswith("of the trip T-1.") and said[1].endswith("of the trip T-1, for what rides on no vehicle.")
    assert said[3].endswith("of the trip T-1, for V-1.")


def test_of_what_stays_behind_the_sheet_says_where_it_lies_and_not_where_it_would_ride(club: Office) -> None:
    put_in_store(club, "SH-3", "shelf 2")
    for rides in ({}, {"SH-3": "V-1"}):
        if rides:
            plan_rides(club, "T-1", rides)
        (stays,) = enter_trip_sheet(club, "T-1").staying
        assert (stays.tag, stays.where) == ("SH-3", "in store at shelf 2")


def test_all_sheets_or_none_and_no_sheet_of_a_vehicle_that_stays_at_home(club: Office) -> None:
    refused(
        "V-9 does not go on the trip T-1. Use one of: V-1, V-2.",
        lambda: print_trip_sheet(club, "T-1", SheetScope("V-9")),
    )
    change_trip(club, "T-1", lambda one: replace(one, vehicles=()))
    assert len(print_each_sheet(club, "T-1")) == 1
    plan_all = change_trip(club, "T-1", lambda one: replace(one, vehicles=("V-1",), kit=("SH-1",)))
    plan_rides(club, plan_all.ref, {"SH-1": "V-1"})
    assert scopes_of(trip(club, "T-1")) == (V1,)


def test_a_sheet_of_one_vehicle_comes_back_with_its_signature_and_checks_its_part(club: Office) -> None:
    paper, *_ = print_each_sheet(club, "T-1")
    sheet = kept(club, paper.path.stem)
    assert sheet.layout
    rooms = {room.name for page in sheet.layout.pages for room in page.rooms}
    assert signed_name(1, "name") in rooms and signed_name(2, "name") not in rooms
    assert all((code := read_code(page.code)) and code.number == paper.path.stem for page in sheet.layout.pages)
    answers = {tag: {"*": "good"} for tag in ("RP-1F", "SH-1", "KS-1")}
    form = by_library(
        paper.path.read_bytes(), names(sheet, answers | {"RP-1R": {"*": "fault"}}), {signed_name(1, "name"): BY}
    )
    (back,) = read_returned(club, [Incoming("form.pdf", form)]).sheets
    assert [one.tag for one in back.pieces] == ["RP-1F", "RP-1R", "SH-1", "KS-1"] and not back.missing
    assert [(what, room.text) for what, room in back.signed if room.text] == [("name", BY)]
    kinds = {one.tag: one.judged.dossier.kind for one in back.sheet.pieces}
    take_returned(club, back.number, BY, {one.tag: seen_of(club, kinds[one.tag], one) for one in back.pieces})
    assert (
        piece(club, "RP-1F").is_checked and open_item(club, "RP-1R").verdict.outcome.severity >= Outcome.HOLD.severity
    )
    assert not piece(club, "RP-2F").made


def test_where_no_rig_is_planned_the_sheet_has_none(club: Office) -> None:
    assert rigs_of(club) == ()


def test_a_planned_rig_stands_with_its_weakest_link_speed_and_distance(club: Office) -> None:
    keep_rig(club, "R-1", SNATCH)
    (line,) = rigs_of(club)
    assert (line.ref, line.name, line.pulls) == ("R-1", "Snatch", "V-1 pulls V-2")
    assert line.speed == "at most 1 km/h as the line comes taut" and line.stand_off.endswith(" m")
    reckoned = work_rig(club, replace(SNATCH, trip="T-1"))
    assert (line.outcome, line.says) == (reckoned.outcome, reckoned.headline)
    assert line.weakest.startswith(f"{reckoned.weakest} · ") and line.weakest.endswith("% of what it may bear is used")
    assert rigs_of(club, V1) == (line,) == rigs_of(club, SheetScope("V-2"))


def test_a_rig_without_a_said_speed_says_what_it_is_reckoned_with(club: Office) -> None:
    keep_rig(club, "R-1", replace(SNATCH, conditions=Conditions()))
    (line,) = rigs_of(club)
    assert line.speed.startswith("nobody said one, so it is reckoned with ") and line.speed.endswith(": go no faster")


def test_the_worst_rig_stands_first_and_one_of_pieces_left_behind_is_never_sound(club: Office) -> None:
    keep_rig(club, "R-1", SNATCH)
    keep_rig(club, "R-2", replace(SNATCH, name="Eye", runs=(("tie_down@V-1", "SH-1", "KS-1", "SH-2", "RP-2F"),)))
    assert [one.ref for one in rigs_of(club)] == ["R-2", "R-1"] and rigs_of(club)[0].outcome is RigOutcome.NEVER
    keep_rig(club, "R-3", replace(SNATCH, trip="T-1"))
    change_trip(club, "T-1", lambda one: replace(one, kit=("SH-1", "SH-2")))
    (line,) = rigs_of(club)  # only joined the vehicles, out of pieces that do not go any more
    assert (line.ref, line.outcome) == ("R-3", RigOutcome.UNSOUND) and "Not along, or not fit to go: KS-1." in line.says
    change_trip(club, "T-1", lambda one: replace(one, kit=("SH-1", "SH-2", "KS-1"), vehicles=("V-1",)))
    (line,) = rigs_of(club)
    assert line.outcome is RigOutcome.UNSOUND and "V-2" in line.says


def test_a_rig_of_other_vehicles_is_not_this_trips(club: Office) -> None:
    keep_rig(club, "R-1", SNATCH)
    change_trip(club, "T-1", lambda one: replace(one, vehicles=("V-1",)))
    assert rigs_of(club) == ()
