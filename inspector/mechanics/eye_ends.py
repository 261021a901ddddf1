"""How much plate an eye needs round its hole, what a round end takes from it, and the American rules for it."""

import math

from inspector.mechanics import checked
from inspector.mechanics.lug import eye_shear_n

_US_ADDED_M = 0.016


def pin_end_distance_m(
    pull_n: float, hole_m: float, thickness_m: float, yield_pa: float, gamma_m0_factor: float = 1.0
) -> float:
    """Steel needed between the hole of a pin and the end of its plate, along the pull.

    Formula: a = F gM0 / (2 t fy) + 2 d0 / 3
    Valid: F >= 0, d0 > 0, t > 0, fy > 0, gM0 >= 1
    Source: en_1993_1_8_plates

    >>> round(pin_end_distance_m(50e3, 0.022, 0.012, 235e6) * 1e3, 1)
    23.5
    """
    return _half_pull_m(pull_n, thickness_m, yield_pa, gamma_m0_factor) + 2 * _third_m(hole_m)


def pin_side_distance_m(
    pull_n: float, hole_m: float, thickness_m: float, yield_pa: float, gamma_m0_factor: float = 1.0
) -> float:
    """Steel needed between the hole of a pin and each side of its plate, across the pull.

    Formula: c = F gM0 / (2 t fy) + d0 / 3
    Valid: F >= 0, d0 > 0, t > 0, fy > 0, gM0 >= 1
    Source: en_1993_1_8_plates

    >>> round(pin_side_distance_m(50e3, 0.022, 0.012, 235e6) * 1e3, 1)
    16.2
    """
    return _half_pull_m(pull_n, thickness_m, yield_pa, gamma_m0_factor) + _third_m(hole_m)


def pin_plate_thickness_m(pull_n: float, yield_pa: float, gamma_m0_factor: float = 1.0) -> float:
    """Thickness of a pin's plate that has the standard's fixed shape: 2.5 d0 wide, 1.6 d0 from mid-hole to end.

    Formula: t = 0.7 sqrt(F gM0 / fy), and d0 = 2.5 t at most
    Valid: F >= 0, fy > 0, gM0 >= 1
    Source: en_1993_1_8_plates

    >>> round(pin_plate_thickness_m(50e3, 235e6) * 1e3, 1)
    10.2
    """
    checked.at_least(0, pull_n=pull_n)
    checked.positive(yield_pa=yield_pa)
    checked.at_least(1, gamma_m0_factor=gamma_m0_factor)
    return 0.7 * math.sqrt(pull_n * gamma_m0_factor / yield_pa)


def round_end_loss_m(pin_m: float, hole_m: float, end_radius_m: float) -> float:
    """What the rounding of an eye's end takes off each of the two planes on which it would tear out.

    Formula: Z' = r - sqrt(r^2 - (Dp/2 sin phi)^2), phi = 55 Dp / Dh degrees
    Valid: 0 < Dp <= Dh, r >= Dp/2 sin phi
    Source: asme_bth_1

    >>> round(round_end_loss_m(0.034925, 0.0428625, 0.10556875) * 1e3, 2)
    0.72
    """
    checked.positive(pin_m=pin_m, hole_m=hole_m, end_radius_m=end_radius_m)
    checked.between(0, hole_m, pin_m=pin_m)
    half_m = pin_m / 2 * math.sin(math.radians(55 * pin_m / hole_m))
    checked.at_least(half_m, end_radius_m=end_radius_m)
    return end_radius_m - math.sqrt(end_radius_m**2 - half_m**2)


def round_eye_shear_n(
    beyond_m: float,
    pin_m: float,
    hole_m: float,
    thickness_m: float,
    ultimate_pa: float,
    end_radius_m: float,
    design_factor: float = 2.0,
) -> float:
    """Allowable pull of a round-ended eye against tearing out on two planes.

    Formula: Pv = 0.70 Fu / (1.2 Nd) 2 [a + Dp / 2 (1 - cos phi) - Z'] t
    Valid: a > Z', 0 < Dp <= Dh, t > 0, Fu > 0, r >= Dp/2 sin phi, Nd >= 2
    Source: asme_bth_1

    >>> round(round_eye_shear_n(3.3125, 1.375, 1.6875, 0.75, 58.0, 4.15625), 2)
    88.41
    """
    left_m = beyond_m - round_end_loss_m(pin_m, hole_m, end_radius_m)
    return eye_shear_n(left_m, pin_m, hole_m, thickness_m, ultimate_pa, design_factor)


def us_eye_tension_n(thickness_m: float, edge_m: float, ultimate_pa: float, resistance_factor: float = 0.75) -> float:
    """Tension of an eye through its hole by the American building rules.

    Formula: phi Pn = phi Fu 2 t be, be = min(2 t + 16 mm, what there is from hole to side)
    Valid: t > 0, edge > 0, Fu > 0, 0 < phi <= 1
    Source: aisc_360_d5 – an older edition of the example leaves out what there is, and comes out too high

    >>> round(us_eye_tension_n(0.0127, 0.040894, 400e6) / 1e3, 1)
    311.6
    """
    checked.positive(thickness_m=thickness_m, edge_m=edge_m)
    effective_m = min(2 * thickness_m + _US_ADDED_M, edge_m)
    return _reduced_pa(ultimate_pa, resistance_factor) * 2 * thickness_m * effective_m


def us_eye_shear_n(
    thickness_m: float, beyond_m: float, pin_m: float, ultimate_pa: float, resistance_factor: float = 0.75
) -> float:
    """Tearing out of an eye on two planes by the American building rules.

    Formula: phi Pn = phi 0.6 Fu 2 t (a + d / 2)
    Valid: t > 0, a > 0, d > 0, Fu > 0, 0 < phi <= 1
    Source: aisc_360_d5

    >>> round(us_eye_shear_n(0.0127, 0.05715, 0.0254, 400e6) / 1e3, 1)
    319.4
    """
    checked.positive(thickness_m=thickness_m, beyond_m=beyond_m, pin_m=pin_m)
    return 0.6 * _reduced_pa(ultimate_pa, resistance_factor) * 2 * thickness_m * (beyond_m + pin_m / 2)


def us_eye_bearing_n(thickness_m: float, pin_m: float, yield_pa: float, resistance_factor: float = 0.75) -> float:
    """Pressure of a pin on its eye by the American building rules; it often governs.

    Formula: phi Rn = phi 1.8 Fy d t
    Valid: t > 0, d > 0, Fy > 0, 0 < phi <= 1
    Source: aisc_360_d5

    >>> round(us_eye_bearing_n(0.0127, 0.0254, 248e6) / 1e3, 1)
    108.0
    """
    checked.positive(thickness_m=thickness_m, pin_m=pin_m)
    return 1.8 * _reduced_pa(yield_pa, resistance_factor) * thickness_m * pin_m


def us_eye_yield_n(width_m: float, thickness_m: float, yield_pa: float, resistance_factor: float = 0.90) -> float:
    """Lasting stretch of an eye's whole plate by the American building rules.

    Formula: phi Pn = phi Fy w t
    Valid: w > 0, t > 0, Fy > 0, 0 < phi <= 1
    Source: aisc_360_d5

    >>> round(us_eye_yield_n(0.10795, 0.0127, 248e6) / 1e3, 1)
    306.0
    """
    checked.positive(width_m=width_m, thickness_m=thickness_m)
    return _reduced_pa(yield_pa, resistance_factor) * width_m * thickness_m


def _half_pull_m(pull_n: float, thickness_m: float, yield_pa: float, gamma_m0_factor: float) -> float:
    checked.at_least(0, pull_n=pull_n)
    checked.positive(thickness_m=thickness_m, yield_pa=yield_pa)
    checked.at_least(1, gamma_m0_factor=gamma_m0_factor)
    return pull_n * gamma_m0_factor / (2 * thickness_m * yield_pa)


def _third_m(hole_m: float) -> float:
    checked.positive(hole_m=hole_m)
    return hole_m / 3


def _reduced_pa(strength_pa: float, resistance_factor: float) -> float:
    checked.positive(strength_pa=strength_pa, resistance_factor=resistance_factor)
    checked.between(0, 1, resistance_factor=resistance_factor)
    return strength_pa * resistance_factor
