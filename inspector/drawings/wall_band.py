"""The band round a wall's forecast as a face behind the readings, cut to the chart. Millimetres."""

from collections.abc import Sequence

from inspector.drawings.axes import Scale
from inspector.drawings.extent import Box
from inspector.drawings.shapes import Ink, Polygon, Polyline, Shape
from inspector.drawings.wall_words import band_words
from inspector.gear.wall_band import BandAt, WallBand
from inspector.units import System


def band_shapes(band: WallBand | None, across: Scale, down: Scale, plot: Box, system: System) -> list[Shape]:
    """The band and the line in its middle; nothing where no line was laid through the readings."""
    if band is None or len(band.drawn) < 2:
        return []
    days = [_within(across.at(one.on.toordinal()), plot.left, plot.right) for one in band.drawn]
    low, line, high = (
        [(x, _within(down.at(wall), plot.top, plot.bottom)) for x, wall in zip(days, walls, strict=True)]
        for walls in _bounds(band.drawn)
    )
    said = band_words(band, system)
    face = Polygon((*high, *reversed(low)), ink=None, fill=Ink.HAIR, tells=said)
    return [face, Polyline(tuple(line), ink=Ink.FAINT, width_mm=0.2, dash_mm=(0.5, 0.7), tells=said)]


def _bounds(drawn: Sequence[BandAt]) -> tuple[list[float], list[float], list[float]]:
    return [one.low_m for one in drawn], [one.line_m for one in drawn], [one.high_m for one in drawn]


def _within(value: float, low: float, high: float) -> float:
    return min(max(value, low), high)
