"""Commands for copies of the register, and for handing it on."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties import back_up as copies
from inspector.duties.hand_over import hand_over, print_protocol
from inspector.gear.papers import ProtocolTable
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.refused import Refused


@click.command()
@click.option("--to", "folder", type=click.Path(path_type=Path), help="Folder for the copy; its own `backups` else.")
@click.pass_obj
def backup(desk: Desk, folder: Path | None) -> None:
    """Copy the register, and check the copy by opening it."""
    made = copies.back_up(desk.office(), folder)
    click.echo(str(made.file))
    say.facts(_facts(made.size_bytes, made.sha256, made.head))
    say.paragraph(tr("It was opened and is whole. Carry it to another disk: one that burns takes both."))


def _facts(size_bytes: int, sha256: str, head: str) -> list[Fact]:
    size = tr("{count} bytes", count=size_bytes)
    return [Fact(tr("Size"), size), Fact("SHA-256", sha256), Fact(tr("Ledger head"), head)]


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--head", default="", help="A ledger head printed on a document, which the copy must hold.")
@click.pass_obj
def restore(desk: Desk, file: Path, head: str) -> None:
    """Put the copy FILE into a folder that has no register: inspector --register FOLDER restore FILE."""
    made = copies.restore(file, desk.folder, head)
    copies.enter_restored(desk.office(), made)
    click.echo(tr("The register lies in {folder} as it was in the copy.", folder=desk.folder))
    say.facts(_facts(made.size_bytes, made.sha256, made.head))


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
