"""The catalogue of quantities a rule may name. Arithmetic lives here, never in a rule."""

from collections.abc import Callable

from inspector.rulebook import ageing, observed, wall_quantities
from inspector.rulebook.capacity import strength_left
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import Quantity

_NAMED: dict[str, Callable[[Case], Quantity]] = {
    "history": observed.history,
    "rating_stated": observed.rating_stated,
    "design_factor": observed.design_factor,
    "age": observed.age,
    "inspection_age": observed.inspection_age,
    "inspection_interval": observed.inspection_interval,
    "pull_count": observed.pull_count,
    "open_events": observed.open_events,
    "harmful_exposures": observed.harmful_exposures,
    "wall_relied": wall_quantities.wall_relied,
    "wall_rough_allowed": wall_quantities.wall_rough_allowed,
    "required_wall": wall_quantities.required_wall,
    "wall_life": wall_quantities.wall_life,
    "wall_estimate": wall_quantities.wall_estimate,
    "wall_reading_age": wall_quantities.wall_reading_age,
    "wall_reading_interval": wall_quantities.wall_reading_interval,
    "wall_gauge": wall_quantities.wall_gauge,
    "ageing_loss": ageing.ageing_loss,
    "abrasion_loss": ageing.abrasion_loss,
    "strength_left": strength_left,
}
_PREFIXES = ("check", "loss", "growth", "measured")


def is_known(name: str) -> bool:
    """Whether the catalogue has this name."""
    return name in _NAMED or name.partition(".")[0] in _PREFIXES


def quantity(case: Case, name: str, *, more_is_worse: bool = False) -> Quantity:
    """The named quantity of the case, worked out once. more_is_worse: which of several readings counts."""
    return case.once(f"{name} {more_is_worse}", lambda one: _work_out(one, name, more_is_worse=more_is_worse))


def _work_out(case: Case, name: str, *, more_is_worse: bool) -> Quantity:
    if name in _NAMED:
        return _NAMED[name](case)
    prefix, _, key = name.partition(".")
    if prefix == "check":
        return observed.grade(case, key)
    if prefix == "loss":
        return observed.loss(case, key)
    if prefix == "growth":
        return observed.growth(case, key)
    return observed.measured(case, key, max if more_is_worse else min)
