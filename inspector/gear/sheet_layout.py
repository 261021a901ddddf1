"""Where the boxes of a printed sheet lie, and the marks by which a photo of it is straightened.

Millimetres, y downwards from the top left of the paper.
"""

from msgspec import Struct

MARK_MM = 9.1  # side of a position mark: seven modules of 1.3 mm, dark and light as 1:1:3:1:1
CODE_MM = 22.0  # side of the QR code without its quiet zone
CODE_MODULES = 21  # of a QR code of the smallest version


class Spot(Struct, frozen=True):
    """A rectangle on the page."""

    left_mm: float
    top_mm: float
    width_mm: float
    height_mm: float

    @property
    def middle(self) -> tuple[float, float]:
        """Its middle, across and down."""
        return self.left_mm + self.width_mm / 2, self.top_mm + self.height_mm / 2


class Placed(Struct, frozen=True):
    """A box to tick, or a room to write in, under the name of its field."""

    name: str
    spot: Spot


class SheetPage(Struct, frozen=True):
    """One page. code: the text of its QR code, which stands without its quiet zone at code_spot; marks: position marks.

    boxes: the printed frames to tick; rooms: where something is written.
    """

    code: str
    code_spot: Spot
    marks: tuple[Spot, ...]
    boxes: tuple[Placed, ...]
    rooms: tuple[Placed, ...]


class SheetLayout(Struct, frozen=True):
    """All pages of a sheet, on paper of this size."""

    width_mm: float
    height_mm: float
    pages: tuple[SheetPage, ...]
