"""Commands by which a piece leaves for good, each with its voucher: sold, handed back, made unusable."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties import whereabouts as deeds
from inspector.duties.destroy_item import destroy_item
from inspector.duties.print_voucher import print_voucher
from inspector.language import show_day, tr


@click.command()
@click.argument("tag")
@click.option("--to", required=True, help="Who bought it.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--why", default="", help="Why, and for how much.")
@click.option("--as-it-is", is_flag=True, help="The buyer knows that it is on hold.")
@click.pass_obj
def sold(desk: Desk, tag: str, to: str, on: str, why: str, as_it_is: bool) -> None:
    """Record that TAG was sold; nothing more is logged of it."""
    office = desk.office()
    day = typed.day(on, office.today)
    say.verdict_in_full(deeds.sell(office, tag, to, on=day, why=why, as_it_is=as_it_is))
    say.paper(print_voucher(office, tag))


@click.command(name="handed-back")
@click.argument("tag")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--why", default="", help="What is to be remembered of it.")
@click.option("--as-it-is", is_flag=True, help="The owner knows that it is retired or on hold.")
@click.pass_obj
def handed_back(desk: Desk, tag: str, on: str, why: str, as_it_is: bool) -> None:
    """Record that TAG went back to its owner, who is not the club."""
    office = desk.office()
    day = typed.day(on, office.today)
    say.verdict_in_full(deeds.hand_to_owner(office, tag, on=day, why=why, as_it_is=as_it_is))
    say.paper(print_voucher(office, tag))


@click.command()
@click.argument("tag")
@click.pass_obj
def voucher(desk: Desk, tag: str) -> None:
    """Print the voucher of TAG again: how it was sold, given back or made unusable."""
    say.paper(print_voucher(desk.office(), tag))


@click.command()
@click.argument("tag")
@click.option("--how", required=True, help="How it was made unusable, for example cut in two.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--witness", default="", help="Who saw it.")
@click.pass_obj
def destroyed(desk: Desk, tag: str, how: str, on: str, witness: str) -> None:
    """Record that the retired piece TAG was made unusable."""
    office = desk.office()
    facts = destroy_item(office, tag, how, typed.day(on, office.today), witness)
    click.echo(tr("{tag} was made unusable on {day}: {how}", tag=tag, day=show_day(facts.on), how=facts.how))
    say.paper(print_voucher(office, tag))
