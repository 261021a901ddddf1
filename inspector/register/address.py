"""Where a register lies: a file, or a database on a server by its address.

An address never carries a password: it would stand in the settings of this machine, in the memory of a shell and in the
list of running programs. The server's own ways are used: a password file, a service file, or the environment.
"""

import re
from pathlib import Path
from typing import Any

from sqlalchemy import URL, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.where_it_lies import is_address

LEAST_SERVER = 15  # before it everybody could make functions where others look names up
_SCHEMES = {"postgresql", "postgres", "postgresql+psycopg"}
_ANSWER_WITHIN_S, _IDLE_S = 10, 30
_PASSWORD_STATES = {"28P01", "28000"}
_NO_DATABASE = "3D000"
_NO_RIGHT = "42501"


def address_of(text: str) -> URL:
    """The address as the driver takes it. Refused: another make of database, and what is no address."""
    try:
        url = make_url(text.strip())
    except (ArgumentError, ValueError):
        url = None
    if url is None or url.drivername not in _SCHEMES or not url.database:
        why = tr("“{address}” is no address of a PostgreSQL database.", address=hidden(text))
        raise Refused(tr("register"), why, tr("Write it as postgresql://LOGIN@SERVER/DATABASE."))
    return url.set(drivername="postgresql+psycopg")


def checked_address(text: str) -> str:
    """The address as it may be written down; refused where it carries a password."""
    url = address_of(text)
    if url.password is not None or "password" in url.query:
        why = tr("A password stands in the address, where others can read it.")
        raise Refused(tr("register"), why, tr("Leave it out. {where}", where=where_passwords_belong()))
    return url.set(drivername="postgresql").render_as_string(hide_password=True)


def hidden(text: str) -> str:
    """An address without what may be a password."""
    return re.sub(r"(?<=:)[^:/@]*(?=@)|(?<=password=)[^&]*", "***", text)


def named(text: str) -> str:
    """What to call the register at an address: without its password."""
    return address_of(text).set(drivername="postgresql").render_as_string(hide_password=True)


def own_folder(text: str) -> str:
    """The name of the folder for the papers and drafts of a register on a server."""
    url = address_of(text)
    plain = "-".join(str(one) for one in (url.host or "server", url.database, url.username) if one)
    return re.sub(r"[^A-Za-z0-9.-]+", "-", plain).strip("-.") or "server"


def where_passwords_belong() -> str:
    """How the driver comes to a password without anybody reading it over a shoulder."""
    return tr("Put it into the password file of PostgreSQL (~/.pgpass, on Windows %APPDATA%\\postgresql\\pgpass.conf), "
              "into a service file, or into the variable PGPASSWORD.")  # fmt: skip


def how_to_connect(url: str) -> dict[str, Any]:
    """What the engine needs beside the address: to give up, and to notice when the other side is gone."""
    if not url.startswith("postgres"):
        return {}
    alive = {"connect_timeout": _ANSWER_WITHIN_S, "keepalives_idle": _IDLE_S, "keepalives_interval": 5}
    asked = set(make_url(url).query)
    return {"pool_pre_ping": True, "connect_args": {key: one for key, one in alive.items() if key not in asked}}


def no_driver() -> Refused:
    """The program was installed without what speaks to a server."""
    why = tr("What speaks to a PostgreSQL server is not installed with this program.")
    return Refused(tr("register"), why, tr("Install it: pip install 'recovery-gear-register[postgresql]'."))


def too_old(version: int) -> Refused:
    """The server is older than the tables need."""
    why = tr("The server is PostgreSQL {version}; the register needs {least} or newer.", version=version,
             least=LEAST_SERVER)  # fmt: skip
    return Refused(tr("register"), why, tr("Ask whoever runs the server for a newer one; nothing was written to it."))


def not_utf8(encoding: str) -> Refused:
    """The database cannot hold every sign."""
    why = tr("The database keeps text as {encoding}, which does not have every sign.", encoding=encoding)
    return Refused(tr("register"), why, tr("Make one with ENCODING 'UTF8'; nothing was written to this one."))


def not_opened(place: str | Path, error: DBAPIError) -> Refused:
    """Why a register cannot be opened, in plain words."""
    if not is_address(place) or not str(place).startswith("postgres"):
        why = tr("{place} cannot be opened as a register ({why}).", place=place, why=error.orig)
        return Refused(tr("register"), why, tr("Check the path and that the file is a register and may be written to."))
    where, said = named(str(place)), str(error.orig)
    state = str(getattr(error.orig, "sqlstate", "") or "")
    if state in _PASSWORD_STATES or "password" in said:
        why = tr("{place}: the server does not let this login in.", place=where)
        return Refused(tr("register"), why, tr("Check login and password. {where}", where=where_passwords_belong()))
    if state == _NO_DATABASE or ("does not exist" in said and "certificate" not in said):
        why = tr("{place}: the server has no such login or database.", place=where)
        return Refused(tr("register"), why, tr("Check the address, or let whoever runs the server make it."))
    if state == _NO_RIGHT:
        why = tr("{place}: this login may not do that ({why}).", place=where, why=_first_line(said))
        return Refused(tr("register"), why, tr("Ask whoever runs the server for the rights of an owner or an officer."))
    why = tr("{place}: the server does not answer ({why}).", place=where, why=_first_line(said))
    return Refused(tr("register"), why, tr("See whether network and server run, and whether the address is right."))


def _first_line(said: str) -> str:
    return next((line.strip() for line in said.splitlines() if line.strip()), "")
