"""The database under a book: found, looked at, brought to this program's tables, and its faults told in plain words."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct
from sqlalchemy import Engine
from sqlalchemy.exc import DatabaseError, DBAPIError, NoResultFound

from inspector.register import opening, turns
from inspector.register.address import LEAST_SERVER, address_of, no_driver, not_opened, not_utf8, too_old
from inspector.register.file_systems import remote_kind
from inspector.register.guards import guarded_engine
from inspector.register.seat_of_login import seated
from inspector.register.upgrade import HEAD, KNOWN, bring_up, current_revision
from inspector.register.where_it_lies import is_address

if TYPE_CHECKING:
    from inspector.register.backup import Backup


class Upgraded(Struct, frozen=True):
    """That the tables were brought from one revision to another as the book was opened, and the copy from before."""

    old: str
    new: str
    copy: "Backup"


def holds_register(address: str) -> bool:
    """Whether a register was begun in a database on a server; nothing is written there."""
    try:
        engine = _engine_at(address)
        try:
            return current_revision(engine) is not None
        finally:
            engine.dispose()
    except DatabaseError as error:
        raise not_opened(address, error) from error


def open_engine(place: str | Path) -> Engine:
    """The register's database, as the branch and role of this login allow; nothing is written. Raises DatabaseError."""
    return opened_engine(place)[0]


def opened_engine(place: str | Path) -> tuple[Engine, Upgraded | None]:
    """The same, and what was done to the tables of an older program."""
    engine, upgraded = _with_tables(place)
    with let_go_unless_well(engine):
        return seated(engine), upgraded


def engine_with_tables(place: str | Path) -> Engine:
    """The database with this program's tables; nothing is written into them. Raises DatabaseError."""
    return _with_tables(place)[0]


def _with_tables(place: str | Path) -> tuple[Engine, Upgraded | None]:
    engine = _engine_at(place)
    with let_go_unless_well(engine):
        _check_server(engine)
        upgraded = None if is_address(place) else _copied_before(engine, Path(place))
        bring_up(engine)
    return engine, upgraded


def _engine_at(place: str | Path) -> Engine:
    if not is_address(place):
        journal = "DELETE" if remote_kind(Path(place)) else "WAL"  # a network drive shares no memory, which WAL needs
        return guarded_engine(f"sqlite:///{place}", journal)
    address = str(place)
    url = address if address.startswith("sqlite") else address_of(address).render_as_string(hide_password=False)
    try:
        return guarded_engine(url)
    except ModuleNotFoundError as error:
        raise no_driver() from error


def _check_server(engine: Engine) -> None:
    """Refuse a server on which the tables would not work, before anything is written to it."""
    if engine.dialect.name == "sqlite":
        return
    with engine.connect() as connection:
        version = int((engine.dialect.server_version_info or (0,))[0])
        encoding = str(connection.exec_driver_sql("SHOW server_encoding").scalar_one())
    if version < LEAST_SERVER:
        raise too_old(version)
    if encoding != "UTF8":
        raise not_utf8(encoding)


def _copied_before(engine: Engine, file: Path) -> Upgraded | None:
    """Copy a register of an older program before its tables are changed."""
    revision = current_revision(engine)
    if revision is None or revision == HEAD or revision not in KNOWN:
        return None
    from inspector.register.copy_before import back_up_before  # here: once in the life of a register

    return Upgraded(revision, HEAD, back_up_before(file, HEAD, datetime.now().astimezone().date()))


@contextmanager
def let_go_unless_well(engine: Engine) -> Iterator[None]:
    """Let go of the database where the block does not end well."""
    try:
        yield
    except BaseException:
        engine.dispose()
        raise


@contextmanager
def told_plainly(file: Path | None, nothing_kept: Callable[[], bool] = lambda: True) -> Iterator[None]:
    """A fault of database, file or disk, and what cannot be read any more, is refused with what to do about it.

    nothing_kept: whether all of the deed may be done again.
    """
    try:
        yield
    except DBAPIError as error:
        refusal = turns.refusal_of(error, nothing_kept=nothing_kept()) or opening.refusal_of(error, file)
        if refusal is None:
            raise
        raise refusal from error
    except sqlite3.Error as error:  # the driver's own, where a connection is being prepared
        refusal = opening.refusal_of(error, file)
        if refusal is None:
            raise
        raise refusal from error
    except (UnicodeDecodeError, NoResultFound) as error:
        raise opening.unreadable(error) from error
