"""Why a piece came out as it did: each reason with what was found, the limit and where the limit comes from."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Reason
from inspector.language import tr
from inspector.paper.blocks import Block, stack, words
from inspector.paper.columns import line, names, under, widths
from inspector.paper.common import heading, listed
from inspector.paper.page_style import BODY, GRID, SMALL

_SHARES = (0.34, 0.24, 0.17, 0.25)  # of the width: why, found, limit, source


def why(reasons: Sequence[Reason], width_pt: float, outcome: Outcome = Outcome.RETIRE) -> list[Block]:
    """A heading, the names of the columns, a line for each reason. outcome: of the piece; short of the end it is also
    said what would settle it."""
    said = (tr("Reason"), tr("Found"), tr("Limit"), tr("Where the limit comes from"))
    return [
        heading(tr("Why"), width_pt),
        *under(names(_SHARES, said, width_pt), [_reason(reason, width_pt, outcome) for reason in reasons]),
        *_settles(reasons, width_pt, outcome),
    ]


def _settles(reasons: Sequence[Reason], width_pt: float, outcome: Outcome) -> list[Block]:
    """What would settle it, each once; nothing does where a piece is retired."""
    releases = dict.fromkeys(one.release for one in reasons if one.release)
    if outcome is Outcome.RETIRE or not releases:
        return []
    title = words(tr("To settle it"), width_pt, BODY.in_bold()).below(2 * GRID).kept()
    return [title, *(listed(one, width_pt) for one in releases)]


def _reason(reason: Reason, width_pt: float, outcome: Outcome) -> Block:
    why_pt, found_pt, limit_pt, source_pt = widths(_SHARES, width_pt)
    cells = [
        stack([words(reason.sentence, why_pt, BODY.in_bold()), *_aside(reason, why_pt, outcome)]),
        words(reason.value or "–", found_pt, BODY.in_bold()),
        words(reason.limit or "–", limit_pt, BODY),
        words(reason.source, source_pt, SMALL.in_ink(Ink.INK)),
    ]
    return line(_SHARES, cells, width_pt)


def _aside(reason: Reason, width_pt: float, outcome: Outcome) -> list[Block]:
    """Why the rule stands, which uses it speaks to, and its own outcome where that is not the piece's."""
    said = [text for text in (reason.why, reason.purposes) if text]
    if reason.outcome is not outcome:
        said.append(tr("by itself only: {outcome}", outcome=outcome_word(reason.outcome)))
    return [words(" ".join(said), width_pt, SMALL)] if said else []
