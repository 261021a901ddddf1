"""The picture of a topic of the bench, drawn from the figures of its sums."""

from collections.abc import Callable

from inspector.drawings.bench_lines import speed_picture, strap_picture
from inspector.drawings.bench_pins import ball_picture, pin_picture
from inspector.drawings.bench_tubes import wall_picture, weld_picture
from inspector.drawings.shapes import Drawing
from inspector.gear.bench import Worked
from inspector.units import System

_BY_TOPIC: dict[str, Callable[[Worked, System], Drawing]] = {
    "pin": pin_picture,
    "ball": ball_picture,
    "weld": weld_picture,
    "wall": wall_picture,
    "strap": strap_picture,
    "speed": speed_picture,
}


def bench_picture(worked: Worked, system: System = System.METRIC) -> Drawing:
    """The picture, 118 mm wide and as high as it needs."""
    return _BY_TOPIC[worked.topic](worked, system)
