"""A copy of the register to work on elsewhere, under a name of its own, to be merged when it comes back."""

import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from inspector.register.backup import check_free, copy_of_file, put_settings, single_file, take_name, written
from inspector.register.book import Book, new_origin
from inspector.register.engines import open_engine
from inspector.register.field_setting import COPY_OF, WITHOUT_CONTACTS
from inspector.register.move import carry


def take_copy(book: Book, target: Path, *, with_contacts: bool) -> str:
    """Copy the open register to a file, under a new origin; returns it. The file must not be there yet.

    with_contacts: whether it holds how to reach people; passphrases stay in it, else nobody could prove who he is.
    """
    origin = new_origin()
    check_free(target)
    part = target.with_name(f".{target.name}.part")
    try:
        with written(target.parent):
            target.parent.mkdir(parents=True, exist_ok=True)
            _copied(book, part)
        put_settings(part, {"origin": origin, COPY_OF: book.origin})
        if not with_contacts:
            _wipe_contacts(part)
        take_name(part, target)
    finally:
        with suppress(OSError):
            part.unlink(missing_ok=True)
    return origin


def _copied(book: Book, part: Path) -> None:
    """All of it, of one moment: of a file its pages, of a database on a server row by row."""
    if book.file:
        copy_of_file(book, part)
        return
    engine = open_engine(part)
    try:
        with book.own_connection(write=False) as old, engine.begin() as new:
            carry(old, new)
    finally:
        engine.dispose()
    single_file(part)


def _wipe_contacts(part: Path) -> None:
    put_settings(part, {WITHOUT_CONTACTS: "yes"})
    with closing(sqlite3.connect(part, isolation_level=None)) as copy:
        copy.execute("PRAGMA secure_delete=ON")
        copy.execute("DELETE FROM contact")
        copy.execute("VACUUM")
