"""A register made by an earlier program is brought up with all it holds."""

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

from inspector.duties.adopt_rulebook import drop_rulebook, in_force
from inspector.duties.book_in import book_in
from inspector.duties.give_opinion import doubt
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.verify_book import verify_book
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from inspector.register.book import open_book
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle


def as_first_book(place: Path) -> None:
    """Take the tables back to the first revision, as a program of that time left them."""
    with sqlite3.connect(place) as connection:
        for table in ("trip_change", "vehicle_change", "fitting", "adoption", "opinion", "strike", "destruction"):
            connection.execute(f"DROP TABLE {table}")  # its triggers go with it
        connection.execute("ALTER TABLE standing DROP COLUMN unloosened")
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
