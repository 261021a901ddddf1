"""Build the sample register: every line of its texts done as the deed it was, on the day it was done."""

from collections.abc import Iterator, Mapping
from datetime import date, datetime, time

from msgspec.structs import replace

from inspector.duties import sample_texts
from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.found_club import name_officer
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.judge_anew import judge_anew
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.sample_texts import Row, Sample, listed_tables
from inspector.duties.sample_trips import Deed, Do, Turn, trip_deeds
from inspector.duties.sample_year import year_deeds
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.gear.kind import Kind
from inspector.gear.person import Person
from inspector.gear.trip import Vehicle

_EVENING = time(19, 0)


def build_sample(office: Office) -> Person:
    """Fill an empty register with the sample club; returns the club's officer. All or nothing."""
    sample = Sample(sample_texts.sample_folder(), office.today)
    deeds = sorted(_deeds(office, sample), key=lambda one: (one.on, one.turn))
    with office.book.together():
        first = _evening(office, deeds[0].on)
        people = _club(first, sample)
        officer = next(one for one in people if one.competences)
        name_officer(first, officer)
        seated = replace(office, officer=officer)
        for table in listed_tables(sample.tables("club.toml"), "vehicle"):
            _add_vehicle(_evening(seated, deeds[0].on), sample_texts.vehicle(table))
        for deed in deeds:
            deed.do(_evening(seated, deed.on))
        judge_anew(seated)
    return officer


def _evening(office: Office, on: date) -> Office:
    """The office on that evening; what is of today was entered by now, or no deed could follow before the evening."""
    return office.at(min(datetime.combine(on, _EVENING, office.now.tzinfo), office.now))


def _club(office: Office, sample: Sample) -> list[Person]:
    """The club and its people."""
    club = sample.tables("club.toml")
    with office.book.page() as page:
        page.set("club", str(club["name"]))
        page.enter("found club", by=office.officer.id, at=office.now, facts={"club": str(club["name"])})
    paper = str(club["papers"])
    return [add_person(office, sample_texts.person(sample, table), paper) for table in listed_tables(club, "person")]


def _add_vehicle(office: Office, one: Vehicle) -> None:
    front, rear = one.front_spacing, one.rear_spacing
    add_vehicle(office, one.tag, one.name, one.owner, one.gvm, one.mass, front_spacing=front, rear_spacing=rear)


def _deeds(office: Office, sample: Sample) -> Iterator[Deed]:
    gear, guests = list(sample.rows("gear.csv")), list(sample.rows("guests.csv"))
    kinds = {row["tag"]: office.kind(row["kind"]) for row in (*gear, *guests)}
    for row in gear:
        yield Deed(sample.day(row["booked"]), Turn.BOOKED, _booking(sample, row, kinds[row["tag"]]))
    yield from _lives(sample, kinds)
    yield from trip_deeds(sample, kinds)
    yield from year_deeds(sample, kinds)
    for table in listed_tables(sample.tables("club.toml"), "weighing"):
        yield Deed(sample.day(str(table["day"])), Turn.WEATHERED, _weighing(table))


def _lives(sample: Sample, kinds: Mapping[str, Kind]) -> Iterator[Deed]:
    """What happened to the pieces one by one."""
    for row in sample.rows("exposures.csv"):
        yield Deed(sample.day(row["day"]), Turn.WEATHERED, _exposing(sample, row))
    for row in sample.rows("fittings.csv"):
        yield Deed(sample.day(row["day"]), Turn.WEATHERED, _fitting(row))
    for row in sample.rows("uses.csv"):
        yield Deed(sample.day(row["day"]), Turn.USED, _using(sample, row))
    for row in sample.rows("inspections.csv"):
        yield Deed(sample.day(row["day"]), Turn.INSPECTED, _inspecting(sample, row, kinds[row["tag"]]))
    for row in sample.rows("said.csv"):
        yield Deed(sample.day(row["day"]), Turn.SAID, _saying(sample, row))


def _fitting(row: Row) -> Do:
    """A part fitted elsewhere or taken off; done before the day's inspections, which see it where it is."""
    to = sample_texts.fitted(row)
    if to is None:
        return lambda office: take_off_part(office, row["tag"], by=row["by"], note=row["note"])
    return lambda office: fit_part(office, row["tag"], to, by=row["by"], note=row["note"])


def _weighing(table: dict[str, object]) -> Do:
    mass, tag, why = sample_texts.weighing(table), str(table["tag"]), str(table["why"])
    return lambda office: change_vehicle(office, tag, lambda one: replace(one, mass=mass), why, by=str(table["by"]))


def _booking(sample: Sample, row: Row, kind: Kind) -> Do:
    return lambda office: book_in(office, sample_texts.piece(sample, row, kind))


def _exposing(sample: Sample, row: Row) -> Do:
    return lambda office: record_exposure(office, row["tag"], sample_texts.exposure(sample, row))


def _saying(sample: Sample, row: Row) -> Do:
    """What somebody said of a piece: a doubt, an opinion, that an entry was wrong, that the piece is no more."""
    tag, why, by = row["tag"], row["why"], row["by"]
    said: dict[str, Do] = {
        "doubt": lambda office: doubt(office, tag, why, by),
        "answer": lambda office: answer_findings(office, tag, row["rules"].split(), why, by),
        "strike": lambda office: strike_entry(office, tag, _entry(office, sample, row), row["second"], why, by),
        "destroy": lambda office: destroy_item(office, tag, why, witness=row["second"]),
    }
    return said[row["what"]]


def _entry(office: Office, sample: Sample, row: Row) -> str:
    """The sign of the inspection made on the day that the row names."""
    rows = history_of(office, row["tag"])
    return next(one.ref for one in rows if one.ref and one.on == sample.day(row["entry"]))


def _using(sample: Sample, row: Row) -> Do:
    return lambda office: record_use(office, row["tag"], sample_texts.use(sample, row))


def _inspecting(sample: Sample, row: Row, kind: Kind) -> Do:
    return lambda office: record_inspection(office, row["tag"], sample_texts.inspection(sample, row, kind))
