"""A fillet all round a square tube as a line: straight pull, pull beside the axis, and what a thin wall does to it.

A pull through the insert's pin runs along the axis: e = 0. A pull from the ball hole of a ball mount, or from the chain
hole under a receiver, runs beside it: e is the distance. Sharp corners are the textbook's; a real tube is rounded, and
there the sharp line errs on the unsafe side.
"""

import math

from inspector.mechanics import checked

CLOSE_PLATE_FACTOR = 1.2


def rectangle_weld_modulus_m2(width_m: float, depth_m: float) -> float:
    """Bending modulus of a weld line round a sharp-cornered rectangle.

    Formula: Sw = b d + d^2 / 3
    Valid: b > 0, d > 0
    Source: weld_as_a_line

    >>> round(rectangle_weld_modulus_m2(0.060, 0.060) * 1e6)
    4800
    """
    checked.positive(width_m=width_m, depth_m=depth_m)
    return width_m * depth_m + depth_m**2 / 3


def rectangle_weld_polar_m3(width_m: float, depth_m: float) -> float:
    """Polar moment of a weld line round a sharp-cornered rectangle, for twist.

    Formula: Jw = (b + d)^3 / 6
    Valid: b > 0, d > 0
    Source: weld_as_a_line

    >>> round(rectangle_weld_polar_m3(0.050, 0.050) * 1e9)
    166667
    """
    checked.positive(width_m=width_m, depth_m=depth_m)
    return (width_m + depth_m) ** 3 / 6


def tube_weld_length_m(side_m: float, corner_radius_m: float = 0.0) -> float:
    """Length of a weld line round a square tube.

    Formula: L = 4 s - (8 - 2 pi) r
    Valid: s > 0, 0 <= r <= s/2
    Source: elementary_statics

    >>> round(tube_weld_length_m(0.060, 0.008) * 1e3, 1)
    226.3
    """
    checked.positive(side_m=side_m)
    checked.between(0, side_m / 2, corner_radius_m=corner_radius_m)
    return 4 * side_m - (8 - 2 * math.pi) * corner_radius_m


def tube_weld_modulus_m2(side_m: float, corner_radius_m: float = 0.0) -> float:
    """Bending modulus of a weld line round a square tube.

    Formula: Sw = 2 Iw / s; flats 2 f (s/2)^2 + 2 f^3/12, corners 4 r (c^2 pi/2 + 2 c r + r^2 pi/4); f = s - 2r, c = f/2
    Valid: s > 0, 0 <= r <= s/2
    Source: elementary_statics

    >>> round(tube_weld_modulus_m2(0.060, 0.008) * 1e6)
    4353
    """
    checked.positive(side_m=side_m)
    checked.between(0, side_m / 2, corner_radius_m=corner_radius_m)
    r, flat = corner_radius_m, side_m - 2 * corner_radius_m
    centre = flat / 2
    corners = 4 * r * (centre**2 * math.pi / 2 + 2 * centre * r + r**2 * math.pi / 4)
    return 2 * (2 * flat * (side_m / 2) ** 2 + flat**3 / 6 + corners) / side_m


def tube_weld_pull_n_per_m(pull_n: float, eccentricity_m: float, side_m: float, corner_radius_m: float = 0.0) -> float:
    """Greatest force on a length of the weld round a square tube, on the side that the pull lies towards.

    Formula: q = N / L + N e / Sw
    Valid: N >= 0, e >= 0, s > 0, 0 <= r <= s/2
    Source: weld_as_a_line

    >>> round(tube_weld_pull_n_per_m(1e3, 0.050, 0.060) / 1e3, 2)
    14.58
    """
    checked.at_least(0, pull_n=pull_n, eccentricity_m=eccentricity_m)
    length_m = tube_weld_length_m(side_m, corner_radius_m)
    return pull_n * (1 / length_m + eccentricity_m / tube_weld_modulus_m2(side_m, corner_radius_m))


def far_side_pull_n_per_m(pull_n: float, eccentricity_m: float, side_m: float, corner_radius_m: float = 0.0) -> float:
    """Force on a length of the weld on the far side; below zero it is pressed instead of pulled.

    Formula: q = N / L - N e / Sw
    Valid: N >= 0, e >= 0, s > 0, 0 <= r <= s/2
    Source: weld_as_a_line

    >>> round(far_side_pull_n_per_m(1e3, 0.050, 0.060) / 1e3, 2)
    -6.25
    """
    straight = pull_n / tube_weld_length_m(side_m, corner_radius_m)
    return 2 * straight - tube_weld_pull_n_per_m(pull_n, eccentricity_m, side_m, corner_radius_m)


def eccentric_over_straight_ratio(eccentricity_m: float, side_m: float, corner_radius_m: float = 0.0) -> float:
    """How many times harder a pull beside the axis loads the weld than the same pull along it.

    Formula: 1 + e L / Sw; with sharp corners 1 + 3 e / s
    Valid: e >= 0, s > 0, 0 <= r <= s/2
    Source: weld_as_a_line

    >>> round(eccentric_over_straight_ratio(0.050, 0.060), 2)
    3.5
    """
    straight = tube_weld_pull_n_per_m(1.0, 0.0, side_m, corner_radius_m)
    return tube_weld_pull_n_per_m(1.0, eccentricity_m, side_m, corner_radius_m) / straight


def sharp_corner_error_ratio(eccentricity_m: float, side_m: float, corner_radius_m: float) -> float:
    """How much too little the textbook's sharp corners say against the rounded tube that is there.

    Formula: q(r) / q(0) - 1
    Valid: e >= 0, s > 0, 0 <= r <= s/2
    Source: weld_as_a_line

    >>> round(sharp_corner_error_ratio(0.050, 0.060, 0.008), 2)
    0.09
    """
    sharp = tube_weld_pull_n_per_m(1.0, eccentricity_m, side_m)
    return tube_weld_pull_n_per_m(1.0, eccentricity_m, side_m, corner_radius_m) / sharp - 1


def close_plate_factor(distance_m: float, side_m: float) -> float:
    """What to put on the line method where the pull enters one wall close to the weld.

    Formula: 1.2 within one tube width, 1 beyond
    Valid: distance >= 0, s > 0
    Source: own_weld_model

    >>> close_plate_factor(0.040, 0.060)
    1.2
    """
    checked.at_least(0, distance_m=distance_m)
    checked.positive(side_m=side_m)
    return CLOSE_PLATE_FACTOR if distance_m <= side_m else 1.0


def hole_over_pin_ratio(
    eccentricity_m: float, side_m: float, corner_radius_m: float, distance_m: float, throat_left_ratio: float = 1.0
) -> float:
    """Weld stress of a pull from a ball hole or chain hole, over that of the same pull along the axis of a sound tube.

    Formula: k (1 + e L / Sw) / left; k the close-plate factor, left what rust leaves of the throat
    Valid: e >= 0, s > 0, 0 <= r <= s/2, distance >= 0, 0 < left <= 1
    Source: weld_as_a_line, own_weld_model

    >>> round(hole_over_pin_ratio(0.050, 0.060, 0.008, 0.150, 0.5), 1)
    7.2
    """
    checked.positive(throat_left_ratio=throat_left_ratio)
    checked.between(0, 1, throat_left_ratio=throat_left_ratio)
    ratio = eccentric_over_straight_ratio(eccentricity_m, side_m, corner_radius_m)
    return close_plate_factor(distance_m, side_m) * ratio / throat_left_ratio


def tube_weld_capacity_n(
    eccentricity_m: float, side_m: float, corner_radius_m: float, throat_m: float, shear_strength_pa: float
) -> float:
    """The pull that an all-round weld carries by the simplified method.

    Formula: F = a fvw,d / (1 / L + e / Sw)
    Valid: e >= 0, s > 0, 0 <= r <= s/2, a >= 0, fvw,d > 0
    Source: weld_as_a_line, en_1993_1_8_fillets

    >>> round(tube_weld_capacity_n(0.0, 0.060, 0.0, 0.003, 207.8e6) / 1e3, 1)
    149.6
    """
    checked.at_least(0, throat_m=throat_m)
    checked.positive(shear_strength_pa=shear_strength_pa)
    return throat_m * shear_strength_pa / tube_weld_pull_n_per_m(1.0, eccentricity_m, side_m, corner_radius_m)


def is_root_opened(normal_n_per_m: float) -> bool:
    """Whether the force on a one-sided fillet pulls its root open, as on the side a pull beside the axis lies towards.

    Formula: q > 0
    Valid: any finite force on a length
    Source: en_1993_1_9_root

    >>> is_root_opened(tube_weld_pull_n_per_m(1e3, 0.050, 0.060))
    True
    """
    checked.at_least(0, normal_n_per_m=abs(normal_n_per_m))
    return normal_n_per_m > 0


def tube_wall_stress_pa(pull_n: float, eccentricity_m: float, area_m2: float, modulus_m3: float) -> float:
    """Greatest stress in the wall of the tube beside the weld.

    Formula: sigma = N / A + N e / Wel
    Valid: N >= 0, e >= 0, A > 0, Wel > 0
    Source: elementary_statics

    >>> round(tube_wall_stress_pa(1e3, 0.050, 8.548e-4, 14.52e-6) / 1e6, 2)
    4.61
    """
    checked.at_least(0, pull_n=pull_n, eccentricity_m=eccentricity_m)
    checked.positive(area_m2=area_m2, modulus_m3=modulus_m3)
    return pull_n / area_m2 + pull_n * eccentricity_m / modulus_m3
