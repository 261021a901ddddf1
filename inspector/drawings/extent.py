"""How much room shapes take, so that labels keep clear of each other and nothing leaves its frame. Millimetres."""

from collections.abc import Iterable
from functools import lru_cache

from msgspec import Struct

from inspector.drawings.shapes import Anchor, Circle, Line, Point, RoundedRect, Shape, Text

_ASCENT = 0.78  # of the type's size
_DESCENT = 0.24
_BOLD = 1.13
_WIDTHS = {  # of the packaged condensed type, in shares of its size, rounded up
    0.28: "'IJijl",
    0.32: " ,./:;\\f|’\u202f\u00a0·",
    0.36: "()-[]t",
    0.4: "!r",
    0.48: '"*?_`sz“”–°',
    0.56: "FLcPTYaekovxy",
    0.6: "$0123456789EKSbdghnpqu{}",
    0.64: "ABCRVXZ",
    0.72: "HNU&DGOQ",
    0.8: "M#+<=>^w~×",
    0.92: "%m@W—…½≥□",
}
_EM = {character: width for width, some in _WIDTHS.items() for character in some}
_OTHER, _FULL = 0.8, 1.05  # letters beyond ASCII; signs as wide as they are high
_FULL_FROM_TO = ((0x0900, 0x10A0), (0x1100, 0x1E00), (0x2E80, 0x110000))  # East Asian ones and those the type lacks


class Box(Struct, frozen=True):
    """An upright rectangle in mm, y downwards."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right, in mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom, in mm."""
        return self.bottom - self.top

    def overlaps(self, other: "Box") -> bool:
        """Whether the two share any room."""
        beside = self.right <= other.left or other.right <= self.left
        return not (beside or self.bottom <= other.top or other.bottom <= self.top)

    def holds(self, other: "Box", slack_mm: float = 0.0) -> bool:
        """Whether the other lies wholly within this one, give or take the slack in mm."""
        across = self.left - slack_mm <= other.left and other.right <= self.right + slack_mm
        return across and self.top - slack_mm <= other.top and other.bottom <= self.bottom + slack_mm


def text_width_mm(text: str, size_mm: float, *, bold: bool = False) -> float:
    """A safe guess of a text's width in mm, never less than the condensed type needs; no font is opened here."""
    return _ems(text) * size_mm * (_BOLD if bold else 1.0)


@lru_cache(maxsize=4096)  # a drawing is fitted to one width after another, and its words stay the same
def _ems(text: str) -> float:
    return sum(_em(character) for character in text)


def _em(character: str) -> float:
    known = _EM.get(character)
    if known is not None:
        return known
    return _FULL if any(first <= ord(character) < end for first, end in _FULL_FROM_TO) else _OTHER


def extent(shape: Shape) -> Box:
    """The room a shape takes in mm, half its line width included."""
    if isinstance(shape, Text):
        return _text_extent(shape)
    bare = _bare(shape)
    edge = shape.width_mm / 2 if shape.ink else 0.0
    return Box(bare.left - edge, bare.top - edge, bare.right + edge, bare.bottom + edge)


def _bare(shape: Shape) -> Box:
    if isinstance(shape, Circle):
        (x, y), r = shape.centre, shape.radius_mm
        return Box(x - r, y - r, x + r, y + r)
    if isinstance(shape, RoundedRect):
        x, y = shape.corner
        return Box(x, y, x + shape.wide_mm, y + shape.high_mm)
    if isinstance(shape, Line):
        return _around((shape.start, shape.end))
    return _text_extent(shape) if isinstance(shape, Text) else _around(shape.points)


def _around(points: Iterable[Point]) -> Box:
    across, down = zip(*points, strict=True)
    return Box(min(across), min(down), max(across), max(down))


def _text_extent(text: Text) -> Box:
    width = text_width_mm(text.text, text.size_mm, bold=text.bold)
    x, y = text.at
    left = x - {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[text.anchor]
    return Box(left, y - _ASCENT * text.size_mm, left + width, y + _DESCENT * text.size_mm)
