"""Commands that print letters to holders, and slips."""

import click

from inspector.cli import say
from inspector.cli.calendar_commands import UNTIL, day_if_any
from inspector.cli.wiring import Desk
from inspector.duties.print_letters import print_again, print_letters
from inspector.duties.print_slips import print_slips, print_slips_again
from inspector.language import tr
from inspector.refused import Refused

_TO = click.option("--bring-to", default="", help="Where the pieces are to be brought.")
_DAY = click.option("--by", "bring_by", default="", help="By which day.")
_AGAIN = click.option("--again", is_flag=True, help="Print what was kept last once more.")


@click.command()
@click.option("--for", "name", default="", help="To this person.")
@click.option("--all", "everybody", is_flag=True, help="To everybody of whom anything is asked.")
@UNTIL
@_TO
@_DAY
@_AGAIN
@click.pass_obj
def letters(desk: Desk, name: str, everybody: bool, until: str, bring_to: str, bring_by: str, again: bool) -> None:
    """Print letters: what somebody has, what falls due of it, what must not be used, what to bring where and when."""
    if bool(name) == everybody:
        why = tr("Nobody said to whom.")
        raise Refused(tr("letters"), why, tr("Write --for NAME, or --all."))
    office = desk.office()
    if again:
        papers = print_again(office, name)
    else:
        last, by = day_if_any(office, until), day_if_any(office, bring_by)
        papers = print_letters(office, name, until=last, bring_to=bring_to, bring_by=by)
    for one in papers:
        say.paper(one)


@click.command()
@click.option("--for", "name", default="", help="Only the pieces that concern this person.")
@click.option("--at", "place", default="", help="Only the pieces at this place, or on the vehicle with this tag.")
@UNTIL
@_TO
@_DAY
@_AGAIN
@click.pass_obj
def slips(desk: Desk, name: str, place: str, until: str, bring_to: str, bring_by: str, again: bool) -> None:
    """Print slips, eight to a page to be cut apart: one piece each, what is due of it, by when, and to whom."""
    office = desk.office()
    if again:
        say.paper(print_slips_again(office))
        return
    last, by = day_if_any(office, until), day_if_any(office, bring_by)
    say.paper(print_slips(office, until=last, name=name, place=place, bring_to=bring_to, bring_by=by))
