"""Webbing and rope: what water and sun take, and whether a strap suits a vehicle.

The sun figures are those of the WSTDA exposure tests 1997-2004 as quoted by a supplier; the report itself was not seen.
"""

from collections.abc import Sequence

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2

WET_NYLON_LOSS_RATIO = 0.15  # UFC 4-159-03 table 6-8; TB 55-1900-232-10 table 5-4 note 4
NYLON_SUN_LOSS_RATIO = 0.60  # upper end of 50-60 % at 36 months, exposure tests
NYLON_SUN_MONTHS = 36.0
POLYESTER_SUN_LOSS_RATIO = 0.30  # about 30 % in the first 12 months, exposure tests
POLYESTER_SUN_MONTHS = 12.0
STRAP_BAND_LEAST_RATIO = 2.0  # F2017L01560 s 8: 2 to 3 times GVM
STRAP_BAND_MOST_RATIO = 3.0


def wet_nylon_strength_n(dry_n: float) -> float:
    """F_wet = 0.85 F_dry, in N, for F_dry >= 0. UFC 4-159-03 table 6-8: wet nylon is 15 % weaker.

    Published elsewhere: 5 to 25 %. Wet lowers strength; it never lowers load.

    >>> round(wet_nylon_strength_n(80e3))
    68000
    """
    return strength_left_n(dry_n, WET_NYLON_LOSS_RATIO)


def nylon_sun_loss_ratio(months: float) -> float:
    """0.60 min(m, 36) / 36, for m >= 0 months out of doors: 1.7 % a month, a straight line derived here.

    Its end point is the upper figure of the exposure tests. Past 36 months none is known: the loss is at least this.

    >>> round(nylon_sun_loss_ratio(12), 3)
    0.2
    """
    checked.at_least(0, months=months)
    return NYLON_SUN_LOSS_RATIO * min(months / NYLON_SUN_MONTHS, 1.0)


def polyester_sun_loss_ratio(months: float) -> float:
    """0.30 min(m, 12) / 12, for m >= 0 months out of doors, then flat. The line inside the first year is our own.

    >>> round(polyester_sun_loss_ratio(30), 3)
    0.3
    """
    checked.at_least(0, months=months)
    return POLYESTER_SUN_LOSS_RATIO * min(months / POLYESTER_SUN_MONTHS, 1.0)


def ageing_loss_ratio(loss_ratios: Sequence[float]) -> float:
    """max(losses) of one group (age, sun): they describe one decay, so the worst stands and they are not multiplied.

    At least one loss, each from 0 to 1. Common practice, no published source.

    >>> ageing_loss_ratio([0.10, 0.25])
    0.25
    """
    if not loss_ratios:
        raise ValueError("loss_ratios must hold at least one loss")
    for loss_ratio in loss_ratios:
        checked.between(0, 1, loss_ratio=loss_ratio)
    return max(loss_ratios)


def strength_left_n(strength_n: float, loss_ratio: float) -> float:
    """F = F0 (1 - x), in N, for F0 >= 0 and 0 <= x <= 1. Definition of a loss.

    >>> strength_left_n(80e3, 0.25)
    60000.0
    """
    checked.at_least(0, strength_n=strength_n)
    checked.between(0, 1, loss_ratio=loss_ratio)
    return strength_n * (1 - loss_ratio)


def strap_band_ratio(breaking_n: float, vehicle_mass_kg: float) -> float:
    """MBS / (GVM g), for MBS >= 0 in N, GVM > 0 in kg of the lighter vehicle. F2017L01560 s 8: to be 2 to 3.

    >>> round(strap_band_ratio(78453.2, 3200), 3)
    2.5
    """
    checked.at_least(0, breaking_n=breaking_n)
    checked.positive(vehicle_mass_kg=vehicle_mass_kg)
    return breaking_n / (vehicle_mass_kg * STANDARD_GRAVITY_M_PER_S2)


def in_strap_band(band_ratio: float) -> bool:
    """2 <= MBS / (GVM g) <= 3, both ends included, for a ratio >= 0. F2017L01560 s 8.

    >>> in_strap_band(2.5), in_strap_band(3.4)
    (True, False)
    """
    checked.at_least(0, band_ratio=band_ratio)
    least_ratio = STRAP_BAND_LEAST_RATIO * (1 - checked.SAME_RATIO)
    most_ratio = STRAP_BAND_MOST_RATIO * (1 + checked.SAME_RATIO)
    return least_ratio <= band_ratio <= most_ratio
