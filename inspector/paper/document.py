"""A whole document: the head and foot of each page, and the blocks between."""

from collections.abc import Callable, Sequence

from msgspec import Struct

from inspector.drawings.shapes import Anchor, Ink
from inspector.gear.papers import Imprint
from inspector.gear.sheet_layout import SheetLayout
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, bitmap, row, rule, space, stack, words
from inspector.paper.flow import Page, paginate
from inspector.paper.page_style import (
    BODY,
    DISPLAY,
    FOOT_MARGIN,
    GRID,
    HEAD,
    HEAD_MARGIN,
    MM,
    SIDE_MARGIN,
    SMALL,
    PageSize,
)
from inspector.paper.press import Press
from inspector.paper.printed import Printed
from inspector.paper.sheet_marks import CODE_HEAD_PT, CODE_ROOM_PT, draw_marks
from inspector.paper.wrap import lines_of

_RIGHT_PT = 52 * MM
_RIGHT_BY_CODE_PT = 38 * MM
_MARK_PT = 44.0
_PAGE_PT = 34 * MM


class Document(Struct, frozen=True):
    """What is printed: its imprint, what it is about (for the file's own description), its blocks in order.

    code: of a sheet that is read back, the text of the QR code of each page, by its number.
    """

    imprint: Imprint
    subject: str
    blocks: tuple[Block, ...]
    code: Callable[[int], str] | None = None

    def printed(self, page: PageSize) -> Printed:
        """The document on paper of this size."""
        press = Press(page)
        count = self.print_on(press)
        pdf = press.finished()
        layout = SheetLayout(page.width_pt / MM, page.height_pt / MM, tuple(press.pages)) if self.code else None
        return Printed(pdf, count, press.missing_glyphs, layout)

    def print_on(self, press: Press) -> int:
        """Print its pages on a press, behind what was printed there before; how many they are."""
        pages = self._pages(press.page)
        self._describe(press)
        for number, blocks in enumerate(pages, 1):
            self._print_page(press, blocks, number, len(pages))
        return len(pages)

    def fits_one_page(self, page: PageSize) -> bool:
        """Whether all of it stands on one sheet of this size."""
        return len(self._pages(page)) == 1

    def _pages(self, page: PageSize) -> tuple[Page, ...]:
        return paginate(self.blocks, *(self._room(page, first) for first in (True, False)))

    def _room(self, page: PageSize, first: bool) -> float:
        """Height for blocks on a page, in points."""
        head, foot = self._head(page, first), _foot(self.imprint, page, 1, 1)
        return page.height_pt - HEAD_MARGIN - head.height_pt - foot.height_pt - FOOT_MARGIN - 5 * GRID

    def _print_page(self, press: Press, blocks: Page, number: int, count: int) -> None:
        page = press.page
        head, foot = self._head(page, number == 1), _foot(self.imprint, page, number, count)
        if self.code:
            draw_marks(press, self.code(number))
        head.draw(press, SIDE_MARGIN, HEAD_MARGIN)
        foot_top = page.height_pt - FOOT_MARGIN - foot.height_pt
        _print_blocks(press, blocks, HEAD_MARGIN + head.height_pt + 3 * GRID, foot_top - 2 * GRID)
        foot.draw(press, SIDE_MARGIN, foot_top)
        press.next_page()

    def _head(self, page: PageSize, first: bool) -> Block:
        """Club, title, number and date; large on the first page; beside the code where there is one."""
        room_pt = CODE_ROOM_PT if self.code else 0.0
        width_pt, right_pt = page.column_pt - room_pt, _RIGHT_BY_CODE_PT if self.code else _RIGHT_PT
        inner = (_first_head if first else _other_head)(self.imprint, width_pt, right_pt)
        if self.code:
            about = [] if first else [words(_one_line(self.subject, width_pt), width_pt, HEAD).below(2 * GRID)]
            inner = stack([inner, *about])
            inner = stack([inner, space(max(CODE_HEAD_PT - inner.height_pt, 0.0))])
        return stack([inner, rule(page.column_pt, Ink.INK, 0.8).below(1.5 * GRID)])

    def _describe(self, press: Press) -> None:
        imprint = self.imprint
        title = f"{imprint.title} {imprint.number}"
        press.describe(title=title, author=imprint.club, subject=self.subject, keywords=imprint.number)


def _print_blocks(press: Press, blocks: Sequence[Block], top: float, bottom: float) -> None:
    for number, block in enumerate(blocks):
        top += block.gap_pt if number else 0.0
        at = bottom - block.height_pt if block.at_foot and number else top
        block.draw(press, SIDE_MARGIN, at)
        top += block.height_pt


def _one_line(text: str, width_pt: float) -> str:
    """What the first page says in full, as much of it as a line holds."""
    lines = lines_of(text, width_pt - 4 * GRID, HEAD)
    return lines[0] if len(lines) < 2 else f"{lines[0]} …"


def _first_head(imprint: Imprint, width_pt: float, right_pt: float) -> Block:
    left_pt = width_pt - right_pt - 2 * GRID
    left = _named(imprint, left_pt)
    prepared = tr("Prepared by {name}", name=imprint.prepared_by)
    right = stack(
        [
            words(imprint.number, right_pt, HEAD, Anchor.END),
            words(show_day(imprint.on), right_pt, BODY, Anchor.END),
            words(prepared, right_pt, SMALL, Anchor.END),
        ]
    )
    return row((0, left), (left_pt + 2 * GRID, right))


def _named(imprint: Imprint, width_pt: float) -> Block:
    """Club and title, the club's mark before them where it has one."""
    beside = _MARK_PT + 2 * GRID if imprint.mark else 0.0
    names = stack([words(imprint.club, width_pt - beside, BODY), words(imprint.title, width_pt - beside, DISPLAY)])
    return row((0, bitmap(imprint.mark, _MARK_PT)), (beside, names)) if imprint.mark else names


def _other_head(imprint: Imprint, width_pt: float, right_pt: float) -> Block:
    left_pt = width_pt - right_pt - 2 * GRID
    left = words(f"{imprint.club} · {imprint.title}", left_pt, BODY)
    number = words(imprint.number, right_pt, BODY.in_bold(), Anchor.END)
    day = words(show_day(imprint.on), right_pt, SMALL, Anchor.END)
    return row((0, left), (left_pt + 2 * GRID, stack([number, day])))


def _foot(imprint: Imprint, page: PageSize, number: int, count: int) -> Block:
    """The short caution, what the document rests on, its number and the page's."""
    left_pt = page.column_pt - _PAGE_PT - 2 * GRID
    caution = tr(
        "A decision aid. A competent person decides. Follow the maker's instructions. Stay clear of a loaded line."
    )
    rests = tr("Rests on: {grounds}", grounds=" · ".join(imprint.rests_on) or tr("nothing recorded"))
    left = stack([words(caution, left_pt, SMALL.in_ink(Ink.INK)), words(rests, left_pt, SMALL)])
    right = stack(
        [
            words(tr("Page {number} of {count}", number=number, count=count), _PAGE_PT, SMALL.in_bold(), Anchor.END),
            words(imprint.number, _PAGE_PT, SMALL, Anchor.END),
        ]
    )
    return stack([rule(page.column_pt), row((0, left), (left_pt + 2 * GRID, right)).below(GRID)])
