"""Position marks in a picture, found by the lengths of dark and light along its lines: 1:1:3:1:1, from whatever side.

Marks and the corners of a code look the same, and some of what is found is neither; `marks` sorts them out.
"""

import math
from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace
from PIL import Image, ImageChops, ImageFilter

from inspector.paper.photo_sheet.projection import Point

_MODULE_PX = 4.5  # of a mark in the copy that is searched: small enough to be quick, large enough to count dots
_DARK = 0.88  # of the mean around it
_AROUND_MODULES = 6
_SEEN_ON_LINES = 2  # below that it is a chance of letters
_DARK_SIGN, _LIGHT_SIGN = b"\xff", b"\x00"

Run = tuple[int, int]  # where it begins and how long it is


class Bullseye(Struct, frozen=True):
    """middle: in dots of the picture; module_px: width of a module; lines: of the picture on which it was seen."""

    middle: Point
    module_px: float
    lines: int = 1


def bullseyes(image: Image.Image, module_px: float) -> list[Bullseye]:
    """All in a grey picture whose modules are about module_px wide, between half and twice that."""
    scale = min(1.0, _MODULE_PX / module_px)
    small = image.resize((round(image.width * scale), round(image.height * scale)), Image.Resampling.BOX)
    seen = _on_lines(_dark(small))
    return [
        Bullseye((one.middle[0] / scale, one.middle[1] / scale), one.module_px / scale, one.lines)
        for one in _gathered(seen)
        if one.lines >= _SEEN_ON_LINES
    ]


def _dark(image: Image.Image) -> Image.Image:
    """255 where a dot is darker than what is around it."""
    around = image.filter(ImageFilter.BoxBlur(_MODULE_PX * _AROUND_MODULES))
    level = around.point([int(value * _DARK) for value in range(256)])
    return ImageChops.subtract(level, image).point([0] + [255] * 255)


def _on_lines(dark: Image.Image) -> list[Bullseye]:
    """Where a line across shows the lengths, and the line down through its middle shows them too."""
    across, down = dark.tobytes(), dark.transpose(Image.Transpose.TRANSPOSE).tobytes()
    columns: dict[int, list[Run]] = {}
    found = []
    for y in range(dark.height):
        for left, lengths in _fives(_runs(across, y * dark.width, dark.width)):
            x = left + sum(lengths) / 2
            column = int(x)
            if column not in columns:
                columns[column] = _runs(down, column * dark.height, dark.height)
            crossed = _five_through(columns[column], y)
            if crossed and 0.5 < sum(crossed[1]) / sum(lengths) < 2:
                middle = x, crossed[0] + sum(crossed[1]) / 2
                found.append(Bullseye(middle, (sum(lengths) + sum(crossed[1])) / 14))
    return found


def _runs(dots: bytes, start: int, length: int) -> list[Run]:
    """The runs of a line, light and dark in turn; the first is light, if only of no length."""
    runs, at, end, dark = [], start, start + length, False
    while at < end:
        turn = dots.find(_LIGHT_SIGN if dark else _DARK_SIGN, at, end)
        turn = end if turn < 0 else turn
        runs.append((at - start, turn - at))
        at, dark = turn, not dark
    return runs


def _fives(runs: Sequence[Run]) -> list[tuple[int, list[int]]]:
    """Each five runs that begin dark and have the lengths of a mark: where they begin, and the lengths."""
    fives = []
    for first in range(1, len(runs) - 4, 2):
        lengths = [length for _, length in runs[first : first + 5]]
        if _like_a_mark(lengths):
            fives.append((runs[first][0], lengths))
    return fives


def _five_through(runs: Sequence[Run], at: int) -> tuple[int, list[int]] | None:
    """The five runs whose third, a dark one, holds the place."""
    for number in range(3, len(runs) - 2, 2):
        begin, length = runs[number]
        if begin <= at < begin + length:
            lengths = [one for _, one in runs[number - 2 : number + 3]]
            return (runs[number - 2][0], lengths) if _like_a_mark(lengths) else None
        if begin > at:
            return None
    return None


def _like_a_mark(lengths: Sequence[int]) -> bool:
    """1:1:3:1:1 as blur, slant and whole dots leave it."""
    total = sum(lengths)
    if not 12 <= total <= 110:
        return False
    module = total / 7
    slack = 0.55 * module + 0.7
    ends = all(abs(lengths[at] - module) < slack for at in (0, 1, 3, 4))
    return ends and abs(lengths[2] - 3 * module) < 1.3 * module + 0.7


def _gathered(seen: Sequence[Bullseye]) -> list[Bullseye]:
    """What lines of the same mark have seen, as one."""
    marks: list[Bullseye] = []
    for one in seen:
        for at, mark in enumerate(marks):
            if math.dist(mark.middle, one.middle) < 2 * one.module_px:
                marks[at] = _joined(mark, one)
                break
        else:
            marks.append(one)
    return marks


def _joined(mark: Bullseye, one: Bullseye) -> Bullseye:
    count = mark.lines + 1

    def mean(old: float, new: float) -> float:
        return old + (new - old) / count

    middle = mean(mark.middle[0], one.middle[0]), mean(mark.middle[1], one.middle[1])
    return replace(mark, middle=middle, module_px=mean(mark.module_px, one.module_px), lines=count)
