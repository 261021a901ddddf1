"""The book: one file (or one database) that a club keeps, opened page by page.

A page is one transaction. Nothing is kept unless `enter` closes it with a ledger line; leaving a page without it, or
by an exception, rolls everything back.
"""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from random import SystemRandom

from sqlalchemy import Connection, Engine, insert, select
from sqlalchemy.exc import DatabaseError, DBAPIError

from inspector.gear.seats import Role
from inspector.register import opening, tables, turns
from inspector.register.address import not_opened
from inspector.register.clock import last_tick
from inspector.register.engines import Upgraded, let_go_unless_well, opened_engine, told_plainly
from inspector.register.file_systems import remote_kind
from inspector.register.guards import wipe_traces
from inspector.register.page import Page
from inspector.register.rows import never_before
from inspector.register.seat_of_login import is_forbidden, may_not, not_begun, not_the_owner, role_in
from inspector.register.where_it_lies import is_address

_DICE = SystemRandom()
_ORIGIN_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
_ONE_MOMENT = {"isolation_level": "REPEATABLE READ", "postgresql_readonly": True}  # SQLite reads so by itself


class Book:
    """An open register. Safe to use from several threads: each page has its own connection."""

    def __init__(self, engine: Engine, *, minds_clock: bool = False, upgraded: Upgraded | None = None) -> None:
        self._engine, self._minds_clock = engine, minds_clock
        self._bound = threading.local()
        self.own_lines: set[str] = set()  # the hashes of the ledger's lines that were written through this book
        self.role = role_in(engine)
        self.upgraded = upgraded
        self._opened: opening.Identity | None = None
        self.origin = self._own_origin()
        self._opened = opening.identity_of(self.file) if self.file else None

    @property
    def file(self) -> Path | None:
        """The file it lies in; None where it is a database of another make."""
        url = self._engine.url
        return Path(url.database) if url.get_backend_name() == "sqlite" and url.database else None

    @property
    def address(self) -> str:
        """The address of its database, without a password."""
        return self._engine.url.set(drivername=self.make).render_as_string(hide_password=True)

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

    def deed_begins(self) -> None:
        """Whatever this thread keeps from now on belongs to one deed, which may be repeated while nothing is kept."""
        self._bound.kept = 0

    @contextmanager
    def page(self) -> Iterator[Page]:
        """A page to write on; roll back unless entered."""
        with self._connection(write=True) as connection:
            page = Page(connection, self.origin, keeps=self._bound_connection() is None, minds_clock=self._minds_clock)
            try:
                yield page
                page.left()
            finally:
                self._note(page)

    @contextmanager
    def reading(self) -> Iterator[Page]:
        """A page to read from: all of it is of one moment, whatever is written meanwhile."""
        with self._connection(write=False) as connection:
            yield Page(connection, self.origin, keeps=False, known=getattr(self._bound, "known", None))

    @contextmanager
    def together(self) -> Iterator[None]:
        """Every page in this block and thread is one transaction, kept when the block ends well.

        A block within a block is undone by itself, and kept only with the outer one.
        """
        if outer := self._bound_connection():
            self._check_may(outer, write=True)
            with outer.begin_nested():
                yield
            return
        with self._connection(write=True) as connection:
            self._bound.connection = connection
            self._bound.last_line = ""
            try:
                yield
                turns.keep(connection, self._bound.last_line)
                self._bound.kept = self._kept_count + 1
            finally:
                del self._bound.connection

    @contextmanager
    def one_moment(self) -> Iterator[None]:
        """Every page to read from in this block and thread is of the same moment; nothing can be written in it."""
        if self._bound_connection():
            yield
            return
        with self._connection(write=False) as connection:
            self._bound.connection, self._bound.known = connection, {}
            try:
                yield
            finally:
                del self._bound.connection, self._bound.known

    @contextmanager
    def own_connection(self, *, write: bool) -> Iterator[Connection]:
        """For what works on whole tables: a connection in a transaction, to be committed by whoever asked for it."""
        with self._connection(write=write) as connection:
            yield connection

    @contextmanager
    def _connection(self, *, write: bool) -> Iterator[Connection]:
        if bound := self._bound_connection():
            self._check_may(bound, write=write)
            yield bound
            return
        self._check_still_there()
        with self._told(), turns.patiently(lambda: self._begun(write=write)) as connection:
            yield connection
        self._check_still_there()  # else a deed would count as kept in a file that is gone

    @staticmethod
    def _check_may(bound: Connection, *, write: bool) -> None:
        if write and not bound.get_execution_options()["write"]:
            raise RuntimeError("a deed was begun while something is only read")

    @contextmanager
    def _told(self) -> Iterator[None]:
        """What stops a deed is told: how far it had come, or what is wrong with the database or this login."""
        try:
            with told_plainly(self.file, lambda: self._kept_count == 0):
                yield
        except DBAPIError as error:
            if is_forbidden(error):
                raise may_not(self.role) from error
            raise

    def _check_still_there(self) -> None:
        if self.file:
            opening.check_still_there(self.file, self._opened)

    def _begun(self, *, write: bool) -> Connection:
        """A connection in a transaction; who writes has his turn, who reads sees one moment."""
        on_server = self.make != "sqlite"
        options = _ONE_MOMENT if on_server and not write else {}
        connection = self._engine.connect().execution_options(write=write, **options)
        try:
            connection.begin()
        except BaseException:
            connection.close()
            raise
        return connection

    def _note(self, page: Page) -> None:
        """Lines that were written, and whether they are kept by now or with the block they stand in."""
        if not page.entered:
            return
        self.own_lines |= page.entered
        if self._bound_connection() is None:
            self._bound.kept = self._kept_count + 1
        else:
            self._bound.last_line = page.newest

    @property
    def _kept_count(self) -> int:
        return int(getattr(self._bound, "kept", 0))

    def _bound_connection(self) -> Connection | None:
        return getattr(self._bound, "connection", None)

    def _own_origin(self) -> str:
        """The name of this copy of the register, made once and kept."""
        with self._connection(write=False) as connection:
            never_before(last_tick(connection))
            if found := _origin_in(connection):
                return found
        if self.role is not Role.OFFICER:
            raise not_begun()
        with self._connection(write=True) as connection:
            if found := _origin_in(connection):
                return found
            made = new_origin()
            connection.execute(insert(tables.club_setting), {"key": "origin", "value": made})
            connection.commit()
            return made


def _origin_in(connection: Connection) -> str | None:
    row = connection.execute(select(tables.club_setting.c.value).where(tables.club_setting.c.key == "origin"))
    found = row.scalar_one_or_none()
    return str(found) if found else None


def new_origin() -> str:
    """A name for a copy of a register: four signs that nobody mistakes for others, drawn from 810,000 such names."""
    return "".join(_DICE.choice(_ORIGIN_SIGNS) for _ in range(4))


def open_book(place: str | Path, *, minds_clock: bool = False) -> Book:
    """Open the register at a path (or address), making or upgrading its tables where needed.

    minds_clock: refuse deeds that are entered before the last one; the program does, with the clock of its machine.
    """
    file = None if is_address(place) else Path(place)
    if file:
        opening.check_file(file)
    try:
        with told_plainly(file):
            engine, upgraded = opened_engine(place)
            with let_go_unless_well(engine):
                return Book(engine, minds_clock=minds_clock, upgraded=upgraded)
    except DatabaseError as error:
        raise (not_the_owner() if is_forbidden(error) else not_opened(place, error)) from error
