"""Commands for copies of the register that are worked on elsewhere and brought back."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties.bring_back import bring_back as take_over
from inspector.duties.bring_back import what_would_come
from inspector.duties.clash_words import clash_lines, merged_words
from inspector.duties.field_copies import copy_words, take_field_copy
from inspector.duties.tell_register import tell_register
from inspector.language import show_day, tr


@click.command("field-copy")
@click.option("--to", "folder", type=click.Path(path_type=Path), help="An empty folder for a new copy.")
@click.option("--with", "holder", default="", help="Who takes it; whoever is at the desk where nobody is named.")
@click.option("--for", "what_for", default="", help="What for, in a few words.")
@click.option("--contacts", is_flag=True, help="The copy also holds telephone numbers and addresses.")
@click.pass_obj
def field_copy(desk: Desk, folder: Path | None, holder: str, what_for: str, contacts: bool) -> None:
    """Make a copy of the register to work on elsewhere; without --to, tell which copies there are."""
    office = desk.office()
    if folder is None:
        _list(desk)
        return
    taken = take_field_copy(office, folder, holder or office.officer.name, what_for, with_contacts=contacts)
    click.echo(str(taken.file))
    say.paragraph(tr("The field copy {origin} is made.", origin=taken.copy.origin))
    say.paragraph(tr("Work on it with: inspector --register {folder} window", folder=folder))
    say.paragraph(tr("When it is back: inspector bring-back {folder}", folder=folder))


def _list(desk: Desk) -> None:
    if words := copy_words(desk.office()):
        say.paragraph(words)
    told = tell_register(desk.office()).field_copies
    if not told:
        say.paragraph(tr("No field copy was ever taken."))
        return
    rows = [
        (
            one.copy.origin,
            one.holder,
            show_day(one.copy.taken_on),
            show_day(one.copy.brought_back) if one.copy.brought_back else tr("not yet"),
            one.copy.what_for,
        )
        for one in told
    ]
    say.table((tr("Copy"), tr("Taken by"), tr("On"), tr("Brought back"), tr("What for")), rows)


@click.command("bring-back")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--look", is_flag=True, help="Only tell what would come.")
@click.pass_obj
def bring_back(desk: Desk, file: Path, look: bool) -> None:
    """Take over what was done on the copy FILE (or the folder it lies in); both histories stay."""
    merged = what_would_come(desk.office(), file) if look else take_over(desk.office(), file)
    if look:
        say.paragraph(tr("Nothing is taken over yet; this would come."))
    for line in merged_words(merged):
        say.paragraph(line)
    for line in clash_lines(merged):
        click.echo(line)
