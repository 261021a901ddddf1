"""The catalogue of quantities a rule may name. Arithmetic lives here, never in a rule."""

from collections.abc import Callable
from functools import cache

from inspector.rulebook import (
    ageing,
    bearable,
    fixing,
    forms,
    heat,
    observed,
    open_entries,
    sizes,
    unlikely,
    wall_need,
    wall_quantities,
    wires,
)
from inspector.rulebook.capacity import strength_left
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import Quantity

_NAMED: dict[str, Callable[[Case], Quantity]] = {
    "history": observed.history,
    "rating_stated": observed.rating_stated,
    "rating_over_sizes": bearable.rating_over_sizes,
    "design_factor": observed.design_factor,
    "age": observed.age,
    "inspection_age": observed.inspection_age,
    "inspection_interval": observed.inspection_interval,
    "pull_count": observed.pull_count,
    "open_events": open_entries.open_events,
    "harmful_exposures": open_entries.harmful_exposures,
    "open_doubts": open_entries.open_doubts,
    "open_strikes": open_entries.open_strikes,
    "open_fittings": open_entries.open_fittings,
    "open_finds": open_entries.open_finds,
    "open_repairs": open_entries.open_repairs,
    "open_labels": open_entries.open_labels,
    "open_evidence": open_entries.open_evidence,
    "open_breaks": open_entries.open_breaks,
    "open_releases": open_entries.open_releases,
    "open_recalls": open_entries.open_recalls,
    "open_remedies": open_entries.open_remedies,
    "visit_age": forms.visit_age,
    "visit_days": forms.visit_days,
    "home_made_paper": forms.home_made_paper,
    "changed_figures": open_entries.changed_figures,
    "frozen_exposures": open_entries.frozen_exposures,
    "hottest": heat.hottest,
    "fibre_heat_limit": heat.fibre_heat_limit,
    "metal_heat_limit": heat.metal_heat_limit,
    "core_heat": heat.core_heat,
    "identity": sizes.identity,
    "weld_throat": sizes.weld_throat,
    "shackle_pin": sizes.shackle_pin,
    "ball_in_coupler": sizes.ball_in_coupler,
    "wires_held": wires.wires_held,
    "wires_discard": wires.wires_discard,
    "wires_held_long": wires.wires_held_long,
    "wires_discard_long": wires.wires_discard_long,
    "wall_relied": wall_quantities.wall_relied,
    "wall_rough_allowed": wall_quantities.wall_rough_allowed,
    "required_wall": wall_quantities.required_wall,
    "needed_wall": wall_need.needed_wall,
    "wall_life": wall_quantities.wall_life,
    "wall_estimate": wall_quantities.wall_estimate,
    "wall_reading_age": wall_quantities.wall_reading_age,
    "wall_unread_age": wall_quantities.wall_unread_age,
    "wall_reading_interval": wall_quantities.wall_reading_interval,
    "wall_gauge": wall_quantities.wall_gauge,
    "ageing_loss": ageing.ageing_loss,
    "abrasion_loss": ageing.abrasion_loss,
    "strength_left": strength_left,
}
_OF_A_KEY: dict[str, Callable[[Case, str], Quantity]] = {
    "check": observed.grade,
    "loss": fixing.loss,
    "growth": observed.growth,
    "excess": unlikely.excess,
    "shortfall": unlikely.shortfall,
    "new": sizes.as_new,
}
_MEASURED = "measured"


def is_known(name: str) -> bool:
    """Whether the catalogue has this name."""
    return name in _NAMED or name.partition(".")[0] in {*_OF_A_KEY, _MEASURED}


def quantity(case: Case, name: str, *, more_is_worse: bool = False) -> Quantity:
    """The named quantity of the case, worked out once. more_is_worse: which of several readings counts."""
    remembered_by, work_out = _worked_out_by(name, more_is_worse)
    return case.once(remembered_by, work_out)


@cache
def _worked_out_by(name: str, more_is_worse: bool) -> tuple[object, Callable[[Case], Quantity]]:
    """What a quantity is remembered by, and what works it out. A name is taken apart once, not for each piece."""
    if name in _NAMED:
        return (name, None), _NAMED[name]
    prefix, _, key = name.partition(".")
    if prefix in _OF_A_KEY:
        work_out = _OF_A_KEY[prefix]
        return (name, None), lambda case: work_out(case, key)
    worst = max if more_is_worse else min
    return (name, worst), lambda case: observed.latest(case, key, worst)
