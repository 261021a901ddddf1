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
from sqlalchemy.exc import DatabaseError, DBAPIError, OperationalError

from inspector.gear.seats import Role
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import tables
from inspector.register.guards import guarded_engine, wipe_traces
from inspector.register.page import Page
from inspector.register.seat_of_login import is_forbidden, may_not, not_begun, not_the_owner, role_of
from inspector.register.upgrade import bring_up

REGISTER_FILE = "register.db"  # what the file is called in its folder
_ORIGIN_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ"


class Book:
    """An open register. Safe to use from several threads: each page has its own connection."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._bound = threading.local()
        self.own_lines: set[str] = set()  # the hashes of the ledger's lines that were written through this book
        self.role = role_of(engine)
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
        except DBAPIError as error:
            if is_forbidden(error):
                raise may_not(self.role) from error
            raise

    def _bound_connection(self) -> Connection | None:
        return getattr(self._bound, "connection", None)

    def _own_origin(self) -> str:
        """The name of this copy of the register, made once and kept."""
        with self._engine.connect().execution_options(write=True) as connection:
            row = connection.execute(select(tables.club_setting.c.value).where(tables.club_setting.c.key == "origin"))
            if found := row.scalar_one_or_none():
                return str(found)
            if self.role is not Role.OFFICER:
                raise not_begun()
            made = "".join(secrets.choice(_ORIGIN_SIGNS) for _ in range(4))
            connection.execute(insert(tables.club_setting), {"key": "origin", "value": made})
            connection.commit()
            return made


def open_book(place: str | Path) -> Book:
    """Open the register at a path (or database URL), making or upgrading its tables where needed."""
    url = place if isinstance(place, str) and "://" in place else f"sqlite:///{place}"
    engine = guarded_engine(url)
    try:
        bring_up(engine)
        return Book(engine)
    except (Refused, DatabaseError) as error:
        engine.dispose()
        raise _cannot_open(engine, error) from error


def _cannot_open(engine: Engine, error: Refused | DatabaseError) -> Refused:
    if isinstance(error, Refused):
        return error
    if is_forbidden(error):
        return not_the_owner()
    place = engine.url.database if engine.dialect.name == "sqlite" else engine.url  # which shows no password
    return Refused(
        tr("register"),
        tr("{place} cannot be opened as a register ({why}).", place=place, why=error.orig),
        tr("Check the path and that the file is a register and may be written to."),
    )


def _in_use() -> Refused:
    why = tr("Another window or program is writing to it.")
    return Refused(tr("register"), why, tr("Wait a moment and do it again; nothing was changed."))
