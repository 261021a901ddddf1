"""Copies of the register's file: made while it is open, checked by opening them, and put back.

A copy is a file by itself, named with its day and the head of its ledger. It is written under another name first and
takes its own only when it has passed, so a file with such a name that cannot be opened was spoilt later.
"""

import hashlib
import os
import re
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager, suppress
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct
from sqlalchemy import create_engine
from sqlalchemy.exc import DatabaseError

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.chains import GENESIS
from inspector.register.guards import guarded_engine
from inspector.register.proof import prove
from inspector.register.upgrade import KNOWN, bring_up

if TYPE_CHECKING:
    from inspector.register.book import Book

STEM = "register"  # what the name of a copy begins with
FOLDER = "backups"  # beside the register
_HEAD_SIGNS = 12
_NAMED = re.compile(rf"-([0-9a-f]{{{_HEAD_SIGNS}}})$")
_OWN_TOOLS = {"postgresql": "pg_dump", "mysql": "mysqldump", "mariadb": "mariadb-dump"}
_BLOCK = 1 << 20
_HEADER, _WAL_AT = 100, 18  # bytes of the head of an SQLite file; where it says how it is written
_PAGES_AT_ONCE = 256
_Told = Callable[[int, int], None]


class Backup(Struct, frozen=True):
    """A copy that was opened and found whole. head: of its ledger, with so many lines."""

    file: Path
    size_bytes: int
    sha256: str
    head: str
    line_count: int


def back_up(book: "Book", folder: Path, on: date, told: _Told | None = None, stem: str = STEM) -> Backup:
    """Copy the open register into a folder and check the copy. A file that is there already stays as it is.

    stem: what its name begins with. told: how many pages of how many are copied; what it raises ends the work, and no
    copy is left.
    """
    source = _file_of(book)
    part = folder / f".backup-{on.isoformat()}.part"
    try:
        with written(folder):
            folder.mkdir(parents=True, exist_ok=True)
            head = copy_into(source, part, told)
        line_count = _checked(part, head)
        place = folder / name_of(stem, on, head)
        take_name(part, place)
    finally:
        with suppress(OSError):  # a folder that is none was refused above
            part.unlink(missing_ok=True)
    return Backup(place, place.stat().st_size, sha256_of(place), head, line_count)


def name_of(stem: str, on: date, head: str) -> str:
    """What a copy is called: stem, day, and the head of its ledger."""
    return f"{stem}-{on.isoformat()}-{head[:_HEAD_SIGNS]}.db"


def restore(file: Path, target: Path, head: str = "") -> Backup:
    """Put a copy in the place of a register that is not there. head: a ledger head that it must hold, if one is known.

    The restored register takes a new name of its own for its documents, so that no number is issued twice.
    """
    check_free(target)
    own = _own_head(file)
    part = target.with_name(f".{target.name}.part")
    with written(target.parent):
        target.parent.mkdir(parents=True, exist_ok=True)
    try:
        opened_copy(file, part)
        put_settings(part, {"origin": None})
        line_count = _checked(part, own, head)
        take_name(part, target)
    finally:
        part.unlink(missing_ok=True)
    return Backup(file, file.stat().st_size, sha256_of(file), own, line_count)


def check_free(target: Path) -> None:
    """Refuse a place where anything of a register lies: what a lost one left would be written into the new one."""
    if any(target.with_name(target.name + end).exists() for end in ("", "-wal", "-shm", "-journal")):
        why = tr("{folder} holds a register already, or a part of one, and it stays as it is.", folder=target.parent)
        raise Refused(tr("folder"), why, tr("Name an empty folder."))


def sha256_of(file: Path) -> str:
    """The checksum of a file."""
    found = hashlib.sha256()
    with file.open("rb") as opened:
        while block := opened.read(_BLOCK):
            found.update(block)
    return found.hexdigest()


def copy_of_file(book: "Book", part: Path) -> None:
    """Copy what is committed of an open register to a file that has no name yet."""
    copy_into(_file_of(book), part)


def _file_of(book: "Book") -> Path:
    if book.file is None:
        why = tr("The register lies in a {make} database, which is no file to be copied.", make=book.make)
        tool = _OWN_TOOLS.get(book.make, tr("its own tool for backups"))
        raise Refused(tr("backup"), why, tr("Back it up with {tool}, and try to restore that copy.", tool=tool))
    return book.file


def _copied(told: _Told) -> Callable[[int, int, int], None]:
    return lambda _, left, total: told(total - left, total)


def copy_into(source: Path, part: Path, told: _Told | None = None) -> str:
    """Copy what is committed, in one look; the head of the ledger that was copied."""
    part.unlink(missing_ok=True)
    with closing(opened_still(source)) as old, closing(sqlite3.connect(part, isolation_level=None)) as new:
        old.execute("BEGIN")  # head and copy are of one moment, whatever is written meanwhile
        row = old.execute("SELECT hash FROM ledger ORDER BY id DESC LIMIT 1").fetchone()
        old.backup(new, pages=_PAGES_AT_ONCE, progress=told and _copied(told))
        old.execute("ROLLBACK")
        new.execute("PRAGMA journal_mode=DELETE")  # one file, with nothing beside it
    return str(row[0]) if row else GENESIS


def opened_still(file: Path) -> sqlite3.Connection:
    """The file to read from. One that nobody has open is opened so that nothing appears beside it."""
    still = "&immutable=1" if _is_left_alone(file) else ""
    return sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro{still}", uri=True, isolation_level=None)


def _is_left_alone(file: Path) -> bool:
    """Whether it keeps a write-ahead file while it is open, and has none now."""
    with file.open("rb") as opened:
        head = opened.read(_HEADER)
    return head[_WAL_AT : _WAL_AT + 2] == b"\x02\x02" and not file.with_name(f"{file.name}-wal").exists()


def _own_head(file: Path) -> str:
    """The head of a copy; where its name tells one, that must be it."""
    with readable(file), closing(opened_still(file)) as copy:
        row = copy.execute("SELECT hash FROM ledger ORDER BY id DESC LIMIT 1").fetchone()
    found = str(row[0]) if row else GENESIS
    named = _NAMED.search(file.stem)
    if named and not found.startswith(named[1]):
        raise _spoilt(file, tr("its ledger does not end with the head that its name tells"))
    return found


def _checked(file: Path, head: str, against: str = "") -> int:
    """Open a copy and prove that it is whole; how many ledger lines it has."""
    with readable(file):
        with closing(opened_still(file)) as copy:
            check_pages(file, copy)
            _check_version(copy)
        engine = create_engine("sqlite://", creator=lambda: opened_still(file))
        try:
            with engine.connect() as connection:
                found = prove(connection, against)
        finally:
            engine.dispose()
    if found.faults:
        raise _spoilt(file, "; ".join(f"{one.where}: {one.why}" for one in found.faults[:3]))
    if found.head != head:
        raise _spoilt(file, tr("its ledger ends with another head"))
    return found.line_count


def check_pages(file: Path, copy: sqlite3.Connection) -> None:
    """Refuse a copy whose pages do not hold together. file: what to call it."""
    told = [str(row[0]) for row in copy.execute("PRAGMA integrity_check(3)")]
    if told != ["ok"]:
        raise _spoilt(file, "; ".join(told))
    if copy.execute("PRAGMA foreign_key_check").fetchone():
        raise _spoilt(file, tr("rows refer to others that are gone"))


def _check_version(copy: sqlite3.Connection) -> None:
    row = copy.execute("SELECT version_num FROM alembic_version").fetchone()
    if row and row[0] not in KNOWN:
        why = tr("The copy was written by a newer version of this program.")
        raise Refused(tr("backup"), why, tr("Install the newer version, and restore with it."))


def opened_copy(file: Path, place: Path) -> Path:
    """Copy a register's file to a place, look at its pages, and bring it to the tables of this version."""
    with readable(file), written(place.parent):
        copy_into(file, place)
    with readable(file):
        with closing(opened_still(place)) as copy:
            check_pages(file, copy)
            _check_version(copy)
        raise_tables(place)
    return place


def put_settings(copy: Path, settings: Mapping[str, str | None]) -> None:
    """Write settings into a copy that nobody has opened yet; None takes one out."""
    with closing(sqlite3.connect(copy)) as opened, opened:
        for key, value in settings.items():
            opened.execute("DELETE FROM club_setting WHERE key = ?", (key,))
            if value is not None:
                opened.execute("INSERT INTO club_setting (key, value) VALUES (?, ?)", (key, value))


def raise_tables(part: Path) -> None:
    """Bring a copy to the tables of this version."""
    engine = guarded_engine(f"sqlite:///{part}")
    try:
        bring_up(engine)
    finally:
        engine.dispose()
    single_file(part)


def single_file(file: Path) -> None:
    """Let a register be one file, with nothing beside it."""
    with closing(sqlite3.connect(file, isolation_level=None)) as connection:
        connection.execute("PRAGMA journal_mode=DELETE")


def take_name(part: Path, place: Path) -> None:
    """Give the finished file its name, unless another has it; in one step, so that no kill leaves an empty one."""
    with written(place.parent):
        try:
            os.link(part, place)
        except FileExistsError:
            raise
        except OSError:  # a disk that cannot give a file two names
            place.open("xb").close()
            part.replace(place)
        else:
            part.unlink()


def _spoilt(file: Path, why: str) -> Refused:
    said = tr("{file} is not a whole copy of a register ({why}).", file=file, why=why)
    return Refused(tr("backup"), said, tr("Use another copy, an older one if need be; nothing was put in its place."))


@contextmanager
def readable(file: Path) -> Iterator[None]:
    """What cannot be read as a register is refused."""
    try:
        if not file.is_file():
            why = tr("There is no file {file}.", file=file)
            raise Refused(tr("backup"), why, tr("Check its name and where it lies."))
        yield
    except (sqlite3.DatabaseError, DatabaseError, UnicodeDecodeError) as error:
        raise _spoilt(file, str(getattr(error, "orig", error))) from error


@contextmanager
def written(folder: Path) -> Iterator[None]:
    """What cannot be written is refused; a name that is taken too."""
    what = tr("Make room, or choose another folder; the register itself is as it was.")
    try:
        yield
    except FileExistsError as error:
        why = tr("{file} is there already and stays as it is.", file=error.filename)
        raise Refused(tr("backup"), why, tr("Choose another folder, or move that file away first.")) from error
    except OSError as error:
        why = tr("{folder} cannot be written ({why}).", folder=folder, why=error.strerror)
        raise Refused(tr("folder"), why, what) from error
    except sqlite3.Error as error:
        why = tr("The copy cannot be written into {folder} ({why}).", folder=folder, why=error)
        raise Refused(tr("folder"), why, what) from error
