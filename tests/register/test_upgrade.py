"""A register made by an earlier program is brought up with all it holds."""

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

from inspector.duties.adopt_rulebook import drop_rulebook, in_force
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused
from inspector.register.book import open_book


def as_first_book(place: Path) -> None:
    """Take the tables back to the first revision, as a program of that time left them."""
    with sqlite3.connect(place) as connection:
        for table in ("adoption", "opinion", "strike", "destruction"):
            connection.execute(f"DROP TABLE {table}")  # its triggers go with it
        connection.execute("ALTER TABLE standing DROP COLUMN unloosened")
        connection.execute("UPDATE alembic_version SET version_num = '0001'")
    connection.close()


def test_a_first_book_opens_with_its_verdicts_and_takes_rulebooks(sample: Office) -> None:
    before = [(row.tag, row.outcome, row.headline) for row in list_gear(sample).rows]
    head = verify_book(sample).head
    sample.book.close()
    as_first_book(sample.out_tray.parent / "register.db")
    opened = in_force(replace(sample, book=open_book(sample.out_tray.parent / "register.db")))
    assert [(row.tag, row.outcome, row.headline) for row in list_gear(opened).rows] == before
    assert verify_book(opened, head[:12]).faults == ()
    assert open_item(opened, before[0][0]).verdict.unloosened is None
    with pytest.raises(Refused, match="adopted already"):
        drop_rulebook(opened)
    opened.book.close()
