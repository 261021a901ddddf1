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
    """Cross-section of a round pin.

    Formula: A = pi d^2 / 4
    Valid: d > 0
    Source: elementary_statics

    >>> round(pin_area_m2(0.015875) * 1e6, 1)
    197.9
    """
    checked.positive(diameter_m=diameter_m)
    return math.pi * diameter_m**2 / 4


def shear_plane_stress_pa(pull_n: float, diameter_m: float, plane_count: int) -> float:
    """Mean stress on each of the planes on which a pull wants to cut a pin.

    Formula: tau = F / (n A)
    Valid: F >= 0, d > 0, n >= 1
    Source: elementary_statics

    >>> round(shear_plane_stress_pa(40e3, 0.016, 2) / 1e6, 1)
    99.5
    """
    checked.at_least(0, pull_n=pull_n)
    checked.whole(plane_count=plane_count)
    return pull_n / (plane_count * pin_area_m2(diameter_m))


def pin_shear_per_plane_n(diameter_m: float, ultimate_pa: float, gamma_m2_factor: float = GAMMA_M2_FACTOR) -> float:
    """Shear resistance of a pin on one plane.

    Formula: Fv,Rd = 0.6 A fup / gM2
    Valid: d > 0, fup > 0, gM2 >= 1 (1 gives the characteristic value)
    Source: en_1993_1_8_pins

    >>> round(pin_shear_per_plane_n(0.016, 510e6) / 1e3, 1)
    49.2
    """
    checked.positive(ultimate_pa=ultimate_pa)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return 0.6 * pin_area_m2(diameter_m) * ultimate_pa / gamma_m2_factor


def pin_shear_n(
    diameter_m: float, ultimate_pa: float, plane_count: int, gamma_m2_factor: float = GAMMA_M2_FACTOR
) -> float:
    """Shear resistance of a pin cut on n planes at once; 2 is double shear.

    Formula: F = n Fv,Rd
    Valid: n >= 1; shear alone: in a solid insert bending governs, and single shear adds a couple
    Source: en_1993_1_8_pins

    >>> round(pin_shear_n(0.015875, 360e6, 2) / 1e3, 1)
    68.4
    """
    checked.whole(plane_count=plane_count)
    return plane_count * pin_shear_per_plane_n(diameter_m, ultimate_pa, gamma_m2_factor)


def pin_bearing_n(
    wall_m: float, diameter_m: float, yield_pa: float, wall_count: int, gamma_m0_factor: float = GAMMA_M0_FACTOR
) -> float:
    """Bearing resistance of the walls that a pin presses on.

    Formula: Fb,Rd = n 1.5 t d fy / gM0, fy the lower of pin and wall
    Valid: t >= 0, d > 0, fy > 0, n >= 1, gM0 >= 1
    Source: en_1993_1_8_pins

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
    """The wall that each of n walls needs so that the pin does not crush it.

    Formula: t = F gM0 / (n 1.5 d fy)
    Valid: F >= 0, d > 0, fy > 0, n >= 1
    Source: en_1993_1_8_pins

    >>> round(bearing_wall_needed_m(16.8e3, 0.0159, 235e6) * 1e3, 2)
    1.5
    """
    checked.at_least(0, pull_n=pull_n)
    return pull_n / pin_bearing_n(1.0, diameter_m, yield_pa, wall_count, gamma_m0_factor)


def pin_lever_m(inner_plate_m: float, gap_m: float, outer_plate_m: float) -> float:
    """Bending moment in a pin for each unit of pull.

    Formula: M / F = (b + 4c + 2a) / 8; b middle plate, c gap on each side, a each outer plate
    Valid: a > 0, b > 0, c >= 0
    Source: en_1993_1_8_pins

    >>> round(pin_lever_m(0.050, 0.001, 0.004) * 1e3, 3)
    7.75
    """
    checked.positive(inner_plate_m=inner_plate_m, outer_plate_m=outer_plate_m)
    checked.at_least(0, gap_m=gap_m)
    return (inner_plate_m + 4 * gap_m + 2 * outer_plate_m) / 8


def pin_moment_n_m(pull_n: float, inner_plate_m: float, gap_m: float, outer_plate_m: float) -> float:
    """Bending moment in a pin through two outer plates and one between.

    Formula: MEd = F (b + 4c + 2a) / 8
    Valid: F >= 0, a > 0, b > 0, c >= 0
    Source: en_1993_1_8_pins

    >>> round(pin_moment_n_m(35.7e3, 0.012, 0.005, 0.008), 1)
    214.2
    """
    checked.at_least(0, pull_n=pull_n)
    return pull_n * pin_lever_m(inner_plate_m, gap_m, outer_plate_m)


def pin_moment_resistance_n_m(diameter_m: float, yield_pa: float, gamma_m0_factor: float = GAMMA_M0_FACTOR) -> float:
    """Bending resistance of a pin.

    Formula: MRd = 1.5 Wel fyp / gM0
    Valid: d > 0, fyp > 0, gM0 >= 1
    Source: en_1993_1_8_pins

    >>> round(pin_moment_resistance_n_m(0.016, 355e6), 1)
    214.1
    """
    checked.positive(yield_pa=yield_pa)
    checked.at_least(1, gamma_m0_factor=gamma_m0_factor)
    return 1.5 * round_elastic_modulus_m3(diameter_m) * yield_pa / gamma_m0_factor


def pin_utilisation_ratio(
    moment_n_m: float, moment_resistance_n_m: float, shear_n: float, shear_resistance_n: float
) -> float:
    """How far bending and shear together use a pin up; it must be 1 or less.

    Formula: (MEd / MRd)^2 + (Fv,Ed / Fv,Rd)^2, shear for one plane
    Valid: effects >= 0, resistances > 0
    Source: en_1993_1_8_pins

    >>> pin_utilisation_ratio(60.0, 100.0, 8e3, 10e3)
    1.0
    """
    checked.at_least(0, moment_n_m=moment_n_m, shear_n=shear_n)
    checked.positive(moment_resistance_n_m=moment_resistance_n_m, shear_resistance_n=shear_resistance_n)
    return (moment_n_m / moment_resistance_n_m) ** 2 + (shear_n / shear_resistance_n) ** 2


def pin_bending_pull_n(lever_m: float, moment_resistance_n_m: float) -> float:
    """The pull at which bending alone uses a pin up.

    Formula: F = MRd / (M / F)
    Valid: lever > 0, MRd > 0
    Source: en_1993_1_8_pins

    >>> round(pin_bending_pull_n(0.006, 214.1) / 1e3, 1)
    35.7
    """
    checked.positive(lever_m=lever_m, moment_resistance_n_m=moment_resistance_n_m)
    return moment_resistance_n_m / lever_m


def pin_combined_pull_n(lever_m: float, moment_resistance_n_m: float, shear_resistance_n: float) -> float:
    """The pull at which bending and double shear together use a pin up.

    Formula: F at (F l / MRd)^2 + (F / 2 Fv,Rd)^2 = 1, l the lever M / F, Fv,Rd for one plane
    Valid: l > 0, MRd > 0, Fv,Rd > 0
    Source: en_1993_1_8_pins

    >>> round(pin_combined_pull_n(0.00775, 138.5, 34.2e3) / 1e3, 1)
    17.3
    """
    checked.positive(shear_resistance_n=shear_resistance_n)
    bending_pull_n = pin_bending_pull_n(lever_m, moment_resistance_n_m)
    return 1 / math.hypot(1 / bending_pull_n, 1 / (2 * shear_resistance_n))


def shank_stress_pa(pull_n: float, diameter_m: float, lever_m: float) -> float:
    """Bending stress of a tow ball's shank pulled at a height over its plate.

    Formula: sigma = F h / Wel
    Valid: F >= 0, d > 0, h > 0; above yield it only shows by how much
    Source: elementary_statics

    >>> round(shank_stress_pa(10e3, 0.022, 0.050) / 1e6)
    478
    """
    checked.at_least(0, pull_n=pull_n)
    checked.positive(lever_m=lever_m)
    return pull_n * lever_m / round_elastic_modulus_m3(diameter_m)


def shank_elastic_limit_n(diameter_m: float, lever_m: float, yield_pa: float) -> float:
    """The pull of first lasting bend of a tow ball's shank.

    Formula: F = Wel fy / h
    Valid: d > 0, h > 0, fy > 0
    Source: elementary_statics

    >>> round(shank_elastic_limit_n(0.022, 0.050, 235e6) / 1e3, 1)
    4.9
    """
    checked.positive(lever_m=lever_m, yield_pa=yield_pa)
    return round_elastic_modulus_m3(diameter_m) * yield_pa / lever_m


def shank_plastic_limit_n(diameter_m: float, lever_m: float, yield_pa: float) -> float:
    """The pull that bends a tow ball's shank over.

    Formula: F = Wpl fy / h
    Valid: d > 0, h > 0, fy > 0
    Source: elementary_statics

    >>> round(shank_plastic_limit_n(0.022, 0.050, 235e6) / 1e3, 1)
    8.3
    """
    checked.positive(lever_m=lever_m, yield_pa=yield_pa)
    return round_plastic_modulus_m3(diameter_m) * yield_pa / lever_m
