"""The pull and its danger in the window: the sum step by step, whether it moves, where to stand, what flies."""

from collections.abc import Sequence
from itertools import groupby

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import Fold, column, facts, hairline, said
from inspector.desk.record_parts import section
from inspector.desk.rig_parts import pictures
from inspector.desk.rig_table import table
from inspector.drawings.rig_sensitivity import depth_chart, has_depths, has_speeds, speed_chart
from inspector.drawings.rig_words import force_text, part_name
from inspector.gear.rig_result import Flying, LeftOut, Load, RigResult
from inspector.language import tr
from inspector.units import Dimension, System, show


def load_part(load: Load, system: System) -> QWidget:
    """The greatest pull, step by step, and whether it overcomes what holds the vehicle."""
    likely = tr("has no meaning here") if load.likely_n is None else force_text(load.likely_n, system)
    known = [
        (tr("Greatest pull"), force_text(load.pull_n, system)),
        (tr("It arises in"), ", ".join(part_name(tag) for tag in load.at)),
        (tr("If the vehicle gives way"), likely),
        (tr("Energy stored in the line"), show(load.energy_j, Dimension.ENERGY, system)),
        *((tr("Holds it by {scale}", scale=name), force_text(needed_n, system)) for name, needed_n in load.scales),
    ]
    steps = [said(step) for step in load.steps]
    return section(tr("The pull"), said(_moves(load, system), bold=True), *steps, facts(known))


def _moves(load: Load, system: System) -> str:
    offered, needed = force_text(load.offered_n, system), force_text(load.needed_n, system)
    if load.moves is None:
        return tr("Nobody said what the vehicle stands in: whether it moves is not known.")
    if load.moves:
        return tr("It moves: {offered} against {needed}.", offered=offered, needed=needed)
    return tr(
        "It does not move: {offered} against {needed}. Dig, lower the tyres, lay boards.",
        offered=offered,
        needed=needed,
    )


def danger_part(result: RigResult, system: System) -> QWidget:
    """Where to stand and what flies if a part lets go."""
    distance = show(result.stand_off_m, Dimension.LENGTH, system)
    stay = tr("Nobody within {distance} of the line, on either side and beyond both ends.", distance=distance)
    rule = tr("By this rule: {rule}.", rule=result.stand_off_rule.rstrip("."))
    how = tr("All the energy in the line is taken as motion of what flies: an upper bound.")
    heads = (tr("If this lets go"), tr("This flies"), tr("Mass"), tr("Speed"), tr("Energy"))
    rows = [_flying(one, system) for one in result.flying]
    flies = [said(how, Type.SMALL, faint=True), table(heads, rows, (3, 5, 2, 2, 2))] if rows else []
    return section(tr("Where to stand, and what flies"), said(stay, bold=True), said(rule), *flies)


def _flying(one: Flying, system: System) -> list[QWidget]:
    return [
        said(part_name(one.link), bold=True),
        said(", ".join(part_name(tag) for tag in one.parts)),
        said(show(one.mass_kg, Dimension.MASS, system, 1)),
        said(show(one.speed_m_per_s, Dimension.SPEED, system), bold=True),
        said(show(one.energy_j, Dimension.ENERGY, system)),
    ]


def growth_part(result: RigResult, look: Look, system: System) -> list[QWidget]:
    """How the pull grows with the speed and with the depth."""
    charts = [speed_chart(result, system)] if has_speeds(result) else []
    charts += [depth_chart(result, system)] if has_depths(result) else []
    if not charts:
        return []
    return [section(tr("How the pull grows"), *pictures([(one.title, one) for one in charts], look))]


def assumptions_part(load: Load) -> list[QWidget]:
    """Everything that the sums take for granted."""
    rows: list[list[QWidget]] = [
        [said(one.what), said(one.value, bold=True), said(one.why),
         said(one.source or (tr("written for this pull") if one.typed else "–"), Type.SMALL, faint=True)]
        for one in load.assumptions
    ]  # fmt: skip
    heads = (tr("Taken for granted"), tr("Value"), tr("Why"), tr("Source"))
    return [section(tr("What is taken for granted"), table(heads, rows, (3, 2, 4, 4)))] if rows else []


def left_out_part(left: Sequence[LeftOut]) -> list[QWidget]:
    """The pieces of the kit that the rig does not use, by reason, folded away."""
    if not left:
        return []
    by_why = groupby(sorted(left, key=lambda one: (one.why, one.tag)), key=lambda one: one.why)
    lines = [(", ".join(one.tag for one in listed), why) for why, listed in by_why]
    title = tr("Pieces left out, and why ({count})", count=len(left))
    return [column([hairline(), Fold(title, lambda: _left(lines))])]


def _left(lines: Sequence[tuple[str, str]]) -> QWidget:
    """By reason; the tags wrap."""
    rows: list[list[QWidget]] = [[said(tags, bold=True), said(why)] for tags, why in lines]
    return column([table((tr("Piece"), tr("Why")), rows, (2, 5))], GRID)
