"""Opens the register for a command. Read when the first office is asked for: help needs no book."""

import click
from msgspec.structs import replace

from inspector.cli.passphrase import vouched
from inspector.cli.wiring import Desk
from inspector.duties.judge_anew import judge_anew
from inspector.duties.office import Office, Told, told_nobody
from inspector.duties.register_place import moved_away_to, moved_away_words
from inspector.duties.rulebook_in_force import judge_under_new_book, unfit_lines, waiting_lines
from inspector.duties.sit_down import seat
from inspector.duties.tell_opening import clock_trouble, opening_lines
from inspector.language import tr
from inspector.refused import Refused


def opened_for_window(desk: Desk, told: Told) -> Office:
    """The office for the window; refused where the register was moved away."""
    office = opened(desk, told)
    if gone_to := moved_away_to(office):
        raise Refused(tr("register"), moved_away_words(gone_to), tr("Name the new place: --register."))
    return replace(office, told=told_nobody)


def opened(desk: Desk, told: Told = told_nobody) -> Office:
    """The office with its officer seated, and everything judged that time has changed; told hears of each piece."""
    office = replace(seated(desk), told=told)
    if gone_to := moved_away_to(office):
        click.echo(moved_away_words(gone_to), err=True)
    else:
        _tell_unfit(office)
        if clock_trouble(office) is None:  # else nothing can be entered, and it was said why
            judge_under_new_book(office)
            judge_anew(office)
    office.book.deed_begins()
    return office


def seated(desk: Desk) -> Office:
    """The office with its officer seated, and nothing judged."""
    if not desk.wiring.has_register(desk.folder):
        why = tr("There is no register in {folder}.", folder=desk.folder)
        raise Refused(tr("register"), why, tr("Begin one with `inspector begin`, or name its folder: --register."))
    return vouched(seat(desk.wiring.open_office(desk.folder), desk.officer))


def _tell_unfit(office: Office) -> None:
    """Say what must be minded of the register, whether the club's rulebook waits, and which limits do not fit."""
    for line in (*opening_lines(office), *waiting_lines(office)):
        click.echo(line, err=True)
    lines = unfit_lines(office)
    if lines:
        click.echo(tr("Some of the club's own limits do not fit this version; the packaged ones stand:"), err=True)
    for line in lines:
        click.echo(f"  {line}", err=True)
