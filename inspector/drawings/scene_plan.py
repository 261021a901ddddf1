"""The distances of an incident's sketch as lines to one scale, each with its two ends and the figure as typed.

Nobody stated directions, so no plan is made of them: the lines stand below one another and begin at one edge.
"""

import math
from collections.abc import Sequence

from inspector.drawings.shapes import Anchor, Drawing, Ink, Line, Polygon, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.incident import Distance
from inspector.language import tr
from inspector.units import Dimension, System, read, show

_WIDTH_MM = 178.0
_EDGE_MM = 0.5
_TICK_MM = 1.6
_HEAD_MM = 1.8
_ROW_GAP_MM = 2.6
_WORDS_GAP_MM = 0.7
_UNIT = {System.METRIC: "1 m", System.IMPERIAL: "1 ft"}
_SCALE_SHARE = 0.4  # the scale bar is no longer than this share of the longest distance


def scene_plan(distances: Sequence[Distance], system: System = System.METRIC, width_mm: float = _WIDTH_MM) -> Drawing:
    """The lines and the scale; needs at least one distance longer than nothing."""
    mm_per_m = (width_mm - 2 * _EDGE_MM) / max(one.figure.si for one in distances)
    shapes: list[Shape] = []
    top_mm = 0.0
    for one in distances:
        row, high_mm = _row(one, top_mm, mm_per_m, width_mm)
        shapes += row
        top_mm += high_mm
    scale, high_mm = _scale(top_mm, mm_per_m, max(one.figure.si for one in distances), system)
    title = tr("The distances that were measured, to one scale")
    return Drawing(width_mm, top_mm + high_mm, (*shapes, *scale), title, _describes(distances))


def _row(one: Distance, top_mm: float, mm_per_m: float, width_mm: float) -> tuple[list[Shape], float]:
    """The words above their line."""
    shapes: list[Shape] = []
    for text in wrapped(_says(one), (width_mm - 2 * _EDGE_MM) / 1.13):
        shapes.append(Text((_EDGE_MM, top_mm + 0.78 * LEADING_MM), text, LABEL_MM, bold=True))
        top_mm += LEADING_MM
    high_mm = LEADING_MM * len(shapes)
    long_mm = one.figure.si * mm_per_m
    shapes += _measure(top_mm + _WORDS_GAP_MM + _TICK_MM, long_mm, _says(one))
    return shapes, high_mm + _WORDS_GAP_MM + 2 * _TICK_MM + _ROW_GAP_MM


def _measure(y_mm: float, long_mm: float, tells: str) -> list[Shape]:
    """A line between two strokes, with arrow heads where they have room."""
    start, end = _EDGE_MM, _EDGE_MM + long_mm
    strokes = [Line((x, y_mm - _TICK_MM), (x, y_mm + _TICK_MM), width_mm=0.35) for x in (start, end)]
    found: list[Shape] = [*strokes, Line((start, y_mm), (end, y_mm), width_mm=0.35, tells=tells)]
    if long_mm > 3 * _HEAD_MM:
        found += [_arrow(start, y_mm, 1), _arrow(end, y_mm, -1)]
    return found


def _arrow(x_mm: float, y_mm: float, way: int) -> Polygon:
    tip = (x_mm, y_mm)
    return Polygon(
        (tip, (x_mm + way * _HEAD_MM, y_mm - 0.6), (x_mm + way * _HEAD_MM, y_mm + 0.6)), ink=None, fill=Ink.INK
    )


def _scale(top_mm: float, mm_per_m: float, longest_m: float, system: System) -> tuple[list[Shape], float]:
    """A bar of a round length, and what the lines do not tell."""
    per_unit_m = read(_UNIT[system], Dimension.LENGTH, field=tr("scale")).si
    bar_m = _round_below(longest_m * _SCALE_SHARE / per_unit_m) * per_unit_m
    end, y_mm = _EDGE_MM + bar_m * mm_per_m, top_mm + 1.0
    bar: list[Shape] = [
        Line((_EDGE_MM, y_mm), (end, y_mm), width_mm=1.0, ink=Ink.FAINT),
        Text((end + 1.5, y_mm + 0.3 * LABEL_MM), show(bar_m, Dimension.LENGTH, system), LABEL_MM, ink=Ink.FAINT),
    ]
    note = tr("All lines to one scale. Directions were not stated: the lines do not show what lies beside what.")
    told = Text((_EDGE_MM, y_mm + 1.4 * LEADING_MM), note, LABEL_MM, anchor=Anchor.START, ink=Ink.FAINT)
    return [*bar, told], 1.0 + 2 * LEADING_MM


def _round_below(value: float) -> float:
    """1, 2 or 5 times a power of ten, not above the value."""
    power = 10.0 ** math.floor(math.log10(value))
    return max(step * power for step in (1.0, 2.0, 5.0) if step * power <= value * (1 + 1e-9))


def _says(one: Distance) -> str:
    return tr("{one} to {other}: {figure}", one=one.one, other=one.other, figure=one.figure.as_typed)


def _describes(distances: Sequence[Distance]) -> str:
    return "; ".join(_says(one) for one in distances) + "."
