"""Commands that open the program on a register: begin an empty one, open the window."""

import click

from inspector.cli.wiring import Desk
from inspector.language import tr
from inspector.refused import Refused


@click.command()
@click.option("--club", required=True, help="The club's name; it stands on every document.")
@click.option("--officer", "name", required=True, help="The equipment officer's name.")
@click.pass_obj
def begin(desk: Desk, club: str, name: str) -> None:
    """Begin an empty register."""
    from inspector.duties.found_club import found_club

    found_club(desk.wiring.open_office(desk.folder), club, name)
    click.echo(tr("The register of {club} lies in {folder}.", club=club, folder=desk.folder))


@click.command()
@click.argument("tag", default="")
@click.pass_obj
def window(desk: Desk, tag: str) -> int:
    """Open the window, on the piece TAG where one is named; where there is no register yet, begin or open one there."""
    if not desk.wiring.has_display():
        why = tr("There is no screen to show a window on.")
        raise Refused(tr("window"), why, tr("Use the commands instead: inspector --help."))
    if not desk.wiring.has_register(desk.folder) and not tag:
        return desk.wiring.welcome(desk.folder)
    return desk.wiring.open_window(desk.opening, tag)
