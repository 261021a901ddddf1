"""The marks of a life's picture: a shape for each sort of entry, so that none is told by its colour. Millimetres."""

from collections.abc import Callable

from msgspec.structs import replace

from inspector.drawings.change import moved
from inspector.drawings.extent import text_width_mm
from inspector.drawings.marks import outcome_mark
from inspector.drawings.shapes import Anchor, Circle, Ink, Line, Point, Polygon, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM
from inspector.gear.life import LifeEntry, LifeSort
from inspector.language import tr

HALF_MM = 1.5  # half the width and height of a mark
_BUNDLE_HIGH_MM = 3.8
_BUNDLE_EDGE_MM = 0.7
_INK_MM = 0.3


def row_words(sort: LifeSort) -> str:
    """The name of a row."""
    words = {
        LifeSort.VERDICT: tr("Verdict turned"),
        LifeSort.INSPECTION: tr("Inspections"),
        LifeSort.USE: tr("Pulls"),
        LifeSort.EXPOSURE: tr("Salt, mud, sun"),
        LifeSort.LENDING: tr("Lendings"),
        LifeSort.WORK: tr("Repairs, changes"),
        LifeSort.PLACE: tr("Whereabouts"),
        LifeSort.WORD: tr("Doubts, opinions"),
        LifeSort.FILE: tr("Photos, papers"),
        LifeSort.PAPER: tr("Documents printed"),
    }
    return words[sort]


def mark(entry: LifeEntry, at: Point, tells: str) -> list[Shape]:
    """The mark of one entry about a point."""
    if entry.outcome:
        drawn = outcome_mark(entry.outcome, 2 * HALF_MM).shapes
        shapes = [moved(one, at[0] - HALF_MM, at[1] - HALF_MM) for one in drawn]
        return [replace(one, tells=tells) for one in shapes]
    shape = _BUILDERS[entry.sort](at)
    if entry.back:
        shape = _triangle(at, -1)
    return [replace(shape, tells=tells)]


def bundle_width_mm(count: int) -> float:
    """How wide a bundle of so many entries is."""
    return max(text_width_mm(str(count), LABEL_MM) + 2 * _BUNDLE_EDGE_MM, 2 * HALF_MM)


def bundle(count: int, at: Point, tells: str) -> list[Shape]:
    """A frame round the number of the entries that stand for it."""
    wide = bundle_width_mm(count)
    corner = (at[0] - wide / 2, at[1] - _BUNDLE_HIGH_MM / 2)
    frame = RoundedRect(corner, wide, _BUNDLE_HIGH_MM, 0.9, width_mm=_INK_MM, fill=Ink.BAND, tells=tells)
    number = Text((at[0], at[1] + 0.35 * LABEL_MM), str(count), LABEL_MM, anchor=Anchor.MIDDLE, tells=tells)
    return [frame, number]


def stretch(start_mm: float, end_mm: float, y_mm: float) -> Shape:
    """The line of an entry that lasted."""
    return Line((start_mm, y_mm), (max(end_mm, start_mm + 0.1), y_mm), ink=Ink.FAINT, width_mm=0.7)


def _disc(at: Point) -> Shape:
    return Circle(at, HALF_MM - 0.1, ink=None, fill=Ink.INK)


def _ring(at: Point) -> Shape:
    return Circle(at, HALF_MM - 0.3, width_mm=0.4, fill=Ink.PAPER)


def _square(at: Point) -> Shape:
    side = 2 * HALF_MM - 0.5
    return RoundedRect((at[0] - side / 2, at[1] - side / 2), side, side, ink=None, fill=Ink.INK)


def _page(fill: Ink) -> Callable[[Point], Shape]:
    """A sheet of paper, upright."""

    def made(at: Point) -> Shape:
        wide, high = 1.9, 2 * HALF_MM - _INK_MM
        return RoundedRect((at[0] - wide / 2, at[1] - high / 2), wide, high, width_mm=_INK_MM, fill=fill)

    return made


def _diamond(at: Point) -> Shape:
    (x, y), r = at, HALF_MM - 0.2
    return Polygon(((x, y - r), (x + r, y), (x, y + r), (x - r, y)), width_mm=_INK_MM, fill=Ink.PAPER)


def _triangle(at: Point, way: int) -> Shape:
    """way 1: it goes out, to the right; -1: it comes back."""
    (x, y), r = at, HALF_MM - 0.2
    return Polygon(
        ((x - r * way, y - r), (x + r * way, y), (x - r * way, y + r)), width_mm=_INK_MM,
        fill=Ink.INK if way > 0 else Ink.PAPER,
    )  # fmt: skip


def _wedge(at: Point) -> Shape:
    """A triangle on its point."""
    (x, y), r = at, HALF_MM - 0.2
    return Polygon(((x - r, y - r), (x + r, y - r), (x, y + r)), width_mm=_INK_MM, fill=Ink.PAPER)


def _cross(at: Point) -> Shape:
    """A plus with thick arms."""
    r, half = HALF_MM - 0.1, 0.5
    corners = (
        (-half, -r), (half, -r), (half, -half), (r, -half), (r, half), (half, half),
        (half, r), (-half, r), (-half, half), (-r, half), (-r, -half), (-half, -half),
    )  # fmt: skip
    return Polygon(tuple((at[0] + x, at[1] + y) for x, y in corners), ink=None, fill=Ink.INK)


def _house(at: Point) -> Shape:
    (x, y), r = at, HALF_MM - 0.2
    points = ((x, y - r), (x + r, y - 0.2), (x + r, y + r), (x - r, y + r), (x - r, y - 0.2))
    return Polygon(points, width_mm=_INK_MM, fill=Ink.PAPER)


_BUILDERS: dict[LifeSort, Callable[[Point], Shape]] = {
    LifeSort.VERDICT: _ring,
    LifeSort.INSPECTION: _disc,
    LifeSort.USE: _square,
    LifeSort.EXPOSURE: _diamond,
    LifeSort.LENDING: lambda at: _triangle(at, 1),
    LifeSort.WORK: _cross,
    LifeSort.PLACE: _house,
    LifeSort.WORD: _wedge,
    LifeSort.FILE: _page(Ink.PAPER),
    LifeSort.PAPER: _page(Ink.STEEL),
}
