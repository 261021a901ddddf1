"""The pieces of a trip's sheet: those that stay, and those that go with their checks."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_meaning, outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.papers import GoingPiece, StayingPiece
from inspector.gear.sheet_fields import remarks_name
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, rule, stack, words
from inspector.paper.common import heading, mark, word_type
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL
from inspector.paper.tick_lines import tick_lines

_MARK_MM = 8.0
_MARK_PT = _MARK_MM * MM + 2 * GRID
_TAG_PT = 34 * MM
_REMARKS_PT = 7 * MM


def staying(pieces: Sequence[StayingPiece], width_pt: float) -> list[Block]:
    """What may not go, before anything that may."""
    title = heading(tr("Must stay behind"), width_pt)
    if not pieces:
        return [title, words(tr("No piece of this kit has to stay behind."), width_pt, BODY)]
    return [title, legend(pieces, width_pt).kept(), *(_staying_piece(piece, width_pt) for piece in pieces)]


def legend(pieces: Sequence[StayingPiece] | Sequence[GoingPiece], width_pt: float) -> Block:
    """The marks that occur below, each with its word and meaning."""
    found = sorted({piece.outcome for piece in pieces}, key=lambda outcome: -outcome.severity)
    goes = any(isinstance(piece, GoingPiece) for piece in pieces)
    said = (tr("{word} – {means}.", word=outcome_word(one), means=_meaning(one, goes=goes)) for one in found)
    return words(" ".join(said), width_pt, SMALL.in_ink(Ink.INK))


def _meaning(outcome: Outcome, *, goes: bool) -> str:
    """A held piece that goes all the same is held for some purposes only."""
    if goes and outcome is Outcome.HOLD:
        return tr("not for what it is held for, only as its line says")
    return outcome_meaning(outcome)


def _staying_piece(piece: StayingPiece, width_pt: float) -> Block:
    text_pt = width_pt - _MARK_PT - _TAG_PT
    name = stack([words(piece.tag, _TAG_PT, HEAD), _word(piece.outcome, _TAG_PT)])
    why = stack([words(piece.kind_name, text_pt, BODY.in_bold()), words(piece.why, text_pt, BODY)])
    inner = row((0, mark(piece.outcome, _MARK_MM)), (_MARK_PT, name), (_MARK_PT + _TAG_PT, why))
    return stack([inner, rule(width_pt).below(GRID)]).below(GRID)


def _word(outcome: Outcome, width_pt: float) -> Block:
    return words(outcome_word(outcome), width_pt, word_type(outcome, BODY))


def going(pieces: Sequence[GoingPiece], width_pt: float) -> list[Block]:
    """What goes, in the order given: the walk round the vehicle."""
    title = heading(tr("Goes on the trip: check each piece before use"), width_pt)
    if not pieces:
        return [title, words(tr("No piece of this kit goes on the trip."), width_pt, BODY)]
    how = tr("Tick good or fault for each line. One fault, or a line you cannot check: the piece does not go.")
    mend = tr("Wrong box? Fill it in fully, tick the right one, and draw a ring round the right one.")
    intro = stack([words(how, width_pt, BODY.in_bold()), words(mend, width_pt, BODY), legend(pieces, width_pt)])
    return [title, intro.kept(), *(_going_piece(number, piece, width_pt) for number, piece in enumerate(pieces, 1))]


def _going_piece(number: int, piece: GoingPiece, width_pt: float) -> Block:
    says = tr("Remarks on {tag}", tag=piece.tag)
    remarks = blank(tr("Remarks"), width_pt, SMALL, _REMARKS_PT, remarks_name(number), says)
    line = rule(width_pt, Ink.INK, 0.8).below(GRID)
    head = _going_head(piece, width_pt)
    ticks = tick_lines(number, piece.ticks, width_pt) if piece.ticks else []
    return stack([head, *ticks, remarks, line]).below(GRID)


def _going_head(piece: GoingPiece, width_pt: float) -> Block:
    """Tag and mark on the left, what it is and what it may do on the right."""
    text_pt = width_pt - _MARK_PT - _TAG_PT
    name = stack([words(piece.tag, _TAG_PT, HEAD), _word(piece.outcome, _TAG_PT)])
    figures = tr("Marked: {marked} · Now: {now}", marked=piece.marked or "–", now=piece.now or "–")
    said = stack(
        [
            words(piece.kind_name, text_pt, BODY.in_bold()),
            words(figures, text_pt, BODY),
            words(piece.use_line, text_pt, BODY.in_bold()),
        ]
    )
    return row((0, mark(piece.outcome, _MARK_MM)), (_MARK_PT, name), (_MARK_PT + _TAG_PT, said))
