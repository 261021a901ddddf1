"""Commands for copies of the register, and for handing it on."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties import back_up as copies
from inspector.gear.verdict import Fact
from inspector.language import tr


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
