"""Why a piece was retired: each reason with what was found, the limit and where the limit comes from."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Reason
from inspector.language import tr
from inspector.paper.blocks import Block, row, rule, stack, words
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, GRID, SMALL

_SHARES = (0.34, 0.24, 0.17, 0.25)  # of the width: why, found, limit, source
_GAP_PT = 2 * GRID


def why(reasons: Sequence[Reason], width_pt: float) -> list[Block]:
    """A heading, the names of the columns, a line for each reason."""
    names = (tr("Reason"), tr("Found"), tr("Limit"), tr("Where the limit comes from"))
    title = _columns([words(name, wide, SMALL) for name, wide in zip(names, _widths(width_pt), strict=True)], width_pt)
    return [heading(tr("Why"), width_pt), title.kept(), *(_reason(reason, width_pt) for reason in reasons)]


def _widths(width_pt: float) -> list[float]:
    return [share * width_pt - _GAP_PT for share in _SHARES]


def _columns(cells: Sequence[Block], width_pt: float) -> Block:
    starts = [sum(_SHARES[:number]) * width_pt for number in range(len(cells))]
    return row(*zip(starts, cells, strict=True))


def _reason(reason: Reason, width_pt: float) -> Block:
    why_pt, found_pt, limit_pt, source_pt = _widths(width_pt)
    cells = [
        stack([words(reason.sentence, why_pt, BODY.in_bold()), *_aside(reason, why_pt)]),
        words(reason.value or "–", found_pt, BODY.in_bold()),
        words(reason.limit or "–", limit_pt, BODY),
        words(reason.source, source_pt, SMALL.in_ink(Ink.INK)),
    ]
    return stack([rule(width_pt), _columns(cells, width_pt).below(GRID / 2)]).below(GRID)


def _aside(reason: Reason, width_pt: float) -> list[Block]:
    """Why the rule stands, which uses it speaks to, and its own outcome where that is not the retirement itself."""
    said = [text for text in (reason.why, reason.purposes) if text]
    if reason.outcome is not Outcome.RETIRE:
        said.append(tr("by itself only: {outcome}", outcome=outcome_word(reason.outcome)))
    return [words(" ".join(said), width_pt, SMALL)] if said else []
