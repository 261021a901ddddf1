"""Make the roles and logins of a register that lies on a database server. Whoever owns the database does this.

Nothing of it is a deed of a club's register: it stands in no ledger, and a club's officers need not even know of it.
"""

import re

from inspector.duties.plain_lines import check_line
from inspector.gear.seats import Role, Seat
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import seats
from inspector.register.keeper import as_owner

_NAME = re.compile(r"[a-z][a-z0-9_.-]{0,62}")
_LONGEST_BRANCH = 80
_SHORTEST = 12


def make_roles(url: str) -> tuple[Role, ...]:
    """Make or bring up to date the tables and the roles on a server. url: the database's address, with its owner."""
    with as_owner(url) as connection:
        seats.make_roles(connection)
    return tuple(Role)


def give_login(url: str, seat: Seat, password: str) -> None:
    """Make a login with a seat in a branch, or give it another seat and password."""
    _check_name(seat.login)
    check_line(tr("branch"), seat.branch)
    if len(seat.branch) > _LONGEST_BRANCH:
        why = tr("It has more than {most} signs.", most=_LONGEST_BRANCH)
        raise Refused(tr("branch"), why, tr("Choose a shorter one; it stands on no paper."))
    if len(password) < _SHORTEST:
        why = tr("It has fewer than {least} signs.", least=_SHORTEST)
        raise Refused(tr("password"), why, tr("Use a few words that only you would put together."))
    with as_owner(url) as connection:
        seats.make_roles(connection)
        known = {one.login for one in seats.seats(connection)}
        if seat.login not in known and seats.has_login(connection, seat.login):
            why = tr("The server has a login or role “{login}” that this register did not make.", login=seat.login)
            raise Refused(tr("login"), why, tr("Choose another name."))
        seats.seat_login(connection, seat, password)


def take_login(url: str, login: str) -> None:
    """Take a login away; what was entered under it stays in its branch."""
    with as_owner(url) as connection:
        if login not in {one.login for one in seats.seats(connection)}:
            why = tr("No seat belongs to a login “{login}”.", login=login)
            raise Refused(tr("login"), why, tr("List them first: inspector server logins."))
        seats.remove_login(connection, login)


def logins(url: str) -> tuple[Seat, ...]:
    """Every login with its branch and role, by branch and name."""
    with as_owner(url) as connection:
        return seats.seats(connection)


def _check_name(login: str) -> None:
    if not _NAME.fullmatch(login) or login.startswith("pg_"):
        why = tr("“{login}” cannot be a login.", login=login)
        way = tr("Begin with a small letter; then small letters, figures, dots, hyphens or underscores, 63 at most.")
        raise Refused(tr("login"), why, way)
