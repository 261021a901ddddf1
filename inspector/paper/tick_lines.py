"""The checks of a piece as boxes to tick: good or fault, with a pen or on a screen.

Boxes and lines stand so far apart that a ring round one box stays off the others.
"""

from collections.abc import Sequence
from itertools import zip_longest

from inspector.drawings.shapes import Ink
from inspector.gear.papers import TickLine
from inspector.gear.sheet_fields import reading_name, tick_name, unit_name
from inspector.language import tr
from inspector.paper import form
from inspector.paper.blocks import Block, row, stack, words
from inspector.paper.page_style import BODY, GRID, MM, SMALL
from inspector.paper.press import Press
from inspector.paper.wrap import lines_of

BOX_PT = 5.5 * MM
_BOX_GAP_PT = 5.5 * MM
_TEXT_PT = 2 * BOX_PT + _BOX_GAP_PT + 2 * GRID  # where the text begins
_ROW_GAP_PT = 2.4 * MM
_FIGURE_PT, _UNIT_PT, _WRITING_PT = 18 * MM, 10 * MM, 5.6 * MM
_UNIT_DOWN_PT = 3.5  # so that the unit stands on the line of the limit
_MOST_LINES = 3  # of a check in half the page's width; longer checks get all of it


def tick_lines(piece: int, ticks: Sequence[TickLine], width_pt: float) -> list[Block]:
    """The checks below one another, in two columns where each then needs at most three lines. piece: its number."""
    half_pt = (width_pt - 4 * GRID) / 2
    two = len(ticks) > 1 and all(len(lines_of(tick.text, half_pt - _TEXT_PT, BODY)) <= _MOST_LINES for tick in ticks)
    column_pt = half_pt if two else width_pt
    lines = [_tick(piece, number, tick, column_pt) for number, tick in enumerate(ticks, 1)]
    heads = _head_row(2 if two else 1, column_pt)
    return [heads, *(_in_two(lines, column_pt) if two else (line.below(_ROW_GAP_PT) for line in lines))]


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


def _tick(piece: int, number: int, tick: TickLine, width_pt: float) -> Block:
    text = _tick_text(piece, number, tick, width_pt - _TEXT_PT)
    height = max(BOX_PT, text.height_pt)
    text_down = max((BOX_PT - text.height_pt) / 2, 0)

    def draw(press: Press, left: float, top: float) -> None:
        good, fault = tr("{check} – good", check=tick.text), tr("{check} – fault", check=tick.text)
        form.tick_box(press, left, top, BOX_PT, tick_name(piece, number, "good"), good)
        second = left + BOX_PT + _BOX_GAP_PT
        form.tick_box(press, second, top, BOX_PT, tick_name(piece, number, "fault"), fault)
        text.draw(press, left + _TEXT_PT, top + text_down)

    return Block(height, draw)


def _tick_text(piece: int, number: int, tick: TickLine, width_pt: float) -> Block:
    """The check; a measured one has room for the measure and its limit."""
    said = words(tick.text, width_pt, BODY)
    if not tick.limit:
        return said
    return stack([said, _measured(piece, number, tick, width_pt)])


def _measured(piece: int, number: int, tick: TickLine, width_pt: float) -> Block:
    """The room for the figure, its unit, and the limit beside it."""
    unit_pt = _UNIT_PT if tick.units else 0.0
    start_pt = _FIGURE_PT + unit_pt + GRID
    text = words(tick.limit, width_pt - start_pt, BODY.in_bold())

    def draw(press: Press, left: float, top: float) -> None:
        line = top + _WRITING_PT - 1
        name, said = reading_name(piece, number), tr("{check} – measured", check=tick.text)
        form.writing_room(press, left, top, _FIGURE_PT, _WRITING_PT - 2, name, said, BODY)
        press.line(left, line, left + _FIGURE_PT, line, Ink.FAINT, 0.6)
        if tick.units:
            unit, said = unit_name(piece, number), tr("{check} – unit", check=tick.text)
            across, down = left + _FIGURE_PT + 2, top + _UNIT_DOWN_PT
            form.choice(press, across, down, unit_pt - 2, _WRITING_PT - 2, unit, said, tick.units, BODY)
        text.draw(press, left + start_pt, top + max(_WRITING_PT - text.height_pt, 0.0))

    return Block(max(_WRITING_PT, text.height_pt), draw)
