"""Webbing and rope: what water and sun take, and whether a strap suits a vehicle.

The sun figures are those of the WSTDA exposure tests 1997-2004 as quoted by a supplier; the report itself was not seen.
"""

from collections.abc import Sequence
from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2


class Fibre(StrEnum):
    """What a strap or rope is made of."""

    NYLON = "nylon"
    POLYESTER = "polyester"
    HMPE = "hmpe"
    POLYPROPYLENE = "polypropylene"


class WetFigure(StrEnum):
    """Whose figure for wet nylon."""

    MANUALS = "manuals"
    TRADE = "trade"
    HANDBOOK_LEAST = "handbook least"
    HANDBOOK_MOST = "handbook most"


WET_NYLON_LOSS_RATIO = 0.15  # UFC 4-159-03 table 6-8; TB 55-1900-232-10 table 5-4 note 4
NYLON_SUN_LOSS_RATIO = 0.60  # upper end of 50-60 % at 36 months, exposure tests
NYLON_SUN_YEARS = 3.0
POLYESTER_SUN_LOSS_RATIO = 0.30  # about 30 % in the first 12 months, exposure tests
POLYESTER_SUN_YEARS = 1.0
STRAP_BAND_LEAST_RATIO = 2.0  # F2017L01560 s 8: 2 to 3 times GVM
STRAP_BAND_MOST_RATIO = 3.0
_WET_NYLON_RATIO: dict[WetFigure, float] = {
    WetFigure.MANUALS: WET_NYLON_LOSS_RATIO,
    WetFigure.TRADE: 0.20,  # upper end of 10-20 %, web notes
    WetFigure.HANDBOOK_LEAST: 0.05,  # The Knot Handbook: 5 to 25 %
    WetFigure.HANDBOOK_MOST: 0.25,
}


def wet_nylon_strength_n(dry_n: float) -> float:
    """Strength of nylon when wet. Wet lowers strength; it never lowers load.

    Formula: F_wet = 0.85 F_dry
    Valid: F_dry >= 0
    Source: wet_nylon – published elsewhere: 5 to 25 %

    >>> round(wet_nylon_strength_n(80e3))
    68000
    """
    return strength_left_n(dry_n, WET_NYLON_LOSS_RATIO)


def wet_loss_ratio(fibre: Fibre, published: WetFigure = WetFigure.MANUALS) -> float:
    """Share of its strength that a fibre loses when wet: nylon only.

    Formula: nylon 0.15 (two manuals), by name 0.20 (trade) or 0.05 to 0.25 (handbook); other fibres 0
    Valid: the names listed; in liquid water, not frozen
    Source: wet_nylon, wet_nylon_handbook, common_practice – the manuals' figure stands, the handbook's range is wider;
        none for polyester and hmpe is second hand, for polypropylene common practice

    >>> wet_loss_ratio(Fibre.NYLON), wet_loss_ratio(Fibre.POLYESTER)
    (0.15, 0.0)
    """
    loss_ratio = _WET_NYLON_RATIO[WetFigure(published)]
    return loss_ratio if Fibre(fibre) is Fibre.NYLON else 0.0


def nylon_sun_loss_ratio(exposed_years: float) -> float:
    """Share of its strength that nylon webbing loses out of doors; past 3 years nothing is published.

    Formula: loss = 0.60 min(t, 3) / 3
    Valid: t >= 0 years out of doors
    Source: wstda_exposure_tests – the end point is the upper figure of the tests, the straight line is derived here

    >>> round(nylon_sun_loss_ratio(1), 3)
    0.2
    """
    checked.at_least(0, exposed_years=exposed_years)
    return NYLON_SUN_LOSS_RATIO * min(exposed_years / NYLON_SUN_YEARS, 1.0)


def polyester_sun_loss_ratio(exposed_years: float) -> float:
    """Share of its strength that polyester webbing loses out of doors: in the first year, then no more.

    Formula: loss = 0.30 min(t, 1)
    Valid: t >= 0 years out of doors
    Source: wstda_exposure_tests – the line inside the first year is derived here

    >>> round(polyester_sun_loss_ratio(2.5), 3)
    0.3
    """
    checked.at_least(0, exposed_years=exposed_years)
    return POLYESTER_SUN_LOSS_RATIO * min(exposed_years / POLYESTER_SUN_YEARS, 1.0)


def sunlight_loss_ratio(fibre: Fibre, exposed_years: float) -> float:
    """Share of its strength that a fibre loses out of doors; one without a published figure takes the worse known.

    Formula: nylon 0.60 min(t, 3) / 3; polyester 0.30 min(t, 1); hmpe and polypropylene the greater of the two
    Valid: t >= 0 years out of doors
    Source: wstda_exposure_tests, common_practice – no figure was found for hmpe and polypropylene

    >>> round(sunlight_loss_ratio(Fibre.HMPE, 1), 3), round(sunlight_loss_ratio(Fibre.HMPE, 3), 3)
    (0.3, 0.6)
    """
    nylon_ratio, polyester_ratio = nylon_sun_loss_ratio(exposed_years), polyester_sun_loss_ratio(exposed_years)
    known = {Fibre.NYLON: nylon_ratio, Fibre.POLYESTER: polyester_ratio}
    return known.get(Fibre(fibre), max(nylon_ratio, polyester_ratio))


def ageing_loss_ratio(losses_ratio: Sequence[float]) -> float:
    """Loss of one group (age, sun): they describe one decay, so the worst stands and they are not multiplied.

    Formula: loss = max(losses)
    Valid: at least one loss, each from 0 to 1
    Source: common_practice

    >>> ageing_loss_ratio([0.10, 0.25])
    0.25
    """
    if not losses_ratio:
        raise ValueError("losses_ratio must hold at least one loss")
    for loss_ratio in losses_ratio:
        checked.between(0, 1, loss_ratio=loss_ratio)
    return max(losses_ratio)


def strength_left_n(strength_n: float, loss_ratio: float) -> float:
    """Strength that a loss leaves.

    Formula: F = F0 (1 - x)
    Valid: F0 >= 0, 0 <= x <= 1
    Source: common_practice – definition of a loss

    >>> strength_left_n(80e3, 0.25)
    60000.0
    """
    checked.at_least(0, strength_n=strength_n)
    checked.between(0, 1, loss_ratio=loss_ratio)
    return strength_n * (1 - loss_ratio)


def residual_strength_ratio(measured_n: float, new_n: float) -> float:
    """Share of the strength when new that a sister piece still had when it was pulled to breaking.

    Formula: share = F_measured / F_new
    Valid: F_measured >= 0, F_new > 0; a piece that beats its mark counts as whole (1)
    Source: dock_line_test – one printed share, 0.28, is a slip: 3,493 of 12,000 is 0.291

    >>> round(residual_strength_ratio(3493, 12000), 3)
    0.291
    """
    checked.at_least(0, measured_n=measured_n)
    checked.positive(new_n=new_n)
    return min(measured_n / new_n, 1.0)


def strap_band_ratio(breaking_n: float, vehicle_mass_kg: float) -> float:
    """How many times the weight of the lighter vehicle, fully laden, a strap breaks at; it is to be 2 to 3.

    Formula: MBS / (GVM g)
    Valid: MBS >= 0, GVM > 0
    Source: strap_standard_s8

    >>> round(strap_band_ratio(78453.2, 3200), 3)
    2.5
    """
    checked.at_least(0, breaking_n=breaking_n)
    checked.positive(vehicle_mass_kg=vehicle_mass_kg)
    return breaking_n / (vehicle_mass_kg * STANDARD_GRAVITY_M_PER_S2)


def in_strap_band(band_ratio: float) -> bool:
    """Whether a strap suits the vehicle: neither too weak nor too stiff, both ends included.

    Formula: 2 <= MBS / (GVM g) <= 3
    Valid: ratio >= 0
    Source: strap_standard_s8

    >>> in_strap_band(2.5), in_strap_band(3.4)
    (True, False)
    """
    checked.at_least(0, band_ratio=band_ratio)
    least_ratio = STRAP_BAND_LEAST_RATIO * (1 - checked.SAME_RATIO)
    most_ratio = STRAP_BAND_MOST_RATIO * (1 + checked.SAME_RATIO)
    return least_ratio <= band_ratio <= most_ratio
