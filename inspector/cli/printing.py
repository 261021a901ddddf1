"""Commands that print the sheet of a trip and the notices of retired pieces."""

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties.print_sheets import print_each_sheet, print_trip_sheet
from inspector.duties.retire_item import print_notices
from inspector.duties.what_needs_me import what_needs_me
from inspector.gear.papers import SheetScope
from inspector.language import tr
from inspector.refused import Refused


@click.command()
@click.argument("trip", default="next")
@click.option("--vehicle", default="", help="Only what sits and rides on this vehicle.")
@click.option("--rest", is_flag=True, help="Only what rides on no vehicle by plan.")
@click.option("--each", is_flag=True, help="One sheet for each vehicle, and one for what rides on none.")
@click.pass_obj
def sheet(desk: Desk, /, trip: str, vehicle: str, rest: bool, each: bool) -> None:
    """Print the pre-trip inspection sheet of TRIP (its reference, or the next one), the whole trip on one."""
    if sum((bool(vehicle), rest, each)) > 1:
        why = tr("It is not clear which sheet is meant.")
        raise Refused(tr("sheet"), why, tr("Say only one of --vehicle, --rest and --each."))
    office = desk.office()
    scope = SheetScope(vehicle, is_rest=rest)
    for paper in print_each_sheet(office, trip) if each else (print_trip_sheet(office, trip, scope),):
        say.paper(paper)


@click.command()
@click.argument("tags", nargs=-1)
@click.option("--all", "every", is_flag=True, help="Of every retired piece whose notice was not printed yet.")
@click.pass_obj
def notice(desk: Desk, tags: tuple[str, ...], every: bool) -> None:
    """Print the retirement notices of TAGS, each with a number of its own."""
    office = desk.office()
    wanted = (*tags, *(what_needs_me(office).without_notice if every else ()))
    if not wanted:
        why = tr("Every retired piece has its notice.") if every else tr("No piece is named.")
        raise Refused(tr("retirement notice"), why, tr("Write the tags of retired pieces, or --all."))
    for one in print_notices(office, wanted):
        say.paper(one)
