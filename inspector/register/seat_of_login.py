"""What a login of a database server may do in a register, and what is told where it may not."""

from sqlalchemy import Engine
from sqlalchemy.exc import DBAPIError

from inspector.gear.seats import Role
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.seats import own_seat, sees_other_branches

_FORBIDDEN = "42501"  # the server's word for what a grant, a policy or a trigger of ours forbids


def seated(engine: Engine) -> Engine:
    """The engine with the branch and role of this login. Whoever has the file, or owns the tables, is an officer.

    Refused: a login without a seat, and one that would see the rows of several branches as one register.
    """
    if engine.dialect.name != "postgresql":
        return engine
    with engine.connect() as connection:
        branch, role = own_seat(connection)
        if branch is None:
            why = tr("The login “{login}” has no seat in any branch of it.", login=engine.url.username)
            raise Refused(tr("login"), why, tr("Whoever owns the database gives it one: inspector server login."))
        if sees_other_branches(connection):
            why = tr("The login “{login}” sees every branch at once.", login=engine.url.username)
            way = tr("Use a login with a seat in one branch; one that rules the whole server is not bound by branches.")
            raise Refused(tr("login"), why, way)
    return engine.execution_options(branch=branch, role=Role.OFFICER if role == "owner" else Role(role))


def role_in(engine: Engine) -> Role:
    """The role that `seated` found."""
    role: Role = engine.get_execution_options().get("role", Role.OFFICER)
    return role


def is_forbidden(error: DBAPIError) -> bool:
    """Whether the server refused it to this login."""
    return getattr(error.orig, "sqlstate", None) == _FORBIDDEN


def may_not(role: Role) -> Refused:
    """What is told of a deed that the login may not do."""
    why = {
        Role.OFFICER: tr("The server does not let this login do that."),
        Role.MEMBER: tr("This login may add checks before use, which only make a verdict stricter, and nothing else."),
        Role.READER: tr("This login may read and change nothing."),
    }[role]
    return Refused(tr("login"), why, tr("Ask an equipment officer of the club to do it. Nothing was changed."))


def not_begun() -> Refused:
    """What is told of a branch in which no register was begun."""
    why = tr("No register was begun in this login’s branch.")
    return Refused(tr("register"), why, tr("Let an equipment officer of the club begin it, or move one there."))


def not_the_owner() -> Refused:
    """What is told where the tables have to be made or changed, and this login does not own them."""
    why = tr("Its tables have to be brought up to this version of the program, and this login does not own them.")
    return Refused(tr("register"), why, tr("Let whoever owns the database do it: inspector server roles."))
