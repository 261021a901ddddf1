"""Commands for where a piece is: in store, missing, stolen, sold, with its owner, found again."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties import whereabouts as deeds


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
@click.option("--at", required=True, help="Where it lies now.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--why", default="", help="Who found it, and how.")
@click.pass_obj
def found(desk: Desk, tag: str, at: str, on: str, why: str) -> None:
    """Record that TAG, missing, stolen or given back, is here again; it is held until inspected."""
    office = desk.office()
    say.verdict_in_full(deeds.report_found(office, tag, at, typed.day(on, office.today), why))
