"""Commands for what falls due: the calendar, letters to holders, and slips."""

from datetime import date
from pathlib import Path

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk, choice
from inspector.duties.due_views import View, at_place, of_person, sorted_by
from inspector.duties.export_calendar import export_calendar
from inspector.duties.office import Office
from inspector.duties.print_letters import print_again, print_letters
from inspector.duties.print_slips import print_slips, print_slips_again
from inspector.duties.tell_due import day_words, told
from inspector.duties.what_falls_due import what_falls_due
from inspector.gear.falls_due import DueLine
from inspector.language import tr, tr_n
from inspector.refused import Refused

_UNTIL = click.option("--until", default="", help="Last day to look at; 90 days from today where none is given.")


@click.command()
@_UNTIL
@click.option("--for", "name", default="", help="Only what concerns this person.")
@click.option("--at", "place", default="", help="Only the pieces at this place, or on the vehicle with this tag.")
@click.option("--by", "view", type=choice(View), default=View.DAY.value, show_default=True, help="How it is sorted.")
@click.option("--ics", "file", type=click.Path(path_type=Path), help="Write it as a calendar file (iCalendar) as well.")
@click.pass_obj
def calendar(desk: Desk, until: str, name: str, place: str, view: str, file: Path | None) -> None:
    """Tell what falls due up to a day. What is overdue, or waits without a day, is always among it."""
    office = desk.office()
    lines = what_falls_due(office, _day(office, until))
    if name:
        lines = of_person(office, lines, name)
    if place:
        lines = at_place(office, lines, place)
    _say(office, lines, View(view))
    if file:
        count = export_calendar(office, lines, file)
        click.echo(tr_n("{count} entry in {file}", "{count} entries in {file}", count, file=file))


def _say(office: Office, lines: tuple[DueLine, ...], view: View) -> None:
    if not lines:
        click.echo(tr("Nothing falls due."))
    elif view is View.DAY:
        say.table((tr("Day"), tr("About"), tr("What")), [_cells(office, one) for one in lines])
    else:
        for title, some in sorted_by(lines, view):
            say.heading(title)
            say.table((tr("Day"), tr("About"), tr("What")), [_cells(office, one) for one in some])


def _cells(office: Office, one: DueLine) -> tuple[str, str, str]:
    said = tr("{name}: {what}", name=one.name, what=told(one, office.today))
    where = "; ".join((*one.people, *((one.place,) if one.place else ())))
    return day_words(one), one.about, f"{said} ({where})" if where else said


_TO = click.option("--bring-to", default="", help="Where the pieces are to be brought.")
_DAY = click.option("--by", "bring_by", default="", help="By which day.")
_AGAIN = click.option("--again", is_flag=True, help="Print what was kept last once more.")


@click.command()
@click.option("--for", "name", default="", help="To this person.")
@click.option("--all", "everybody", is_flag=True, help="To everybody of whom anything is asked.")
@_UNTIL
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
        last, by = _day(office, until), _day(office, bring_by)
        papers = print_letters(office, name, until=last, bring_to=bring_to, bring_by=by)
    for one in papers:
        say.paper(one)


@click.command()
@click.option("--for", "name", default="", help="Only the pieces that concern this person.")
@click.option("--at", "place", default="", help="Only the pieces at this place, or on the vehicle with this tag.")
@_UNTIL
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
    last, by = _day(office, until), _day(office, bring_by)
    say.paper(print_slips(office, until=last, name=name, place=place, bring_to=bring_to, bring_by=by))


def _day(office: Office, text: str) -> date | None:
    return typed.day(text, office.today) if text else None


COMMANDS = (calendar, letters, slips)
