"""How far a reading lies on the side of its size as new to which nothing wears: what cannot well be true.

Of each place the reading that stands counts, so that it is held until somebody competent reads it again. What was never
read, and what has no size as new, other rules ask for.
"""

import math
from collections.abc import Callable

from msgspec.structs import replace

from inspector.gear.kind import Kind
from inspector.gear.verdict import Value
from inspector.language import tr
from inspector.rulebook.case import Case
from inspector.rulebook.load import Rulebook
from inspector.rulebook.observed import latest
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity
from inspector.units import Dimension, read

_HAIR = 1e-9


def excess(case: Case, measure: str) -> Quantity:
    """How much larger than new it reads, as a ratio of the new size."""
    return _beside_new(case, measure, latest(case, measure, max), lambda now, new: now / new - 1)


def shortfall(case: Case, measure: str) -> Quantity:
    """How much shorter than new it reads, as a ratio of the new size."""
    return _beside_new(case, measure, latest(case, measure, min), lambda now, new: 1 - now / new)


def most_m(book: Rulebook, kind: Kind, measure: str, new_m: float) -> float:
    """The most that a reading may be to be believed, in metres; without end where no rule says."""
    return new_m * (1 + _allowed(book, kind, f"excess.{measure}")) * (1 + _HAIR)


def least_m(book: Rulebook, kind: Kind, measure: str, new_m: float) -> float:
    """The least that a reading may be to be believed, in metres; below nothing where no rule says."""
    return new_m * (1 - _allowed(book, kind, f"shortfall.{measure}")) * (1 - _HAIR)


def _allowed(book: Rulebook, kind: Kind, quantity: str) -> float:
    limits = (rule.limit for rule in book.rules_for(kind) if rule.quantity == quantity)
    return min((read(one, Dimension.RATIO, field=quantity).si for one in limits), default=math.inf)


def _beside_new(case: Case, measure: str, taken: Quantity, ratio: Callable[[float, float], float]) -> Quantity:
    wanted = case.dossier.kind.measure(measure)
    size = case.dossier.item.size(wanted.compare_with) if wanted else None
    if size is None or size.si <= 0 or taken.value is None or taken.value.number is None:
        return NOT_APPLICABLE
    by = max(ratio(taken.value.number, size.si), 0.0)
    said = tr("{now} against {new} as new", now=taken.value.as_typed, new=size.as_typed)
    value = Value(number=by, dimension=Dimension.RATIO)
    return replace(taken, value=value, came_from=said, stale=False, changes_on=None, why_unknown="")
