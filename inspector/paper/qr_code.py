"""QR codes as rectangles on the page: sharp at any size, no picture inside the file."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

import segno
from reportlab.pdfgen.pathobject import PDFPathObject

from inspector.drawings.shapes import Ink
from inspector.paper.blocks import Block
from inspector.paper.page_style import MM, colour
from inspector.paper.press import Press

LEAST_MODULE_PT = 0.5 * MM  # a phone reads no smaller module off a dirty label
QUIET_MODULES = 4  # blank on each side of a code, as ISO/IEC 18004 asks

_Matrix = Sequence[Sequence[int]]


def modules_across(text: str, version: int | None = None, error: str = "m") -> int:
    """How many modules the code of a text has on a side, its quiet zone left out."""
    return len(_matrix(text, version, error))


def least_side_pt(text: str, error: str = "m") -> float:
    """The smallest side of the text's block, in points, quiet zone and all, at which its modules are large enough."""
    return (modules_across(text, error=error) + 2 * QUIET_MODULES) * LEAST_MODULE_PT


def qr_code(text: str, side_pt: float) -> Block:
    """The code in a square of side_pt, its quiet zone inside it."""
    module_pt = side_pt / (modules_across(text) + 2 * QUIET_MODULES)
    quiet_pt = QUIET_MODULES * module_pt

    def draw(press: Press, left: float, top: float) -> None:
        draw_qr(press, left + quiet_pt, top + quiet_pt, side_pt - 2 * quiet_pt, text)

    return Block(side_pt, draw)


def draw_qr(
    press: Press,
    left: float,
    top: float,
    side_pt: float,
    text: str,
    version: int | None = None,
    error: str = "m",
) -> None:
    """The code with its top left module at left, top; side_pt without the quiet zone, which is to stay blank around it.

    version: the smallest that holds the text where none is given. error: "l", "m", "q" or "h", and never another.
    """
    matrix = _matrix(text, version, error)
    module_pt = side_pt / len(matrix)
    path: PDFPathObject = press.canvas.beginPath()  # one path: no hairline between modules that touch
    for across, down, count in _runs(matrix):
        bottom = press.up(top + (down + 1) * module_pt)
        path.rect(left + across * module_pt, bottom, count * module_pt, module_pt)
    press.canvas.setFillColor(colour(Ink.INK))
    press.canvas.drawPath(path, stroke=0, fill=1)


@lru_cache(512)  # a code is asked for its size, more than once, before it is drawn; reckoning it takes 1.5 ms
def _matrix(text: str, version: int | None, error: str) -> _Matrix:
    """Rows of 0 and 1. Where text is not ASCII the code says that it is UTF-8, so that no reader has to guess."""
    says_utf8 = not text.isascii()
    code = segno.make(
        text,
        version=version,
        error=error,
        encoding="utf-8" if says_utf8 else None,
        eci=says_utf8,
        micro=False,
        boost_error=False,
    )
    return tuple(tuple(row) for row in code.matrix)


def _runs(matrix: _Matrix) -> Iterator[tuple[int, int, int]]:
    """Dark modules that touch in a row: the first one's place across and down, and how many."""
    for down, row in enumerate(matrix):
        across = 0
        while across < len(row):
            count = 0
            while across + count < len(row) and row[across + count]:
                count += 1
            if count:
                yield across, down, count
            across += count + 1
