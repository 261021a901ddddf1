"""Blocks: pieces of a page that know their height before they are printed. Points, y downwards."""

from collections.abc import Callable, Sequence
from io import BytesIO

from msgspec import Struct
from msgspec.structs import replace
from PIL import Image

from inspector.drawings.shapes import Anchor, Drawing, Ink
from inspector.paper import form, pen
from inspector.paper.page_style import BODY, GRID, MM, Type
from inspector.paper.press import Press
from inspector.paper.shaping import text_width_pt
from inspector.paper.wrap import lines_of

_LEAST_ROOM_PT = 8 * MM
Draw = Callable[[Press, float, float], None]
Fill = Callable[[float], "tuple[Block, Block | None]"]


class Block(Struct, frozen=True):
    """Something printable. draw: with its left and top. gap_pt: air above, dropped at the head of a page.

    parts: what it falls into where it is higher than a whole page. with_next: never the last on a page, as a heading.
    at_foot: stands at the foot of its page, unless it is alone there. again: what stands above it where it begins a
    page, as the names of a table's columns do. fill: with the room on a page, what of it stands there, at least as high
    as the block, and the rest for the next page.
    """

    height_pt: float
    draw: Draw
    gap_pt: float = 0.0
    parts: tuple["Block", ...] = ()
    with_next: bool = False
    at_foot: bool = False
    again: "Block | None" = None
    fill: "Fill | None" = None

    def below(self, gap_pt: float) -> "Block":
        """The same with air above."""
        return replace(self, gap_pt=gap_pt)

    def kept(self) -> "Block":
        """The same, kept with what follows."""
        return replace(self, with_next=True)


def bitmap(png: bytes, side_pt: float) -> Block:
    """A small picture of dots, no side longer than side_pt."""
    with Image.open(BytesIO(png)) as opened:
        width, height = opened.size
    scale = side_pt / max(width, height)

    def draw(press: Press, left: float, top: float) -> None:
        press.image(left, top, width * scale, height * scale, png)

    return Block(height * scale, draw)


def words(text: str, width_pt: float, type_: Type, anchor: Anchor = Anchor.START) -> Block:
    """A paragraph of any length."""
    return stack([_line(line, width_pt, type_, anchor) for line in lines_of(text, width_pt, type_)])


def _line(text: str, width_pt: float, type_: Type, anchor: Anchor) -> Block:
    shift = {Anchor.START: 0.0, Anchor.MIDDLE: width_pt / 2, Anchor.END: width_pt}[anchor]
    base = (type_.leading_pt + type_.size_pt) / 2 - 0.14 * type_.size_pt

    def draw(press: Press, left: float, top: float) -> None:
        press.text(left + shift, top + base, text, type_, anchor)

    return Block(type_.leading_pt, draw)


def stack(blocks: Sequence[Block]) -> Block:
    """Blocks below one another, each with the air it asks for."""
    height = sum(block.gap_pt + block.height_pt for block in blocks)

    def draw(press: Press, left: float, top: float) -> None:
        for block in blocks:
            block.draw(press, left, top + block.gap_pt)
            top += block.gap_pt + block.height_pt

    return Block(height, draw, parts=tuple(blocks))


def row(*cells: tuple[float, Block]) -> Block:
    """Blocks beside one another, each at its distance from the left; where no page is high enough, one by one."""

    def draw(press: Press, left: float, top: float) -> None:
        for across, block in cells:
            block.draw(press, left + across, top)

    height = max((block.height_pt for _, block in cells), default=0.0)
    return Block(height, draw, parts=tuple(_shifted(block, across) for across, block in cells))


def _shifted(block: Block, across_pt: float) -> Block:
    """The block and all its parts further to the right."""

    def draw(press: Press, left: float, top: float) -> None:
        block.draw(press, left + across_pt, top)

    return replace(block, draw=draw, parts=tuple(_shifted(part, across_pt) for part in block.parts))


def space(height_pt: float) -> Block:
    """Air."""
    return Block(height_pt, lambda press, left, top: None)


def rule(width_pt: float, ink: Ink = Ink.HAIR, line_pt: float = 0.5) -> Block:
    """A hairline across."""

    def draw(press: Press, left: float, top: float) -> None:
        press.line(left, top + line_pt / 2, left + width_pt, top + line_pt / 2, ink, line_pt)

    return Block(line_pt, draw)


def picture(drawing: Drawing, scale: float = 1.0) -> Block:
    """A drawing at its own size times scale."""

    def draw(press: Press, left: float, top: float) -> None:
        pen.draw(drawing, press, left, top, scale)

    return Block(drawing.height_mm * MM * scale, draw)


def boxed(inner: Block, width_pt: float) -> Block:
    """A block in a frame; the inner block is to be 6 grid steps narrower. Falls back to its parts without the frame."""
    height = inner.height_pt + 4 * GRID

    def draw(press: Press, left: float, top: float) -> None:
        press.frame(left, top, width_pt, height, 1.2)
        inner.draw(press, left + 3 * GRID, top + 2 * GRID)

    return Block(height, draw, parts=inner.parts)


def blank(label: str, width_pt: float, type_: Type, height_pt: float, field: str = "", says: str = "") -> Block:
    """A label and a line to write on, as wide as the rest leaves. field: its name on a sheet that is read back."""
    title = words(label, width_pt, type_)
    lines = lines_of(label, width_pt, type_)
    height = max(height_pt, title.height_pt)

    def draw(press: Press, left: float, top: float) -> None:
        title.draw(press, left, top + height - title.height_pt)
        start = left + _label_width(lines, type_) + GRID
        end = max(left + width_pt, start)
        press.line(start, top + height - 1, end, top + height - 1, Ink.FAINT, 0.5)
        if field and end - start >= _LEAST_ROOM_PT:
            form.writing_room(press, start, top, end - start, height - 2, field, says or label, BODY)

    return Block(height, draw)


def _label_width(lines: Sequence[str], type_: Type) -> float:
    return text_width_pt(lines[-1], type_.size_pt, bold=type_.bold) if lines else 0.0
