"""Roles, logins and their seats on a database server: made by the owner of the tables, held by the server.

A role is a group on the server, named after the database; a login belongs to one, and its seat names the branch.
"""

from sqlalchemy import Connection, text

from inspector.gear.seats import Role, Seat
from inspector.register.branches import SEAT
from inspector.register.columns import METADATA
from inspector.register.member_laws import MAY_ADD, MAY_CHANGE

_PRIVATE = ("contact", "passphrase")  # for officers alone
_CHANGING = ("standing", "club_setting", *_PRIVATE)  # history is added to and never changed
_LONGEST_PART = 50  # of a name on the server that may have 63 bytes


def make_roles(connection: Connection) -> None:
    """Make the roles where they are missing, and give each what it may do."""
    known = _known(connection)
    missing = [role for role in Role if _group(connection, role) not in known]
    for role in missing:
        _order(connection, f"CREATE ROLE {_quoted(connection, _group(connection, role))} NOLOGIN")
    renew_grants(connection)
    for one in seats(connection):  # a database that was put back under another name has logins and no roles
        if one.role in missing and one.login in known:
            _seat_in_group(connection, one)


def renew_grants(connection: Connection) -> None:
    """What each role may do, granted anew; nothing where the roles were not made."""
    groups = {role: _group(connection, role) for role in Role}
    if not _known(connection).issuperset(groups.values()):
        return
    quoted = {role: _quoted(connection, name) for role, name in groups.items()}
    for statement in (*_doors(connection, ", ".join(quoted.values())), *_grants(quoted)):
        _order(connection, statement)


def _doors(connection: Connection, everybody: str) -> list[str]:
    """Who gets in at all, and that nobody makes anything of his own there."""
    database = _quoted(connection, str(connection.engine.url.database))
    schema = connection.execute(text("SELECT current_schema()")).scalar_one()
    return [
        f"REVOKE ALL ON DATABASE {database} FROM PUBLIC",
        f"GRANT CONNECT ON DATABASE {database} TO {everybody}",
        f"GRANT USAGE ON SCHEMA {_quoted(connection, str(schema))} TO {everybody}",
        f"GRANT SELECT ON alembic_version TO {everybody}",
    ]


def _grants(groups: dict[Role, str]) -> list[str]:
    tables = tuple(METADATA.tables)
    everybody, officer, member = ", ".join(groups.values()), groups[Role.OFFICER], groups[Role.MEMBER]
    return [
        f"REVOKE ALL ON {', '.join(tables)} FROM {everybody}",
        f"GRANT SELECT ON {', '.join(one for one in tables if one not in _PRIVATE)} TO {everybody}",
        f"GRANT SELECT (branch, person_id) ON passphrase TO {everybody}",  # who has one, and not its hash
        f"GRANT SELECT ON {', '.join(_PRIVATE)} TO {officer}",
        f"GRANT INSERT ON {', '.join(tables)} TO {officer}",
        f"GRANT UPDATE, DELETE ON {', '.join(_CHANGING)} TO {officer}",
        f"GRANT INSERT ON {', '.join(MAY_ADD)} TO {member}",
        f"GRANT UPDATE ON {', '.join(MAY_CHANGE)} TO {member}",
    ]


def seat_login(connection: Connection, seat: Seat, password: str) -> None:
    """Make a login, or give one another seat and password. The password goes to the server hashed."""
    login = _quoted(connection, seat.login)
    deed = "ALTER" if seat.login in {one.login for one in seats(connection)} else "CREATE"
    _order(connection, f"{deed} ROLE {login} LOGIN PASSWORD '{_hashed(connection, seat.login, password)}'")
    if deed == "ALTER":
        _order(connection, f"REVOKE {_groups(connection)} FROM {login}")
    _seat_in_group(connection, seat)
    connection.execute(text(f"DELETE FROM {SEAT} WHERE login = :login"), {"login": seat.login})  # noqa: S608 - our own
    given = {"login": seat.login, "branch": seat.branch, "role": seat.role.value}
    connection.execute(text(f"INSERT INTO {SEAT} VALUES (:login, :branch, :role)"), given)  # noqa: S608 - our own


def _seat_in_group(connection: Connection, seat: Seat) -> None:
    _order(
        connection, f"GRANT {_quoted(connection, _group(connection, seat.role))} TO {_quoted(connection, seat.login)}"
    )


def remove_login(connection: Connection, login: str) -> None:
    """Take a login and its seat away; what was entered under it stays."""
    connection.execute(text(f"DELETE FROM {SEAT} WHERE login = :login"), {"login": login})  # noqa: S608 - our own
    _order(connection, f"REVOKE {_groups(connection)} FROM {_quoted(connection, login)}")
    _order(connection, f"DROP ROLE {_quoted(connection, login)}")


def seats(connection: Connection) -> tuple[Seat, ...]:
    """Every login with its seat, by branch and name. Only the owner of the tables may ask."""
    found = connection.execute(text(f"SELECT login, branch, role FROM {SEAT} ORDER BY branch, login"))  # noqa: S608
    return tuple(Seat(str(login), str(branch), Role(role)) for login, branch, role in found)


def own_seat(connection: Connection) -> tuple[str | None, str]:
    """The branch and the role of whoever logged in; None for a login without a seat."""
    branch, role = connection.execute(text("SELECT own_branch(), own_role()")).one()
    return (None if branch is None else str(branch)), str(role or "")


def sees_other_branches(connection: Connection) -> bool:
    """Whether the server's policies do not bind this login, and another branch lies in the database."""
    other = "SELECT EXISTS (SELECT FROM club_setting WHERE branch <> own_branch())"
    return bool(connection.execute(text(other)).scalar_one())


def has_login(connection: Connection, name: str) -> bool:
    """Whether the server knows a login or role of this name."""
    return name in _known(connection)


def _order(connection: Connection, statement: str) -> None:
    """What takes no parameters; a colon or % in it stands for itself."""
    connection.exec_driver_sql(statement, execution_options={"no_parameters": True})


def _known(connection: Connection) -> set[str]:
    return set(map(str, connection.execute(text("SELECT rolname FROM pg_roles")).scalars()))


def _group(connection: Connection, role: Role) -> str:
    return f"{str(connection.engine.url.database)[:_LONGEST_PART]}_{role.value}"


def _groups(connection: Connection) -> str:
    return ", ".join(_quoted(connection, _group(connection, role)) for role in Role)


def _quoted(connection: Connection, name: str) -> str:
    return connection.dialect.identifier_preparer.quote_identifier(name)


def _hashed(connection: Connection, login: str, password: str) -> str:
    driver = connection.connection.driver_connection
    if driver is None:
        raise RuntimeError("the connection is closed")
    return str(driver.pgconn.encrypt_password(password.encode(), login.encode(), b"scram-sha-256").decode())
