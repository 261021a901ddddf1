"""Where the boxes and rooms of a sheet came to lie, kept while it is printed."""

from msgspec import Struct, field

from inspector.gear.sheet_layout import Placed, SheetPage, Spot
from inspector.paper.page_style import MM

_PLACES = 3  # of a millimetre: finer than any printer
_NOWHERE = Spot(0.0, 0.0, 0.0, 0.0)


class Placing(Struct):
    """The page in hand; points in, millimetres out. code: the text of its QR code, empty where the page has none."""

    code: str = ""
    code_spot: Spot = _NOWHERE
    marks: tuple[Spot, ...] = ()
    boxes: list[Placed] = field(default_factory=list)
    rooms: list[Placed] = field(default_factory=list)

    def coded(self, code: str, spot: Spot, marks: tuple[Spot, ...]) -> None:
        """The page bears a code and position marks."""
        self.code, self.code_spot, self.marks = code, spot, marks

    def box(self, name: str, left: float, top: float, width_pt: float, height_pt: float) -> None:
        """A box to tick stands there."""
        self.boxes.append(Placed(name, spot_of(left, top, width_pt, height_pt)))

    def room(self, name: str, left: float, top: float, width_pt: float, height_pt: float) -> None:
        """Something is written there."""
        self.rooms.append(Placed(name, spot_of(left, top, width_pt, height_pt)))

    @property
    def page(self) -> SheetPage:
        """The page as it stands."""
        return SheetPage(self.code, self.code_spot, self.marks, tuple(self.boxes), tuple(self.rooms))


def spot_of(left: float, top: float, width_pt: float, height_pt: float) -> Spot:
    """A rectangle in points as one in millimetres."""
    return Spot(*(round(edge / MM, _PLACES) for edge in (left, top, width_pt, height_pt)))
