"""Force arrows, sections that carry, levers: what the sections of joints share. Millimetres."""

from inspector.drawings.shapes import Anchor, Ink, Line, Point, Polygon, Polyline, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM
from inspector.language import tr


def pull_arrow(start: Point, end: Point, width_mm: float, *, back: bool = False) -> list[Shape]:
    """A level force arrow between two points; back: it points to the left."""
    (left, y), (right, _) = start, end
    length, half = 1.5 + 2.2 * width_mm, 0.6 + 1.1 * width_mm
    tip, foot = (left, left + length) if back else (right, right - length)
    shaft = Polyline(((foot, y), (right if back else left, y)), ink=Ink.FORCE, width_mm=width_mm)
    head = Polygon(((tip, y), (foot, y - half), (foot, y + half)), ink=None, fill=Ink.FORCE)
    return [shaft, head]


def cut(start: Point, end: Point) -> list[Shape]:
    """A section that carries the load."""
    said = tr("A section that carries the load")
    return [Line(start, end, ink=Ink.LIMIT, width_mm=0.7, dash_mm=(1.6, 0.8), tells=said)]


def lever(
    at_mm: float, from_mm: float, to_mm: float, words: tuple[str, ...], reach: tuple[float, float]
) -> list[Shape]:
    """An upright distance between the pull at from_mm and the section at to_mm, with words on its left.

    reach: how far the thin lines at both heights run to the right.
    """
    line = Line((at_mm, from_mm), (at_mm, to_mm), width_mm=0.3, tells=tr("Lever of the pull"))
    ends = zip((from_mm, to_mm), reach, strict=True)
    thin = [Line((at_mm - 1.5, y), (right, y), ink=Ink.FAINT, width_mm=0.15) for y, right in ends]
    way = 1.8 if to_mm > from_mm else -1.8
    heads = [Polygon(((at_mm, y), (at_mm - 0.6, y + down), (at_mm + 0.6, y + down)), ink=None, fill=Ink.INK)
             for y, down in ((from_mm, way), (to_mm, -way))]  # fmt: skip
    middle = (from_mm + to_mm) / 2 + 1.0 - (len(words) - 1) * LEADING_MM / 2
    return [*thin, line, *heads, *beside((at_mm - 2.5, middle), words, Anchor.END)]


def beside(at: Point, words: tuple[str, ...], anchor: Anchor = Anchor.START) -> list[Shape]:
    """Words below one another, the first with its baseline at a point."""
    return [
        Text((at[0], at[1] + number * LEADING_MM), line, LABEL_MM, anchor=anchor) for number, line in enumerate(words)
    ]
