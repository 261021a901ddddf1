"""The head of a piece on a trip's sheet: its mark, tag and word, what it is and where, its rating, what it may do."""

from inspector.drawings.marks import outcome_word
from inspector.gear.outcome import Outcome
from inspector.gear.papers import GoingPiece
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, stack, words
from inspector.paper.common import mark, word_type
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL
from inspector.paper.shaping import text_width_pt

MARK_MM = 8.0
MARK_PT = MARK_MM * MM + 2 * GRID
TAG_PT = 34 * MM
_RIDES_PT = 5.5 * MM
_WORD_DOWN_PT = 4.5  # so that the word stands on the line of the tag
_LEAST_WORD_PT = 22 * MM


def named(tag: str, outcome: Outcome, width_pt: float) -> Block:
    """The tag, and the word of the outcome below it."""
    return stack([words(tag, width_pt, HEAD), words(outcome_word(outcome), width_pt, word_type(outcome, BODY))])


def with_place(kind: str, where: str) -> str:
    """What it is, and where it rides, sits or lies."""
    return tr("{kind} · {where}", kind=kind, where=where.removesuffix(".")) if where else kind


def wide_head(piece: GoingPiece, width_pt: float) -> Block:
    """Tag and mark on the left, what it is and what it may do on the right."""
    text_pt = width_pt - MARK_PT - TAG_PT
    name = named(piece.tag, piece.outcome, TAG_PT)
    return row((0, mark(piece.outcome, MARK_MM)), (MARK_PT, name), (MARK_PT + TAG_PT, stack(_said(piece, text_pt))))


def narrow_head(piece: GoingPiece, width_pt: float) -> Block:
    """Mark, tag and word on one line, the rest below them."""
    text_pt = width_pt - MARK_PT
    beside_pt = text_width_pt(piece.tag, HEAD.size_pt, bold=True) + 2 * GRID
    if text_pt - beside_pt < _LEAST_WORD_PT:
        name = named(piece.tag, piece.outcome, text_pt)
    else:
        word = words(outcome_word(piece.outcome), text_pt - beside_pt, word_type(piece.outcome, BODY))
        name = row((0, words(piece.tag, text_pt, HEAD)), (beside_pt, stack([word.below(_WORD_DOWN_PT)])))
    return row((0, mark(piece.outcome, MARK_MM)), (MARK_PT, stack([name, *_said(piece, text_pt)])))


def _said(piece: GoingPiece, width_pt: float) -> list[Block]:
    """What it is and where, its rating as marked and now, what it may do."""
    figures = tr("Marked: {marked} · Now: {now}", marked=piece.marked or "–", now=piece.now or "–")
    lines = [
        words(with_place(piece.kind_name, piece.where), width_pt, BODY.in_bold()),
        words(figures, width_pt, BODY),
        words(piece.use_line, width_pt, BODY.in_bold()),
    ]
    return lines if piece.where else [*lines, blank(tr("Rides on"), width_pt, SMALL, _RIDES_PT)]
