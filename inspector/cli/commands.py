"""The command line: where the register lies, who is at the desk, and which command is meant."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from inspector.cli.contents import Contents, entries
from inspector.cli.spoken import spoken
from inspector.cli.wiring import Desk, PlaceType, Wiring
from inspector.language import tr
from inspector.refused import Refused

if TYPE_CHECKING:
    from inspector.duties.register_place import Place

_REFUSED = 2
_FAULT = 3
_TRIES = 3  # of a command that something outside it broke off


def run(wiring: Wiring, arguments: list[str]) -> int:
    """Run the command line; returns the exit code: 0 done, 1 `verify` found faults, 2 refused, 3 a fault of ours."""
    try:
        code = _again_where_disturbed(wiring, arguments)
    except Refused as refusal:
        click.echo(f"{refusal.field}: {refusal.why}\n{refusal.what_to_do}", err=True)
        return _REFUSED
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except (click.Abort, BrokenPipeError):
        return _REFUSED
    except Exception as fault:
        _say_fault(fault, wiring.note_fault(fault))
        return _FAULT
    return code if isinstance(code, int) else 0


def _again_where_disturbed(wiring: Wiring, arguments: list[str]) -> object:
    """The command; once more from its start where something outside it broke it off before anything was kept."""
    for _ in range(_TRIES - 1):
        try:
            return _once(wiring, arguments)
        except Refused as refusal:
            from inspector.duties.disturbed import may_repeat

            if not may_repeat(refusal):
                raise
    return _once(wiring, arguments)


def _once(wiring: Wiring, arguments: list[str]) -> object:
    return spoken(main).main(arguments, "inspector", standalone_mode=False, obj=wiring)


def _say_fault(fault: Exception, noted_in: Path) -> None:
    click.echo(tr("The program met something it did not foresee: {fault}", fault=fault), err=True)
    click.echo(tr("What was being done is not kept; all that was kept before is safe."), err=True)
    click.echo(tr("The details for whoever looks after the program stand in {file}.", file=noted_in), err=True)


def _say_version(context: click.Context, _: click.Parameter, wanted: bool) -> None:
    if wanted:
        click.echo(context.obj.version)
        context.exit()


@click.group(cls=Contents, commands=entries(), context_settings={"help_option_names": ["-h", "--help"]})
@click.option("--version", is_flag=True, is_eager=True, expose_value=False, callback=_say_version)
@click.option("--register", "folder", type=PlaceType(), help="Folder of the register, or its address on a server.")
@click.option("--officer", default="", help="Who is at the desk; the equipment officer where nobody is named.")
@click.pass_context
def main(context: click.Context, folder: "Place | None", officer: str) -> None:
    """Recovery gear register: what each piece is, what is left of it, whether it goes, and why."""
    wiring: Wiring = context.obj
    context.obj = Desk(wiring, folder or wiring.usual_place, officer)
