"""One wall of a tube enlarged: as new, now, and what it must keep, each measured from the outer face."""

from msgspec import Struct

from inspector.drawings.extent import Box, extent
from inspector.drawings.shapes import Anchor, Ink, Line, Polygon, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, length_text
from inspector.gear.verdict import WallForecast
from inspector.language import tr
from inspector.units import Dimension, System, show

_BLOCK_MM = 9.0
_ROW_MM = 7.4
STRIP_HEIGHT_MM = LEADING_MM + 1.0 + _BLOCK_MM + 3 * _ROW_MM + 1.0


class _Row(Struct, frozen=True):
    depth_m: float
    words: str
    ink: Ink
    dash_mm: tuple[float, ...] = ()
    bold: bool = False


def strip(wall: WallForecast, left_mm: float, top_mm: float, width_mm: float, system: System) -> list[Shape]:
    """The strip as shapes, width_mm wide and STRIP_HEIGHT_MM high."""
    mm_per_m = strip_scale(wall, width_mm)
    block_top = top_mm + LEADING_MM + 1.0
    block = Box(left_mm, block_top, left_mm + width_mm, block_top + _BLOCK_MM)
    rows = _rows(wall, system)
    shapes = [*_sides(block, top_mm), *_block(wall, block, mm_per_m)]
    for number, row in enumerate(rows):
        shapes.extend(_extension(row, block, number, mm_per_m))
    for number, row in enumerate(rows):
        shapes.extend(_dimension(row, block, number, mm_per_m))
    return shapes


def strip_scale(wall: WallForecast, width_mm: float) -> float:
    """Millimetres of the picture for a metre of wall; the thickest of the three fills the width but for a margin."""
    return (width_mm - 2.0) / max(wall.nominal_m, wall.required_m, wall.wall_now_m)


def enlarged_words(wall: WallForecast, width_mm: float) -> str:
    """How many times the wall is enlarged."""
    times = show(round(strip_scale(wall, width_mm) / 1000, 1), Dimension.FACTOR)
    return tr("The wall beside it is drawn {times} times its size.", times=times)


def _rows(wall: WallForecast, system: System) -> list[_Row]:
    now = tr("estimated {wall}") if wall.estimated else tr("now {wall}")
    dash = (1.4, 0.8) if wall.estimated else ()
    return [
        _Row(wall.nominal_m, tr("new {wall}", wall=length_text(wall.nominal_m, system)), Ink.FAINT, (1.0, 0.8)),
        _Row(wall.required_m, tr("must keep {wall}", wall=length_text(wall.required_m, system)), Ink.LIMIT),
        _Row(wall.wall_now_m, now.format(wall=length_text(wall.wall_now_m, system)), Ink.INK, dash, bold=True),
    ]


def _sides(block: Box, top_mm: float) -> list[Shape]:
    base = top_mm + 0.8 * LEADING_MM
    outside = Text((block.left, base), tr("outside"), LABEL_MM, ink=Ink.FAINT)
    inside = Text((block.right, base), tr("inside"), LABEL_MM, anchor=Anchor.END, ink=Ink.FAINT)
    return [outside, inside]


def _block(wall: WallForecast, block: Box, mm_per_m: float) -> list[Shape]:
    """The steel that is left, and what is gone between it and the new inner face."""
    now = max(wall.wall_now_m, 0.0) * mm_per_m
    new = wall.nominal_m * mm_per_m
    shapes: list[Shape] = []
    if new > now:
        shapes.append(_face(block, now, new, Ink.THIN, tr("Steel that is gone")))
    shapes.append(_face(block, 0.0, now, Ink.STEEL, tr("Steel that is left")))
    outer = Line((block.left, block.top), (block.left, block.bottom), width_mm=0.4)
    limit = wall.required_m * mm_per_m
    return [*shapes, outer, *_lost_word(block, now, limit, new)]


def _face(block: Box, start: float, end: float, fill: Ink, tells: str) -> RoundedRect:
    return RoundedRect((block.left + start, block.top), end - start, block.height, ink=None, fill=fill, tells=tells)


def _lost_word(block: Box, now: float, limit: float, new: float) -> list[Shape]:
    """The word in the wider part of what is gone, so that the line of the limit does not cross it."""
    parts = [(now, limit), (limit, new)] if now < limit < new else [(now, new)]
    start, end = max(parts, key=lambda part: part[1] - part[0])
    at = (block.left + (start + end) / 2, block.top + _BLOCK_MM / 2 + 0.3 * LABEL_MM)
    word = Text(at, tr("gone"), LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT)
    return [word] if extent(word).width < end - start else []


def _extension(row: _Row, block: Box, number: int, mm_per_m: float) -> list[Shape]:
    """From the top of the block down to the row's own line."""
    x = block.left + max(row.depth_m, 0.0) * mm_per_m
    width = 0.45 if row.ink is Ink.LIMIT else 0.3
    line = Line((x, block.top), (x, _line_y(block, number) + 0.8), ink=row.ink, width_mm=width, dash_mm=row.dash_mm)
    outer = Line((block.left, block.bottom), (block.left, _line_y(block, number) + 0.8), ink=Ink.HAIR, width_mm=0.2)
    return [outer, line]


def _line_y(block: Box, number: int) -> float:
    return block.bottom + _ROW_MM * (number + 1)


def _dimension(row: _Row, block: Box, number: int, mm_per_m: float) -> list[Shape]:
    """The row's measuring line with an arrow at each end, and its words above on a patch of paper."""
    y = _line_y(block, number)
    end = block.left + max(row.depth_m, 0.0) * mm_per_m
    words = Text((block.left + 1.0, y - 1.2), row.words, LABEL_MM, bold=row.bold)
    room = extent(words)
    patch = RoundedRect((room.left, room.top + 0.2), room.width, 2.6, ink=None, fill=Ink.PAPER)
    line = Line((block.left, y), (end, y), ink=row.ink, width_mm=0.3)
    heads = [_head(block.left, y, 1, row.ink), _head(end, y, -1, row.ink)] if end - block.left > 4 else []
    return [patch, line, *heads, words]


def _head(x: float, y: float, way: int, ink: Ink) -> Polygon:
    """An arrow head with its tip at x; way 1: it comes from the right, -1: from the left."""
    return Polygon(((x, y), (x + 1.6 * way, y - 0.55), (x + 1.6 * way, y + 0.55)), ink=None, fill=ink)
