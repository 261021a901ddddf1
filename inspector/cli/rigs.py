"""Commands for rigs: keep one from a file, list them, write one out as a file."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties import keep_rigs
from inspector.duties.rig_files import read_rig, rig_text
from inspector.duties.typed_tables import decoded
from inspector.language import show_day, tr
from inspector.refused import Refused


@click.group()
def rig() -> None:
    """Rigs: which pieces join which vehicles, in what order."""


@rig.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--as", "ref", required=True, help="The reference to keep it under, for example R-01.")
@click.pass_obj
def keep(desk: Desk, file: Path, ref: str) -> None:
    """Keep the rig of FILE in the register."""
    office = desk.office()
    kept = keep_rigs.keep_rig(office, ref, read_rig(decoded(file.read_bytes(), file.name), office.decimal))
    click.echo(tr("{ref} is kept: {name}.", ref=kept.ref, name=kept.rig.name))


@rig.command(name="list")
@click.pass_obj
def list_command(desk: Desk) -> None:
    """List the rigs that are kept."""
    rows = [
        (one.ref, show_day(one.on), one.rig.trip or "–", one.rig.pulling or "–", one.rig.bogged, one.rig.name)
        for one in keep_rigs.rigs(desk.office())
    ]
    if not rows:
        click.echo(tr("No rig is kept yet; `inspector rig keep` takes one from a file."))
        return
    say.table((tr("Ref"), tr("Kept"), tr("Trip"), tr("Pulls"), tr("Is stuck"), tr("Rig")), rows)


@rig.command()
@click.argument("ref")
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.pass_obj
def export(desk: Desk, ref: str, file: Path) -> None:
    """Write the rig REF to FILE; a file that is there already is never overwritten."""
    office = desk.office()
    text = rig_text(keep_rigs.rig(office, ref).rig, office.decimal)
    try:
        with file.open("x", encoding="utf-8", newline="\n") as opened:
            opened.write(text)
    except OSError as error:
        why = tr("It cannot be written ({why}).", why=error.strerror)
        raise Refused(str(file), why, tr("Name another file in a folder that you may write to.")) from error
    click.echo(str(file))
