"""From what is typed at a measure to a reading; no window in here."""

import re

from msgspec import Struct

from inspector.duties.plausible import reading_name
from inspector.gear.inspection import Method, Reading, Surface
from inspector.gear.kind import Measure
from inspector.units import Dimension, read

_BARE = re.compile(r"^[\d.,/ ]+$")
_UNIT = re.compile(r"[\d.,/ ](?P<unit>[^\d.,/ ].*)$")


class How(Struct, frozen=True):
    """How a measure was taken. method None: not said yet."""

    method: Method | None
    surface: Surface = Surface.NOT_STATED
    block_checked: bool | None = None


def methods_for(measure: Measure) -> tuple[Method, ...]:
    """The ways this measure can be taken, the usual one first."""
    if measure.dimension is Dimension.COUNT:
        return (Method.COUNTED,)
    if measure.key == "wall":
        return (Method.ULTRASONIC_BARE, Method.ULTRASONIC_PAINT, Method.CALLIPER)
    return (Method.CALLIPER, Method.TAPE)


def must_say_method(measure: Measure) -> bool:
    """Whether the way counts so much that none is taken for granted: a gauge through paint reads too thick."""
    return measure.key == "wall"


def is_gauge(method: Method | None) -> bool:
    """Whether the method is a thickness gauge, which is tried on its block and stands on a face."""
    return method in {Method.ULTRASONIC_BARE, Method.ULTRASONIC_PAINT}


def reading_of(measure: Measure, point: str, text: str, how: How, decimal: str) -> Reading:
    """The reading; refused where the figure is not clear. A way not said yet must be asked for before it is kept."""
    figure = read(text, measure.dimension, field=reading_name(measure, point), decimal=decimal)
    gauge = is_gauge(how.method)
    surface = how.surface if gauge else Surface.NOT_STATED
    return Reading(
        measure=measure.key,
        figure=figure,
        point=point,
        method=how.method or Method.CALLIPER,
        surface=surface,
        block_checked=how.block_checked if gauge else None,
    )


def with_unit(text: str, others: tuple[str, ...]) -> str:
    """The text with the unit that was typed at another place of the same measure, where it has none itself."""
    bare = text.strip()
    if not _BARE.match(bare):
        return text
    units = (_UNIT.search(other.strip()) for other in others)
    return next((f"{bare} {unit['unit'].strip()}" for unit in units if unit), text)
