"""The database of a server as whoever owns it sees it: to make its tables, roles and logins."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import DatabaseError, DBAPIError

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.address import address_of, not_opened
from inspector.register.engines import engine_with_tables
from inspector.register.seats import own_seat


@contextmanager
def as_owner(place: str) -> Iterator[Connection]:
    """One transaction of the owner, kept when the block ends well; the tables are brought up to date before.

    place: the address. Refused: a server that cannot be reached, or a database that belongs to somebody else.
    """
    try:
        engine = engine_with_tables(address_of(place).render_as_string(hide_password=False))
    except DatabaseError as error:
        raise not_opened(place, error) from error
    try:
        with engine.begin() as connection:
            if own_seat(connection)[1] != "owner":
                raise _not_owned(engine)
            yield connection
    except DBAPIError as error:
        why = tr("The server does not do it ({why}).", why=str(error.orig).strip())
        way = tr("Check that this login owns the database and may make roles (CREATEROLE).")
        raise Refused(tr("server"), why, way) from error
    finally:
        engine.dispose()


def _not_owned(engine: Engine) -> Refused:
    why = tr("The login “{login}” does not own the tables.", login=engine.url.username)
    return Refused(tr("login"), why, tr("Name the owner’s login in the address."))
