"""Tables of an evidence list: the pieces as they stood, and the lines to sign at each hand-over."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_word
from inspector.gear.evidence_list import EvidencePiece
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, stack, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import heading, mark, word_type
from inspector.paper.page_style import BODY, GRID, MM, SMALL

_PIECES = (0.25, 0.28, 0.27, 0.20)
_HANDS = (0.16, 0.18, 0.26, 0.26, 0.14)
_MARK_MM = 3.6
_WRITE_PT = 9 * MM
_SPARE_LINES = 3
_TO_A_TABLE = 18
_STRONG = BODY.in_bold()


def pieces(found: Sequence[EvidencePiece], width_pt: float) -> list[Block]:
    """A line for each piece: what it is, its verdict of that day, who had it, where it is, and its seal."""
    head = (tr("Piece"), tr("Verdict that day"), tr("Who had it, where it is now"), tr("State, seal"))
    title = [heading(tr("The pieces"), width_pt), names(_PIECES, head, width_pt)]
    none = [] if found else [words(tr("No piece is named."), width_pt, BODY)]
    return [*title, *none, *(_piece(one, width_pt) for one in found)]


def _piece(one: EvidencePiece, width_pt: float) -> Block:
    name_pt, said_pt, hands_pt, state_pt = widths(_PIECES, width_pt)
    made = ", ".join(text for text in (one.maker_mark, one.serial) if text) or tr("neither maker's mark nor serial")
    name = [
        words(f"{one.tag} · {one.kind_name}", name_pt, _STRONG),
        words(one.marked or tr("not marked"), name_pt, BODY),
        words(made, name_pt, SMALL),
    ]
    had = tr("that day on loan to {name}", name=one.held_by) if one.held_by else tr("that day on loan to nobody")
    hands = [words(had, hands_pt, BODY), words(tr("now: {place}", place=one.now), hands_pt, BODY)]
    state = [words(one.state, state_pt, _STRONG if one.is_kept else BODY)]
    if one.is_kept:
        state.append(blank(tr("Seal no."), state_pt, SMALL, _WRITE_PT))
    return line(_PIECES, [stack(name), _verdict(one, said_pt), stack(hands), stack(state)], width_pt)


def _verdict(one: EvidencePiece, width_pt: float) -> Block:
    start = _MARK_MM * MM + GRID
    word = words(outcome_word(one.outcome), width_pt - start, word_type(one.outcome, BODY))
    return stack([row((0, mark(one.outcome, _MARK_MM)), (start, word)), words(one.headline, width_pt, BODY)])


def hand_overs(found: Sequence[EvidencePiece], width_pt: float) -> list[Block]:
    """Lines to sign: one for each kept piece, and some for the hand-overs after it."""
    kept = [one.tag for one in found if one.is_kept]
    if not kept:
        return []
    lines = (*kept, *[""] * _SPARE_LINES)
    shares = [lines[start : start + _TO_A_TABLE] for start in range(0, len(lines), _TO_A_TABLE)]
    return [heading(tr("Hand-overs"), width_pt), *(_hands(some, width_pt) for some in shares)]


def _hands(tags: Sequence[str], width_pt: float) -> Block:
    """So many lines as stay on one page under the names of their columns."""
    said = (
        tr("Piece, seal no."),
        tr("Day and time"),
        tr("Handed over: name, signature"),
        tr("Taken over: name, signature"),
        tr("Where to"),
    )
    return stack([names(_HANDS, said, width_pt), *(_to_sign(tag, width_pt) for tag in tags)]).below(2 * GRID)


def _to_sign(tag: str, width_pt: float) -> Block:
    wide = widths(_HANDS, width_pt)
    cells = [blank(tag, wide[0], _STRONG, _WRITE_PT), *(blank("", width, BODY, _WRITE_PT) for width in wide[1:])]
    return row(*zip([sum(_HANDS[:at]) * width_pt for at in range(len(_HANDS))], cells, strict=True))
