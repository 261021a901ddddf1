"""Commands for where a piece is: in store, missing, stolen, sold, with its owner, found again."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties import whereabouts as deeds
from inspector.duties.print_voucher import print_voucher


@click.command()
@click.argument("tag")
@click.pass_obj
def where(desk: Desk, tag: str) -> None:
    """Say where TAG is."""
    click.echo(deeds.where_is(desk.office(), tag))


@click.command()
@click.argument("tag")
@click.option("--at", required=True, help="The place, for example shelf 2.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--why", default="", help="What is to be remembered of it.")
@click.pass_obj
def place(desk: Desk, tag: str, at: str, on: str, why: str) -> None:
    """Put TAG in store."""
    office = desk.office()
    say.verdict_in_full(deeds.put_in_store(office, tag, at, typed.day(on, office.today), why))


@click.command()
@click.argument("tag")
@click.option("--seen-at", required=True, help="Where it was last seen.")
@click.option("--why", required=True, help="How it was noticed.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.pass_obj
def missing(desk: Desk, tag: str, seen_at: str, why: str, on: str) -> None:
    """Report that TAG cannot be found."""
    office = desk.office()
    say.verdict_in_full(deeds.report_missing(office, tag, seen_at, why, typed.day(on, office.today)))


@click.command()
@click.argument("tag")
@click.option("--seen-at", required=True, help="Where it was last seen.")
@click.option("--report", required=True, help="The number of the report.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--why", default="", help="What is known of it.")
@click.pass_obj
def stolen(desk: Desk, tag: str, seen_at: str, report: str, on: str, why: str) -> None:
    """Report that TAG was stolen."""
    office = desk.office()
    say.verdict_in_full(deeds.report_stolen(office, tag, seen_at, report, typed.day(on, office.today), why))


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
@click.option("--at", required=True, help="Where it lies now.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--why", default="", help="Who found it, and how.")
@click.pass_obj
def found(desk: Desk, tag: str, at: str, on: str, why: str) -> None:
    """Record that TAG, missing, stolen or given back, is here again; it is held until inspected."""
    office = desk.office()
    say.verdict_in_full(deeds.report_found(office, tag, at, typed.day(on, office.today), why))


@click.command()
@click.argument("tag")
@click.pass_obj
def voucher(desk: Desk, tag: str) -> None:
    """Print the voucher of TAG again: how it was sold, given back or made unusable."""
    say.paper(print_voucher(desk.office(), tag))


commands = (where, place, missing, stolen, sold, handed_back, found, voucher)
