"""Tags to tie to what is on hold, derated or retired, four to a page: mark, tag, and what it must not be used for."""

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.papers import Imprint
from inspector.gear.tags import HoldTag, TagSheet
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, row, space, stack, words
from inspector.paper.common import mark, may_be_used, small_cautions, word_type
from inspector.paper.cut_apart import AROUND_PT, cell_width_pt, cut_rows, fitting_type, hole
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, MM, SMALL, PageSize, Type
from inspector.paper.printed import Printed
from inspector.paper.qr_code import least_side_pt, qr_code

_COLUMNS, _ROWS = 2, 2
_MARK_MM = 22.0
_CODE_PT = 22 * MM
_HOLE_PT = 7 * MM
_TAG = Type(48.0, bold=True)
_NOT_FOR = Type(19.0, bold=True)
_WORD = Type(32.0, bold=True)
_LEAST_TAG_PT, _LEAST_WORD_PT, _LEAST_NOT_PT = 20.0, 11.0, 13.0


def hold_tags(sheet: TagSheet, page: PageSize) -> Printed:
    """The tags as a PDF."""
    width = page.column_pt
    least_pt, cell_pt = (page.height_pt - AROUND_PT) / _ROWS, cell_width_pt(width, _COLUMNS)
    cells = [_tag(one, sheet.imprint, cell_pt) for one in sheet.tags]
    cautions = small_cautions(sheet.imprint.cautions, width).below(2 * GRID)
    blocks = (*cut_rows(cells, width, _COLUMNS, least_pt), cautions)
    return Document(sheet.imprint, tr("Hold and derating tags"), blocks).printed(page)


def _tag(one: HoldTag, imprint: Imprint, width_pt: float) -> Block:
    strong = Ink.INK if may_be_used(one.outcome) else Ink.MARK
    said = [
        _head(one, width_pt),
        words(one.tag, width_pt, fitting_type(one.tag, width_pt, _TAG, _LEAST_TAG_PT)),
        words(_name(one), width_pt, BODY.in_bold()),
        _large(one.limit, width_pt, strong),
        _large(one.not_for, width_pt, strong),
        words(one.may_for, width_pt, BODY.in_bold()),
        _labelled(tr("Why"), one.why, width_pt),
        _labelled(tr("Since"), one.since, width_pt),
        _labelled(tr("What ends it"), one.release, width_pt),
    ]
    return stack([*(block for block in said if block.height_pt), _foot(imprint, width_pt)])


def _head(one: HoldTag, width_pt: float) -> Block:
    """The hole, then mark and word with the code at their right."""
    code_pt = max(_CODE_PT, least_side_pt(one.tag))
    start = _MARK_MM * MM + 2 * GRID
    word_pt = width_pt - start - code_pt - GRID
    word = outcome_word(one.outcome).upper()
    type_ = fitting_type(word, word_pt, word_type(one.outcome, _WORD), _LEAST_WORD_PT)
    said = words(word, word_pt, type_)
    high = max(_MARK_MM * MM, code_pt)
    middle = stack([space((high - said.height_pt) / 2), said])
    code = stack([space((high - code_pt) / 2), qr_code(one.tag, code_pt)])
    marked = row((0, mark(one.outcome, _MARK_MM)), (start, middle), (width_pt - code_pt, code))
    tied = space(0) if one.is_evidence else row((width_pt / 2 - 3 * MM, hole()))
    top = stack([tied, space(_HOLE_PT - tied.height_pt)])
    return stack([top, marked])


def _large(text: str, width_pt: float, ink: Ink) -> Block:
    return words(text, width_pt, fitting_type(text, width_pt, _NOT_FOR.in_ink(ink), _LEAST_NOT_PT)).below(GRID / 2)


def _name(one: HoldTag) -> str:
    return tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name


def _labelled(label: str, text: str, width_pt: float) -> Block:
    """A line of the tag; nothing where there is nothing to say."""
    if not text:
        return space(0)
    return words(tr("{label}: {text}", label=label, text=text), width_pt, BODY).below(GRID / 2)


def _foot(imprint: Imprint, width_pt: float) -> Block:
    caution = tr("A decision aid. A competent person decides.")
    told = tr("{club}, {day}. {caution}", club=imprint.club, day=show_day(imprint.on), caution=caution)
    return words(f"{told} {imprint.number}", width_pt, SMALL).below(GRID)
