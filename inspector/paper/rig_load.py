"""The load of a rig sheet: the sum step by step, whether it moves, every assumption with its source."""

from inspector.drawings.rig_words import force_text, part_name
from inspector.gear.rig_result import Assumption, Load
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.paper.blocks import Block, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import facts, heading, listed
from inspector.paper.page_style import BODY, GRID, SMALL
from inspector.units import Dimension, System, show

_SHARES = (0.26, 0.20, 0.30, 0.24)


def load(given: Load, width_pt: float, system: System) -> list[Block]:
    """All of it."""
    return [
        heading(tr("The load, step by step"), width_pt),
        facts(_facts(given, system), width_pt, 3).kept(),
        words(_moves(given, system), width_pt, BODY.in_bold()).below(GRID),
        *(listed(step, width_pt) for step in given.steps),
        *_scales(given, width_pt, system),
        *_assumptions(given, width_pt),
    ]


def _facts(given: Load, system: System) -> list[Fact]:
    at = ", ".join(part_name(tag) for tag in given.at)
    likely = tr("has no meaning here") if given.likely_n is None else force_text(given.likely_n, system)
    return [
        Fact(tr("Greatest pull"), force_text(given.pull_n, system)),
        Fact(tr("It arises in"), at),
        Fact(tr("If the vehicle gives way"), likely),
        Fact(tr("Holds the vehicle"), force_text(given.needed_n, system)),
        Fact(tr("The method brings"), force_text(given.offered_n, system)),
        Fact(tr("Energy stored in the line"), show(given.energy_j, Dimension.ENERGY, system)),
    ]


def _moves(given: Load, system: System) -> str:
    """Whether the pull overcomes what holds the vehicle."""
    offered, needed = force_text(given.offered_n, system), force_text(given.needed_n, system)
    if given.moves is None:
        return tr("Nobody said what the vehicle stands in: whether it moves is not known.")
    if given.moves:
        return tr("It moves: {offered} against {needed}.", offered=offered, needed=needed)
    return tr(
        "It does not move: {offered} against {needed}. Dig, lower the tyres, lay boards.",
        offered=offered,
        needed=needed,
    )


def _scales(given: Load, width_pt: float, system: System) -> list[Block]:
    if not given.scales:
        return []
    said = "; ".join(
        tr("{scale}: {force}", scale=name, force=force_text(needed_n, system)) for name, needed_n in given.scales
    )
    return [
        words(tr("The published scales differ for this ground: {scales}.", scales=said), width_pt, BODY).below(GRID)
    ]


def _assumptions(given: Load, width_pt: float) -> list[Block]:
    if not given.assumptions:
        return []
    said = (tr("Taken for granted"), tr("Value"), tr("Why"), tr("Source"))
    return [names(_SHARES, said, width_pt).below(2 * GRID), *(_assumption(one, width_pt) for one in given.assumptions)]


def _assumption(one: Assumption, width_pt: float) -> Block:
    what_pt, value_pt, why_pt, source_pt = widths(_SHARES, width_pt)
    source = one.source or (tr("written for this pull") if one.typed else "–")
    cells = [
        words(one.what, what_pt, BODY),
        words(one.value, value_pt, BODY.in_bold()),
        words(one.why, why_pt, BODY),
        words(source, source_pt, SMALL),
    ]
    return line(_SHARES, cells, width_pt)
