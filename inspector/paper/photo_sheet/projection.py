"""From a place on the sheet to its dot in the photo: a flat sheet seen from anywhere is a projective map.

Least squares in plain Python; eight unknowns need no library.
"""

import math
from collections.abc import Sequence

from msgspec import Struct

Point = tuple[float, float]


class Pair(Struct, frozen=True):
    """A place on the sheet (mm) and where it was seen (dots). weight: what it counts in the fit."""

    sheet: Point
    photo: Point
    weight: float = 1.0


class Projection(Struct, frozen=True):
    """Three rows of three factors, the last of them 1."""

    factors: tuple[float, ...]

    def dot(self, place: Point) -> Point:
        """Where a place of the sheet (mm) lies in the photo (dots). Far off where it would lie behind the camera."""
        a, b, c, d, e, f, g, h, i = self.factors
        x, y = place
        depth = g * x + h * y + i
        if abs(depth) < 1e-9:
            return math.inf, math.inf
        return (a * x + b * y + c) / depth, (d * x + e * y + f) / depth

    def dots_per_mm(self, place: Point) -> float:
        """How large the sheet is there, along the way in which it is seen smallest."""
        (x, y), here = place, self.dot(place)
        return min(math.dist(here, self.dot((x + 1, y))), math.dist(here, self.dot((x, y + 1))))


def fitted(pairs: Sequence[Pair]) -> Projection | None:
    """The map nearest to four or more pairs; none where they do not fix one (three in a line, or the same place)."""
    on_sheet, in_photo = _evened([pair.sheet for pair in pairs]), _evened([pair.photo for pair in pairs])
    if on_sheet is None or in_photo is None:
        return None
    rows = [[0.0] * 9 for _ in range(8)]
    for pair in pairs:
        (x, y), (u, v) = on_sheet.to(pair.sheet), in_photo.to(pair.photo)
        _add(rows, (x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y, u), pair.weight)
        _add(rows, (0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y, v), pair.weight)
    solved = _solved(rows)
    return None if solved is None else _back((*solved, 1.0), on_sheet, in_photo)


class _Evened(Struct, frozen=True):
    """Moved to the middle and to a size of about one, without which the sums lose their digits."""

    x: float
    y: float
    scale: float

    def to(self, point: Point) -> Point:
        """A point moved and scaled with them."""
        return (point[0] - self.x) * self.scale, (point[1] - self.y) * self.scale


def _evened(points: Sequence[Point]) -> _Evened | None:
    x = sum(point[0] for point in points) / len(points)
    y = sum(point[1] for point in points) / len(points)
    spread = sum(math.dist(point, (x, y)) for point in points) / len(points)
    return _Evened(x, y, 1 / spread) if spread > 0 and math.isfinite(spread) else None


def _add(rows: list[list[float]], line: tuple[float, ...], weight: float) -> None:
    """Add an equation to the normal equations."""
    for number, row in enumerate(rows):
        factor = line[number] * weight
        if factor:
            for column, value in enumerate(line):
                row[column] += factor * value


def _solved(rows: list[list[float]]) -> list[float] | None:
    """By elimination with the largest pivot; none where the rows do not fix a solution."""
    size = len(rows)
    for number in range(size):
        best = max(range(number, size), key=lambda at: abs(rows[at][number]))
        if abs(rows[best][number]) < 1e-10:
            return None
        rows[number], rows[best] = rows[best], rows[number]
        pivot = rows[number]
        for row in rows[number + 1 :]:
            factor = row[number] / pivot[number]
            for column in range(number, size + 1):
                row[column] -= factor * pivot[column]
    found = [0.0] * size
    for number in reversed(range(size)):
        rest = sum(rows[number][column] * found[column] for column in range(number + 1, size))
        found[number] = (rows[number][size] - rest) / rows[number][number]
    return found


def _back(factors: tuple[float, ...], on_sheet: _Evened, in_photo: _Evened) -> Projection | None:
    """The map between the evened points as one between millimetres and dots."""
    to_even = (
        (on_sheet.scale, 0.0, -on_sheet.scale * on_sheet.x),
        (0.0, on_sheet.scale, -on_sheet.scale * on_sheet.y),
        (0.0, 0.0, 1.0),
    )
    from_even = ((1 / in_photo.scale, 0.0, in_photo.x), (0.0, 1 / in_photo.scale, in_photo.y), (0.0, 0.0, 1.0))
    middle = (factors[0:3], factors[3:6], factors[6:9])
    whole = _times(from_even, _times(middle, to_even))
    last = whole[2][2]
    if abs(last) < 1e-12:
        return None
    return Projection(tuple(value / last for row in whole for value in row))


def _times(left: Sequence[Sequence[float]], right: Sequence[Sequence[float]]) -> tuple[tuple[float, ...], ...]:
    return tuple(
        tuple(sum(left[row][k] * right[k][column] for k in range(3)) for column in range(3)) for row in range(3)
    )
