"""What is looked at before a register's file is opened, and how a fault of the file or its disk is told.

Nothing here writes: a file that is refused is left byte by byte as it was.
"""

import shutil
import sqlite3
from contextlib import closing, suppress
from pathlib import Path
from textwrap import shorten

from sqlalchemy.exc import DatabaseError

from inspector.language import tr
from inspector.refused import Refused

_MAGIC = b"SQLite format 3\0"
_HEADER_BYTES = 100
_OUR_MARK = "alembic_version"  # stands in every register, and says by which program it was written
_BESIDE = ("-wal", "-journal")
_LONGEST_WHY = 160
_ROOM_BYTES = 1 << 18  # less than one deed may need
_PRIMARY = 0xFF  # the low byte of SQLite's error codes is the kind, the rest says more of it
Identity = tuple[int, int]


def check_file(file: Path) -> None:
    """Refuse a file that no register can be in, and a place where only part of one lies. A missing file passes."""
    try:
        if file.is_dir():
            raise _no_register(tr("{file} is a folder.", file=file))
        if not file.exists():
            _check_nothing_left(file)
            return
        size = file.stat().st_size
        with file.open("rb") as opened:
            head = opened.read(_HEADER_BYTES)
    except OSError as error:
        why = tr("{file} cannot be read ({why}).", file=file, why=error.strerror)
        raise Refused(tr("register"), why, tr("Ask whoever looks after this computer for the right to it.")) from error
    _check_head(file, head, size)
    _check_tables(file)


def _check_nothing_left(file: Path) -> None:
    """What is left of a lost register would be wiped by a new one in its place."""
    for end in _BESIDE:
        left = file.with_name(file.name + end)
        if left.exists() and left.stat().st_size:
            why = tr("{file} is gone, but {left} is left of it.", file=file, left=left.name)
            what = tr("Put the file back beside it. Or move what is left away and put a copy back.")
            raise Refused(tr("register"), why, what)


def _check_head(file: Path, head: bytes, size: int) -> None:
    if size == 0:
        raise _damaged(tr("{file} is empty: all of it is lost, or it was never written.", file=file))
    if not head.startswith(_MAGIC):
        raise _no_register(tr("{file} is no register.", file=file))
    page, pages = int.from_bytes(head[16:18], "big"), int.from_bytes(head[28:32], "big")
    page = 65536 if page == 1 else page
    is_counted = head[24:28] == head[92:96]  # else the page count was written by a program that knew none
    waits = any(_bytes_of(file.with_name(file.name + end)) for end in _BESIDE)  # what it lacks may stand there
    if is_counted and not waits and size < page * pages:
        why = tr("{file} is cut off: {size} of {whole} bytes are there.", file=file, size=size, whole=page * pages)
        raise _damaged(why)


def _check_tables(file: Path) -> None:
    """Refuse what another program keeps before anything of it is changed. What cannot be read here is told later."""
    with suppress(sqlite3.Error, UnicodeDecodeError):
        with closing(sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro", uri=True, timeout=0)) as looked:
            tables = {str(row[0]) for row in looked.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
        if tables and _OUR_MARK not in tables:
            raise not_ours(file)


def _bytes_of(file: Path) -> int:
    return file.stat().st_size if file.exists() else 0


def identity_of(file: Path) -> Identity | None:
    """Which file lies at this place; None where there is none or the drive does not answer."""
    try:
        found = file.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino


def check_still_there(file: Path, opened: Identity | None) -> None:
    """Refuse where another file, or none, lies at the place of the one that was opened."""
    now = identity_of(file)
    if opened is None or now == opened:
        return
    if now is None:
        why = tr("{file} is not there any more: it was moved or deleted, or its drive is gone.", file=file)
    else:
        why = tr("Another file was put in the place of {file} while it was open.", file=file)
    what = tr("Nothing is written. Find the register, close the program and open it again; then see what is in it.")
    raise Refused(tr("register"), why, what)


def refusal_of(error: BaseException, file: Path | None = None) -> Refused | None:
    """What to tell of a fault of the database; None for one that is no fault of file or disk."""
    said = error.orig if isinstance(error, DatabaseError) else error
    if not isinstance(said, sqlite3.Error):
        return None
    if str(said).startswith("Could not decode"):
        return unreadable(said)
    code = getattr(said, "sqlite_errorcode", sqlite3.SQLITE_OK) & _PRIMARY
    made = _TOLD.get(code)
    return made(said, file) if made else None


def unreadable(error: BaseException) -> Refused:
    """Something in it cannot be read as what it was written as."""
    why = shorten(str(error), _LONGEST_WHY, placeholder=" …")  # it may quote all of what it could not read
    return _damaged(tr("Something in the register cannot be read: it was changed or damaged ({why}).", why=why))


def in_use() -> Refused:
    """Somebody else is writing."""
    why = tr("Another window or program is writing to it.")
    return Refused(tr("register"), why, tr("Wait a moment and do it again; nothing was changed."))


def not_ours(file: object) -> Refused:
    """A database that another program keeps."""
    return _no_register(tr("{file} is a database of another program.", file=file))


def _no_register(why: str) -> Refused:
    what = tr("Name the folder that the register lies in. What lies there now stays as it is.")
    return Refused(tr("register"), why, what)


def _damaged(why: str) -> Refused:
    what = tr("Put the last copy back into another folder: inspector --register FOLDER restore FILE. Where there is "
              "none, save what can be read of this one: inspector rescue FILE --to FOLDER.")  # fmt: skip
    return Refused(tr("register"), why, what)


def _busy(_error: object, _file: Path | None) -> Refused:
    return in_use()


def _full(_error: object, _file: Path | None) -> Refused:
    why = tr("There is no room left on the disk that the register lies on.")
    return Refused(tr("register"), why, tr("Make room and do it again; nothing of it was kept, nothing else changed."))


def _read_only(error: object, file: Path | None) -> Refused:
    why = tr("The register may not be written to ({why}).", why=error)
    what = tr("See that its file and its folder may be written to, and that the folder is there; or copy the folder "
              "to where you may write. Nothing was changed.")  # fmt: skip
    return Refused(tr("register"), why, what)


def _is_full(file: Path | None) -> bool:
    with suppress(OSError):
        return file is not None and shutil.disk_usage(file.parent).free < _ROOM_BYTES
    return False


def _no_answer(error: object, file: Path | None) -> Refused:
    if _is_full(file):  # a disk so full that not even its helper files can be made is told as one that fails
        return _full(error, file)
    why = tr("The disk or network drive that the register lies on does not do what it should ({why}).", why=error)
    what = tr("See that it is there, close the program and open it again. Look whether what you did last was kept "
              "before you enter it again.")  # fmt: skip
    return Refused(tr("register"), why, what)


def _broken(error: object, file: Path | None) -> Refused:
    return _damaged(tr("{file} is damaged ({why}).", file=file or tr("The register"), why=error))


_TOLD = {
    sqlite3.SQLITE_BUSY: _busy,
    sqlite3.SQLITE_LOCKED: _busy,
    sqlite3.SQLITE_FULL: _full,
    sqlite3.SQLITE_READONLY: _read_only,
    sqlite3.SQLITE_PERM: _read_only,
    sqlite3.SQLITE_CANTOPEN: _read_only,
    sqlite3.SQLITE_AUTH: _read_only,
    sqlite3.SQLITE_IOERR: _no_answer,
    sqlite3.SQLITE_PROTOCOL: _no_answer,
    sqlite3.SQLITE_CORRUPT: _broken,
    sqlite3.SQLITE_NOTADB: _broken,
}
