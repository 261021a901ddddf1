"""The options by which a command is told what is known of a pull."""

from collections.abc import Callable
from typing import Any, TypeVar

import click
from msgspec.structs import replace

from inspector.cli.wiring import choice
from inspector.duties.office import Office
from inspector.gear.rig import Conditions, Footing
from inspector.language import later, tr
from inspector.units import Dimension, read

Command = TypeVar("Command", bound=Callable[..., Any])
_FIGURES = {
    later("slope"): Dimension.ANGLE,
    later("speed"): Dimension.SPEED,
    later("slack"): Dimension.LENGTH,
    later("drive"): Dimension.RATIO,
}
_OPTIONS = (
    click.option("--in", "bogged_in", type=choice(Footing), help="What the stuck vehicle stands in."),
    click.option("--on", "pulling_on", type=choice(Footing), help="What the pulling vehicle stands on."),
    click.option("--slope", default="", help='Uphill, for example "12 °".'),
    click.option("--speed", default="", help='As the line comes taut, for example "6 km/h".'),
    click.option("--slack", default="", help='Lying on the ground, for example "2 m".'),
    click.option("--drive", default="", help='Pull of the wheels, as a share of the weight: "40 %".'),
    click.option("--wet/--dry", "wet", default=None, help="Wet nylon is weaker; wet unless you say dry."),
    click.option("--layers", type=int, help="Layers of line left on the winch drum."),
    click.option("--scale", default="", help="Whose figures for the ground; the largest where none is named."),
    click.option("--distance", "distance_rule", default="", help="Whose rule for the distance; the longest otherwise."),
)


def condition_options(command: Command) -> Command:
    """Give a command all of them."""
    for option in reversed(_OPTIONS):
        command = option(command)
    return command


def conditions(office: Office, usual: Conditions, given: dict[str, Any]) -> Conditions:
    """What was typed, over what is usual for the trip's ground."""
    said: dict[str, Any] = {}
    for key in ("bogged_in", "pulling_on"):
        if given[key]:
            said[key] = Footing(given[key])
    for key, dimension in _FIGURES.items():
        if given[key]:
            said[key] = read(given[key], dimension, field=tr(key), decimal=office.decimal)
    said |= {key: given[key] for key in ("wet", "layers") if given[key] is not None}
    said |= {key: given[key] for key in ("scale", "distance_rule") if given[key]}
    return replace(usual, **said)
