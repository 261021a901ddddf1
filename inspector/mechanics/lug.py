"""An eye with its pin after ASME BTH-1: four ways to fail, each with the design factor of the device (2 or 3)."""

import math

from inspector.mechanics import checked


def pin_fit_factor(pin_m: float, hole_m: float) -> float:
    """What a loose pin takes from the strength of an eye; needed where hole over pin is above 1.1.

    Formula: Cr = 1 - 0.275 sqrt(1 - (Dp / Dh)^2)
    Valid: 0 < Dp <= Dh
    Source: asme_bth_1

    >>> round(pin_fit_factor(1.375, 1.6875), 4)
    0.8406
    """
    checked.positive(pin_m=pin_m, hole_m=hole_m)
    checked.between(0, hole_m, pin_m=pin_m)
    return 1 - 0.275 * math.sqrt(1 - (pin_m / hole_m) ** 2)


def eye_effective_width_m(thickness_m: float, edge_m: float, hole_m: float, ultimate_over_yield_ratio: float) -> float:
    """Width on each side of the hole that counts in tension.

    Formula: beff = min(4 t, 0.6 be (Fu / Fy) sqrt(Dh / be), be)
    Valid: t > 0, be > 0, Dh > 0, Fu >= Fy
    Source: asme_bth_1

    >>> round(eye_effective_width_m(0.75, 1.66, 1.6875, 58 / 36), 3)
    1.618
    """
    checked.positive(thickness_m=thickness_m, edge_m=edge_m, hole_m=hole_m)
    checked.at_least(1, ultimate_over_yield_ratio=ultimate_over_yield_ratio)
    bent_m = 0.6 * edge_m * ultimate_over_yield_ratio * math.sqrt(hole_m / edge_m)
    return min(4 * thickness_m, bent_m, edge_m)


def eye_tension_n(
    thickness_m: float, effective_m: float, ultimate_pa: float, fit_factor: float = 1.0, design_factor: float = 2.0
) -> float:
    """Allowable tension of an eye through its hole.

    Formula: Pt = Cr Fu / (1.2 Nd) 2 t beff
    Valid: t > 0, beff > 0, Fu > 0, 0 < Cr <= 1, Nd >= 2
    Source: asme_bth_1

    >>> round(eye_tension_n(0.75, 1.618, 58.0), 2)
    58.65
    """
    checked.positive(thickness_m=thickness_m, effective_m=effective_m)
    return _allowed_pa(ultimate_pa, fit_factor, design_factor) * 2 * thickness_m * effective_m


def eye_fracture_n(
    edge_m: float,
    outside_m: float,
    hole_m: float,
    thickness_m: float,
    ultimate_pa: float,
    fit_factor: float = 1.0,
    design_factor: float = 2.0,
) -> float:
    """Allowable pull of an eye against splitting on one plane beyond the hole.

    Formula: Pb = Cr Fu / (1.2 Nd) [1.13 (R - Dh / 2) + 0.92 be / (1 + be / Dh)] t
    Valid: R > Dh / 2, all lengths > 0, Fu > 0, 0 < Cr <= 1, Nd >= 2
    Source: asme_bth_1

    >>> round(eye_fracture_n(3.0, 4.5, 3.0, 1.25, 58.0), 1)
    144.1
    """
    checked.positive(edge_m=edge_m, hole_m=hole_m, thickness_m=thickness_m, beyond_m=outside_m - hole_m / 2)
    lengths_m = 1.13 * (outside_m - hole_m / 2) + 0.92 * edge_m / (1 + edge_m / hole_m)
    return _allowed_pa(ultimate_pa, fit_factor, design_factor) * lengths_m * thickness_m


def eye_shear_n(
    beyond_m: float, pin_m: float, hole_m: float, thickness_m: float, ultimate_pa: float, design_factor: float = 2.0
) -> float:
    """Allowable pull of a square-ended eye against tearing out on two planes.

    Formula: Pv = 0.70 Fu / (1.2 Nd) 2 [a + Dp / 2 (1 - cos phi)] t, phi = 55 Dp / Dh degrees
    Valid: a > 0, 0 < Dp <= Dh, t > 0, Fu > 0, Nd >= 2
    Source: asme_bth_1

    >>> round(eye_shear_n(3.0, 2.75, 3.0, 1.25, 58.0), 2)
    147.97
    """
    checked.positive(beyond_m=beyond_m, pin_m=pin_m, hole_m=hole_m, thickness_m=thickness_m)
    checked.between(0, hole_m, pin_m=pin_m)
    phi_rad = math.radians(55 * pin_m / hole_m)
    planes_m = 2 * (beyond_m + pin_m / 2 * (1 - math.cos(phi_rad)))
    return 0.70 * _allowed_pa(ultimate_pa, 1.0, design_factor) * planes_m * thickness_m


def eye_bearing_n(pin_m: float, thickness_m: float, yield_pa: float, design_factor: float = 2.0) -> float:
    """Allowable pressure of a pin on its eye; half of it where the joint turns often under load.

    Formula: Pp = 1.25 Fy / Nd Dp t
    Valid: Dp > 0, t > 0, Fy > 0, Nd >= 2
    Source: asme_bth_1

    >>> round(eye_bearing_n(1.375, 0.75, 36.0), 2)
    23.2
    """
    checked.positive(pin_m=pin_m, thickness_m=thickness_m, yield_pa=yield_pa)
    checked.at_least(2, design_factor=design_factor)
    return 1.25 * yield_pa / design_factor * pin_m * thickness_m


def _allowed_pa(ultimate_pa: float, fit_factor: float, design_factor: float) -> float:
    checked.positive(ultimate_pa=ultimate_pa, fit_factor=fit_factor)
    checked.between(0, 1, fit_factor=fit_factor)
    checked.at_least(2, design_factor=design_factor)
    return fit_factor * ultimate_pa / (1.2 * design_factor)
