"""Commands for the people of the club."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties import look_up
from inspector.duties.add_people import add_person
from inspector.gear.person import Competence, Person
from inspector.language import show_day, tr


@click.command()
@click.pass_obj
def people(desk: Desk) -> None:
    """List the people, and what each is competent to judge."""
    rows = [(one.name, one.role, _held(one)) for one in look_up.people(desk.office())]
    say.table((tr("Name"), tr("Role"), tr("Competent for")), rows)


def _held(person: Person) -> str:
    said = [tr("{scope} since {day}", scope=one.scope, day=show_day(one.since)) for one in person.competences]
    return ", ".join(said) or "–"


@click.command()
@click.argument("name")
@click.option("--role", default="member", show_default=True)
@click.option("--competent", "scopes", multiple=True, help='A family of kinds, for example shackle, or "all".')
@click.option("--since", default="", help="The day from which; today where none is given.")
@click.pass_obj
def person(desk: Desk, name: str, role: str, scopes: tuple[str, ...], since: str) -> None:
    """Enter a person; whoever judges gear says for which families of kinds."""
    office = desk.office()
    day = typed.day(since, office.today)
    kept = add_person(office, Person("", name, role, tuple(Competence(scope, day) for scope in scopes)))
    told = tr("{name} is in the register: {role}; competent for: {held}", name=kept.name, role=role, held=_held(kept))
    click.echo(told)
