"""The checks of a piece as boxes to tick: good or fault, with a pen or on a screen."""

from collections.abc import Sequence
from itertools import zip_longest

from inspector.drawings.shapes import Ink
from inspector.gear.papers import TickLine
from inspector.language import tr
from inspector.paper.blocks import Block, row, stack, words
from inspector.paper.page_style import BODY, GRID, MM, SMALL
from inspector.paper.press import Press
from inspector.paper.wrap import lines_of

BOX_PT = 5.5 * MM
_BOX_GAP_PT = 2.5 * MM
_TEXT_PT = 2 * BOX_PT + _BOX_GAP_PT + 2 * GRID  # where the text begins
_ROW_GAP_PT = 1.4 * MM
_MOST_LINES = 3  # of a check in half the page's width; longer checks get all of it


def tick_lines(tag: str, ticks: Sequence[TickLine], width_pt: float) -> list[Block]:
    """The checks below one another, in two columns where each then needs at most three lines."""
    half_pt = (width_pt - 4 * GRID) / 2
    two = len(ticks) > 1 and all(len(lines_of(tick.text, half_pt - _TEXT_PT, BODY)) <= _MOST_LINES for tick in ticks)
    column_pt = half_pt if two else width_pt
    lines = [_tick(tag, number, tick, column_pt) for number, tick in enumerate(ticks)]
    heads = _head_row(2 if two else 1, column_pt)
    return [heads, *(_in_two(lines, column_pt) if two else (line.below(_ROW_GAP_PT) for line in lines))]


def field_name(tag: str, check_index: int, answer: str) -> str:
    """The name of a field, e.g. "T-014.0.good"; the answers are good and fault, checks count from 0."""
    return f"{tag}.{check_index}.{answer}"


def _in_two(lines: Sequence[Block], column_pt: float) -> list[Block]:
    """Read downwards: the first half on the left."""
    half = -(-len(lines) // 2)
    pairs = zip_longest(lines[:half], lines[half:])
    rows = [row((0, left), *([(column_pt + 4 * GRID, right)] if right else [])) for left, right in pairs if left]
    return [one.below(_ROW_GAP_PT) for one in rows]


def _head_row(columns: int, column_pt: float) -> Block:
    """What the two boxes mean, above each column."""

    def draw(press: Press, left: float, top: float) -> None:
        for number in range(columns):
            start, base = left + number * (column_pt + 4 * GRID), top + SMALL.size_pt
            press.text(start, base, tr("good"), SMALL.in_ink(Ink.INK))
            press.text(start + BOX_PT + _BOX_GAP_PT, base, tr("fault"), SMALL.in_ink(Ink.INK))

    return Block(SMALL.leading_pt, draw).kept()


def _tick(tag: str, number: int, tick: TickLine, width_pt: float) -> Block:
    text = _tick_text(tick, width_pt - _TEXT_PT)
    height = max(BOX_PT, text.height_pt)
    text_down = max((BOX_PT - text.height_pt) / 2, 0)

    def draw(press: Press, left: float, top: float) -> None:
        press.tick_box(left, top, BOX_PT, field_name(tag, number, "good"), tr("{check} – good", check=tick.text))
        second = left + BOX_PT + _BOX_GAP_PT
        press.tick_box(second, top, BOX_PT, field_name(tag, number, "fault"), tr("{check} – fault", check=tick.text))
        text.draw(press, left + _TEXT_PT, top + text_down)

    return Block(height, draw)


def _tick_text(tick: TickLine, width_pt: float) -> Block:
    """The check; a measured one has room for the measure and its limit."""
    said = words(tick.text, width_pt, BODY)
    if not tick.limit:
        return said
    return stack([said, _measured(tick.limit, width_pt)])


def _measured(limit: str, width_pt: float) -> Block:
    room_pt = 20 * MM
    words_pt = width_pt - room_pt - GRID
    text = words(limit, words_pt, BODY.in_bold())

    def draw(press: Press, left: float, top: float) -> None:
        press.line(left, top + BODY.leading_pt - 1, left + room_pt, top + BODY.leading_pt - 1, Ink.FAINT, 0.6)
        text.draw(press, left + room_pt + GRID, top)

    return Block(text.height_pt, draw)
