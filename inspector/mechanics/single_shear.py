"""A pin held by one plate only: one plane carries the whole pull, and a couple bends the pin besides."""

import math

from inspector.mechanics import checked
from inspector.mechanics.shear import pin_bending_pull_n, pin_lever_m


def single_shear_lever_m(pulled_plate_m: float, gap_m: float, holding_plate_m: float) -> float:
    """Bending moment for each unit of pull in a pin that one plate holds and another pulls.

    Formula: M / F = (a + b) / 2 + c
    Valid: a > 0, b > 0, c >= 0; the couple in full, no help from a head or a nut
    Source: elementary_statics – the pin rule of EN 1993-1-8 does not hold this couple

    >>> round(single_shear_lever_m(0.050, 0.001, 0.004) * 1e3, 1)
    28.0
    """
    checked.positive(pulled_plate_m=pulled_plate_m, holding_plate_m=holding_plate_m)
    checked.at_least(0, gap_m=gap_m)
    return (pulled_plate_m + holding_plate_m) / 2 + gap_m


def single_shear_pull_n(lever_m: float, moment_resistance_n_m: float, shear_resistance_n: float) -> float:
    """The pull at which bending and single shear together use a pin up.

    Formula: F at (F l / MRd)^2 + (F / Fv,Rd)^2 = 1, l the lever M / F
    Valid: l > 0, MRd > 0, Fv,Rd > 0
    Source: en_1993_1_8_pins – solved for one plane

    >>> round(single_shear_pull_n(0.028, 138.5, 34.2e3) / 1e3, 1)
    4.9
    """
    checked.positive(shear_resistance_n=shear_resistance_n)
    bending_pull_n = pin_bending_pull_n(lever_m, moment_resistance_n_m)
    return 1 / math.hypot(1 / bending_pull_n, 1 / shear_resistance_n)


def single_over_double_bending_ratio(inner_plate_m: float, gap_m: float, outer_plate_m: float) -> float:
    """How many times harder the same pull bends a pin that is held on one side instead of both.

    Formula: [(a + b) / 2 + c] / [(b + 4c + 2a) / 8]
    Valid: a > 0, b > 0, c >= 0
    Source: elementary_statics, en_1993_1_8_pins

    >>> round(single_over_double_bending_ratio(0.050, 0.001, 0.004), 1)
    3.6
    """
    double_m = pin_lever_m(inner_plate_m, gap_m, outer_plate_m)
    return single_shear_lever_m(inner_plate_m, gap_m, outer_plate_m) / double_m
