"""The outcome of a rig or a part of it, in a line of a table."""

from inspector.drawings.rig_words import rig_mark, rig_word
from inspector.drawings.shapes import Ink
from inspector.gear.rig_result import RigOutcome
from inspector.paper.blocks import Block, picture, row, words
from inspector.paper.page_style import BODY, GRID, MM

_MARK_MM = 4.0


def outcome_words(outcome: RigOutcome, width_pt: float) -> Block:
    """The small mark with its word."""
    start = _MARK_MM * MM + GRID
    barred = outcome in {RigOutcome.UNSOUND, RigOutcome.NEVER}
    word = words(rig_word(outcome), width_pt - start, BODY.in_bold().in_ink(Ink.MARK if barred else Ink.INK))
    return row((0, picture(rig_mark(outcome, _MARK_MM))), (start, word))
