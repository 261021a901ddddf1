"""Pins that are meant to be taken out: service limits, contact stress, a hollow insert, and a ball against a pin."""

import math

from inspector.mechanics import checked
from inspector.mechanics.sections import round_elastic_modulus_m3
from inspector.mechanics.shear import pin_lever_m, shank_stress_pa

STEEL_MODULUS_PA = 210e9


def pin_service_bearing_n(wall_m: float, diameter_m: float, yield_pa: float, wall_count: int) -> float:
    """Bearing of a pin that is changed in use, under everyday load.

    Formula: Fb,Rd,ser = n 0.6 t d fy / gM6,ser, gM6,ser = 1.0
    Valid: t >= 0, d > 0, fy > 0, n >= 1
    Source: en_1993_1_8_pins

    >>> round(pin_service_bearing_n(0.004, 0.0159, 235e6, 1) / 1e3, 2)
    8.97
    """
    checked.at_least(0, wall_m=wall_m)
    checked.positive(diameter_m=diameter_m, yield_pa=yield_pa)
    checked.whole(wall_count=wall_count)
    return wall_count * 0.6 * wall_m * diameter_m * yield_pa


def pin_service_moment_n_m(diameter_m: float, yield_pa: float) -> float:
    """Bending of a pin that is changed in use, under everyday load.

    Formula: MRd,ser = 0.8 Wel fyp / gM6,ser, gM6,ser = 1.0
    Valid: d > 0, fyp > 0
    Source: en_1993_1_8_pins

    >>> round(pin_service_moment_n_m(0.016, 355e6), 1)
    114.2
    """
    checked.positive(yield_pa=yield_pa)
    return 0.8 * round_elastic_modulus_m3(diameter_m) * yield_pa


def pin_contact_pa(pull_n: float, pin_m: float, hole_m: float, wall_m: float) -> float:
    """Contact stress between a pin and its looser hole, to be 2.5 fy or less where the pin is changed in use.

    Formula: sh = 0.591 sqrt(E F (d0 - d) / (d^2 t)), 0.591 = 1 / sqrt(pi (1 - 0.3^2))
    Valid: F >= 0, 0 < d <= d0, t > 0
    Source: en_1993_1_8_pins

    >>> round(pin_contact_pa(10e3, 0.015875, 0.0162, 0.004) / 1e6)
    487
    """
    checked.at_least(0, pull_n=pull_n)
    checked.positive(pin_m=pin_m, hole_m=hole_m, wall_m=wall_m)
    checked.between(0, hole_m, pin_m=pin_m)
    squared = STEEL_MODULUS_PA * pull_n * (hole_m - pin_m) / (pin_m**2 * wall_m)
    return math.sqrt(squared / (math.pi * (1 - 0.3**2)))


def hollow_insert_lever_m(outer_wall_m: float, gap_m: float, insert_wall_m: float) -> float:
    """Bending moment for each unit of pull where the insert is hollow, its walls close to those of the receiver.

    Formula: M / F = (a / 2 + c + t / 2) / 2
    Valid: a > 0, c >= 0, t > 0
    Source: elementary_statics – a model of our own

    >>> round(hollow_insert_lever_m(0.004, 0.001, 0.005) * 1e3, 2)
    2.75
    """
    checked.positive(outer_wall_m=outer_wall_m, insert_wall_m=insert_wall_m)
    checked.at_least(0, gap_m=gap_m)
    return (outer_wall_m / 2 + gap_m + insert_wall_m / 2) / 2


def ball_over_pin_ratio(
    shank_m: float, ball_lever_m: float, pin_m: float, inner_plate_m: float, gap_m: float, outer_plate_m: float
) -> float:
    """Bending stress of a tow ball's shank over that of a pin through a receiver, for the same pull.

    Formula: (h / Wel,ball) / ((b + 4c + 2a) / 8 / Wel,pin)
    Valid: all lengths > 0, gap >= 0
    Source: elementary_statics, en_1993_1_8_pins

    >>> round(ball_over_pin_ratio(0.022, 0.050, 0.015875, 0.050, 0.001, 0.004), 1)
    2.4
    """
    ball_pa = shank_stress_pa(1.0, shank_m, ball_lever_m)
    pin_pa = pin_lever_m(inner_plate_m, gap_m, outer_plate_m) / round_elastic_modulus_m3(pin_m)
    return ball_pa / pin_pa
