"""Pieces of paper to be cut apart: their cut lines, and the hole by which one is tied to a piece of gear."""

from collections.abc import Sequence

from msgspec.structs import replace

from inspector.drawings.shapes import Circle, Drawing, Ink, Line
from inspector.language import tr
from inspector.paper.blocks import Block, picture
from inspector.paper.page_style import GRID, Type
from inspector.paper.press import Press
from inspector.paper.shaping import text_width_pt

AROUND_PT = 225.0  # head, foot, margins and cautions of a page
PAD_PT = 2 * GRID  # between a cut line and what stands beside it
_DASH_PT = 4.0
_HOLE_MM = 6.0


def cell_width_pt(width_pt: float, columns: int) -> float:
    """Room for what stands in one cell of a row that wide, in points."""
    return width_pt / columns - 2 * PAD_PT


def cut_rows(cells: Sequence[Block], width_pt: float, columns: int, least_pt: float) -> list[Block]:
    """Cells in rows with their cut lines; a row is higher than least_pt where a cell in it has more to say."""
    rows = [cells[at : at + columns] for at in range(0, len(cells), columns)]
    return [_row(some, width_pt, columns, least_pt) for some in rows]


def _row(cells: Sequence[Block], width_pt: float, columns: int, least_pt: float) -> Block:
    each_pt = width_pt / columns
    height = max(least_pt, *(cell.height_pt + 2 * PAD_PT for cell in cells))

    def draw(press: Press, left: float, top: float) -> None:
        for at, cell in enumerate(cells):
            cell.draw(press, left + at * each_pt + (PAD_PT if at else 0), top + PAD_PT)
        for at in range(1, columns):
            press.dashes(left + at * each_pt, top, left + at * each_pt, _DASH_PT, top + height)
        press.dashes(left, top + height, left + width_pt, _DASH_PT)

    return Block(height, draw)


def hole() -> Block:
    """Where to punch: a ring with a cross in it."""
    half, arm = _HOLE_MM / 2, _HOLE_MM / 6
    shapes = (
        Circle((half, half), half - 0.2, ink=Ink.FAINT),
        Line((half - arm, half), (half + arm, half), ink=Ink.FAINT),
        Line((half, half - arm), (half, half + arm), ink=Ink.FAINT),
    )
    return picture(Drawing(_HOLE_MM, _HOLE_MM, shapes, tr("Hole"), tr("Punch a hole here to tie it by.")))


def fitting_type(text: str, width_pt: float, largest: Type, least_pt: float) -> Type:
    """The type in which the text stands on one line, no larger than largest; at least_pt it may take several."""
    wide = text_width_pt(text, largest.size_pt, bold=largest.bold)
    size = largest.size_pt * min(1.0, width_pt / wide * 0.995) if wide else largest.size_pt
    return replace(largest, size_pt=max(size, least_pt))
