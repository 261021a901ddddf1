"""The trips of the sample register as they went: rigs kept, sheets printed, kit lent, checked, brought back, told."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date
from enum import IntEnum, auto
from itertools import groupby

from msgspec import Struct

from inspector.duties import sample_texts
from inspector.duties.check_kit import sheets_of
from inspector.duties.check_piece import check_pieces
from inspector.duties.debrief import debrief
from inspector.duties.debrief_files import read_debrief
from inspector.duties.give_back import give_back
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.lend import lend
from inspector.duties.look_up import trip as trip_called
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.duties.rig_files import read_rig
from inspector.duties.sample_texts import Row, Sample, listed_tables
from inspector.duties.work_rigs import shares_of
from inspector.gear.kind import Kind
from inspector.gear.kit_check import Seen

Do = Callable[[Office], object]


class Turn(IntEnum):
    """In which order the deeds of one day are done."""

    BOOKED = auto()
    WEATHERED = auto()  # or fitted elsewhere, or weighed
    USED = auto()
    TOLD = auto()
    BROUGHT_BACK = auto()
    WRITTEN = auto()  # what the officer writes down beside inspections, counts and reports included
    INSPECTED = auto()
    SAID = auto()
    PLANNED = auto()
    RIGGED = auto()
    PRINTED = auto()
    LENT = auto()
    CHECKED = auto()


class Deed(Struct, frozen=True):
    """A deed of the sample: its day, its turn among that day's deeds, and how it is done."""

    on: date
    turn: Turn
    do: Do


def trip_deeds(sample: Sample, kinds: Mapping[str, Kind]) -> Iterator[Deed]:
    """All that belongs to trips, in no order. kinds: by the tag of the piece."""
    yield from _plans(sample)
    yield from _hands(sample)
    for (day, ref, sheet, by), rows in groupby(sample.rows("checks.csv"), _one_check):
        seen = {row["tag"]: sample_texts.seen(row, kinds[row["tag"]]) for row in rows}
        yield Deed(sample.day(day), Turn.CHECKED, _checking(ref, sheet, by, seen))
    for name in sample.names("debriefs"):
        on, text = sample_texts.debrief(sample, name)
        yield Deed(on, Turn.TOLD, _telling(text))


def _one_check(row: Row) -> tuple[str, str, str, str]:
    return row["day"], row["trip"], row["sheet"], row["by"]


def _plans(sample: Sample) -> Iterator[Deed]:
    """Trips planned, their rigs kept, their sheets printed."""
    for table in listed_tables(sample.tables("trips.toml"), "trip"):
        yield Deed(sample.day(str(table["planned"])), Turn.PLANNED, _planning(sample, table))
        if "printed" in table:
            yield Deed(sample.day(str(table["printed"])), Turn.PRINTED, _printing(str(table["ref"])))
    for row in sample.rows("rigs.csv"):
        yield Deed(sample.day(row["day"]), Turn.RIGGED, _keeping(sample, row["ref"]))


def _hands(sample: Sample) -> Iterator[Deed]:
    """Pieces lent and brought back."""
    for row in sample.rows("loans.csv"):
        yield Deed(sample.day(row["lent"]), Turn.LENT, _lending(sample, row))
        if row["back"]:
            yield Deed(sample.day(row["back"]), Turn.BROUGHT_BACK, _bringing(sample, row))


def _planning(sample: Sample, table: dict[str, object]) -> Do:
    return lambda office: plan_trip(office, sample_texts.trip(sample, table))


def _printing(ref: str) -> Do:
    return lambda office: enter_trip_sheet(office, ref)


def _keeping(sample: Sample, ref: str) -> Do:
    return lambda office: keep_rig(office, ref, read_rig(sample.text(f"rigs/{ref}.toml")))


def _lending(sample: Sample, row: Row) -> Do:
    tags = sample_texts.tags(row)
    due = sample.day(row["due"])
    return lambda office: lend(office, tags, row["to"], due, row["trip"], row["note"] if not row["back"] else "")


def _bringing(sample: Sample, row: Row) -> Do:
    """A loan that came back, with what whoever had it told of it."""
    told = sample_texts.went_through(sample, row)
    return lambda office: [give_back(office, tag, row["to"], told, note=row["note"]) for tag in sample_texts.tags(row)]


def _checking(ref: str, sheet: str, by: str, seen: Mapping[str, Seen]) -> Do:
    """What one member saw of several pieces, on screen or on the latest sheet of the trip."""
    return lambda office: check_pieces(office, ref, by, seen, _latest_sheet(office, ref) if sheet == "yes" else "")


def _latest_sheet(office: Office, ref: str) -> str:
    """The number of the sheet that was printed last."""
    with office.book.reading() as page:
        return sheets_of(page, trip_called(office, ref))[0][0]


def _telling(text: str) -> Do:
    return lambda office: debrief(office, read_debrief(office, text), shares_of(office))
