"""Slips to cut apart, eight to a page: one piece each, what is due of it, by when, and whom it concerns."""

from inspector.drawings.shapes import Anchor, Ink
from inspector.gear.letters import DueSlip, LetterLine, SlipSheet
from inspector.gear.papers import Imprint
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, row, space, stack, words
from inspector.paper.common import small_cautions
from inspector.paper.cut_apart import AROUND_PT, cell_width_pt, cut_rows
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_COLUMNS, _ROWS = 2, 4
_DAY_PT = 23 * MM
_NUMBER_PT = 32 * MM


def due_slips(sheet: SlipSheet, page: PageSize) -> Printed:
    """The slips as a PDF."""
    width = page.column_pt
    least_pt, cell_pt = (page.height_pt - AROUND_PT) / _ROWS, cell_width_pt(width, _COLUMNS)
    cells = [_slip(one, sheet.imprint, cell_pt) for one in sheet.slips]
    blocks = cut_rows(cells, width, _COLUMNS, least_pt)
    cautions = small_cautions(sheet.imprint.cautions, width).below(2 * GRID)
    return Document(sheet.imprint, tr("Slips"), (*blocks, cautions)).printed(page)


def _slip(one: DueSlip, imprint: Imprint, width_pt: float) -> Block:
    name_pt = width_pt - _NUMBER_PT
    place = stack([space(GRID), words(imprint.number, _NUMBER_PT, SMALL, Anchor.END)])
    head = row((0, words(one.tag, name_pt, HEAD)), (name_pt, place))
    kind = tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name
    said = [head, words(kind, width_pt, BODY.in_bold())]
    why = one.says if one.may_use else tr("DO NOT USE. {why}", why=one.says)
    said.append(words(why, width_pt, BODY if one.may_use else BODY.in_bold().in_ink(Ink.MARK)))
    said += [_due(line, width_pt).below(GRID / 2) for line in one.due]
    said.append(words(one.concerns, width_pt, SMALL.in_ink(Ink.INK)).below(GRID))
    if one.do:
        said.append(words(one.do, width_pt, BODY.in_bold()))
    caution = tr("A decision aid. A competent person decides.")
    told = tr("{club}, {day}. {caution}", club=imprint.club, day=show_day(imprint.on), caution=caution)
    return stack([*said, words(told, width_pt, SMALL).below(GRID / 2)])


def _due(line: LetterLine, width_pt: float) -> Block:
    return row((0, words(line.day, _DAY_PT, BODY)), (_DAY_PT, words(line.what, width_pt - _DAY_PT, BODY)))
