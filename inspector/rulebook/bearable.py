"""The most that a piece of these sizes can bear: the best steel, wire or fibre there is, and nothing lost to how it is
made. A rating beyond that was misread, or is of another piece, so honest ones lie well below."""

from collections.abc import Callable
from math import inf

from inspector.gear.item import BOLT_COUNT, Item
from inspector.gear.kind import Basis, Kind
from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.mechanics.shear import pin_area_m2, pin_shear_n
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown
from inspector.units import Dimension

_STEEL_PA = 1220e6  # iso_898_1_strongest
_WIRE_PA = 2160e6  # wire_classes
_HMPE_PA = 3.9e9  # fibre_yarns
_NYLON_PA = 0.96e9  # fibre_yarns: 0.84 N/tex at 1.14 g/cm3
_WEBBING_N_PER_M = 6e6  # common practice: the heaviest webbing of several plies has half of it
_LEAST_FACTOR = 2.0  # nobody marks a working load that is nearer to the load of failure
_LEGS = 4  # a soft shackle is a doubled rope, laid to a loop
_CHARACTERISTIC = 1.0


def rating_over_sizes(case: Case) -> Quantity:
    """The load of failure that the rating stands for, over the most that its sizes can bear."""
    item, most_of = case.dossier.item, _MOST.get(_material(case.dossier.kind))
    claimed_n = _claimed_n(item)
    if claimed_n is None or most_of is None or item.is_welded_on:
        return NOT_APPLICABLE
    most_n = most_of(item)
    if most_n is None:
        return unknown(tr("The size as new was not written down."))
    return number(claimed_n / most_n, Dimension.RATIO, tr("booking"), Known.STATED)


def _claimed_n(item: Item) -> float | None:
    rating = item.rating
    if rating.figure is None or rating.basis not in {Basis.MBS, Basis.WLL}:
        return None
    return rating.figure.si * (max(rating.design_factor or 0, _LEAST_FACTOR) if rating.basis is Basis.WLL else 1)


def _material(kind: Kind) -> str:
    """By what its most is told: shackles and ropes differ among themselves, straps do not."""
    return kind.family if kind.key not in _MOST else kind.key


def _new_m(item: Item, key: str) -> float | None:
    figure = item.size(key)
    return figure.si if figure and figure.si > 0 else None


def _shackle_n(item: Item) -> float | None:
    """The pin cut on both sides, or both legs of the body torn off straight."""
    pin_m, body_m = _new_m(item, "pin_diameter"), _new_m(item, "bow_diameter")
    if pin_m is None and body_m is None:
        return None
    legs_n = inf if body_m is None else 2 * pin_area_m2(body_m) * _STEEL_PA
    return min(legs_n, inf if pin_m is None else pin_shear_n(pin_m, _STEEL_PA, 2, _CHARACTERISTIC))


def _pin_n(item: Item) -> float | None:
    pin_m = _new_m(item, "pin_diameter")
    return None if pin_m is None else pin_shear_n(pin_m, _STEEL_PA, 2, _CHARACTERISTIC)


def _bolts_n(item: Item) -> float | None:
    """All bolts torn off along their length, the way in which they bear most."""
    bolt_m, count = _new_m(item, "bolt_diameter"), item.size(BOLT_COUNT)
    return None if bolt_m is None or count is None else max(count.si, 1) * pin_area_m2(bolt_m) * _STEEL_PA


def _round(stress_pa: float, legs: int = 1) -> Callable[[Item], float | None]:
    """A rope as if all of its round were wire or fibre."""

    def most_n(item: Item) -> float | None:
        across_m = _new_m(item, "diameter")
        return None if across_m is None else legs * pin_area_m2(across_m) * stress_pa

    return most_n


def _webbing_n(item: Item) -> float | None:
    wide_m = _new_m(item, "width")
    return None if wide_m is None else wide_m * _WEBBING_N_PER_M


_MOST: dict[str, Callable[[Item], float | None]] = {
    "shackle": _shackle_n,
    "hitch_pin": _pin_n,
    "recovery_point": _bolts_n,
    "wire_winch_rope": _round(_WIRE_PA),
    "fibre_winch_line": _round(_HMPE_PA),
    "soft_shackle": _round(_HMPE_PA, _LEGS),
    "kinetic_rope": _round(_NYLON_PA),
    "strap": _webbing_n,
}
