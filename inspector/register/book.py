"""The book: one file (or one database) that a club keeps, opened page by page.

A page is one transaction. Nothing is kept unless `enter` closes it with a ledger line; leaving a page without it, or
by an exception, rolls everything back.
"""

import secrets
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Connection, Engine, insert, select
from sqlalchemy.exc import DatabaseError, OperationalError

from inspector.language import tr
from inspector.refused import Refused
from inspector.register import tables
from inspector.register.guards import guarded_engine, wipe_traces
from inspector.register.page import Page
from inspector.register.upgrade import bring_up

REGISTER_FILE = "register.db"  # what the file is called in its folder
_ORIGIN_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ"


class Book:
    """An open register. Safe to use from several threads: each page has its own connection."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._bound = threading.local()
        self.own_lines: set[str] = set()  # the hashes of the ledger's lines that were written through this book
        self.origin = self._own_origin()

    @property
    def file(self) -> Path | None:
        """The file it lies in; None where it is a database of another make."""
        url = self._engine.url
        return Path(url.database) if url.get_backend_name() == "sqlite" and url.database else None

    @property
    def make(self) -> str:
        """What kind of database it is."""
        return self._engine.dialect.name

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
            page = Page(connection, self.origin, keeps=self._bound_connection() is None)
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
        try:
            with self._engine.connect().execution_options(write=write) as connection:
                yield connection
        except OperationalError as error:
            if "locked" in str(error.orig):
                raise _in_use() from error
            raise

    def _bound_connection(self) -> Connection | None:
        return getattr(self._bound, "connection", None)

    def _own_origin(self) -> str:
        """The name of this copy of the register, made once and kept."""
        with self._engine.connect().execution_options(write=True) as connection:
            row = connection.execute(select(tables.club_setting.c.value).where(tables.club_setting.c.key == "origin"))
            if found := row.scalar_one_or_none():
                return str(found)
            made = new_origin()
            connection.execute(insert(tables.club_setting), {"key": "origin", "value": made})
            connection.commit()
            return made


def new_origin() -> str:
    """A name for a copy of a register: four signs that nobody mistakes for others, drawn from 810,000 such names."""
    return "".join(secrets.choice(_ORIGIN_SIGNS) for _ in range(4))


def open_book(place: str | Path) -> Book:
    """Open the register at a path (or database URL), making or upgrading its tables where needed."""
    url = place if isinstance(place, str) and "://" in place else f"sqlite:///{place}"
    try:
        engine = guarded_engine(url)
        bring_up(engine)
        return Book(engine)
    except DatabaseError as error:
        raise Refused(
            tr("register"),
            tr("{place} cannot be opened as a register ({why}).", place=place, why=error.orig),
            tr("Check the path and that the file is a register and may be written to."),
        ) from error


def _in_use() -> Refused:
    why = tr("Another window or program is writing to it.")
    return Refused(tr("register"), why, tr("Wait a moment and do it again; nothing was changed."))
