"""Blocks that several documents share."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_mark
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.paper.blocks import Block, boxed, picture, row, rule, space, stack, words
from inspector.paper.page_style import BODY, GRID, HEAD, SMALL, Type

_STRONG = BODY.in_bold()


def heading(text: str, width_pt: float) -> Block:
    """A heading over a strong rule, kept with what follows."""
    line = rule(width_pt, Ink.INK, 0.8)
    return stack([words(text, width_pt, HEAD), line.below(GRID / 2), space(GRID)]).below(2.5 * GRID).kept()


def may_be_used(outcome: Outcome) -> bool:
    """Whether a piece with this outcome may go at all."""
    return outcome in {Outcome.FIT, Outcome.DERATE}


def word_type(outcome: Outcome, type_: Type) -> Type:
    """The type of an outcome's word: the accent where the piece may not be used."""
    return type_.in_bold().in_ink(Ink.INK if may_be_used(outcome) else Ink.MARK)


def mark(outcome: Outcome, size_mm: float) -> Block:
    """The outcome's mark; its word is to stand beside it."""
    return picture(outcome_mark(outcome, size_mm))


def facts(given: Sequence[Fact], width_pt: float, columns: int, type_: Type = _STRONG) -> Block:
    """Labelled lines in columns, read along the rows, label above text; one column more where it saves a row."""
    if -(-len(given) // (columns + 1)) < -(-len(given) // columns):
        columns += 1
    cell_pt = (width_pt - (columns - 1) * 3 * GRID) / columns
    rows = [given[start : start + columns] for start in range(0, len(given), columns)]
    return stack([_facts_row(some, cell_pt, type_).below(GRID if number else 0) for number, some in enumerate(rows)])


def _facts_row(given: Sequence[Fact], cell_pt: float, type_: Type) -> Block:
    cells = [(number * (cell_pt + 3 * GRID), _fact(fact, cell_pt, type_)) for number, fact in enumerate(given)]
    return row(*cells)


def _fact(fact: Fact, width_pt: float, type_: Type) -> Block:
    return stack([words(fact.label, width_pt, SMALL), words(fact.text or "–", width_pt, type_)])


def cautions(lines: Sequence[str], width_pt: float) -> Block:
    """The cautions in a frame."""
    inner_pt = width_pt - 6 * GRID
    title = words(tr("Read this first"), inner_pt, BODY.in_bold())
    return boxed(stack([title, *(listed(line, inner_pt) for line in lines)]), width_pt)


def small_cautions(lines: Sequence[str], width_pt: float) -> Block:
    """The cautions in small type, one after another."""
    return words(" ".join((tr("Mind:"), *lines)), width_pt, SMALL.in_ink(Ink.INK))


def listed(text: str, width_pt: float) -> Block:
    """A line of a list."""
    return row((0, words("–", 3 * GRID, BODY)), (3 * GRID, words(text, width_pt - 3 * GRID, BODY))).below(GRID / 2)
