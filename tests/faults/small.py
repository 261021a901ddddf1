"""A small register: a few pieces, each inspected and used, a trip, a member with a telephone, all of it in one file."""

import sqlite3
from contextlib import closing
from pathlib import Path

from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.found_club import found_club
from inspector.duties.keep_contact import write_contact
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.gear.use import NewUse
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle, strap

PIECES = ("SH-1", "SH-2", "SH-3", "SH-4")


def small_register(folder: Path, rules: Rulebook) -> Path:
    """Make it in a folder; the file, with nothing beside it."""
    made = office_in(folder, rules)
    office = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    write_contact(office, office.officer.id, phone="0555 010 203", address="1 Jetty Road")
    for tag in PIECES:
        book_in(office, shackle(tag))
    book_in(office, strap())
    record_use(office, "KS-1", NewUse(office.today, 2))
    for tag in PIECES:
        inspect(office, tag)
    inspect(office, "SH-2", cracks="bad")
    office.book.close()
    file = folder / "register.db"
    with closing(sqlite3.connect(file)) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    return file


def inspect(office: Office, tag: str, cracks: str = "good") -> None:
    """An inspection with every check answered."""
    kind = office.kind("bow_shackle")
    record_inspection(office, tag, all_good(office, kind, SHACKLE_READINGS, cracks=cracks))
