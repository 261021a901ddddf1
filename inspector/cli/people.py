"""Commands that list the people of the club, show one, and enter one."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties.add_people import add_person
from inspector.duties.change_person import competence_words
from inspector.duties.tell_people import PersonRecord, list_people, open_person
from inspector.gear.person import Competence, Contact, Passphrases, Person
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr


@click.command()
@click.option("--show", "name", default="", help="One person, with contact details and every change.")
@click.pass_obj
def people(desk: Desk, name: str) -> None:
    """List the people: role, what each may judge and until when, and who has a passphrase."""
    office = desk.office()
    if name:
        _show(open_person(office, name))
        return
    found = list_people(office)
    asked = found.passphrases is not Passphrases.OFF
    head = (tr("Name"), tr("Role"), *((tr("Passphrase"),) if asked else ()), tr("Competent for"))
    rows = [
        (one.person.name, one.person.role, *((_set(one.has_passphrase),) if asked else ()), one.held or "–")
        for one in found.rows
    ]
    say.table(head, rows)


def _set(has_one: bool) -> str:
    return tr("set") if has_one else tr("none")


def _show(record: PersonRecord) -> None:
    person, contact = record.row.person, record.contact or Contact()
    lines = [
        Fact(tr("Name"), person.name),
        Fact(tr("Formerly"), ", ".join(person.former_names)),
        Fact(tr("Role"), person.role),
        Fact(tr("Competent for"), record.row.held or tr("nothing")),
        Fact(tr("Ended"), ", ".join(record.ended)),
        Fact(tr("Passphrase"), _set(record.row.has_passphrase)),
        Fact(tr("Telephone"), contact.phone),
        Fact(tr("Mail"), contact.mail),
        Fact(tr("Postal address"), contact.address),
    ]
    say.facts([line for line in lines if line.text], "")
    if record.changes:
        say.heading(tr("Changes"))
        said = [(show_day(one.on), one.by, one.text) for one in record.changes]
        say.table((tr("Day"), tr("By"), tr("What stands since")), said)


@click.command()
@click.argument("name")
@click.option("--role", default="member", show_default=True)
@click.option("--competent", "scopes", multiple=True, help='A family of kinds, for example shackle, or "all".')
@click.option("--since", default="", help="The day from which; today where none is given.")
@click.option("--paper", default="", help="What shows a competence from before today, for example a certificate.")
@click.pass_obj
def person(desk: Desk, name: str, role: str, scopes: tuple[str, ...], since: str, paper: str) -> None:
    """Enter a person; whoever judges gear says for which families of kinds."""
    office = desk.office()
    day = typed.day(since, office.today)
    kept = add_person(office, Person("", name, role, tuple(Competence(scope, day) for scope in scopes)), paper)
    held = ", ".join(map(competence_words, kept.competences)) or "–"
    told = tr("{name} is in the register: {role}; competent for: {held}", name=kept.name, role=role, held=held)
    click.echo(told)
