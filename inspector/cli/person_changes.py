"""Commands that change what is written down of a person."""

import click

from inspector.cli import say, typed
from inspector.cli.passphrase import NEW, OWN, SECOND, new_passphrase, with_second
from inspector.cli.wiring import Desk, choice
from inspector.duties import keep_contact, keep_passphrases
from inspector.duties.change_person import (
    Widening,
    change_person,
    competence_words,
    end_competence,
    give_competence,
    renew_competence,
)
from inspector.gear.person import Competence, Passphrases, Person
from inspector.language import tr

_SECOND = "Another person of the register who stands behind it; needed for your own competence."


@click.command("change-person")
@click.argument("who")
@click.option("--name", default="", help="The new name; what stood under the old one stays this person's.")
@click.option("--role", default="", help="The new role.")
@click.option("--why", required=True, help="Why it changes.")
@click.pass_obj
def change_person_command(desk: Desk, who: str, name: str, role: str, why: str) -> None:
    """Change the name or role of WHO."""
    changed = change_person(desk.office(), who, name=name, role=role, why=why)
    click.echo(tr("{name} is in the register: {role}", name=changed.name, role=changed.role))


@click.group()
def competence() -> None:
    """What a person may judge: give it, renew it, end it. Inspections entered before keep what they were."""


@competence.command()
@click.argument("who")
@click.argument("scope")
@click.option("--since", default="", help="The first day on which it counts; today where none is given.")
@click.option("--until", default="", help="The last day on which it counts; no end where none is given.")
@click.option("--why", required=True, help="Why this person may judge it.")
@click.option("--second", default="", help=_SECOND)
@click.option("--paper", default="", help="What shows that it was held before today, for example a certificate.")
@click.pass_obj
def give(desk: Desk, who: str, scope: str, since: str, until: str, why: str, second: str, paper: str) -> None:
    """Let WHO judge SCOPE: a family of kinds, for example shackle, or "all"."""
    office = desk.office()
    last = typed.day(until, office.today) if until.strip() else None
    given = Competence(scope, typed.day(since, office.today), last)
    _say_held(give_competence(with_second(office, second), who, given, Widening(why, second, paper)))


@competence.command()
@click.argument("who")
@click.argument("scope")
@click.option("--until", required=True, help="The new last day.")
@click.option("--why", required=True, help="What it is renewed by, for example a refresher course.")
@click.option("--second", default="", help=_SECOND)
@click.pass_obj
def renew(desk: Desk, who: str, scope: str, until: str, why: str, second: str) -> None:
    """Let what WHO may judge of SCOPE run until a later day."""
    office = desk.office()
    last = typed.day(until, office.today)
    _say_held(renew_competence(with_second(office, second), who, scope, last, Widening(why, second)))


@competence.command()
@click.argument("who")
@click.argument("scope")
@click.option("--on", default="", help="The last day on which it counts; today where none is given.")
@click.option("--why", required=True, help="Why it ends.")
@click.pass_obj
def end(desk: Desk, who: str, scope: str, on: str, why: str) -> None:
    """End what WHO may judge of SCOPE."""
    office = desk.office()
    _say_held(end_competence(office, who, scope, why, typed.day(on, office.today)))


def _say_held(person: Person) -> None:
    held = ", ".join(map(competence_words, person.competences)) or tr("nothing")
    say.paragraph(tr("{name} is competent for: {held}", name=person.name, held=held))


@click.group()
def contact() -> None:
    """How to reach a person. It stands outside the history and is taken out for good on request."""


@contact.command()
@click.argument("who")
@click.option("--phone", default=None, help="Telephone; an empty text takes it out.")
@click.option("--mail", default=None, help="Mail address; an empty text takes it out.")
@click.option("--address", default=None, help="Postal address; an empty text takes it out.")
@click.pass_obj
def write(desk: Desk, who: str, phone: str | None, mail: str | None, address: str | None) -> None:
    """Write down how to reach WHO; what is not given stays."""
    kept = keep_contact.write_contact(desk.office(), who, phone=phone, mail=mail, address=address)
    click.echo(tr("How to reach {name} is written down. `people --show` tells it.", name=kept.person.name))


@contact.command()
@click.argument("who")
@click.pass_obj
def remove(desk: Desk, who: str) -> None:
    """Take out how to reach WHO; the ledger keeps only that it was done."""
    gone = keep_contact.remove_contact(desk.office(), who)
    click.echo(tr("How to reach {name} is taken out of the register.", name=gone.person.name))
    for line in keep_contact.erased_words(gone):
        say.paragraph(line)


@click.group(
    help=f"Who is at the desk. A script gives a passphrase by {OWN}, that of a second name by {SECOND} and a new one "
    f"by {NEW}."
)
def passphrase() -> None:
    """The group of the passphrase commands."""


@passphrase.command()
@click.argument("wanted", type=choice(Passphrases))
@click.pass_obj
def rule(desk: Desk, wanted: str) -> None:
    """What the club wants: off; wanted, so that documents tell which names were proved; required, so that a name which
    is only stated passes no gear."""
    keep_passphrases.set_wish(desk.office(), Passphrases(wanted))
    click.echo(tr("Passphrases are now: {wish}", wish=wanted))


@passphrase.command("set")
@click.option("--for", "who", default="", help="Another person; you give your own first, he types the new one.")
@click.pass_obj
def set_command(desk: Desk, who: str) -> None:
    """Set your passphrase, or another person's who has none or lost it."""
    office = desk.office()
    named = who or office.officer.name
    kept = keep_passphrases.set_passphrase(office, named, new_passphrase(named))
    click.echo(tr("{name} has a passphrase.", name=kept.name))
    say.paragraph(tr("Nobody can read it again. Where it is lost, another competent person who has one sets it anew."))


@passphrase.command("remove")
@click.option("--for", "who", default="", help="Another person.")
@click.pass_obj
def remove_passphrase(desk: Desk, who: str) -> None:
    """Take a passphrase out; from then on the name is as stated."""
    office = desk.office()
    gone = keep_passphrases.remove_passphrase(office, who or office.officer.name)
    click.echo(tr("{name} has no passphrase any more.", name=gone.name))
