"""From a mark to newtons, and what the angle of a pull does to shackle, block and bridle."""

import math

from inspector.mechanics import checked

IN_LINE_RAD = math.radians(5)
HALF_SIDE_RAD = math.radians(45)
FULL_SIDE_RAD = math.radians(90)


def ultimate_n(working_load_n: float, design_factor: float) -> float:
    """Breaking strength behind a marked working load.

    Formula: MBS = WLL x design factor
    Valid: WLL >= 0, factor >= 1
    Source: asme_b30_26_factor – definition of the factor; 5 at least in shackles up to 150 short tons

    >>> round(ultimate_n(4.75 * 907.18474 * 9.80665, 5) / 1e3, 1)
    211.3
    """
    checked.at_least(0, working_load_n=working_load_n)
    checked.at_least(1, design_factor=design_factor)
    return working_load_n * design_factor


def side_load_factor(angle_rad: float) -> float:
    """Share of a shackle's working load left when it is pulled out of its plane: a stair, not a slope.

    Formula: 1.00 to 5 deg, 0.70 to 45 deg, 0.50 to 90 deg, each step with its upper end
    Valid: 0 to 90 deg; no side pull beyond
    Source: shackle_side_figure, shackle_side_shares – what lies between 5 and 6 deg goes to the stricter step

    >>> side_load_factor(math.radians(30))
    0.7
    """
    checked.between(0, FULL_SIDE_RAD * (1 + checked.SAME_RATIO), angle_rad=angle_rad)
    if angle_rad <= IN_LINE_RAD * (1 + checked.SAME_RATIO):
        return 1.0
    return 0.7 if angle_rad <= HALF_SIDE_RAD * (1 + checked.SAME_RATIO) else 0.5


def block_load_factor(angle_rad: float) -> float:
    """Load on a block per line pull, by the angle between the two lines (0 = parallel).

    Formula: 2 cos(A / 2)
    Valid: 0 <= A <= 180 deg; no friction
    Source: common_practice – statics

    >>> round(block_load_factor(math.radians(90)), 3)
    1.414
    """
    checked.between(0, math.pi * (1 + checked.SAME_RATIO), angle_rad=angle_rad)
    return max(2 * math.cos(angle_rad / 2), 0.0)


def bridle_leg_factor(angle_rad: float) -> float:
    """Load in each of two equal legs per pull, by the angle between the legs.

    Formula: 1 / (2 cos(A / 2))
    Valid: 0 <= A < 180 deg
    Source: common_practice – statics

    >>> round(bridle_leg_factor(math.radians(60)), 3)
    0.577
    """
    checked.between(0, math.pi * (1 - checked.SAME_RATIO), angle_rad=angle_rad)
    return 1 / (2 * math.cos(angle_rad / 2))
