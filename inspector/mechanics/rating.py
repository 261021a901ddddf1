"""From a mark to newtons, and what the angle of a pull does to shackle, block and bridle."""

import math

from inspector.mechanics import checked

IN_LINE_RAD = math.radians(5)
HALF_SIDE_RAD = math.radians(45)
FULL_SIDE_RAD = math.radians(90)


def ultimate_n(working_load_n: float, design_factor: float) -> float:
    """MBS = WLL x design factor, in N, for WLL >= 0 and factor >= 1. Definition of the factor.

    ASME B30.26 26-1.2 asks for at least 5 in shackles up to 150 short tons.

    >>> round(ultimate_n(4.75 * 907.18474 * 9.80665, 5) / 1e3, 1)
    211.3
    """
    checked.at_least(0, working_load_n=working_load_n)
    checked.at_least(1, design_factor=design_factor)
    return working_load_n * design_factor


def side_load_factor(angle_rad: float) -> float:
    """Share of a shackle's WLL left when pulled `angle_rad` off its plane: 1.00 to 5 deg, 0.70 to 45, 0.50 to 90.

    A stair, each step with its upper end; no side pull above 90 deg. Steps as in ASME B30.26; shares 0.70 at 45 deg and
    0.50 at 90 deg from trade sheets.

    >>> side_load_factor(math.radians(30))
    0.7
    """
    checked.between(0, FULL_SIDE_RAD * (1 + checked.SAME_RATIO), angle_rad=angle_rad)
    if angle_rad <= IN_LINE_RAD * (1 + checked.SAME_RATIO):
        return 1.0
    return 0.7 if angle_rad <= HALF_SIDE_RAD * (1 + checked.SAME_RATIO) else 0.5


def block_load_factor(angle_rad: float) -> float:
    """2 cos(A/2): load on a block per line pull, A between the two lines (0 = parallel), 0 <= A <= pi. Statics.

    >>> round(block_load_factor(math.radians(90)), 3)
    1.414
    """
    checked.between(0, math.pi * (1 + checked.SAME_RATIO), angle_rad=angle_rad)
    return max(2 * math.cos(angle_rad / 2), 0.0)


def bridle_leg_factor(angle_rad: float) -> float:
    """1 / (2 cos(A/2)): load in each of two equal legs per pull, A between the legs, 0 <= A < pi. Statics.

    >>> round(bridle_leg_factor(math.radians(60)), 3)
    0.577
    """
    checked.between(0, math.pi * (1 - checked.SAME_RATIO), angle_rad=angle_rad)
    return 1 / (2 * math.cos(angle_rad / 2))
