"""Why a piece was retired: each reason with what was found, the limit and where the limit comes from."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Reason
from inspector.language import tr
from inspector.paper.blocks import Block, stack, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, SMALL

_SHARES = (0.34, 0.24, 0.17, 0.25)  # of the width: why, found, limit, source


def why(reasons: Sequence[Reason], width_pt: float) -> list[Block]:
    """A heading, the names of the columns, a line for each reason."""
    said = (tr("Reason"), tr("Found"), tr("Limit"), tr("Where the limit comes from"))
    return [
        heading(tr("Why"), width_pt),
        names(_SHARES, said, width_pt),
        *(_reason(reason, width_pt) for reason in reasons),
    ]


def _reason(reason: Reason, width_pt: float) -> Block:
    why_pt, found_pt, limit_pt, source_pt = widths(_SHARES, width_pt)
    cells = [
        stack([words(reason.sentence, why_pt, BODY.in_bold()), *_aside(reason, why_pt)]),
        words(reason.value or "–", found_pt, BODY.in_bold()),
        words(reason.limit or "–", limit_pt, BODY),
        words(reason.source, source_pt, SMALL.in_ink(Ink.INK)),
    ]
    return line(_SHARES, cells, width_pt)


def _aside(reason: Reason, width_pt: float) -> list[Block]:
    """Why the rule stands, which uses it speaks to, and its own outcome where that is not the retirement itself."""
    said = [text for text in (reason.why, reason.purposes) if text]
    if reason.outcome is not Outcome.RETIRE:
        said.append(tr("by itself only: {outcome}", outcome=outcome_word(reason.outcome)))
    return [words(" ".join(said), width_pt, SMALL)] if said else []
