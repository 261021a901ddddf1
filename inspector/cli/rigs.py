"""Commands for rigs: check one, propose one, keep one from a file, list them, write one out as a file."""

from pathlib import Path
from typing import Any

import click

from inspector.cli import rig_account, say
from inspector.cli.rig_options import condition_options, conditions
from inspector.cli.wiring import Desk, choice
from inspector.duties import keep_rigs, look_up, work_rigs
from inspector.duties.office import Office
from inspector.duties.print_rig_sheet import print_rig_sheet
from inspector.duties.rig_files import rig_of_file, rig_text
from inspector.gear.rig import Method, Rig
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
    kept = keep_rigs.keep_rig(office, ref, rig_of_file(file, office.decimal))
    click.echo(tr("{ref} is kept: {name}.", ref=kept.ref, name=kept.rig.name))


@rig.command()
@click.argument("which")
@click.option("--print", "prints", is_flag=True, help="Print the rig sheet as well.")
@click.pass_obj
def check(desk: Desk, which: str, prints: bool) -> None:
    """Check the rig WHICH: the reference of a kept one, or a file."""
    office = desk.office()
    found = work_rigs.work_rig(office, rig_called(office, which))
    rig_account.result(found, office.system)
    if prints:
        say.paper(print_rig_sheet(office, found))


def rig_called(office: Office, which: str) -> Rig:
    """The rig of a file, if there is one with that name, else the kept one."""
    file = Path(which)
    if _is_file(file):
        return rig_of_file(file, office.decimal)
    return keep_rigs.rig(office, which).rig


def _is_file(file: Path) -> bool:
    try:
        return file.is_file()
    except (OSError, ValueError):  # no file can have such a name
        return False


@rig.command()
@click.argument("trip")
@click.option("--pulling", required=True, help="Tag of the vehicle that pulls, or carries the winch.")
@click.option("--bogged", required=True, help="Tag of the vehicle that is stuck.")
@click.option("--method", type=choice(Method), default=Method.KINETIC.value, show_default=True)
@condition_options
@click.option("--print", "prints", is_flag=True, help="Print the rig sheet as well.")
@click.option("--as", "ref", default="", help="Keep it under this reference.")
@click.pass_obj
def propose(desk: Desk, /, trip: str, pulling: str, bogged: str, method: str, **given: Any) -> None:
    """Propose the best rig of the kit of TRIP for two of its vehicles."""
    office = desk.office()
    usual = work_rigs.conditions_of(look_up.trip(office, trip))
    asked = conditions(office, usual, given)
    found = work_rigs.propose_rig(office, trip, Method(method), pulling, bogged, asked)
    rig_account.proposed(found, office.system)
    if found.result is None:
        return
    if given["ref"]:
        kept = keep_rigs.keep_rig(office, given["ref"], found.result.rig)
        click.echo(tr("{ref} is kept: {name}.", ref=kept.ref, name=kept.rig.name))
    if given["prints"]:
        say.paper(print_rig_sheet(office, found.result))


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
