"""A weld as a line that is pulled, bent, sheared and twisted at once: round a tube, or on three sides of a plate."""

import math

from inspector.mechanics import checked
from inspector.mechanics.weld_group import tube_weld_length_m, tube_weld_modulus_m2


def tube_weld_polar_m3(side_m: float, corner_radius_m: float = 0.0) -> float:
    """Polar moment of a weld line round a square tube, for twist.

    Formula: Jw = 2 Iw = Sw s; with sharp corners 4 s^3 / 3
    Valid: s > 0, 0 <= r <= s/2
    Source: weld_as_a_line

    >>> round(tube_weld_polar_m3(0.060) * 1e9)
    288000
    """
    return tube_weld_modulus_m2(side_m, corner_radius_m) * side_m


def tube_weld_reach_m(side_m: float, corner_radius_m: float = 0.0) -> float:
    """How far the farthest point of a weld line round a square tube lies from its middle.

    Formula: rho = sqrt(2) (s / 2 - r) + r
    Valid: s > 0, 0 <= r <= s/2
    Source: elementary_statics

    >>> round(tube_weld_reach_m(0.060, 0.008) * 1e3, 1)
    39.1
    """
    checked.positive(side_m=side_m)
    checked.between(0, side_m / 2, corner_radius_m=corner_radius_m)
    return math.sqrt(2) * (side_m / 2 - corner_radius_m) + corner_radius_m


def weld_twist_n_per_m(torque_n_m: float, offset_m: float, polar_m3: float) -> float:
    """Force on a length of weld line from a twist, square to the offset from the middle of the weld.

    Formula: q = T r / Jw
    Valid: T >= 0, r >= 0, Jw > 0
    Source: weld_as_a_line

    >>> round(weld_twist_n_per_m(1000.0, 0.0424, 288e-6) / 1e3)
    147
    """
    checked.at_least(0, torque_n_m=torque_n_m, offset_m=offset_m)
    checked.positive(polar_m3=polar_m3)
    return torque_n_m * offset_m / polar_m3


def weld_resultant_n_per_m(straight_n_per_m: float, across_n_per_m: float, along_n_per_m: float) -> float:
    """Three forces on a length of weld line, square to each other, as one.

    Formula: q = sqrt(q1^2 + q2^2 + q3^2)
    Valid: any finite forces on a length
    Source: weld_as_a_line

    >>> round(weld_resultant_n_per_m(0.0, 2335.0, 1751.0 + 900.0))
    3533
    """
    sizes = {"straight_n_per_m": abs(straight_n_per_m), "across_n_per_m": abs(across_n_per_m)}
    checked.at_least(0, **sizes, along_n_per_m=abs(along_n_per_m))
    return math.hypot(straight_n_per_m, across_n_per_m, along_n_per_m)


def tube_weld_worst_n_per_m(
    pull_n: float, moment_n_m: float, shear_n: float, torque_n_m: float, side_m: float, corner_radius_m: float = 0.0
) -> float:
    """Greatest force on a length of the weld round a square tube that is pulled, bent, sheared and twisted at once.

    Formula: q = sqrt((N/L + M/Sw)^2 + (V/L + T rho/Jw)^2): the worst of each taken to meet at one point
    Valid: N, M, V, T >= 0, s > 0, 0 <= r <= s/2
    Source: weld_as_a_line

    >>> round(tube_weld_worst_n_per_m(1e3, 50.0, 0.0, 0.0, 0.060) / 1e3, 2)
    14.58
    """
    checked.at_least(0, pull_n=pull_n, moment_n_m=moment_n_m, shear_n=shear_n, torque_n_m=torque_n_m)
    length_m = tube_weld_length_m(side_m, corner_radius_m)
    straight = pull_n / length_m + moment_n_m / tube_weld_modulus_m2(side_m, corner_radius_m)
    reach_m, polar_m3 = tube_weld_reach_m(side_m, corner_radius_m), tube_weld_polar_m3(side_m, corner_radius_m)
    return weld_resultant_n_per_m(straight, shear_n / length_m + weld_twist_n_per_m(torque_n_m, reach_m, polar_m3), 0.0)


def three_sided_centre_m(leg_m: float, back_m: float) -> float:
    """How far the middle of a weld on three sides of a plate lies from the side between the two legs.

    Formula: x = b^2 / (2 b + d)
    Valid: b > 0, d > 0
    Source: weld_as_a_line

    >>> round(three_sided_centre_m(0.050, 0.100) * 1e3, 1)
    12.5
    """
    checked.positive(leg_m=leg_m, back_m=back_m)
    return leg_m**2 / (2 * leg_m + back_m)


def three_sided_polar_m3(leg_m: float, back_m: float) -> float:
    """Polar moment of a weld line on three sides of a plate, for twist.

    Formula: Jw = (2 b + d)^3 / 12 - b^2 (b + d)^2 / (2 b + d)
    Valid: b > 0, d > 0
    Source: weld_as_a_line

    >>> round(three_sided_polar_m3(0.050, 0.100) * 1e9)
    385417
    """
    checked.positive(leg_m=leg_m, back_m=back_m)
    length_m = 2 * leg_m + back_m
    return length_m**3 / 12 - leg_m**2 * (leg_m + back_m) ** 2 / length_m
