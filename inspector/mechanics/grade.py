"""What a slope adds to a pull. Three rules are in public use beside the exact one."""

import math
from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2

SIXTIETH_LIMIT_RAD = math.radians(45)


class GradeRule(StrEnum):
    """How the share of the weight is reckoned from the slope."""

    EXACT = "exact"
    SIXTIETH = "sixtieth"
    PER_CENT = "per_cent"
    WHOLE_WEIGHT = "whole_weight"


def grade_resistance_ratio(angle_rad: float, rule: GradeRule = GradeRule.EXACT) -> float:
    """The part of a vehicle's weight that pulls down the slope.

    Formula: exact sin a; sixtieth a / 60 with a in degrees, 1 above 45; per cent tan a; whole weight 1
    Valid: 0 <= a < 90 degrees
    Source: winching_tips_scale, grade_percent_chart, mire_by_depth – exact is the weight's own component; a / 60 is 3
        to 5 % low up to 20 degrees, equal at 30; per cent is high; the whole weight is a military upper bound

    >>> round(grade_resistance_ratio(math.radians(15)), 4)
    0.2588
    """
    checked.between(0, math.pi / 2 * (1 - checked.SAME_RATIO), angle_rad=angle_rad)
    if rule is GradeRule.EXACT:
        return math.sin(angle_rad)
    if rule is GradeRule.SIXTIETH:
        steep = angle_rad > SIXTIETH_LIMIT_RAD * (1 + checked.SAME_RATIO)
        return 1.0 if steep else math.degrees(angle_rad) / 60
    return math.tan(angle_rad) if rule is GradeRule.PER_CENT else 1.0


def slope_angle_rad(percent_ratio: float) -> float:
    """The angle of a slope given as rise over run.

    Formula: a = atan(p), p = 0.20 for a slope of 20 %
    Valid: p >= 0
    Source: grade_percent_chart

    >>> round(math.degrees(slope_angle_rad(0.20)), 2)
    11.31
    """
    checked.at_least(0, percent_ratio=percent_ratio)
    return math.atan(percent_ratio)


def grade_resistance_n(mass_kg: float, grade_ratio: float) -> float:
    """The pull that a slope asks for.

    Formula: R = W s, W = m g, s the part of the weight
    Valid: m > 0; s >= 0
    Source: winching_tips_scale

    >>> round(grade_resistance_n(2000.0, 0.25) / 9.80665, 6)
    500.0
    """
    checked.positive(mass_kg=mass_kg)
    checked.at_least(0, grade_ratio=grade_ratio)
    return mass_kg * STANDARD_GRAVITY_M_PER_S2 * grade_ratio
