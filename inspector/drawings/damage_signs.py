"""The sign of each kind of damage, drawn about a point within 6 mm by 6 mm; a shape each, none told by its colour."""

from collections.abc import Callable

from inspector.drawings.shapes import Circle, Ink, Line, Point, Polygon, RoundedRect, Shape
from inspector.gear.damage import DamageSort

_INK_MM = 0.35
Sign = Callable[[Point], list[Shape]]


def damage_sign(sort: DamageSort, at: Point) -> list[Shape]:
    """The shapes of the sign of a damage about its point in mm."""
    return _SIGNS[sort](at)


def _cut(at: Point) -> list[Shape]:
    """A notch from the upper edge."""
    x, y = at
    points = ((x - 1.1, y - 3.1), (x, y + 1.2), (x + 1.1, y - 3.1))
    return [Polygon(points, fill=Ink.PAPER, width_mm=_INK_MM), Line((x, y + 1.2), (x + 0.6, y + 2.6), width_mm=_INK_MM)]


def _rub(at: Point) -> list[Shape]:
    """Fur."""
    x, y = at
    places = (-2.4, -1.2, 0.0, 1.2, 2.4)
    return [Line((x + one, y + 1.8), (x + one + 0.7, y - 1.8), width_mm=_INK_MM) for one in places]


def _heat(at: Point) -> list[Shape]:
    return [RoundedRect((at[0] - 2.6, at[1] - 1.9), 5.2, 3.8, 1.2, fill=Ink.INK)]


def _seam(at: Point) -> list[Shape]:
    """A run of stitches with a gap."""
    x, y = at
    return [
        Line((x + one - 0.6, y + down), (x + one + 0.6, y - down), width_mm=_INK_MM)
        for one in (-2.2, 2.2)
        for down in (-1.4, 1.4)
    ]


def _eye(at: Point) -> list[Shape]:
    """A ring that is open."""
    x, y = at
    gap = Polygon(((x, y), (x + 3.0, y - 1.2), (x + 3.0, y + 1.2)), ink=Ink.INK, width_mm=0.2, fill=Ink.PAPER)
    return [Circle(at, 2.1, width_mm=0.6), gap]


def _stain(at: Point) -> list[Shape]:
    x, y = at
    return [Circle((x - 0.8, y), 1.6, fill=Ink.FAINT), Circle((x + 1.3, y + 0.5), 1.0, fill=Ink.FAINT)]


def _pale(at: Point) -> list[Shape]:
    return [RoundedRect((at[0] - 2.6, at[1] - 1.9), 5.2, 3.8, fill=Ink.PAPER, width_mm=0.3, dash_mm=(0.6, 0.5))]


def _grit(at: Point) -> list[Shape]:
    x, y = at
    places = ((-2.0, -1.0), (0.2, -1.4), (2.0, -0.6), (-1.0, 0.8), (1.2, 1.2))
    return [Circle((x + across, y + down), 0.4, fill=Ink.INK) for across, down in places]


def _knot(at: Point) -> list[Shape]:
    x, y = at
    return [Circle((x - 0.8, y), 1.5, width_mm=0.5), Circle((x + 0.8, y), 1.5, width_mm=0.5)]


def _other(at: Point) -> list[Shape]:
    x, y = at
    return [Polygon(((x, y - 2.2), (x + 2.2, y), (x, y + 2.2), (x - 2.2, y)), fill=Ink.PAPER, width_mm=_INK_MM)]


_SIGNS: dict[DamageSort, Sign] = {
    DamageSort.CUT: _cut,
    DamageSort.RUB: _rub,
    DamageSort.HEAT: _heat,
    DamageSort.SEAM: _seam,
    DamageSort.EYE: _eye,
    DamageSort.STAIN: _stain,
    DamageSort.PALE: _pale,
    DamageSort.GRIT: _grit,
    DamageSort.KNOT: _knot,
    DamageSort.OTHER: _other,
}
