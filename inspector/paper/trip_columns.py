"""The pieces of a trip's sheet down two columns of each page, so that paper is not left empty.

A piece may go on in the other column of its page and never on another page: one photo shows all of it.
"""

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import groupby

from msgspec import Struct

from inspector.drawings.shapes import Ink
from inspector.gear.papers import GoingPiece
from inspector.gear.sheet_fields import remarks_name
from inspector.language import tr
from inspector.paper.blocks import Block, blank, rule, stack, words
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL
from inspector.paper.press import Press
from inspector.paper.tick_lines import BETWEEN_PT, fit_a_column, good_or_fault, half_pt, tick_lines
from inspector.paper.trip_heads import narrow_head, wide_head

_REMARKS_PT = 7 * MM
_MOST_CHECKS = 24  # that surely find room on one page in two columns


class Placed(Struct, frozen=True):
    """A piece with its number on the sheet, and the name of the place it stands under; empty for none."""

    number: int
    piece: GoingPiece
    under: str


class _Unit(Struct, frozen=True):
    """What a column never breaks. of: the piece that it is of; begins: a column may begin with it as it stands."""

    block: Block
    of: Placed
    begins: bool


def pieces_in_columns(pieces: Sequence[Placed], width_pt: float) -> Iterator[Block]:
    """The pieces in their order; one that no column takes stands across the page."""
    under = ""
    for narrow, run in groupby(pieces, key=partial(_fits, width_pt)):
        placed = list(run)
        if narrow:
            yield _filling(placed, width_pt)
        else:
            for one in placed:
                yield from _across(one, width_pt, named=one.under != under)
                under = one.under
        under = placed[-1].under


def _fits(width_pt: float, one: Placed) -> bool:
    return len(one.piece.ticks) <= _MOST_CHECKS and fit_a_column(one.piece.ticks, half_pt(width_pt))


def _filling(pieces: Sequence[Placed], width_pt: float) -> Block:
    """As many of the pieces as a page has room for, and the rest on the next."""
    first = stack(list(_across(pieces[0], width_pt, named=True)))
    return Block(first.height_pt, first.draw, fill=partial(_fill, pieces, width_pt)).below(GRID)


def _fill(pieces: Sequence[Placed], width_pt: float, room_pt: float) -> tuple[Block, Block | None]:
    best, count = stack(list(_across(pieces[0], width_pt, named=True))), 1
    units: list[_Unit] = []
    for taken, one in enumerate(pieces, 1):
        units += _units(one, half_pt(width_pt), named=taken == 1 or one.under != pieces[taken - 2].under)
        if taken > 1:
            tried = _in_two(units, width_pt)
            if tried.height_pt > room_pt:
                break
            best, count = tried, taken
    rest = pieces[count:]
    return best.below(GRID), _filling(rest, width_pt) if rest else None


def _across(one: Placed, width_pt: float, *, named: bool) -> Iterator[Block]:
    """A piece over the whole width, its checks in two columns where they are short."""
    ticks = tick_lines(one.number, one.piece.ticks, width_pt) if one.piece.ticks else []
    block = stack([wide_head(one.piece, width_pt), *ticks, *_end(one, width_pt)]).below(GRID)
    title = words(one.under, width_pt, HEAD).kept() if named and one.under else None
    if title:
        yield title
    yield block


def _end(one: Placed, width_pt: float) -> list[Block]:
    """Room for a remark, and a strong line."""
    says = tr("Remarks on {tag}", tag=one.piece.tag)
    remarks = blank(tr("Remarks"), width_pt, SMALL, _REMARKS_PT, remarks_name(one.number), says)
    return [remarks, rule(width_pt, Ink.INK, 0.8).below(GRID)]


def _units(one: Placed, width_pt: float, *, named: bool) -> list[_Unit]:
    """A piece down one column: its head with the first check, each further check, the last one with the remarks."""
    title = [words(one.under, width_pt, HEAD).below(GRID)] if named and one.under else []
    head = [*title, narrow_head(one.piece, width_pt)]
    heads, *ticks = tick_lines(one.number, one.piece.ticks, width_pt, columns=1) if one.piece.ticks else [stack([])]
    if len(ticks) < 2:
        return [_Unit(stack([*head, heads, *ticks, *_end(one, width_pt)]).below(GRID), one, begins=True)]
    first, *between, last = ticks
    return [
        _Unit(stack([*head, heads, first]).below(GRID), one, begins=True),
        *(_Unit(tick, one, begins=False) for tick in between),
        _Unit(stack([last, *_end(one, width_pt)]), one, begins=False),
    ]


def _in_two(units: Sequence[_Unit], width_pt: float) -> Block:
    """The units in two columns as even as they come."""
    column_pt = half_pt(width_pt)
    tries = [(_column(units[:at]), _column(_gone_on(units[at:], column_pt))) for at in range(1, len(units))]
    left, right = min(tries, key=lambda two: max(one.height_pt for one in two))
    height = max(left.height_pt, right.height_pt)

    def draw(press: Press, start: float, top: float) -> None:
        left.draw(press, start, top)
        right.draw(press, start + column_pt + BETWEEN_PT, top)

    return Block(height, draw)


def _gone_on(units: Sequence[_Unit], column_pt: float) -> Sequence[_Unit]:
    """What stands at the head of the other column, where a piece goes on there."""
    first = units[0]
    if first.begins:
        return units
    name = words(tr("{tag}, continued", tag=first.of.piece.tag), column_pt, BODY.in_bold())
    return [_Unit(stack([name, good_or_fault(1, column_pt)]), first.of, begins=True), *units]


def _column(units: Sequence[_Unit]) -> Block:
    """The first unit needs no air above."""
    return stack([units[0].block.below(0), *(one.block for one in units[1:])])
