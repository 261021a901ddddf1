"""What needs the officer: nothing that holds a piece is left out, each line says what it must, and quiet is quiet."""

from datetime import date, timedelta

from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.back_up import back_up
from inspector.duties.book_in import book_in
from inspector.duties.close_count import close_count
from inspector.duties.destroy_item import destroy_item
from inspector.duties.due_sheet import due_sheet
from inspector.duties.due_views import View
from inspector.duties.fit_parts import fit_part
from inspector.duties.forecast_ends import horizon_after
from inspector.duties.give_opinion import doubt
from inspector.duties.hand_over import hand_over
from inspector.duties.keep_incident import close_incident
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.release_evidence import release_evidence
from inspector.duties.retire_item import print_notice, print_notices
from inspector.duties.take_stock import begin_count
from inspector.duties.trip_readiness import readiness
from inspector.duties.what_falls_due import what_falls_due
from inspector.duties.what_needs_me import SOON_DAYS, what_needs_me
from inspector.duties.whereabouts import report_missing, sell
from inspector.duties.work_rigs import kit_lacks
from inspector.gear.falls_due import Due
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.incident import Gravity
from inspector.gear.needs import EndsBy, Needs, Work
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Ground, Trip
from tests.duties.gear import SHACKLE_READINGS, all_good, point, shackle, strap
from tests.duties.incidents import SECOND, beach, reported
from tests.duties.needs_checks import assert_every_hold_is_told
from tests.duties.rigs import fit, later, member, ready
from tests.duties.test_what_falls_due import retire


def tags(needs: Needs) -> list[str]:
    """Of the pieces on hold, in their order."""
    return [one.tag for one in needs.held]


def works(needs: Needs, work: Work) -> list[str]:
    """What one sort of work is about."""
    return [line.due.about for group in needs.work if group.work is work for line in group.lines]


def test_every_hold_of_the_sample_is_told_today_and_as_time_goes_by(sample: Office) -> None:
    assert assert_every_hold_is_told(sample) > 10
    assert assert_every_hold_is_told(later(sample, 400)) > 10


def test_each_hold_says_what_holds_it_and_what_would_settle_it_as_its_record_does(sample: Office) -> None:
    needs = what_needs_me(sample)
    for one in needs.held:
        reasons = [it for it in open_item(sample, one.tag).explanation.reasons if it.outcome is Outcome.HOLD]
        assert one.why == reasons[0].sentence and one.more == len(reasons) - 1
        assert one.release in {"", *(it.release for it in reasons)}
        assert one.release or not any(it.release for it in reasons)
    assert sum(1 for one in needs.held if one.release) > 10


def test_a_piece_held_for_one_use_only_stands_behind_those_that_serve_nobody(sample: Office) -> None:
    serves = [one.serves for one in what_needs_me(sample).held]
    assert serves == sorted(serves) and serves[0] is False and serves[-1] is True


def test_a_hold_goes_as_it_is_settled_and_what_is_sold_is_nobodys_matter(office: Office) -> None:
    for tag in ("SH-1", "SH-2"):
        book_in(office, shackle(tag))
    assert tags(what_needs_me(office)) == ["SH-1", "SH-2"]
    kind = open_item(office, "SH-1").dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    sell(office, "SH-2", "A Buyer", as_it_is=True)
    assert tags(what_needs_me(office)) == []


def test_what_nobody_has_inspected_is_told_once_among_the_holds(office: Office) -> None:
    book_in(office, shackle())
    needs = what_needs_me(office)
    assert tags(needs) == ["SH-1"] and works(needs, Work.INSPECT) == []


def test_a_missing_piece_on_hold_is_looked_for_and_not_told_twice(office: Office) -> None:
    book_in(office, shackle())
    report_missing(office, "SH-1", "the ford", "not in its bag")
    needs = what_needs_me(office)
    assert tags(needs) == [] and [one.due.about for one in needs.late] == ["SH-1"]
    assert needs.late[0].outcome is Outcome.HOLD and "last seen: the ford" in needs.late[0].due.place


def test_a_loan_is_work_until_its_day_and_late_from_the_day_after(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    lend(office, ["SH-1"], member(office).name, office.today + timedelta(days=5))
    assert works(what_needs_me(office), Work.BACK) == ["SH-1"]
    assert works(what_needs_me(later(office, 5)), Work.BACK) == ["SH-1"]
    late = what_needs_me(later(office, 6))
    assert works(late, Work.BACK) == [] and [one.due.about for one in late.late] == ["SH-1"]
    assert late.late[0].due.people == ("Di Member",) and late.overdue_count >= 1


def test_an_inspection_is_work_from_thirty_days_before_its_day_and_overdue_after_it(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    day = open_item(office, "SH-1").verdict.next_inspection_due
    assert day
    until = (day - office.today).days
    early = what_needs_me(later(office, until - SOON_DAYS - 1))
    assert works(early, Work.INSPECT) == [] and early.is_quiet
    assert early.next_due and (early.next_due.about, early.next_due.on) == ("SH-1", day)
    soon = what_needs_me(later(office, until - SOON_DAYS))
    assert works(soon, Work.INSPECT) == ["SH-1"] and (soon.due_count, soon.overdue_count) == (1, 0)
    past = what_needs_me(later(office, until + 1))
    assert works(past, Work.INSPECT) == ["SH-1"] and (past.due_count, past.overdue_count) == (0, 1)


def test_all_that_the_calendar_tells_by_then_stands_on_the_page_in_one_part_or_another(sample: Office) -> None:
    needs = what_needs_me(sample)
    told = {(line.due.what, line.due.about) for group in needs.work for line in group.lines}
    told |= {(line.due.what, line.due.about) for line in needs.late}
    told |= {(Due.COUNT, one.about) for one in needs.counts} | {(Due.INCIDENT, one.ref) for one in needs.incidents}
    told |= {(Due.RECALL, one.about) for one in needs.recalls}
    told |= {(Due.NOTICE, one) for one in needs.without_notice} | {(Due.DESTRUCTION, one.tag) for one in needs.retired}
    told |= {(what, one.tag) for one in needs.held for what in (Due.HOLD, Due.FIRST_INSPECTION)}
    told |= {(Due.TRIP, needs.trip.ref)} if needs.trip else set()
    about = {name for _, name in told}
    for one in what_falls_due(sample, sample.today + timedelta(days=SOON_DAYS)):
        assert (one.what, one.about) in told or (one.what is Due.VERDICT and one.about in about), one


def test_the_next_trip_is_told_as_its_readiness_tells_it(sample: Office) -> None:
    trip = what_needs_me(sample).trip
    assert trip and trip.ref == "T-05"
    found = readiness(sample, trip.ref)
    assert (trip.going, trip.staying, trip.lacks) == (
        len(found.going), len(found.staying), kit_lacks(sample, trip.ref),
    )  # fmt: skip
    assert trip.staying and not trip.is_ready


def test_a_trip_is_the_next_one_until_it_has_ended_and_later_ones_are_work(office: Office) -> None:
    ready(office)
    first = office.today + timedelta(days=8)
    plan_trip(office, Trip("", "T-2", "Later days", "the spit", Ground.MUD, first, first, "Di Member"))
    now, after = what_needs_me(office), what_needs_me(later(office, 3))
    assert now.trip and now.trip.ref == "T-1" and now.trip.going == 3 and works(now, Work.TRIPS) == ["T-2"]
    assert after.trip and after.trip.ref == "T-2" and not after.trip.is_ready
    assert what_needs_me(later(office, 9)).trip is None


def test_a_part_on_hold_on_a_vehicle_of_the_trip_is_counted(office: Office) -> None:
    beach(office)
    before = what_needs_me(office).trip
    doubt(office, "RP-1", "hit a rock")
    after = what_needs_me(office).trip
    assert before and after and (before.bad_parts, after.bad_parts) == (0, 1)


def test_what_a_kit_lacks_is_the_same_from_a_readiness_at_hand(sample: Office) -> None:
    for ref in ("T-05", "T-06"):
        found = readiness(sample, ref)
        assert kit_lacks(sample, ref, found) == kit_lacks(sample, ref) != ()


def test_a_piece_out_on_loan_counts_for_the_kit_with_a_readiness_at_hand_or_without(office: Office) -> None:
    ready(office)
    lend(office, ["KS-1"], "Di Member", office.today + timedelta(days=30))
    found = readiness(office, "T-1")
    assert kit_lacks(office, "T-1", found) == kit_lacks(office, "T-1")


def test_an_open_report_names_what_is_kept_for_it_until_it_is_let_go(office: Office) -> None:
    beach(office)
    ref = reported(office).incident.ref
    (line,) = what_needs_me(office).incidents
    assert line.ref == ref
    assert {"KS-1", "SH-1", "SH-2", "RP-1"} <= set(line.pieces) and "V-2" in line.vehicles
    assert {one.tag for one in what_needs_me(office).held if one.evidence == (ref,)} >= {"KS-1", "SH-1", "RP-1"}
    release_evidence(office, ref, "SH-1", second=SECOND, why="drawn and photographed")
    (line,) = what_needs_me(office).incidents
    assert "SH-1" not in line.pieces and "KS-1" in line.pieces
    assert_every_hold_is_told(office)


def test_a_near_miss_that_is_closed_keeps_nothing(office: Office) -> None:
    beach(office)
    ref = reported(office, gravity=Gravity.NEAR_MISS, broken=()).incident.ref
    assert [one.ref for one in what_needs_me(office).incidents] == [ref]
    close_incident(office, ref, "all told")
    assert what_needs_me(office).incidents == ()


def test_an_open_count_waits(office: Office) -> None:
    begin_count(office, "C-1")
    needs = what_needs_me(office)
    assert [one.about for one in needs.counts] == ["C-1"] and not needs.is_quiet


def test_a_retired_piece_waits_for_its_notice_then_to_be_made_unusable(office: Office) -> None:
    for tag in ("SH-1", "SH-2"):
        fit(office, shackle(tag), SHACKLE_READINGS)
        retire(office, tag)
    print_notice(office, "SH-1")
    needs = what_needs_me(office)
    assert [(one.tag, one.has_notice) for one in needs.retired] == [("SH-2", False), ("SH-1", True)]
    assert needs.without_notice == ("SH-2",)
    destroy_item(office, "SH-1", "cut in two")
    steps: list[tuple[int, int]] = []
    papers = print_notices(replace(office, told=lambda done, total: steps.append((done, total))), needs.without_notice)
    assert [one.path.exists() for one in papers] == [True] and steps == [(1, 1)]
    assert [(one.tag, one.has_notice) for one in what_needs_me(office).retired] == [("SH-2", True)]


def test_the_forecast_ends_are_those_of_the_stored_verdicts_and_none_is_left_out(sample: Office) -> None:
    needs, last = what_needs_me(sample), horizon_after(sample.today)
    told = {(one.tag, one.by): one for one in needs.endings}
    with sample.book.reading() as page:
        verdicts = {one.tag: page.latest_verdict(one.id)[0] for one in page.every_item()}
    walls = {
        tag: one.wall
        for tag, one in verdicts.items()
        if one.outcome is not Outcome.RETIRE and one.wall and one.wall.reaches_required_on
    }
    near = {tag for tag, wall in walls.items() if wall.reaches_required_on and wall.reaches_required_on <= last}
    assert len(near) > 3 and near <= {tag for tag, by in told if by is EndsBy.WALL}
    for (tag, by), one in told.items():
        assert by is EndsBy.AGE or one.on == walls[tag].reaches_required_on
        assert one.first <= last and verdicts[tag].outcome is one.outcome is not Outcome.RETIRE
    assert [one.on for one in needs.endings] == sorted(one.on for one in needs.endings)


def test_the_age_that_retires_a_strap_is_told_once_it_is_near_and_the_strap_is_retired_that_day(office: Office) -> None:
    book_in(office, replace(strap(), made_on=date(2020, 1, 15), in_service_on=date(2020, 2, 1)))
    kind = open_item(office, "KS-1").dossier.kind
    record_inspection(office, "KS-1", all_good(office, kind, {"length": "9.00 m"}))
    (end,) = what_needs_me(office).endings
    assert (end.tag, end.by) == ("KS-1", EndsBy.AGE)
    for day, retired in ((end.on - timedelta(days=1), False), (end.on, True)):
        then = later(office, (day - office.today).days)
        seen = record_inspection(then, "KS-1", all_good(then, kind, {"length": "9.00 m"}))
        assert (seen.verdict.outcome is Outcome.RETIRE) is retired


def test_of_what_is_missing_or_retired_no_end_is_forecast(sample: Office) -> None:
    (first, *_) = (one.tag for one in what_needs_me(sample).endings)
    report_missing(sample, first, "the shed", "not on its hook")
    assert first not in {one.tag for one in what_needs_me(sample).endings}
    assert "BM-01" not in {one.tag for one in what_needs_me(sample).endings}


def test_the_page_knows_whether_a_copy_was_ever_made_and_what_was_written_since(office: Office) -> None:
    assert what_needs_me(office).backup.at is None and what_needs_me(office).backup.deeds_since > 0
    made = back_up(office)
    backup = what_needs_me(office).backup
    assert (backup.at, backup.file, backup.deeds_since) == (office.now, made.file.name, 0)
    then = later(office, 3)
    member(then)
    backup = what_needs_me(then).backup
    assert (backup.at, backup.deeds_since) == (office.now, 1)


def test_a_handover_makes_a_copy_too(office: Office) -> None:
    to = add_person(office, Person("", "Bo New", "officer"))
    begin_count(office, "C-1")
    close_count(office, "C-1")
    made = hand_over(office, to.name)
    backup = what_needs_me(office).backup
    assert (backup.at, backup.file, backup.deeds_since) == (office.now, made.backup.file.name, 0)


def test_a_rulebook_that_waits_for_its_number_is_told(office: Office) -> None:
    waiting = replace(office, waits_for=("SH-1",))
    told = " ".join(what_needs_me(waiting).rulebook)
    assert "SH-1" in told and "not in force yet" in told and not what_needs_me(waiting).is_quiet
    assert what_needs_me(office).rulebook == ()


def test_an_empty_register_is_quiet_and_has_no_pieces(office: Office) -> None:
    needs = what_needs_me(office)
    assert (needs.piece_count, needs.is_quiet, needs.next_due, needs.trip, needs.endings) == (0, True, None, None, ())


def test_a_sheet_offers_every_place_of_the_store_and_each_can_be_asked_for(sample: Office) -> None:
    sheet = due_sheet(sample)
    assert {"Shed", "V-06"} <= set(sheet.places) and "Hanne Lodewell" in sheet.people
    for place in sheet.places:
        narrowed = due_sheet(sample, place=place)
        assert set(narrowed.lines) <= set(sheet.lines) and narrowed.places == sheet.places
    shown = {one for _, some in due_sheet(sample, view=View.PERSON).groups for one in some}
    assert shown == set(sheet.lines)
    one = due_sheet(sample, person="Hanne Lodewell")
    assert one.lines and all("Hanne Lodewell" in line.people for line in one.lines)


def test_a_part_says_which_vehicle_it_sits_on(office: Office) -> None:
    beach(office)
    book_in(office, point("RP-2"))
    fit_part(office, "RP-2", Fitted("V-1", End.REAR, Side.LEFT))
    (line,) = (one for one in what_needs_me(office).held if one.tag == "RP-2")
    assert "V-1" in line.place
