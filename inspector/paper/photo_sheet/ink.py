"""What ink lies in a box and around it, as figures; `box_reading` says what they mean."""

import math
from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct
from PIL import Image, ImageChops, ImageDraw, ImageFilter

from inspector.paper.photo_sheet.frames import Frame
from inspector.paper.photo_sheet.straight import DOTS_PER_MM

SECTORS = 16
_AROUND_MM = 3.6  # of the frame, that a ring is looked for in
_INSET_MM = 0.8  # what is nearer to the frame is taken for the frame
_MIDDLE_MM = 3.0
_STRIP_MM = (0.75, 1.25)  # from the frame outwards: paper that the print leaves free
_RING_FROM_MM = 0.5
_LINE_MM = 0.55  # to each side of a printed frame
_WIDE_MM = 1.0  # to each side: what is dark over more than that is no stroke
_PAPER_SHARE = 0.6  # of a box and its surroundings about a fifth is ink or print: this is the middle of what is paper
_PEAK_SHARE, _HOLE_SHARE = 0.03, 0.08
_SECTOR_DOTS = 4

Corners = tuple[int, int, int, int]


class Ink(Struct, frozen=True):
    """Shares run from 0 to 1, of area or of the paper's light.

    share: of the inside that is ink; hole: how dark its lightest twelfth is; dark: how much darker than paper it is in
    the mean; peak: how dark the darkest is; stroke: how much darker than its own surroundings the darkest line is;
    middle: share of the middle that is ink; extent_mm: the longer side of the rectangle that holds the ink; filled:
    share of that rectangle that is ink; strips_mm2: ink just outside the frame, at its left, top, right and bottom;
    sectors: of 16 round the frame, those in which there is ink.
    """

    share: float
    hole: float
    dark: float
    peak: float
    stroke: float
    middle: float
    extent_mm: float
    filled: float
    strips_mm2: tuple[float, float, float, float]
    sectors: int


def ink_of(page: Image.Image, frame: Frame, others: Sequence[Frame], least_dark: float) -> Ink:
    """The ink in and around a frame of an evened page. others: frames near it; least_dark: from which on it is ink."""
    around = round(_AROUND_MM * DOTS_PER_MM)
    corner = frame.left - around, frame.top - around
    size = frame.side[0] + 2 * around + 1, frame.side[1] + 2 * around + 1
    crop = page.crop((*corner, corner[0] + size[0], corner[1] + size[1]))
    paper = at_share(crop.histogram(), _PAPER_SHARE)
    level = paper * (1 - least_dark)
    marks = crop.point([255 if value < level else 0 for value in range(256)])
    _wipe_frames(marks, corner, others)
    box = (around, around, around + frame.side[0], around + frame.side[1])
    inside = _inset(box, _INSET_MM)
    histogram = crop.crop(inside).histogram()
    extent = marks.crop(inside).getbbox() or (0, 0, 0, 0)
    across, down = extent[2] - extent[0], extent[3] - extent[1]
    return Ink(
        _share(marks, inside),
        1 - at_share(histogram, 1 - _HOLE_SHARE) / max(paper, 1),
        1 - _mean(histogram) / max(paper, 1),
        1 - at_share(histogram, _PEAK_SHARE) / max(paper, 1),
        _stroke(crop, inside) / max(paper, 1),
        _share(marks, _inset(box, (frame.side[0] / DOTS_PER_MM - _MIDDLE_MM) / 2)),
        max(across, down) / DOTS_PER_MM,
        _share(marks.crop(inside), extent),
        _strips(marks, box),
        _sectors(marks, box),
    )


def at_share(histogram: Sequence[int], share: float) -> int:
    """The value below which so great a share lies."""
    wanted, seen = sum(histogram) * share, 0
    for value, count in enumerate(histogram):
        seen += count
        if seen >= wanted:
            return value
    return 255


def _mean(histogram: Sequence[int]) -> float:
    return sum(value * count for value, count in enumerate(histogram)) / max(sum(histogram), 1)


def _stroke(crop: Image.Image, inside: Corners) -> int:
    lines = ImageChops.subtract(crop.filter(ImageFilter.BoxBlur(_WIDE_MM * DOTS_PER_MM)), crop)
    return at_share(lines.crop(inside).histogram(), 1 - _PEAK_SHARE)


def _inset(box: Corners, by_mm: float) -> Corners:
    by = round(by_mm * DOTS_PER_MM)
    return box[0] + by, box[1] + by, box[2] - by + 1, box[3] - by + 1


def _share(marks: Image.Image, box: Corners) -> float:
    histogram = marks.crop(box).histogram()
    return histogram[255] / max(sum(histogram), 1)


def _wipe_frames(marks: Image.Image, corner: tuple[int, int], others: Sequence[Frame]) -> None:
    """Take the printed lines of other frames out, so that they are no ink."""
    draw, wide = ImageDraw.Draw(marks), 2 * round(_LINE_MM * DOTS_PER_MM) + 1
    for other in others:
        left, top = other.left - corner[0], other.top - corner[1]
        right, bottom = left + other.side[0], top + other.side[1]
        draw.line([(left, top), (right, top), (right, bottom), (left, bottom), (left, top)], fill=0, width=wide)


def _strips(marks: Image.Image, box: Corners) -> tuple[float, float, float, float]:
    near, far = (round(edge * DOTS_PER_MM) for edge in _STRIP_MM)
    left, top, right, bottom = box
    strips = (
        (left - far, top, left - near, bottom),
        (left, top - far, right, top - near),
        (right + near + 1, top, right + far + 1, bottom),
        (left, bottom + near + 1, right, bottom + far + 1),
    )
    first, second, third, fourth = (marks.crop(strip).histogram()[255] / DOTS_PER_MM**2 for strip in strips)
    return first, second, third, fourth


def _sectors(marks: Image.Image, box: Corners) -> int:
    masks = _sector_masks(marks.size, box)
    return sum(marks.histogram(mask)[255] >= _SECTOR_DOTS for mask in masks)


@lru_cache(maxsize=16)
def _sector_masks(size: tuple[int, int], box: Corners) -> tuple[Image.Image, ...]:
    """Sixteen slices of what lies between the frame and a circle round it."""
    middle, reach = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), min(size) / 2
    circle = (middle[0] - reach, middle[1] - reach, middle[0] + reach, middle[1] + reach)
    masks = []
    for number in range(SECTORS):
        mask = Image.new("L", size, 0)
        draw = ImageDraw.Draw(mask)
        draw.pieslice(circle, 360 * number / SECTORS, 360 * (number + 1) / SECTORS, fill=255)
        by = math.ceil(_RING_FROM_MM * DOTS_PER_MM)
        draw.rectangle((box[0] - by, box[1] - by, box[2] + by, box[3] + by), fill=0)
        masks.append(mask)
    return tuple(masks)
