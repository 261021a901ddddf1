"""The book: one file (or one database) that a club keeps, opened page by page.

A page is one transaction. Nothing is kept unless `enter` closes it with a ledger line; leaving a page without it, or
by an exception, rolls everything back.
"""

import secrets
import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection, Engine, insert, select
from sqlalchemy.exc import DatabaseError, NoResultFound

from inspector.language import tr
from inspector.refused import Refused
from inspector.register import opening, tables
from inspector.register.backup import Backup
from inspector.register.clock import last_tick
from inspector.register.copy_before import back_up_before
from inspector.register.file_systems import remote_kind
from inspector.register.guards import guarded_engine, wipe_traces
from inspector.register.page import Page
from inspector.register.rows import never_before
from inspector.register.upgrade import HEAD, KNOWN, bring_up, current_revision

REGISTER_FILE = "register.db"  # what the file is called in its folder
_ORIGIN_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ"


@dataclass(frozen=True, slots=True)
class Upgraded:
    """That the tables were brought from one revision to another as the book was opened, and the copy from before."""

    old: str
    new: str
    copy: Backup


class Book:
    """An open register. Safe to use from several threads: each page has its own connection."""

    def __init__(self, engine: Engine, *, minds_clock: bool = False) -> None:
        self._engine, self._minds_clock = engine, minds_clock
        self._bound = threading.local()
        self.own_lines: set[str] = set()  # the hashes of the ledger's lines that were written through this book
        self.upgraded: Upgraded | None = None
        self.origin = self._own_origin()
        self._opened = opening.identity_of(self.file) if self.file else None

    @property
    def file(self) -> Path | None:
        """The file it lies in; None where it is a database of another make."""
        url = self._engine.url
        return Path(url.database) if url.get_backend_name() == "sqlite" and url.database else None

    @property
    def make(self) -> str:
        """What kind of database it is."""
        return self._engine.dialect.name

    @property
    def remote_kind(self) -> str:
        """The kind of network drive its file lies on; "" on a disk of this machine."""
        return remote_kind(self.file) if self.file else ""

    def close(self) -> None:
        """Let go of the file."""
        self._engine.dispose()

    def wipe_traces(self) -> bool:
        """Empty what still holds older states of rows; False where it could not be done now."""
        return self._bound_connection() is None and wipe_traces(self._engine)

    @contextmanager
    def page(self) -> Iterator[Page]:
        """A page to write on; roll back unless entered."""
        with self._connection(write=True) as connection:
            page = Page(connection, self.origin, keeps=self._bound_connection() is None, minds_clock=self._minds_clock)
            yield page
            page.left()
            self.own_lines |= page.entered

    @contextmanager
    def reading(self) -> Iterator[Page]:
        """A page to read from."""
        with self._connection(write=False) as connection:
            yield Page(connection, self.origin, keeps=False)

    @contextmanager
    def together(self) -> Iterator[None]:
        """Every page in this block and thread is one transaction, kept when the block ends well.

        A block within a block is undone by itself, and kept only with the outer one.
        """
        if outer := self._bound_connection():
            with outer.begin_nested():
                yield
            return
        with self._connection(write=True) as connection:
            self._bound.connection = connection
            try:
                yield
                connection.commit()
            finally:
                del self._bound.connection

    @contextmanager
    def _connection(self, *, write: bool) -> Iterator[Connection]:
        if bound := self._bound_connection():
            yield bound
            return
        self._check_still_there()
        with _told_plainly(self.file), self._engine.connect().execution_options(write=write) as connection:
            yield connection
        self._check_still_there()  # else a deed would count as kept in a file that is gone

    def _check_still_there(self) -> None:
        if self.file:
            opening.check_still_there(self.file, self._opened)

    def _bound_connection(self) -> Connection | None:
        return getattr(self._bound, "connection", None)

    def _own_origin(self) -> str:
        """The name of this copy of the register, made once and kept."""
        with self._engine.connect() as connection:
            never_before(last_tick(connection))
            if found := _origin_in(connection):
                return found
        with self._engine.connect().execution_options(write=True) as connection:
            if found := _origin_in(connection):
                return found
            made = new_origin()
            connection.execute(insert(tables.club_setting), {"key": "origin", "value": made})
            connection.commit()
            return made


def new_origin() -> str:
    """A name for a copy of a register: four signs that nobody mistakes for others, drawn from 810,000 such names."""
    return "".join(secrets.choice(_ORIGIN_SIGNS) for _ in range(4))


def _origin_in(connection: Connection) -> str:
    row = connection.execute(select(tables.club_setting.c.value).where(tables.club_setting.c.key == "origin"))
    return str(row.scalar_one_or_none() or "")


def open_book(place: str | Path, *, minds_clock: bool = False) -> Book:
    """Open the register at a path (or database URL), making or upgrading its tables where needed.

    minds_clock: refuse deeds that are entered before the last one; the program does, with the clock of its machine.
    """
    if isinstance(place, str) and "://" in place:
        return _opened(place, None, minds_clock)
    file = Path(place)
    opening.check_file(file)
    return _opened(f"sqlite:///{file}", file, minds_clock)


def _opened(url: str, file: Path | None, minds_clock: bool) -> Book:
    journal = "DELETE" if file and remote_kind(file) else "WAL"  # a network drive shares no memory, which WAL needs
    engine = guarded_engine(url, journal)
    try:
        with _told_plainly(file), _let_go_unless_well(engine):
            before = _copied_before(engine, file) if file else None
            bring_up(engine)
            book = Book(engine, minds_clock=minds_clock)
            book.upgraded = before
            return book
    except DatabaseError as error:
        raise Refused(
            tr("register"),
            tr("{place} cannot be opened as a register ({why}).", place=file or url, why=error.orig),
            tr("Check the path and that the file is a register and may be written to."),
        ) from error


def _copied_before(engine: Engine, file: Path) -> Upgraded | None:
    """Copy a register of an older program before its tables are changed."""
    revision = current_revision(engine)
    if revision is None or revision == HEAD or revision not in KNOWN:
        return None
    return Upgraded(revision, HEAD, back_up_before(file, HEAD, datetime.now().astimezone().date()))


@contextmanager
def _let_go_unless_well(engine: Engine) -> Iterator[None]:
    try:
        yield
    except BaseException:
        engine.dispose()
        raise


@contextmanager
def _told_plainly(file: Path | None) -> Iterator[None]:
    """A fault of file or disk, and what cannot be read any more, is refused with what to do about it."""
    try:
        yield
    except (DatabaseError, sqlite3.Error) as error:  # the driver's own where a connection is being prepared
        refusal = opening.refusal_of(error, file)
        if refusal is None:
            raise
        raise refusal from error
    except (UnicodeDecodeError, NoResultFound) as error:
        raise opening.unreadable(error) from error
