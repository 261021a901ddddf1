"""Commands for what falls due: the calendar."""

from datetime import date
from pathlib import Path

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk, choice
from inspector.duties.due_views import View, at_place, of_person, sorted_by
from inspector.duties.export_calendar import export_calendar
from inspector.duties.office import Office
from inspector.duties.tell_due import day_words, told
from inspector.duties.what_falls_due import what_falls_due
from inspector.gear.falls_due import DueLine
from inspector.language import tr, tr_n

UNTIL = click.option("--until", default="", help="Last day to look at; 90 days from today where none is given.")


@click.command()
@UNTIL
@click.option("--for", "name", default="", help="Only what concerns this person.")
@click.option("--at", "place", default="", help="Only the pieces at this place, or on the vehicle with this tag.")
@click.option("--by", "view", type=choice(View), default=View.DAY.value, show_default=True, help="How it is sorted.")
@click.option("--ics", "file", type=click.Path(path_type=Path), help="Write it as a calendar file (iCalendar) as well.")
@click.pass_obj
def calendar(desk: Desk, until: str, name: str, place: str, view: str, file: Path | None) -> None:
    """Tell what falls due up to a day. What is overdue, or waits without a day, is always among it."""
    office = desk.office()
    lines = what_falls_due(office, day_if_any(office, until))
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


def day_if_any(office: Office, text: str) -> date | None:
    """A day as typed; None where nothing was."""
    return typed.day(text, office.today) if text else None
