"""What a rig sheet says of the danger: where to stand, what flies, and what to change."""

from inspector.drawings.rig_words import part_name
from inspector.gear.rig_result import Change, Flying, RigResult
from inspector.language import tr
from inspector.paper.blocks import Block, stack, words
from inspector.paper.columns import line, names, together, widths
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, HEAD
from inspector.paper.rig_outcome import outcome_words
from inspector.units import Dimension, System, show

_FLYING = (0.20, 0.38, 0.13, 0.16, 0.13)
_CHANGES = (0.58, 0.20, 0.22)
_STRONG = BODY.in_bold()


def where_to_stand(result: RigResult, width_pt: float, system: System) -> list[Block]:
    """The distance and the rule it comes from."""
    distance = show(result.stand_off_m, Dimension.LENGTH, system)
    stay = tr("Nobody within {distance} of the line, on either side and beyond both ends.", distance=distance)
    rule = tr("By this rule: {rule}.", rule=result.stand_off_rule.rstrip("."))
    away = stack([words(stay, width_pt, HEAD), words(rule, width_pt, BODY)])
    return [heading(tr("Where to stand"), width_pt), away]


def what_flies(result: RigResult, width_pt: float, system: System) -> list[Block]:
    """A line for each part that may let go."""
    if not result.flying:
        return []
    columns = (tr("If this lets go"), tr("This flies"), tr("Mass"), tr("Speed"), tr("Energy"))
    how = tr("All the energy in the line is taken as motion of what flies: an upper bound.")
    title = [heading(tr("What flies"), width_pt), words(how, width_pt, BODY).kept(), names(_FLYING, columns, width_pt)]
    return together([*title, *(_flying(one, width_pt, system) for one in result.flying)])


def _flying(one: Flying, width_pt: float, system: System) -> Block:
    wide = widths(_FLYING, width_pt)
    parts = ", ".join(part_name(tag) for tag in one.parts)
    cells = (
        (part_name(one.link), _STRONG),
        (parts, BODY),
        (show(one.mass_kg, Dimension.MASS, system, 1), BODY),
        (show(one.speed_m_per_s, Dimension.SPEED, system), _STRONG),
        (show(one.energy_j, Dimension.ENERGY, system), BODY),
    )
    return line(
        _FLYING, [words(text, width, type_) for (text, type_), width in zip(cells, wide, strict=True)], width_pt
    )


def changes(result: RigResult, width_pt: float) -> list[Block]:
    """What to change, and what comes of it."""
    if not result.changes:
        return []
    said = (tr("Change"), tr("Strength over pull then"), tr("Outcome then"))
    title = [heading(tr("What to change"), width_pt), names(_CHANGES, said, width_pt)]
    return together([*title, *(_change(one, width_pt) for one in result.changes)])


def _change(one: Change, width_pt: float) -> Block:
    says_pt, factor_pt, outcome_pt = widths(_CHANGES, width_pt)
    factor = tr("not known") if one.safety_factor is None else show(one.safety_factor, Dimension.FACTOR)
    cells = [words(one.says, says_pt, BODY), words(factor, factor_pt, BODY), outcome_words(one.outcome, outcome_pt)]
    return line(_CHANGES, cells, width_pt)
