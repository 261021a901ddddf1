"""The rigs that a trip plans, on its sheet: what must not be pulled first, and of each the figures to keep to."""

from collections.abc import Iterator, Sequence

from inspector.drawings.rig_words import rig_mark, rig_word
from inspector.drawings.shapes import Ink
from inspector.gear.papers import RigLine
from inspector.gear.rig_result import RigOutcome
from inspector.language import tr
from inspector.paper.blocks import Block, picture, row, rule, stack, words
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, GRID, HEAD, MM
from inspector.paper.trip_heads import MARK_MM, MARK_PT

_REF_PT = 24 * MM
_BARRED = {RigOutcome.UNSOUND, RigOutcome.NEVER}


def planned_rigs(rigs: Sequence[RigLine], vehicle: str, width_pt: float) -> list[Block]:
    """Each planned rig with its figures, and what holds for any other. vehicle: of a sheet that is of one."""
    title = heading(tr("Planned rigs"), width_pt)
    other = words(tr("With any other rig nobody pulls until somebody has checked it."), width_pt, BODY.in_bold())
    if rigs:
        return [title, *(_rig(one, width_pt) for one in rigs), other.below(GRID)]
    none = tr("No rig with {vehicle} is planned.", vehicle=vehicle) if vehicle else tr("No rig is planned.")
    plan = tr(
        "Plan one on the page of the trip in the window under “Rig”, or with the command `rig propose`, and print the "
        "sheet again."
    )
    return [title, stack([words(text, width_pt, BODY) for text in (none, plan)] + [other])]


def _rig(one: RigLine, width_pt: float) -> Block:
    text_pt = width_pt - MARK_PT - _REF_PT
    barred = one.outcome in _BARRED
    word = BODY.in_bold().in_ink(Ink.MARK if barred else Ink.INK)
    name = stack([words(one.ref, _REF_PT, HEAD), words(rig_word(one.outcome), _REF_PT, word)])
    said = [words(text, text_pt, word if barred and not number else BODY) for number, text in enumerate(_lines(one))]
    away = tr("stay {distance} away", distance=one.stand_off) if one.stand_off else ""
    title = words(" · ".join(filter(None, (one.name, one.pulls, away))), text_pt, BODY.in_bold())
    body = row(
        (0, picture(rig_mark(one.outcome, MARK_MM))), (MARK_PT, name), (MARK_PT + _REF_PT, stack([title, *said]))
    )
    return stack([body, rule(width_pt).below(GRID)]).below(GRID)


def _lines(one: RigLine) -> Iterator[str]:
    """What is said of it; of one that must not be pulled that first, and then why."""
    if one.outcome in _BARRED:
        yield tr("Do not pull with this rig.")
    if one.outcome is not RigOutcome.SOUND:
        yield one.says
    if one.speed:
        yield tr("Method: {method}. Speed: {speed}.", method=one.method, speed=one.speed)
    else:
        yield tr("Method: {method}.", method=one.method)
    if one.weakest:
        yield tr("Weakest link: {weakest}.", weakest=one.weakest)
