"""The command that takes somebody else's piece along on one trip."""

from typing import Any

import click

from inspector.cli import say, typed
from inspector.cli.booking import rated
from inspector.cli.wiring import Desk, choice
from inspector.duties import visit as deeds
from inspector.gear.item import NewItem
from inspector.gear.kind import Basis
from inspector.language import tr
from inspector.refused import Refused


@click.command()
@click.argument("trip")
@click.option("--again", default="", help="Tag of a piece that came along before; nothing else is needed then.")
@click.option("--kind", "key", default="", help="Kind of gear; `inspector kinds` lists them.")
@click.option("--owner", default="", help="The member or the club it belongs to.")
@click.option("--tag", default="", help="Its tag; one is proposed where none is given.")
@click.option("--rating", default="", help='As marked, for example "4.75 t".')
@click.option("--basis", type=choice(Basis), default=Basis.UNRATED.value, show_default=True)
@click.option("--factor", default="", help="Design factor behind a working load limit.")
@click.option(
    "--stated-on",
    type=click.Choice(["piece", "certificate", "memory"]),
    default=None,
    help="Where the rating was read; with a rating it must be said. One from memory counts for nothing.",
)
@click.option("--size", "sizes", multiple=True, help='Size as new, "length=9 m"; may be given again.')
@click.option("--maker-mark", default="")
@click.option("--serial", default="")
@click.option("--made-on", default="")
@click.option("--note", default="")
@click.pass_obj
def visit(desk: Desk, /, trip: str, again: str, key: str, **more: Any) -> None:
    """Take a member's or another club's piece along on TRIP alone; it goes into the trip's kit and is judged."""
    office = desk.office()
    if again:
        outcome = deeds.visit_again(office, trip, again)
    elif key:
        outcome = deeds.visit(office, trip, _guest(desk, key, more))
    else:
        why = tr("It is not said what comes along.")
        raise Refused(tr("kind"), why, tr("Write --kind for a new piece, or --again with the tag of one known."))
    tag = outcome.dossier.item.tag
    click.echo(tr("It came along as {tag}; write the tag on it.", tag=tag))
    say.verdict_in_full(outcome)


def _guest(desk: Desk, key: str, more: dict[str, Any]) -> NewItem:
    office = desk.office()
    return NewItem(
        more["tag"],
        key,
        rated(office, more["rating"], more["basis"], more["factor"], more["stated_on"]),
        maker_mark=more["maker_mark"],
        serial=more["serial"],
        sizes=typed.sizes(office, office.kind(key), more["sizes"]),
        owner=more["owner"].strip(),
        made_on=typed.day(more["made_on"], office.today) if more["made_on"] else None,
        note=more["note"],
    )
