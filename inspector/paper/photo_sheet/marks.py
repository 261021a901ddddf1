"""Which of the bullseyes in a picture are the position marks of a page, and how the page lies by them.

From the code alone the far end of the page cannot be foretold, so each pair of marks is tried with it: the pair by
which most of the other marks are where they should be is right. A mark that is then off its place counts for nothing.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

from msgspec import Struct
from PIL import Image

from inspector.gear.sheet_layout import MARK_MM, SheetPage, Spot
from inspector.paper.photo_sheet.bullseyes import Bullseye, bullseyes
from inspector.paper.photo_sheet.codes import FoundCode
from inspector.paper.photo_sheet.projection import Pair, Point, Projection, fitted

MARKS_NEEDED = 4
MOST_OFF_MM = 1.5  # a mark further off its fitted place is none
_CODE_MOST_OFF_MM = 3.0  # the code is no part of a fit by five marks, so it shows whether the marks are this page's
_CORNER_WEIGHT = 0.1  # its corners are read to a dot or two, over a tenth of the page's length
_GUESS_MM, _GUESS_SHARE = 12.0, 0.4  # how far from its guessed place a mark may be, by its distance from the code
_NEAR_MM, _CLOSE_MM = 14.0, 5.0
_CODE_REACH = 0.8  # of its side: what is nearer to its middle is one of its own corners
_MODULE_MM = MARK_MM / 7


class Lay(Struct, frozen=True):
    """How a page lies in a picture. seen: where each mark that counts was seen, by its number on the page."""

    projection: Projection
    seen: dict[int, Point]
    off_mm: float


def lay_of(image: Image.Image, code: FoundCode, page: SheetPage) -> Lay | None:
    """How a page lies by the most marks that agree, code included; none where fewer than four do."""
    corners = _corner_pairs(code, page.code_spot)
    near = _near_guesses(image, code, page)
    best: Lay | None = None
    for start in _pairs(near, page, corners):
        lay = _grown(start, near, page, corners)
        if lay and (best is None or (len(lay.seen), -lay.off_mm) > (len(best.seen), -best.off_mm)):
            best = lay
            if len(lay.seen) == len(page.marks) and lay.off_mm < MOST_OFF_MM / 2:
                break
    return best


def unseen_marks(image: Image.Image, code: FoundCode, page: SheetPage) -> tuple[list[Spot], list[Spot]]:
    """By the code alone, as seen from straight above: the marks that lie beyond the picture, and those within it near
    whose place nothing like a mark is seen."""
    guess, near = guessed_lay(code, page), _near_guesses(image, code, page)
    seen = _matched(near, page, guess, math.inf)
    beyond: list[Spot] = []
    covered: list[Spot] = []
    for number, mark in enumerate(page.marks):
        x, y = guess.dot(mark.middle)
        if number not in seen:
            within = 0 <= x < image.width and 0 <= y < image.height
            (covered if within else beyond).append(mark)
    return beyond, covered


def guessed_lay(code: FoundCode, page: SheetPage) -> Projection:
    """How the page would lie by its code alone, seen from straight above."""
    return _affine(_corner_pairs(code, page.code_spot))


def _is_no_corner(one: Bullseye, code: FoundCode) -> bool:
    return math.dist(one.middle, code.middle) > _CODE_REACH * code.side_px


def _corner_pairs(code: FoundCode, spot: Spot) -> list[Pair]:
    left, top = spot.left_mm, spot.top_mm
    right, bottom = left + spot.width_mm, top + spot.height_mm
    places = ((left, top), (right, top), (right, bottom), (left, bottom))
    return [Pair(place, corner, _CORNER_WEIGHT) for place, corner in zip(places, code.corners, strict=True)]


def _affine(corners: Sequence[Pair]) -> Projection:
    """Without perspective, which four corners so close together do not tell."""
    (x, y), (u, v) = _mean([pair.sheet for pair in corners]), _mean([pair.photo for pair in corners])
    (a, b), (c, d) = (_slopes(corners, axis) for axis in (0, 1))
    return Projection((a, b, u - a * x - b * y, c, d, v - c * x - d * y, 0.0, 0.0, 1.0))


def _slopes(corners: Sequence[Pair], axis: int) -> tuple[float, float]:
    """By how many dots along an axis of the photo a millimetre across, and one down, moves."""
    first, second, third, fourth = (pair.photo[axis] for pair in corners)
    side = math.dist(corners[0].sheet, corners[1].sheet)
    return (second + third - first - fourth) / 2 / side, (third + fourth - first - second) / 2 / side


def _mean(points: Sequence[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def _near_guesses(image: Image.Image, code: FoundCode, page: SheetPage) -> list[list[Point]]:
    """For each mark of the page the bullseyes that may be it, the nearest to its guessed place first."""
    per_mm = code.side_px / page.code_spot.width_mm
    found = [one for one in bullseyes(image, _MODULE_MM * per_mm) if _is_no_corner(one, code) and _fits(one, per_mm)]
    guess = guessed_lay(code, page)
    near = []
    for mark in page.marks:
        reach = (_GUESS_MM + _GUESS_SHARE * math.dist(mark.middle, page.code_spot.middle)) * per_mm
        place = guess.dot(mark.middle)
        away = sorted((math.dist(one.middle, place), one.middle) for one in found)
        near.append([middle for distance, middle in away if distance < reach])
    return near


def _fits(one: Bullseye, per_mm: float) -> bool:
    return 0.45 < one.module_px / (_MODULE_MM * per_mm) < 1.8


def _pairs(near: Sequence[Sequence[Point]], page: SheetPage, corners: Sequence[Pair]) -> Iterator[list[Pair]]:
    """Two marks with the code, those far apart first, since they tell most."""
    middles = [mark.middle for mark in page.marks]
    far_first = sorted(
        combinations(range(len(middles)), 2), key=lambda two: -math.dist(middles[two[0]], middles[two[1]])
    )
    for one, other in far_first:
        for seen in near[one]:
            for also in near[other]:
                if seen != also:
                    yield [*corners, Pair(middles[one], seen), Pair(middles[other], also)]


def _grown(start: list[Pair], near: Sequence[Sequence[Point]], page: SheetPage, corners: Sequence[Pair]) -> Lay | None:
    """The lay by all marks that are found from this start, those off their place left out one by one."""
    projection = fitted(start)
    seen: dict[int, Point] = {}
    for within_mm in (_NEAR_MM, _CLOSE_MM):
        if projection is None:
            return None
        seen = _matched(near, page, projection, within_mm)
        projection = fitted([*corners, *_mark_pairs(seen, page)])
    while projection and len(seen) >= MARKS_NEEDED:
        off, worst = max((_off_mm(projection, page.marks[mark].middle, dot), mark) for mark, dot in seen.items())
        if off <= MOST_OFF_MM:
            return Lay(projection, seen, off) if _code_agrees(projection, corners) else None
        seen = {mark: dot for mark, dot in seen.items() if mark != worst}
        projection = fitted([*corners, *_mark_pairs(seen, page)])
    return None


def _matched(
    near: Sequence[Sequence[Point]], page: SheetPage, projection: Projection, within_mm: float
) -> dict[int, Point]:
    """For each mark the bullseye nearest to its place, no bullseye for two marks."""
    offs = sorted(
        (_off_mm(projection, mark.middle, dot), number, dot)
        for number, mark in enumerate(page.marks)
        for dot in near[number]
    )
    seen: dict[int, Point] = {}
    for off, number, dot in offs:
        if off < within_mm and number not in seen and dot not in seen.values():
            seen[number] = dot
    return seen


def _mark_pairs(seen: dict[int, Point], page: SheetPage) -> list[Pair]:
    return [Pair(page.marks[number].middle, dot) for number, dot in seen.items()]


def _off_mm(projection: Projection, place: Point, dot: Point) -> float:
    """How far from its place on the sheet a dot of the photo lies; without end where the place is not in front."""
    size = projection.dots_per_mm(place)
    return math.dist(projection.dot(place), dot) / size if 0 < size < math.inf else math.inf


def _code_agrees(projection: Projection, corners: Sequence[Pair]) -> bool:
    middle = _mean([pair.sheet for pair in corners])
    return _off_mm(projection, middle, _mean([pair.photo for pair in corners])) <= _CODE_MOST_OFF_MM
