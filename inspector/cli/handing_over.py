"""The command that hands the register on."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties.hand_over import hand_over, print_protocol
from inspector.gear.papers import ProtocolTable
from inspector.language import tr
from inspector.refused import Refused


@click.command()
@click.option("--to", "name", default="", help="Who takes the register over: a person of the register.")
@click.option(
    "--backup-to", "folder", type=click.Path(path_type=Path), help="Folder for the copy; its own `backups` else."
)
@click.option("--again", is_flag=True, help="Print the protocol of the last handover again.")
@click.pass_obj
def handover(desk: Desk, name: str, folder: Path | None, again: bool) -> None:
    """Hand the register on: copy it, print the protocol for both to sign, and make another person its officer."""
    if bool(name) == again:
        why = tr("Either somebody takes the register over, or the last protocol is printed again.")
        raise Refused(tr("handover"), why, tr("Write --to NAME, or --again."))
    if again:
        say.paper(print_protocol(desk.office()))
        return
    done = hand_over(desk.office(), name, folder)
    click.echo(tr("{name} is the equipment officer from now on.", name=done.protocol.to_name))
    for table in done.protocol.tables:
        _say_table(table)
    click.echo()
    for one in done.protocol.mind:
        say.paragraph(one)
    click.echo(str(done.backup.file))
    say.paper(done.paper)


def _say_table(table: ProtocolTable) -> None:
    """A list of the protocol, a paragraph each line: its cells are too long for columns on a screen."""
    say.heading(table.title)
    if table.said:
        say.paragraph(table.said, "  ")
    for first, *others in table.lines:
        say.paragraph(f"{first}  {' · '.join(text for text in others if text)}", "  ", "      ")
    if not table.lines:
        click.echo(f"  {table.none}")
