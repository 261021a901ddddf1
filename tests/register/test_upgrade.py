"""A register made by an earlier program is brought up with all it holds."""

import sqlite3
from pathlib import Path

import pytest
from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from msgspec.structs import replace
from sqlalchemy import create_engine

from inspector.duties.adopt_rulebook import drop_rulebook
from inspector.duties.book_in import book_in
from inspector.duties.debrief import debrief
from inspector.duties.fit_parts import take_off_part
from inspector.duties.give_opinion import doubt
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.keep_vehicles import change_vehicle
from inspector.duties.lend import lend_kit, loans
from inspector.duties.look_up import list_gear, open_item, trip
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.rulebook_in_force import in_force
from inspector.duties.tell_changes import trip_history
from inspector.duties.vehicle_record import vehicle_record
from inspector.duties.verify_book import verify_book
from inspector.gear.debrief import NewDebrief, RigUsed
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewUse
from inspector.refused import Refused
from inspector.register import year_tables
from inspector.register.book import open_book
from inspector.register.columns import METADATA
from tests.duties.gear import SHACKLE_READINGS, all_good, point, shackle
from tests.duties.rigs import SNATCH, ready
from tests.duties.test_vehicles import wagon, weighs

LISTED = (
    "tag",
    "kind",
    "owner",
    "maker_mark",
    "serial",
    "place",
    "vehicle",
    "basis",
    "rated",
    "inspected_on",
    "exposed",
)
REFS = dict.fromkeys(("trip", "rig", "incident", "stock_take"), "ref")
FLEET = ("trip_change", "vehicle_change", "fitting")
HANDS = ("custody", "rig", "debrief")
RECALLS = ("piece_call", "recall_entry", "recall")
YEAR = tuple(reversed([name for name in METADATA.tables if name in vars(year_tables) and name not in RECALLS]))
RECALLS = ("piece_call", "recall_entry", "recall")


def without_listing(connection: sqlite3.Connection) -> None:
    """Take away the columns by which the list sorts, as before the seventh revision."""
    for name in ("tag", "kind", "owner"):
        connection.execute(f"DROP INDEX ix_standing_{name}")
    for column in LISTED:
        connection.execute(f"ALTER TABLE standing DROP COLUMN {column}")


def with_own_names(place: Path) -> None:
    """Let every name stand once and take away the lines' numbers and what came since, as before the eighth revision."""
    engine = create_engine(f"sqlite:///{place}")
    with engine.begin() as connection:
        alembic = Operations(MigrationContext.configure(connection))
        for later in ("named_in", *RECALLS):
            alembic.drop_table(later)
        with alembic.batch_alter_table("ledger") as table:
            table.drop_column("number")
        for name, column in {"person": "name", **dict.fromkeys(("vehicle", "item"), "tag"), **REFS}.items():
            alembic.drop_index(f"ix_{name}_{column}", name)
            with alembic.batch_alter_table(name) as table:
                table.create_unique_constraint(f"uq_{name}_{column}", [column])
    engine.dispose()


def as_first_book(place: Path) -> None:
    """Take the tables back to the first revision, as a program of that time left them."""
    with_own_names(place)
    with sqlite3.connect(place) as connection:
        for table in (*FLEET, "adoption", "opinion", "strike", "destruction", *HANDS, *YEAR):
            connection.execute(f"DROP TABLE {table}")  # its triggers go with it
        connection.execute("ALTER TABLE standing DROP COLUMN unloosened")
        without_listing(connection)
        connection.execute("UPDATE alembic_version SET version_num = '0001'")
    connection.close()


def test_a_first_book_opens_with_its_verdicts_and_takes_rulebooks(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    before = [(row.tag, row.outcome, row.headline) for row in list_gear(office).rows]
    head = verify_book(office).head
    office.book.close()
    as_first_book(office.out_tray.parent / "register.db")
    opened = in_force(replace(office, book=open_book(office.out_tray.parent / "register.db")))
    assert [(row.tag, row.outcome, row.headline) for row in list_gear(opened).rows] == before
    assert verify_book(opened, head[:12]).faults == ()
    assert open_item(opened, "SH-1").verdict.unloosened is None
    with pytest.raises(Refused, match="adopted already"):
        drop_rulebook(opened)
    assert doubt(opened, "SH-1", "it takes doubts as well").verdict.outcome is Outcome.RETIRE
    opened.book.close()


def as_third_book(place: Path) -> None:
    """Take the tables back to the third revision."""
    with_own_names(place)
    with sqlite3.connect(place) as connection:
        for table in (*FLEET, *HANDS, *YEAR):
            connection.execute(f"DROP TABLE {table}")
        without_listing(connection)
        connection.execute("UPDATE alembic_version SET version_num = '0003'")
    connection.close()


def test_a_book_of_the_third_revision_keeps_its_vehicles_parts_and_trips_and_takes_changes(office: Office) -> None:
    wagon(office)
    book_in(office, replace(point(), place="", fitted_to="V-1"))
    planned = Trip("", "T-1", "Day", "", Ground.MUD, office.today, office.today, "", ("V-1",), ("RP-1",))
    plan_trip(office, planned)
    head = verify_book(office).head
    office.book.close()
    place = office.out_tray.parent / "register.db"
    as_third_book(place)
    opened = replace(office, book=open_book(place))
    assert [part.row.tag for part in vehicle_record(opened, "V-1").parts] == ["RP-1"]
    assert trip(opened, "T-1").kit == ("RP-1",)
    assert verify_book(opened, head[:12]).faults == ()
    take_off_part(opened, "RP-1")
    change_vehicle(opened, "V-1", weighs("2,300 kg"), "weighed")
    change_trip(opened, "T-1", lambda one: replace(one, kit=()))
    assert vehicle_record(opened, "V-1").parts == () and trip(opened, "T-1").kit == ()
    assert [row.what for row in trip_history(opened, "T-1")] == ["Changed", "Planned"]
    assert verify_book(opened).faults == ()
    opened.book.close()


def test_a_third_book_opens_as_it_was_and_lends_keeps_rigs_and_takes_debriefs(office: Office) -> None:
    ready(office)
    record_use(office, "KS-1", NewUse(office.today, 2))
    before = [(row.tag, row.outcome, row.headline) for row in list_gear(office).rows]
    head = verify_book(office).head
    office.book.close()
    as_third_book(office.out_tray.parent / "register.db")
    opened = in_force(replace(office, book=open_book(office.out_tray.parent / "register.db")))
    assert [(row.tag, row.outcome, row.headline) for row in list_gear(opened).rows] == before
    assert verify_book(opened, head[:12]).faults == ()
    lend_kit(opened, "T-1", "Di Member")
    keep_rig(opened, "R-01", SNATCH)
    debrief(opened, NewDebrief("T-1", opened.today, (RigUsed(SNATCH, 1, opened.today),)))
    assert len(loans(opened)) == 3 and verify_book(opened).faults == ()
    opened.book.close()
