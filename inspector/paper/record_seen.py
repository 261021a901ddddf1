"""Every inspection of a piece in full: the day, who, what was good, each fault and each reading."""

from collections.abc import Iterator, Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.item_record import SeenOn
from inspector.language import show_day, tr, tr_n
from inspector.paper.blocks import Block, stack, words
from inspector.paper.columns import line, widths
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, SMALL

_SHARES = (0.16, 0.84)
_STRONG = BODY.in_bold()


def seen_in_full(seen: Sequence[SeenOn], width_pt: float) -> list[Block]:
    """A heading, and a block for each inspection, the newest first."""
    title = heading(tr("Every inspection and check ({count})", count=len(seen)), width_pt)
    none = words(tr("It was never inspected since it was booked in."), width_pt, _STRONG)
    return [title, *([_seen(one, width_pt) for one in seen] or [none])]


def _seen(one: SeenOn, width_pt: float) -> Block:
    day_pt, says_pt = widths(_SHARES, width_pt)
    day = stack([words(show_day(one.on), day_pt, _STRONG)])
    head = tr("{what}, {name}", what=one.occasion, name=one.by)
    state = [words(one.state, says_pt, _STRONG.in_ink(Ink.MARK))] if one.state else []
    return line(_SHARES, [day, stack([words(head, says_pt, _STRONG), *state, *_found(one, says_pt)])], width_pt)


def _found(one: SeenOn, width_pt: float) -> Iterator[Block]:
    """Faults first, then readings, then what was good, then what else was written."""
    for said in one.faults:
        yield words(said, width_pt, _STRONG)
    for said in one.readings:
        yield words(said, width_pt, BODY)
    if one.good:
        count = tr_n("{count} check good: {names}.", "{count} checks good: {names}.", len(one.good),
                     names=", ".join(one.good))  # fmt: skip
        yield words(count, width_pt, SMALL.in_ink(Ink.INK))
    for said in one.aside:
        yield words(said, width_pt, BODY)
