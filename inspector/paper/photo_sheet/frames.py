"""Where the printed frame of each box really is on a straightened page: curled paper shifts it by a millimetre or two.

Each frame is looked for by itself; one that went another way than its neighbours is looked for again where they say.
"""

import math
from collections.abc import Sequence
from statistics import median

from msgspec import Struct
from PIL import Image

from inspector.gear.sheet_layout import Spot
from inspector.paper.photo_sheet.straight import DOTS_PER_MM, WHITE

SEARCH_MM = 2.2
_AGAIN_MM = 0.5
_STRAY_MM = 0.6  # from where the neighbours are
_APART_MM = 0.8  # of two that stand next to each other
_NEIGHBOURS = 8
_CORNER_MM = 1.0  # at each end of a side that tells nothing of the other sides
_OUTSIDE_MM = 0.8
_PER_DOT_AWAY = 0.5  # darkness that a dot further from its place must bring


class Frame(Struct, frozen=True):
    """A frame as it was found. left, top: dots of the page; side: dots; off_mm: from where it was printed.

    shown: how much darker than what is outside of it its weakest side is, 0 to 1.
    """

    left: int
    top: int
    side: tuple[int, int]
    off_mm: tuple[float, float]
    shown: float


def frames_of(page: Image.Image, spots: Sequence[Spot]) -> list[Frame]:
    """The frame of each spot on an evened page, in their order."""
    first = [_found(page, spot, (0.0, 0.0), SEARCH_MM) for spot in spots]
    again = []
    for number, spot in enumerate(spots):
        told = _as_neighbours_say(number, spots, first)
        strays = math.dist(told, first[number].off_mm) > _STRAY_MM
        again.append(_found(page, spot, told, _AGAIN_MM) if strays else first[number])
    return again


def strays_of(frames: Sequence[Frame], spots: Sequence[Spot]) -> set[int]:
    """The frames that lie another way off than the nearest one: paper bends gently, so one of the two is none.

    A column of words can look like a column of frames, and then its members agree; what stands beside it does not.
    """
    strays = set()
    for number, spot in enumerate(spots):
        others = [(math.dist(spot.middle, other.middle), at) for at, other in enumerate(spots) if at != number]
        if others and math.dist(frames[number].off_mm, frames[min(others)[1]].off_mm) > _APART_MM:
            strays |= {number, min(others)[1]}
    return strays


def _as_neighbours_say(number: int, spots: Sequence[Spot], frames: Sequence[Frame]) -> tuple[float, float]:
    here = spots[number].middle
    others = sorted((math.dist(here, spot.middle), at) for at, spot in enumerate(spots) if at != number)
    near = [frames[at].off_mm for _, at in others[:_NEIGHBOURS]] or [frames[number].off_mm]
    return median(x for x, _ in near), median(y for _, y in near)


def _found(page: Image.Image, spot: Spot, off_mm: tuple[float, float], search_mm: float) -> Frame:
    """The frame nearest to where it should be that is dark on both sides and light outside."""
    side = round(spot.width_mm * DOTS_PER_MM), round(spot.height_mm * DOTS_PER_MM)
    reach = round((search_mm + _OUTSIDE_MM) * DOTS_PER_MM)
    left = round((spot.left_mm + off_mm[0]) * DOTS_PER_MM) - reach
    top = round((spot.top_mm + off_mm[1]) * DOTS_PER_MM) - reach
    crop = page.crop((left, top, left + side[0] + 2 * reach + 1, top + side[1] + 2 * reach + 1))
    across, shown_across = _line_pair(_profile(crop, reach, down=False), side[0], reach)
    down, shown_down = _line_pair(_profile(crop, reach, down=True), side[1], reach)
    found = left + across, top + down
    off = found[0] / DOTS_PER_MM - spot.left_mm, found[1] / DOTS_PER_MM - spot.top_mm
    return Frame(*found, side, off, min(shown_across, shown_down))


def _profile(crop: Image.Image, reach: int, *, down: bool) -> list[int]:
    """The mean darkness of each column, or of each line of dots, the corners of the frame left out."""
    inset = reach + round(_CORNER_MM * DOTS_PER_MM)
    width, height = crop.size
    box = (0, inset, width, height - inset) if not down else (inset, 0, width - inset, height)
    line = crop.resize((1, height) if down else (width, 1), Image.Resampling.BOX, box=box)
    return [WHITE - value for value in line.tobytes()]


def _line_pair(dark: Sequence[int], side: int, reach: int) -> tuple[int, float]:
    """Where the first of two lines so far apart begins, and how dark the weaker of them is."""
    outside = round(_OUTSIDE_MM * DOTS_PER_MM)
    scores = []
    for at in range(outside, len(dark) - side - outside):
        lines = dark[at] + dark[at + side]
        beyond = dark[at - outside] + dark[at + side + outside]
        scores.append((lines - 0.5 * max(beyond, 0) - _PER_DOT_AWAY * abs(at - reach), at))
    best = max(scores)[1]
    first = _peak(dark, best) - max(dark[best - outside], 0)
    second = _peak(dark, best + side) - max(dark[best + side + outside], 0)
    return best, max(0.0, min(first, second) / WHITE)


def _peak(dark: Sequence[int], at: int) -> int:
    return max(dark[at - 1 : at + 2])
