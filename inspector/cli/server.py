"""Commands for whoever owns a database server: its roles, its logins, and which branch each sits in."""

import click

from inspector.cli import say
from inspector.cli.passphrase import hidden
from inspector.cli.wiring import PlaceType, choice
from inspector.duties.register_place import Place
from inspector.duties.server_logins import give_login, logins, make_roles, take_login
from inspector.gear.seats import Role, Seat
from inspector.language import tr
from inspector.refused import Refused

_PASSWORD = "INSPECTOR_LOGIN_PASSWORD"  # noqa: S105 - the name of the variable


@click.group()
def server() -> None:
    """Roles and logins of registers on a PostgreSQL server. ADDRESS names the database and its owner's login.

    For example postgresql://clubs_owner@server/clubs. A password is asked by the server's own ways: PGPASSWORD or a
    password file, never in the address.
    """


@server.command()
@click.argument("address", type=PlaceType())
def roles(address: Place) -> None:
    """Make the tables and the roles officer, member and reader, or bring them up to date."""
    make_roles(str(address))
    click.echo(tr("The tables and the roles stand. Give logins with `inspector server login`."))


@server.command()
@click.argument("address", type=PlaceType())
@click.argument("name")
@click.option("--as", "role", type=choice(Role), required=True, help="What the login may do.")
@click.option("--branch", default="", help="The branch it sits in; a single club needs none.")
def login(address: Place, name: str, role: str, branch: str) -> None:
    """Make the login NAME, or give it another role, branch and password."""
    password = hidden(_PASSWORD, tr("New password of {name}", name=name), twice=True)
    if not password:
        why = tr("None was typed.")
        what = tr("Type it on a terminal, or put it into {variable} for a script.", variable=_PASSWORD)
        raise Refused(tr("password"), why, what)
    give_login(str(address), Seat(name, branch.strip(), Role(role)), password)
    click.echo(tr("{name} is {role} in the branch “{branch}”.", name=name, role=role, branch=branch.strip()))


@server.command()
@click.argument("address", type=PlaceType())
@click.argument("name")
def remove(address: Place, name: str) -> None:
    """Take the login NAME away; what was entered under it stays."""
    take_login(str(address), name)
    click.echo(tr("{name} cannot log in any more.", name=name))


@server.command("logins")
@click.argument("address", type=PlaceType())
def list_logins(address: Place) -> None:
    """List the logins with their branches and roles."""
    rows = [(one.branch or "–", one.login, one.role.value) for one in logins(str(address))]
    say.table((tr("Branch"), tr("Login"), tr("Role")), rows)
