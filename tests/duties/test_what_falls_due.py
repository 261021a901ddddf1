"""What falls due: nothing that a verdict says is left out, what is overdue stays, what is unknown is told as such."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.close_count import close_count
from inspector.duties.destroy_item import destroy_item
from inspector.duties.due_views import View, at_place, of_person, sorted_by
from inspector.duties.fit_parts import fit_part
from inspector.duties.give_opinion import doubt
from inspector.duties.keep_incident import close_incident
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.retire_item import print_notice
from inspector.duties.take_stock import begin_count
from inspector.duties.tell_due import late_words, told
from inspector.duties.what_falls_due import due_lines, held, held_up_to, what_falls_due
from inspector.duties.whereabouts import put_in_store, report_found, report_missing, sell
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.incident import Gravity
from inspector.gear.inspection import InspectionKind
from inspector.gear.item import Provenance
from inspector.gear.person import Competence, NewPersonChange, Person
from inspector.gear.trip import Ground, Trip
from inspector.gear.verdict import Verdict
from inspector.refused import Refused
from tests.duties.due_checks import assert_nothing_is_absent
from tests.duties.gear import SHACKLE_READINGS, all_good, kilograms, point, shackle
from tests.duties.incidents import beach, reported
from tests.duties.rigs import fit, later, member
from tests.duties.test_opinions import add

FAR = 3650


def due(office: Office, days: int = FAR) -> tuple[DueLine, ...]:
    """What falls due within so many days."""
    return what_falls_due(office, office.today + timedelta(days=days))


def of(lines: tuple[DueLine, ...], about: str) -> dict[Due, date | None]:
    """What is due of one thing, and when."""
    return {one.what: one.on for one in lines if one.about == about}


def verdict(office: Office, tag: str) -> Verdict:
    """The standing verdict."""
    return open_item(office, tag).verdict


def test_of_a_piece_nobody_has_inspected_no_day_is_told_and_it_waits_now(office: Office) -> None:
    book_in(office, shackle())
    (line,) = (one for one in due(office, 0) if one.what is Due.FIRST_INSPECTION)
    assert (line.about, line.on, line.since) == ("SH-1", None, office.today)
    assert "nobody competent has inspected all of it" in line.says
    kind = open_item(office, "SH-1").dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    assert Due.FIRST_INSPECTION not in of(due(office), "SH-1")
    assert of(due(office), "SH-1")[Due.INSPECTION] == verdict(office, "SH-1").next_inspection_due


def test_an_inspection_stands_there_from_the_day_that_is_asked_for_until_it_is_done(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    day = verdict(office, "SH-1").next_inspection_due
    assert day is not None
    days = (day - office.today).days
    assert Due.INSPECTION not in of(due(office, days - 1), "SH-1")
    assert of(due(office, days), "SH-1")[Due.INSPECTION] == day
    for late in (0, 1, 400):
        then = later(office, days + late)
        (line,) = (one for one in due(then, 0) if one.what is Due.INSPECTION)
        assert line.overdue_days(then.today) == late
    assert told(line, then.today) == "next inspection, OVERDUE by 400 days"
    record_inspection(then, "SH-1", all_good(then, open_item(then, "SH-1").dossier.kind, SHACKLE_READINGS))
    assert not [one for one in due(then, 0) if one.about == "SH-1"]


def test_a_borrowed_piece_that_is_fit_is_told_by_the_day_it_goes_back(office: Office) -> None:
    fit(office, shackle("SH-2"), SHACKLE_READINGS)
    back = office.today + timedelta(days=5)
    lent = replace(shackle(), owner="Marsh Rovers", provenance=Provenance.BORROWED, from_whom="Marsh Rovers")
    fit(office, replace(lent, borrowed_until=back), SHACKLE_READINGS)
    assert of(due(office, 4), "SH-1") == {}
    assert of(due(office, 5), "SH-1") == {Due.BACK: back}


def test_a_loan_is_told_to_whoever_has_it_and_stays_when_overdue(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    di = member(office)
    lend(office, ["SH-1"], di.name, office.today + timedelta(days=5))
    then = later(office, 17)
    (line,) = (one for one in due(then, 0) if one.what is Due.LOAN)
    assert line.people == (di.name,) and late_words(line, then.today) == "OVERDUE by 12 days"
    assert of_person(then, due(then, 0), di.id) == of_person(then, due(then, 0), di.name) != ()
    assert of_person(then, due(then, 0), "Ada Officer") == ()


def test_what_is_missing_is_told_as_missing_and_asked_for_nothing_else(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    report_missing(office, "SH-1", "the ford", "not on its hook")
    assert of(due(office), "SH-1") == {Due.MISSING: None}
    (line,) = due(office)
    assert "last seen: the ford" in line.place
    report_found(office, "SH-1", "Shed")
    assert Due.MISSING not in of(due(office), "SH-1") and Due.INSPECTION in of(due(office), "SH-1")


def test_of_what_was_sold_or_made_unusable_nothing_falls_due(office: Office) -> None:
    for tag in ("SH-1", "SH-2"):
        fit(office, shackle(tag), SHACKLE_READINGS)
    sell(office, "SH-1", "A Buyer")
    retire(office, "SH-2")
    destroy_item(office, "SH-2", "cut in two")
    assert [one for one in due(office) if one.about in {"SH-1", "SH-2"}] == []


def retire(office: Office, tag: str) -> None:
    """Found cracked."""
    kind = open_item(office, tag).dossier.kind
    record_inspection(office, tag, all_good(office, kind, SHACKLE_READINGS, cracks="bad"))


def test_a_retired_piece_waits_for_its_notice_and_to_be_made_unusable(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    retire(office, "SH-1")
    assert of(due(office), "SH-1") == {Due.NOTICE: None, Due.DESTRUCTION: None}
    print_notice(office, "SH-1")
    assert of(due(later(office, 900)), "SH-1") == {Due.DESTRUCTION: None}


def test_a_piece_on_hold_waits_to_be_settled_though_no_day_of_it_has_come(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    assert due(office, 0) == ()
    doubt(office, "SH-1", "it fell from the roof")
    (line,) = due(office, 0)
    assert (line.what, line.on) == (Due.HOLD, None) and open_item(office, "SH-1").explanation.headline in line.says
    then, kind = later(office, 1), open_item(office, "SH-1").dossier.kind
    record_inspection(then, "SH-1", replace(all_good(then, kind, SHACKLE_READINGS), kind=InspectionKind.AFTER_EVENT))
    assert due(then, 0) == ()


def test_evidence_is_never_asked_to_be_made_unusable_without_saying_that_it_is_kept(office: Office) -> None:
    beach(office)
    retire(office, "SH-2")
    report = reported(office).incident.ref
    (line,) = (one for one in due(office) if one.what is Due.DESTRUCTION)
    assert line.about == "SH-2" and f"as evidence of {report}" in line.says


def test_an_open_report_and_an_open_count_wait_until_they_are_closed(office: Office) -> None:
    beach(office)
    ref = reported(office, gravity=Gravity.NEAR_MISS, broken=()).incident.ref
    begin_count(office, "C-1")
    then = later(office, 30)
    assert of(due(then, 0), ref) == {Due.INCIDENT: None} and of(due(then, 0), "C-1") == {Due.COUNT: None}
    (line,) = (one for one in due(then, 0) if one.what is Due.COUNT)
    assert line.since == office.today and line.people == ("Ada Officer",)
    close_incident(office, ref, "all told")
    close_count(office, "C-1")
    assert of(due(then), ref) == of(due(then), "C-1") == {}


def test_a_competence_that_ends_is_told_unless_it_is_carried_on(office: Office) -> None:
    ends = office.today + timedelta(days=40)
    for name, more in (("Cy Ending", ()), ("Di Goes On", (Competence("shackle", ends, None),))):
        one = add(office, name)
        change(office, Person(one.id, name, "trainer", (Competence("shackle", office.today, ends), *more)))
    assert of(due(office, 39), "Cy Ending") == {}
    assert of(due(office, 40), "Cy Ending") == {Due.COMPETENCE: ends} and of(due(office, 40), "Di Goes On") == {}
    then = later(office, 100)
    (line,) = (one for one in due(then, 0) if one.what is Due.COMPETENCE)
    assert late_words(line, then.today) == "ENDED 60 days ago"


def change(office: Office, person: Person) -> None:
    """Keep a person's facts."""
    with office.book.page() as page:
        facts = NewPersonChange(office.today, person, office.officer.id)
        page.add_person_change(facts)
        page.enter("change person", by=office.officer.id, at=office.now, facts={"id": person.id})


def test_a_trip_is_told_by_its_first_day_until_it_has_ended_and_is_never_overdue(office: Office) -> None:
    member(office)
    first = office.today + timedelta(days=4)
    plan_trip(
        office, Trip("", "T-1", "Beach", "Long Sand", Ground.BEACH, first, first + timedelta(days=2), "Di Member")
    )
    assert of(due(office, 3), "T-1") == {}
    for day in (4, 5, 6):
        then = later(office, day)
        (line,) = (one for one in due(then, 0) if one.about == "T-1")
        assert (line.on, line.overdue_days(then.today), line.people) == (first, 0, ("Di Member",))
    assert of(due(later(office, 7)), "T-1") == {}


def test_owner_of_the_piece_holder_and_owner_of_the_vehicle_are_all_concerned(office: Office) -> None:
    di, bo = member(office), member(office, "Bo Driver")
    add_vehicle(office, "V-1", "Truck", bo.name, kilograms("3000 kg"), None)
    book_in(office, shackle("SH-1", owner="di  MEMBER"))
    book_in(office, point("RP-1"))
    fit_part(office, "RP-1", Fitted("V-1", End.REAR, Side.LEFT))
    lines = due(office)
    assert {one.about for one in of_person(office, lines, di.name)} == {"SH-1"}
    assert {one.about for one in of_person(office, lines, bo.name)} == {"RP-1"}
    assert at_place(office, lines, "v-1") == of_person(office, lines, bo.name)


def test_a_place_holds_what_lies_in_it_and_a_place_nobody_wrote_is_refused(office: Office) -> None:
    for tag, place in (("SH-1", "Shed, hook 1"), ("SH-2", "Shedding barn")):
        book_in(office, shackle(tag))
        put_in_store(office, tag, place)
    assert {one.about for one in at_place(office, due(office), "shed")} == {"SH-1"}
    with pytest.raises(Refused, match="No piece lies at"):
        at_place(office, due(office), "Shid")
    with pytest.raises(Refused, match="Nobody called"):
        of_person(office, due(office), "Di Membr")
    with pytest.raises(Refused, match="is past"):
        due(office, -1)


@pytest.mark.parametrize("view", View)
def test_every_view_shows_every_line(sample: Office, view: View) -> None:
    lines = due(sample, 365)
    shown = {one for _, some in sorted_by(lines, view) for one in some}
    assert shown == set(lines) and lines
    for title, some in sorted_by(lines, View.PERSON):
        assert all(title in one.people or not one.people for one in some)


@pytest.mark.parametrize("days", [0, 1, 30, 90, 365, 2000])
def test_nothing_that_a_verdict_says_falls_due_by_the_day_is_absent(sample: Office, days: int) -> None:
    assert assert_nothing_is_absent(sample, days) > 5


@pytest.mark.parametrize("days", [0, 30, 150])
def test_reading_every_piece_tells_nothing_more(sample: Office, days: int) -> None:
    last = sample.today + timedelta(days=days)
    with sample.book.reading() as page:
        picked, every = list(held_up_to(sample, page, last)), list(held(sample, page))
        assert len(picked) < len(every)
        lines = due_lines(sample, page, every, last)
    assert what_falls_due(sample, last) == lines
    assert {one.what for one in lines} >= {Due.LOAN, Due.MISSING, Due.HOLD, Due.NOTICE, Due.DESTRUCTION}


def test_what_is_overdue_stays_listed_whatever_day_is_asked_for(sample: Office) -> None:
    late = {one.key for one in due(sample, 400) if one.on is None or one.on <= sample.today}
    late -= {one.key for one in due(sample, 400) if one.what is Due.TRIP}
    assert len(late) > 10
    for days in (1, 30, 200, 2000):
        then = sample.at(sample.now + timedelta(days=days))
        assert late <= {one.key for one in due(then, 0)}
        grown = {one.key: one.overdue_days(then.today) for one in due(then, 0)}
        assert all(grown[one.key] >= days for one in due(sample, 0) if one.key in late and one.on)


def test_keys_tell_the_lines_apart_and_lines_without_a_day_stand_first(sample: Office) -> None:
    lines = due(sample, 365)
    assert len({one.key for one in lines}) == len(lines)
    days = [one.on or date.min for one in lines]
    assert days == sorted(days) and days[0] == date.min
