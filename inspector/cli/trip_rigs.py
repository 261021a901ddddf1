"""Commands of a trip that ask for its rigs: which vehicles can bring out which, and which kit to take."""

from typing import Any

import click

from inspector.cli import rig_account, say
from inspector.cli.rig_options import condition_options, conditions
from inspector.cli.wiring import Desk
from inspector.duties import look_up, work_rigs
from inspector.language import show_day, tr


@click.command()
@click.argument("ref", default="next")
@condition_options
@click.pass_obj
def pairs(desk: Desk, /, ref: str, **given: Any) -> None:
    """Tell for each two vehicles of the trip REF whether its kit makes a sound rig."""
    office = desk.office()
    asked = conditions(office, work_rigs.conditions_of(look_up.trip(office, ref)), given)
    found = work_rigs.pair_trip(office, ref, asked)
    say.heading(tr("{trip}: who can bring out whom", trip=found.trip.name))
    if not found.lines:
        say.paragraph(tr("The trip has fewer than two vehicles."))
        return
    rig_account.pair_lines(found.lines, office.system)
    click.echo()
    say.paragraph(
        tr("Judged for {day}. Nothing here certifies a rig; look at it before each pull.", day=show_day(found.on))
    )


@click.command()
@click.argument("ref", default="next")
@click.option("--set", "sets", is_flag=True, help="Make this the kit of the trip.")
@click.pass_obj
def pack(desk: Desk, ref: str, sets: bool) -> None:
    """Propose a kit by need for the trip REF, from what is fit, in store and not lent."""
    office = desk.office()
    found = work_rigs.pack_trip(office, ref)
    rig_account.packed(found)
    if sets:
        kept = work_rigs.set_kit(office, ref, found)
        click.echo("\n" + tr("The kit of {trip} is {count} pieces now.", trip=kept.ref, count=len(kept.kit)))
