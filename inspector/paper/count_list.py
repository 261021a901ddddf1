"""The list of a count: what ought to lie where, with boxes to tick with cold hands."""

from collections.abc import Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.papers import CountLine, CountList, CountPlace, ElsewhereLine
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.paper import form
from inspector.paper.blocks import Block, blank, boxed, row, rule, stack, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import facts, heading, listed, small_cautions
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.press import Press
from inspector.paper.printed import Printed

_BOX_PT = 7 * MM
_BOXES_PT = 34 * MM
_NUMBER_PT = 11 * MM
_TAG_PT = 34 * MM
_ELSEWHERE = (0.2, 0.35, 0.45)
_BLANK_LINES = 6


def count_list(listed_: CountList, page: PageSize) -> Printed:
    """The list as a PDF, its boxes to be ticked with a pen or on a screen."""
    width = page.column_pt
    blocks = (
        facts(_facts(listed_), width, 4),
        _how(width).below(2 * GRID),
        *(block for place in listed_.places for block in _place(place, width)),
        *_elsewhere(listed_.elsewhere, width),
        *_unknown_labels(width),
        *_signed(width),
        small_cautions(listed_.imprint.cautions, width).below(3 * GRID),
    )
    return Document(listed_.imprint, tr("Count {ref}", ref=listed_.ref), blocks).printed(page)


def _facts(listed_: CountList) -> list[Fact]:
    pieces = sum(len(place.lines) for place in listed_.places)
    return [
        Fact(tr("Count"), listed_.ref),
        Fact(tr("Counted is"), listed_.scope),
        Fact(tr("Begun on"), listed_.begun),
        Fact(tr("Pieces to look for"), str(pieces)),
    ]


def _how(width_pt: float) -> Block:
    inner_pt = width_pt - 6 * GRID
    steps = (
        tr("Read the tag on the piece itself. Tick “there” only for a piece in your hand or before your eyes."),
        tr("Tick “not there” only where you looked. A line without a tick counts as not looked for, never as there."),
        tr("Write every other label you find at the end of the list."),
    )
    title = words(tr("How to count"), inner_pt, BODY.in_bold())
    return boxed(stack([title, *(listed(step, inner_pt) for step in steps)]), width_pt)


def _place(place: CountPlace, width_pt: float) -> list[Block]:
    title = heading(place.name, width_pt)
    return [title, _column_names(width_pt), *(_line(one, width_pt) for one in place.lines)]


def _column_names(width_pt: float) -> Block:
    type_ = SMALL.in_ink(Ink.INK)
    boxes = row((0, words(tr("there"), _BOXES_PT, type_)), (_BOXES_PT / 2, words(tr("not there"), _BOXES_PT, type_)))
    rest_pt = width_pt - _BOXES_PT - _NUMBER_PT
    rest = words(tr("Tag and piece, and what is marked on it"), rest_pt, type_)
    return row((0, boxes), (_BOXES_PT, words(tr("No."), _NUMBER_PT, type_)), (_BOXES_PT + _NUMBER_PT, rest)).kept()


def _line(one: CountLine, width_pt: float) -> Block:
    start = _BOXES_PT + _NUMBER_PT
    text_pt = width_pt - start - _TAG_PT
    said = [words(one.kind_name, text_pt, BODY.in_bold()), words(one.marked or tr("no mark"), text_pt, BODY)]
    if one.kept_apart:
        said.append(words(one.kept_apart, text_pt, BODY.in_bold().in_ink(Ink.MARK)))
    inner = row(
        (0, _boxes(one)),
        (_BOXES_PT, words(str(one.number), _NUMBER_PT, BODY)),
        (start, words(one.tag, _TAG_PT - GRID, HEAD)),
        (start + _TAG_PT, stack(said)),
    )
    return stack([rule(width_pt), inner.below(1.5 * GRID)]).below(1.5 * GRID)


def _boxes(one: CountLine) -> Block:
    def draw(press: Press, left: float, top: float) -> None:
        form.tick_box(press, left, top, _BOX_PT, f"{one.tag}.there", tr("{tag} – there", tag=one.tag))
        second = left + _BOXES_PT / 2
        form.tick_box(press, second, top, _BOX_PT, f"{one.tag}.not_there", tr("{tag} – not there", tag=one.tag))

    return Block(_BOX_PT, draw)


def _elsewhere(lines: Sequence[ElsewhereLine], width_pt: float) -> list[Block]:
    if not lines:
        return []
    how = tr("These are not looked for here. One that lies here all the same: write its label at the end.")
    said = (tr("Tag"), tr("Piece"), tr("Where it is by the register"))
    title = [heading(tr("Out or on a vehicle"), width_pt), words(how, width_pt, BODY).kept()]
    return [*title, names(_ELSEWHERE, said, width_pt), *(_away(one, width_pt) for one in lines)]


def _away(one: ElsewhereLine, width_pt: float) -> Block:
    tag_pt, kind_pt, where_pt = widths(_ELSEWHERE, width_pt)
    cells = [words(one.tag, tag_pt, BODY.in_bold()), words(one.kind_name, kind_pt, BODY)]
    return line(_ELSEWHERE, [*cells, words(one.where, where_pt, BODY)], width_pt)


def _unknown_labels(width_pt: float) -> list[Block]:
    how = tr("Labels that are not on this list, and pieces without a label: write what stands there and where it lies.")
    half_pt = (width_pt - 4 * GRID) / 2
    lines = [
        row((0, _write(tr("Label"), half_pt)), (half_pt + 4 * GRID, _write(tr("Where it lies"), half_pt)))
        for _ in range(_BLANK_LINES)
    ]
    return [heading(tr("Also found"), width_pt), words(how, width_pt, BODY).kept(), stack(lines)]


def _write(label: str, width_pt: float) -> Block:
    return blank(label, width_pt, SMALL.in_ink(Ink.INK), 10 * MM)


def _signed(width_pt: float) -> list[Block]:
    third_pt = width_pt / 3
    cells = [_write(text, third_pt - 2 * GRID) for text in (tr("Counted by"), tr("Signature"), tr("Date and time"))]
    return [row(*((number * third_pt, cell) for number, cell in enumerate(cells))).below(3 * GRID)]
