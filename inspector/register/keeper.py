"""The database of a server as whoever owns it sees it: to make its tables, roles and logins."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy import Connection, Engine, text
from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.guards import guarded_engine
from inspector.register.seats import own_seat
from inspector.register.upgrade import bring_up

_OLDEST = 15  # before it, everybody could make functions in a schema that others look names up in


@contextmanager
def as_owner(url: str) -> Iterator[Connection]:
    """One transaction of the owner, kept when the block ends well; the tables are brought up to date before.

    Refused: what is no address of a PostgreSQL server, cannot be reached, is too old, or belongs to somebody else.
    """
    engine = _engine(url)
    try:
        with engine.connect() as connection:
            _check_version(connection)
        bring_up(engine)
        with engine.begin() as connection:
            if own_seat(connection)[1] != "owner":
                raise _not_owned(engine)
            yield connection
    except DBAPIError as error:
        why = tr("{place} does not do it ({why}).", place=engine.url, why=str(error.orig).strip())
        way = tr("Check the address, and that this login owns the database and may make roles (CREATEROLE).")
        raise Refused(tr("server"), why, way) from error
    finally:
        engine.dispose()


def _engine(url: str) -> Engine:
    try:
        engine = guarded_engine(url)
    except (ArgumentError, NoSuchModuleError) as error:
        raise _no_address() from error
    except ModuleNotFoundError as error:
        why = tr("The part of the program that speaks with a database server is not installed.")
        way = tr('Install it with the extra “postgresql”: pip install ".[postgresql]"')
        raise Refused(tr("server"), why, way) from error
    if engine.dialect.name != "postgresql":
        raise _no_address()
    return engine


def _no_address() -> Refused:
    why = tr("That is no address of a PostgreSQL database.")
    return Refused(tr("server"), why, tr("Write it like postgresql://owner@server/database."))


def _check_version(connection: Connection) -> None:
    version = int(connection.execute(text("SHOW server_version_num")).scalar_one()) // 10_000
    if version < _OLDEST:
        why = tr("The server is PostgreSQL {version}.", version=version)
        raise Refused(tr("server"), why, tr("Use {oldest} or newer, which keeps branches apart.", oldest=_OLDEST))


def _not_owned(engine: Engine) -> Refused:
    why = tr("The login “{login}” does not own the tables.", login=engine.url.username)
    return Refused(tr("login"), why, tr("Name the owner’s login in the address."))
