"""The strength of a piece as labelled lines: as marked, each loss, now, what gives way first and at what pull."""

from inspector.gear.capacity import Capacity, SteelStrength
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.rulebook.words import named_quantity
from inspector.units import Dimension, System, show


def strength_lines(capacity: Capacity, system: System) -> list[Fact]:
    """All lines; none where there is nothing to say."""
    return [*_from_marking(capacity, system), *_steel(capacity, system)]


def _from_marking(capacity: Capacity, system: System) -> list[Fact]:
    if capacity.begins_n is None:
        return [Fact(tr("Strength"), _not_known(capacity))] if capacity.why_unknown else []
    lines = [_begins(capacity, system)]
    for step in capacity.steps:
        after = show(step.after_n, Dimension.FORCE, system)
        lost = show(step.loss_ratio, Dimension.RATIO, system)
        lines.append(
            Fact(step.name or named_quantity(step.cause), tr("−{lost}, leaves {after}", lost=lost, after=after))
        )
    lines.append(Fact(tr("Strength now"), _now(capacity, system)))
    if capacity.design_factor and capacity.now_n is not None:
        limit = show(capacity.now_n / capacity.design_factor, Dimension.FORCE, system)
        factor = show(capacity.design_factor, Dimension.FACTOR)
        lines.append(Fact(tr("Working load limit now"), tr("{limit} at factor {factor}", limit=limit, factor=factor)))
    return lines


def _begins(capacity: Capacity, system: System) -> Fact:
    if capacity.as_marked_n is not None:
        return Fact(tr("Strength as marked"), show(capacity.as_marked_n, Dimension.FORCE, system))
    new = show(capacity.as_new_n or 0.0, Dimension.FORCE, system)
    return Fact(tr("Strength as new"), tr("{new}, reckoned from its sizes: no marking tells it", new=new))


def _now(capacity: Capacity, system: System) -> str:
    if capacity.now_n is None:
        return _not_known(capacity)
    now = show(capacity.now_n, Dimension.FORCE, system)
    return tr("{now} (estimated, no reading)", now=now) if capacity.estimated and capacity.strengths else now


def _not_known(capacity: Capacity) -> str:
    return tr("not known: {why}", why=capacity.why_unknown)


def _steel(capacity: Capacity, system: System) -> list[Fact]:
    if not capacity.strengths:
        return []
    lines = (
        Fact(_first_label(capacity), _first(capacity, system)),
        Fact(tr("First lasting set"), _force(capacity.first_set_n, system)),
        Fact(tr("Steel gone"), ", ".join(_gone(capacity))),
        Fact(tr("To compare"), "; ".join(_beside(one, system) for one in capacity.strengths if one.beside)),
        Fact(tr("Reckoned with"), _wall(capacity, system)),
        Fact(tr("Not in this sum"), "; ".join(capacity.left_out)),
    )
    return [line for line in lines if line.text]


def _first_label(capacity: Capacity) -> str:
    if capacity.is_marking_lower:
        return tr("Weakest part reckoned")
    return tr("In the weakest steel") if capacity.as_marked_n is not None else tr("Gives way first")


def _first(capacity: Capacity, system: System) -> str:
    first = capacity.governing
    if first is None or first.now_n is None:
        return ""
    now = _force(first.now_n, system)
    said = tr("{part}: {now}; {because}", part=first.part, now=now, because=first.because)
    if capacity.is_marking_lower:
        return tr("{said}; the marking is lower, and stands", said=said)
    if capacity.as_marked_n is None:
        return said
    return tr("{said}; its marking tells of a better steel, and stands as long as it can be believed", said=said)


def _gone(capacity: Capacity) -> list[str]:
    """What share of the steel is gone where the sizes tell no newtons, e.g. 19 % of a section and 27 % in bending."""
    shares = [(one, 1 - one.left_ratio) for one in capacity.counted if one.sound_n is None and one.left_ratio]
    return [f"{one.part} {show(gone, Dimension.RATIO)}" for one, gone in shares if gone > 0]


def _beside(one: SteelStrength, system: System) -> str:
    if one.now_n is None:
        return tr("{part}: not known", part=one.part)
    said = tr("{part}: {now}; {because}", part=one.part, now=_force(one.now_n, system), because=one.because)
    return said + (tr(", first lasting set {set}", set=_force(one.set_n, system)) if one.set_n is not None else "")


def _wall(capacity: Capacity, system: System) -> str:
    if capacity.wall_m is None or capacity.wall_on is None:
        return ""
    wall = show(capacity.wall_m, Dimension.LENGTH, system)
    day = show_day(capacity.wall_on)
    return tr("a wall of {wall}, reckoned ahead to {day}, so that the strength stands until then", wall=wall, day=day)


def _force(force_n: float | None, system: System) -> str:
    return "" if force_n is None else show(force_n, Dimension.FORCE, system)
