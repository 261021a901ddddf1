"""The command line: where the register lies, who is at the desk, and which command is meant."""

from pathlib import Path

import click

from inspector.cli import (
    calendar_commands,
    checking,
    exchange,
    faults,
    field_copies,
    gear_papers,
    handouts,
    hands,
    importing,
    incidents,
    keeping,
    moving,
    papers,
    people,
    person_changes,
    reading,
    recalls,
    returning,
    rigs,
    rules,
    server,
    showing,
    speaking,
    stock,
    sums,
    telling,
    trip_rigs,
    trips,
    vehicles,
    visiting,
    whereabouts,
    work,
    writing,
)
from inspector.cli import demo as evening
from inspector.cli.spoken import spoken
from inspector.cli.wiring import Desk, PlaceType, Wiring
from inspector.duties.disturbed import may_repeat
from inspector.duties.found_club import found_club
from inspector.duties.register_place import Place
from inspector.language import tr
from inspector.refused import Refused

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


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.option("--version", is_flag=True, is_eager=True, expose_value=False, callback=_say_version)
@click.option("--register", "folder", type=PlaceType(), help="Folder of the register, or its address on a server.")
@click.option("--officer", default="", help="Who is at the desk; the equipment officer where nobody is named.")
@click.pass_context
def main(context: click.Context, folder: Place | None, officer: str) -> None:
    """Recovery gear register: what each piece is, what is left of it, whether it goes, and why."""
    wiring: Wiring = context.obj
    context.obj = Desk(wiring, folder or wiring.usual_place, officer)


@main.command()
@click.option("--to", "folder", required=True, type=click.Path(path_type=Path), help="Folder to make the sample in.")
@click.option("--no-window", is_flag=True, help="Do not open the window afterwards.")
@click.pass_obj
def demo(desk: Desk, folder: Path, no_window: bool) -> int:
    """Make the sample register and spend an officer's evening on it."""
    return evening.spend_evening(desk.wiring, folder, window=not no_window)


@main.command()
@click.option("--club", required=True, help="The club's name; it stands on every document.")
@click.option("--officer", "name", required=True, help="The equipment officer's name.")
@click.pass_obj
def begin(desk: Desk, club: str, name: str) -> None:
    """Begin an empty register."""
    found_club(desk.wiring.open_office(desk.folder), club, name)
    click.echo(tr("The register of {club} lies in {folder}.", club=club, folder=desk.folder))


@main.command()
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


for _command in (reading.list_command, reading.show, reading.kinds, reading.verify):
    main.add_command(_command)
main.add_command(sums.sums)
main.add_command(handouts.handout)
main.add_command(showing.documents)
main.add_command(telling.ledger)
main.add_command(checking.check)
main.add_command(returning.read_sheets)
for _command in (speaking.doubt, speaking.answer, speaking.strike, speaking.destroyed):
    main.add_command(_command)
main.add_command(rules.rules)
main.add_command(server.server)
for _command in (people.people, people.person, *person_changes.COMMANDS):
    main.add_command(_command)
for _command in (vehicles.vehicle, vehicles.fit, vehicles.unfit, trips.trip):
    main.add_command(_command)
for _command in (writing.book, writing.inspect, writing.use, writing.expose, writing.sheet, writing.notice):
    main.add_command(_command)
for _command in (hands.lend, hands.return_command, hands.loans_command, hands.debrief):
    main.add_command(_command)
for _command in whereabouts.commands:
    main.add_command(_command)
for _command in (work.repair, work.retag, work.label_lost, work.label, work.owner, work.value):
    main.add_command(_command)
for _command in (work.attach, work.attachments):
    main.add_command(_command)
main.add_command(rigs.rig)
for _command in (stock.stock, keeping.backup, keeping.restore, keeping.handover, moving.move, *field_copies.COMMANDS):
    main.add_command(_command)
for _command in (faults.copies, faults.rescue, faults.clock_is_right):
    main.add_command(_command)
for _command in exchange.COMMANDS:
    main.add_command(_command)
main.add_command(incidents.incident)
main.add_command(importing.import_command)
main.add_command(visiting.visit)
for _command in (*calendar_commands.COMMANDS, *gear_papers.COMMANDS, *papers.COMMANDS, *recalls.COMMANDS):
    main.add_command(_command)
for _command in (trip_rigs.pairs, trip_rigs.pack):
    trips.trip.add_command(_command)
