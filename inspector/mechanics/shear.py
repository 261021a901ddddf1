"""Pins in shear, bearing and bending, and the round shank of a tow ball as a cantilever.

The resistances follow EN 1993-1-8:2005 Table 3.10. With the recommended partial factors (gM0 = 1.0, gM2 = 1.25) they
are design values; with gM2 = 1 the shear resistance is the characteristic one.
"""

import math

from inspector.mechanics import checked
from inspector.mechanics.sections import round_elastic_modulus_m3, round_plastic_modulus_m3

GAMMA_M0_FACTOR = 1.0
GAMMA_M2_FACTOR = 1.25


def pin_area_m2(diameter_m: float) -> float:
    """A = pi d^2 / 4, in m2, for d > 0. Elementary geometry.

    >>> round(pin_area_m2(0.015875) * 1e6, 1)
    197.9
    """
    checked.positive(diameter_m=diameter_m)
    return math.pi * diameter_m**2 / 4


def shear_plane_stress_pa(pull_n: float, diameter_m: float, plane_count: int) -> float:
    """tau = F / (n A), mean stress on each of n shear planes, in Pa, for F >= 0, d > 0, n >= 1. Elementary statics.

    >>> round(shear_plane_stress_pa(40e3, 0.016, 2) / 1e6, 1)
    99.5
    """
    checked.at_least(0, pull_n=pull_n)
    checked.whole(plane_count=plane_count)
    return pull_n / (plane_count * pin_area_m2(diameter_m))


def pin_shear_per_plane_n(diameter_m: float, ultimate_pa: float, gamma_m2_factor: float = GAMMA_M2_FACTOR) -> float:
    """Fv,Rd = 0.6 A fup / gM2, in N for one plane, for d > 0, fup > 0, gM2 >= 1. EN 1993-1-8:2005 Table 3.10.

    >>> round(pin_shear_per_plane_n(0.016, 510e6) / 1e3, 1)
    49.2
    """
    checked.positive(ultimate_pa=ultimate_pa)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return 0.6 * pin_area_m2(diameter_m) * ultimate_pa / gamma_m2_factor


def pin_shear_n(
    diameter_m: float, ultimate_pa: float, plane_count: int, gamma_m2_factor: float = GAMMA_M2_FACTOR
) -> float:
    """F = n Fv,Rd, in N for a pin cut on n planes at once (2 = double shear), for n >= 1. EN 1993-1-8:2005 Table 3.10.

    Shear alone: in a solid insert bending governs, and single shear adds a couple that this sum does not hold.

    >>> round(pin_shear_n(0.015875, 360e6, 2) / 1e3, 1)
    68.4
    """
    checked.whole(plane_count=plane_count)
    return plane_count * pin_shear_per_plane_n(diameter_m, ultimate_pa, gamma_m2_factor)


def pin_bearing_n(
    wall_m: float, diameter_m: float, yield_pa: float, wall_count: int, gamma_m0_factor: float = GAMMA_M0_FACTOR
) -> float:
    """Fb,Rd = n 1.5 t d fy / gM0, in N for n walls, fy the lower of pin and wall. EN 1993-1-8:2005 Table 3.10.

    Valid for t >= 0, d > 0, fy > 0, n >= 1, gM0 >= 1.

    >>> round(pin_bearing_n(0.0015, 0.0159, 235e6, wall_count=2) / 1e3, 1)
    16.8
    """
    checked.at_least(0, wall_m=wall_m)
    checked.positive(diameter_m=diameter_m, yield_pa=yield_pa)
    checked.whole(wall_count=wall_count)
    checked.at_least(1, gamma_m0_factor=gamma_m0_factor)
    return wall_count * 1.5 * wall_m * diameter_m * yield_pa / gamma_m0_factor


def bearing_wall_needed_m(
    pull_n: float, diameter_m: float, yield_pa: float, wall_count: int = 2, gamma_m0_factor: float = GAMMA_M0_FACTOR
) -> float:
    """t = F gM0 / (n 1.5 d fy), in m for each of n walls sharing F >= 0. EN 1993-1-8:2005 Table 3.10, turned round.

    >>> round(bearing_wall_needed_m(16.8e3, 0.0159, 235e6) * 1e3, 2)
    1.5
    """
    checked.at_least(0, pull_n=pull_n)
    return pull_n / pin_bearing_n(1.0, diameter_m, yield_pa, wall_count, gamma_m0_factor)


def pin_lever_m(inner_plate_m: float, gap_m: float, outer_plate_m: float) -> float:
    """M / F = (b + 4c + 2a) / 8, in m: b middle plate, c gap on each side, a each outer plate; b, a > 0, c >= 0.

    EN 1993-1-8:2005, bending moment in a pin.

    >>> round(pin_lever_m(0.050, 0.001, 0.004) * 1e3, 3)
    7.75
    """
    checked.positive(inner_plate_m=inner_plate_m, outer_plate_m=outer_plate_m)
    checked.at_least(0, gap_m=gap_m)
    return (inner_plate_m + 4 * gap_m + 2 * outer_plate_m) / 8


def pin_moment_n_m(pull_n: float, inner_plate_m: float, gap_m: float, outer_plate_m: float) -> float:
    """MEd = F (b + 4c + 2a) / 8, in N m, for F >= 0. EN 1993-1-8:2005, bending moment in a pin.

    >>> round(pin_moment_n_m(35.7e3, 0.012, 0.005, 0.008), 1)
    214.2
    """
    checked.at_least(0, pull_n=pull_n)
    return pull_n * pin_lever_m(inner_plate_m, gap_m, outer_plate_m)


def pin_moment_resistance_n_m(diameter_m: float, yield_pa: float, gamma_m0_factor: float = GAMMA_M0_FACTOR) -> float:
    """MRd = 1.5 Wel fyp / gM0, in N m, for d > 0, fyp > 0, gM0 >= 1. EN 1993-1-8:2005 Table 3.10.

    >>> round(pin_moment_resistance_n_m(0.016, 355e6), 1)
    214.1
    """
    checked.positive(yield_pa=yield_pa)
    checked.at_least(1, gamma_m0_factor=gamma_m0_factor)
    return 1.5 * round_elastic_modulus_m3(diameter_m) * yield_pa / gamma_m0_factor


def pin_utilisation_ratio(
    moment_n_m: float, moment_resistance_n_m: float, shear_n: float, shear_resistance_n: float
) -> float:
    """(MEd / MRd)^2 + (Fv,Ed / Fv,Rd)^2, to be 1 or less; shear for one plane. EN 1993-1-8:2005 Table 3.10.

    Valid for effects >= 0 and resistances > 0.

    >>> pin_utilisation_ratio(60.0, 100.0, 8e3, 10e3)
    1.0
    """
    checked.at_least(0, moment_n_m=moment_n_m, shear_n=shear_n)
    checked.positive(moment_resistance_n_m=moment_resistance_n_m, shear_resistance_n=shear_resistance_n)
    return (moment_n_m / moment_resistance_n_m) ** 2 + (shear_n / shear_resistance_n) ** 2


def pin_bending_pull_n(lever_m: float, moment_resistance_n_m: float) -> float:
    """F = MRd / (M/F), in N: the pull at which bending alone uses the pin up. EN 1993-1-8:2005 Table 3.10.

    Valid for lever > 0, MRd > 0.

    >>> round(pin_bending_pull_n(0.006, 214.1) / 1e3, 1)
    35.7
    """
    checked.positive(lever_m=lever_m, moment_resistance_n_m=moment_resistance_n_m)
    return moment_resistance_n_m / lever_m


def pin_combined_pull_n(lever_m: float, moment_resistance_n_m: float, shear_resistance_n: float) -> float:
    """F at (F l / MRd)^2 + (F / 2 Fv,Rd)^2 = 1, in N, in double shear, Fv,Rd for one plane; l the lever M/F.

    EN 1993-1-8:2005 Table 3.10, solved for F. Valid for l > 0, MRd > 0, Fv,Rd > 0.

    >>> round(pin_combined_pull_n(0.00775, 138.5, 34.2e3) / 1e3, 1)
    17.3
    """
    checked.positive(shear_resistance_n=shear_resistance_n)
    bending_pull_n = pin_bending_pull_n(lever_m, moment_resistance_n_m)
    return 1 / math.hypot(1 / bending_pull_n, 1 / (2 * shear_resistance_n))


def shank_stress_pa(pull_n: float, diameter_m: float, lever_m: float) -> float:
    """sigma = F h / Wel, in Pa: elastic bending stress of a round shank pulled at height h over its plate.

    Elementary beam theory, for F >= 0, d > 0, h > 0; above the yield stress the figure only shows by how much.

    >>> round(shank_stress_pa(10e3, 0.022, 0.050) / 1e6)
    478
    """
    checked.at_least(0, pull_n=pull_n)
    checked.positive(lever_m=lever_m)
    return pull_n * lever_m / round_elastic_modulus_m3(diameter_m)


def shank_elastic_limit_n(diameter_m: float, lever_m: float, yield_pa: float) -> float:
    """F = Wel fy / h, in N: the pull of first permanent set of a round shank, for d, h, fy > 0. Elementary beam theory.

    >>> round(shank_elastic_limit_n(0.022, 0.050, 235e6) / 1e3, 1)
    4.9
    """
    checked.positive(lever_m=lever_m, yield_pa=yield_pa)
    return round_elastic_modulus_m3(diameter_m) * yield_pa / lever_m


def shank_plastic_limit_n(diameter_m: float, lever_m: float, yield_pa: float) -> float:
    """F = Wpl fy / h, in N: the pull that bends a round shank over, for d, h, fy > 0. Elementary plastic theory.

    >>> round(shank_plastic_limit_n(0.022, 0.050, 235e6) / 1e3, 1)
    8.3
    """
    checked.positive(lever_m=lever_m, yield_pa=yield_pa)
    return round_plastic_modulus_m3(diameter_m) * yield_pa / lever_m
