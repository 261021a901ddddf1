"""A whole document: the head and foot of each page, and the blocks between."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.drawings.shapes import Anchor, Ink
from inspector.gear.papers import Imprint
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, bitmap, row, rule, stack, words
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

_RIGHT_PT = 52 * MM
_MARK_PT = 44.0
_PAGE_PT = 34 * MM


@dataclass(frozen=True, slots=True)
class Document:
    """What is printed: its imprint, what it is about (for the file's own description), its blocks in order."""

    imprint: Imprint
    subject: str
    blocks: tuple[Block, ...]

    def printed(self, page: PageSize) -> Printed:
        """The document on paper of this size."""
        press = Press(page)
        count = self.print_on(press)
        return Printed(press.finished(), count, press.missing_glyphs)

    def print_on(self, press: Press) -> int:
        """Print its pages on a press, behind what was printed there before; how many they are."""
        pages = self._pages(press.page)
        self._describe(press)
        for number, blocks in enumerate(pages, 1):
            _print_page(press, self.imprint, blocks, number, len(pages))
        return len(pages)

    def fits_one_page(self, page: PageSize) -> bool:
        """Whether all of it stands on one sheet of this size."""
        return len(self._pages(page)) == 1

    def _pages(self, page: PageSize) -> tuple[Page, ...]:
        return paginate(self.blocks, *(_room(self.imprint, page, first) for first in (True, False)))

    def _describe(self, press: Press) -> None:
        imprint = self.imprint
        title = f"{imprint.title} {imprint.number}"
        press.describe(title=title, author=imprint.club, subject=self.subject, keywords=imprint.number)


def _room(imprint: Imprint, page: PageSize, first: bool) -> float:
    """Height for blocks on a page, in points."""
    head, foot = _head(imprint, page, first), _foot(imprint, page, 1, 1)
    return page.height_pt - HEAD_MARGIN - head.height_pt - foot.height_pt - FOOT_MARGIN - 5 * GRID


def _print_page(press: Press, imprint: Imprint, blocks: Page, number: int, count: int) -> None:
    page = press.page
    head, foot = _head(imprint, page, number == 1), _foot(imprint, page, number, count)
    head.draw(press, SIDE_MARGIN, HEAD_MARGIN)
    foot_top = page.height_pt - FOOT_MARGIN - foot.height_pt
    _print_blocks(press, blocks, HEAD_MARGIN + head.height_pt + 3 * GRID, foot_top - 2 * GRID)
    foot.draw(press, SIDE_MARGIN, foot_top)
    press.next_page()


def _print_blocks(press: Press, blocks: Sequence[Block], top: float, bottom: float) -> None:
    for number, block in enumerate(blocks):
        top += block.gap_pt if number else 0.0
        at = bottom - block.height_pt if block.at_foot and number else top
        block.draw(press, SIDE_MARGIN, at)
        top += block.height_pt


def _head(imprint: Imprint, page: PageSize, first: bool) -> Block:
    """Club, title, number and date; large on the first page."""
    inner = _first_head(imprint, page) if first else _other_head(imprint, page)
    return stack([inner, rule(page.column_pt, Ink.INK, 0.8).below(1.5 * GRID)])


def _first_head(imprint: Imprint, page: PageSize) -> Block:
    left_pt = page.column_pt - _RIGHT_PT - 2 * GRID
    left = _named(imprint, left_pt)
    prepared = tr("Prepared by {name}", name=imprint.prepared_by)
    right = stack(
        [
            words(imprint.number, _RIGHT_PT, HEAD, Anchor.END),
            words(show_day(imprint.on), _RIGHT_PT, BODY, Anchor.END),
            words(prepared, _RIGHT_PT, SMALL, Anchor.END),
        ]
    )
    return row((0, left), (left_pt + 2 * GRID, right))


def _named(imprint: Imprint, width_pt: float) -> Block:
    """Club and title, the club's mark before them where it has one."""
    beside = _MARK_PT + 2 * GRID if imprint.mark else 0.0
    names = stack([words(imprint.club, width_pt - beside, BODY), words(imprint.title, width_pt - beside, DISPLAY)])
    return row((0, bitmap(imprint.mark, _MARK_PT)), (beside, names)) if imprint.mark else names


def _other_head(imprint: Imprint, page: PageSize) -> Block:
    left_pt = page.column_pt - _RIGHT_PT - 2 * GRID
    left = words(f"{imprint.club} · {imprint.title}", left_pt, BODY)
    number = words(imprint.number, _RIGHT_PT, BODY.in_bold(), Anchor.END)
    day = words(show_day(imprint.on), _RIGHT_PT, SMALL, Anchor.END)
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
