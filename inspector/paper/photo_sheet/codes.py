"""The codes of sheets in a picture. Whose sheet a text belongs to is for the register to say.

Other codes, and texts that a reader sees in the grain of a table, have no fitting check character and are none.
"""

import math

import zxingcpp
from msgspec import Struct
from PIL import Image, ImageFilter, ImageOps

from inspector.gear.sheet_code import read_code
from inspector.paper.photo_sheet.projection import Point

_UNSHARP = ImageFilter.UnsharpMask(radius=3, percent=200, threshold=0)


class FoundCode(Struct, frozen=True):
    """A code's text and its corners in dots, as printed: top left, top right, bottom right, bottom left."""

    text: str
    corners: tuple[Point, Point, Point, Point]

    @property
    def middle(self) -> Point:
        """In dots of the picture."""
        return sum(x for x, _ in self.corners) / 4, sum(y for _, y in self.corners) / 4

    @property
    def side_px(self) -> float:
        """The mean of its four sides."""
        return sum(math.dist(self.corners[at - 1], self.corners[at]) for at in range(4)) / 4


def find_codes(image: Image.Image) -> tuple[FoundCode, ...]:
    """Every sheet's code in a grey picture, from the left; two may lie side by side. Empty where none can be read."""
    for tried in (image, ImageOps.autocontrast(image.filter(_UNSHARP), cutoff=1), image.reduce(2)):
        found = _read(tried, image.width / tried.width)
        if found:
            return found
    return ()


def _read(image: Image.Image, scale: float) -> tuple[FoundCode, ...]:
    read = zxingcpp.read_barcodes(image, formats=zxingcpp.BarcodeFormat.QRCode, try_invert=False)
    found = []
    for one in read:
        if read_code(one.text) is None:
            continue
        at = one.position
        corners = (at.top_left, at.top_right, at.bottom_right, at.bottom_left)
        first, second, third, fourth = ((corner.x * scale, corner.y * scale) for corner in corners)
        found.append(FoundCode(one.text, (first, second, third, fourth)))
    return tuple(sorted(found, key=lambda code: code.middle))
