"""What app hands to the command line, and what every command gets."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path

import click

from inspector.cli.passphrase import vouched
from inspector.duties.adopt_rulebook import judge_under_new_book, unfit_lines, waiting_lines
from inspector.duties.judge_anew import judge_anew
from inspector.duties.office import Office, Told, told_nobody
from inspector.duties.register_place import Place, moved_away_to, moved_away_words, place_of
from inspector.duties.rescue_register import RescueDone
from inspector.duties.tell_opening import clock_trouble, opening_lines
from inspector.language import tr
from inspector.refused import Refused


@dataclass(frozen=True, slots=True)
class Wiring:
    """Doors to the rooms that the command line does not open itself. usual_place: where the register lies.

    welcome: asks which register is to be worked on, where a folder has none, and opens the window on it.
    note_fault: writes down a fault that nobody foresaw and returns the file it stands in.
    """

    version: str
    usual_place: Place
    has_register: Callable[[Place], bool]
    open_office: Callable[[Place], Office]
    rescue: Callable[[Path, Path], RescueDone]
    seat: Callable[[Office, str], Office]
    open_window: Callable[[Callable[[Told], Office], str], int]
    welcome: Callable[[Place], int]
    has_display: Callable[[], bool]
    note_fault: Callable[[Exception], Path]


@dataclass(frozen=True, slots=True)
class Desk:
    """What every command gets: the doors, the folder or address of the register and who is at the desk."""

    wiring: Wiring
    folder: Place
    officer: str

    def office_if_any(self) -> Office | None:
        """The office, or None where there is no register."""
        return self.office() if self.wiring.has_register(self.folder) else None

    def opening(self, told: Told) -> Office:
        """The office for the window, which shows how far judging has come; refused where the register was moved."""
        office = self.office(told)
        if gone_to := moved_away_to(office):
            raise Refused(tr("register"), moved_away_words(gone_to), tr("Name the new place: --register."))
        return replace(office, told=told_nobody)

    def office(self, told: Told = told_nobody) -> Office:
        """The office with its officer seated, and everything judged that time has changed; told hears of each piece."""
        office = replace(self.seated(), told=told)
        if gone_to := moved_away_to(office):
            click.echo(moved_away_words(gone_to), err=True)
        else:
            _tell_unfit(office)
            if clock_trouble(office) is None:  # else nothing can be entered, and it was said why
                judge_under_new_book(office)
                judge_anew(office)
        office.book.deed_begins()
        return office

    def seated(self) -> Office:
        """The office with its officer seated, and nothing judged."""
        if not self.wiring.has_register(self.folder):
            why = tr("There is no register in {folder}.", folder=self.folder)
            raise Refused(tr("register"), why, tr("Begin one with `inspector begin`, or name its folder: --register."))
        return vouched(self.wiring.seat(self.wiring.open_office(self.folder), self.officer))


def _tell_unfit(office: Office) -> None:
    """Say what must be minded of the register, whether the club's rulebook waits, and which limits do not fit."""
    for line in (*opening_lines(office), *waiting_lines(office)):
        click.echo(line, err=True)
    lines = unfit_lines(office)
    if lines:
        click.echo(tr("Some of the club's own limits do not fit this version; the packaged ones stand:"), err=True)
    for line in lines:
        click.echo(f"  {line}", err=True)


class PlaceType(click.ParamType[Place]):
    """A folder, or the address of a database on a server."""

    name = "place"

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> Place:
        """The place; an address is refused where it is none or carries a password."""
        return value if isinstance(value, Path) else place_of(str(value))


def choice(words: type[StrEnum]) -> click.Choice[str]:
    """An option that takes the values of an enumeration."""
    return click.Choice([word.value for word in words])
