"""The look of every page: sizes, margins, four sizes of type, inks. Lengths in points, 1/72 in."""

from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace
from reportlab.lib.colors import Color, HexColor
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm

from inspector.drawings.shapes import Ink

MM = float(mm)  # points in a millimetre
GRID = 4.0  # every gap is a multiple of it
SIDE_MARGIN = 16 * MM
HEAD_MARGIN = 11 * MM
FOOT_MARGIN = 10 * MM


class PageSize(StrEnum):
    """The paper in the officer's printer."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def width_pt(self) -> float:
        """Width of the paper in points."""
        return _PAPERS[self][0]

    @property
    def height_pt(self) -> float:
        """Height of the paper in points."""
        return _PAPERS[self][1]

    @property
    def column_pt(self) -> float:
        """Width between the margins in points."""
        return self.width_pt - 2 * SIDE_MARGIN


_PAPERS: dict[PageSize, tuple[float, float]] = {PageSize.A4: A4, PageSize.LETTER: LETTER}


class Type(Struct, frozen=True):
    """A size of type in points with weight and ink."""

    size_pt: float
    bold: bool = False
    ink: Ink = Ink.INK

    @property
    def leading_pt(self) -> float:
        """From one baseline to the next, in points."""
        return self.size_pt * 1.28

    def in_ink(self, ink: Ink) -> "Type":
        """The same type in another ink."""
        return replace(self, ink=ink)

    def in_bold(self) -> "Type":
        """The same type in bold."""
        return replace(self, bold=True)


SMALL = Type(8.0, ink=Ink.FAINT)
BODY = Type(9.5)
HEAD = Type(14.0, bold=True)
DISPLAY = Type(22.0, bold=True)

_ACCENT = HexColor("#86180F")  # the one deep accent: what may not be used, and limits
_INKS: dict[Ink, Color] = {
    Ink.INK: HexColor("#1D1A15"),
    Ink.FAINT: HexColor("#5A5348"),
    Ink.HAIR: HexColor("#B9B0A2"),
    Ink.STEEL: HexColor("#8C9094"),
    Ink.THIN: HexColor("#E6D2B5"),
    Ink.LIMIT: _ACCENT,
    Ink.BAND: HexColor("#F1EBE0"),
    Ink.FORCE: HexColor("#1D1A15"),
    Ink.PAPER: HexColor("#FFFFFF"),  # warm on the screen; the printer's paper stays white
    Ink.MARK: _ACCENT,
}


def colour(ink: Ink) -> Color:
    """The colour of an ink on paper."""
    return _INKS[ink]
