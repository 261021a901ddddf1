"""A pull shared between two points: what each leg bears, and how hard the points are drawn together."""

import math

from inspector.mechanics import checked, rating

NO_GAIN_RAD = math.radians(120)


def bridle_leg_n(pull_n: float, angle_rad: float) -> float:
    """The pull in each of two equal legs.

    Formula: T = F / (2 cos(t / 2)), t between the legs
    Valid: F >= 0; 0 <= t < 180 degrees
    Source: balance_of_forces, sling_leg_tables

    >>> round(bridle_leg_n(40e3, math.radians(60)))
    23094
    """
    checked.at_least(0, pull_n=pull_n)
    return pull_n * rating.bridle_leg_factor(angle_rad)


def bridle_side_load_n(pull_n: float, angle_rad: float) -> float:
    """How hard each of the two points is drawn towards the other.

    Formula: S = (F / 2) tan(t / 2), t between the legs
    Valid: F >= 0; 0 <= t < 180 degrees; equal legs
    Source: balance_of_forces

    >>> round(bridle_side_load_n(40e3, math.radians(90)))
    20000
    """
    return bridle_leg_n(pull_n, angle_rad) * math.sin(angle_rad / 2)


def bridle_gain_factor(angle_rad: float) -> float:
    """How much more two like points bear through a bridle than one of them alone.

    Formula: n = F / T = 2 cos(t / 2), t between the legs
    Valid: 0 <= t < 180 degrees; equal legs
    Source: balance_of_forces – "a bridle doubles the strength" holds at 0 degrees only

    >>> round(bridle_gain_factor(math.radians(60)), 2)
    1.73
    """
    return 1 / rating.bridle_leg_factor(angle_rad)


def is_bridle_a_gain(angle_rad: float) -> bool:
    """Whether a leg bears less than a single point would.

    Formula: t < 120 degrees
    Valid: 0 <= t < 180 degrees; equal legs
    Source: balance_of_forces, rigging_math_bridles

    >>> is_bridle_a_gain(math.radians(90)), is_bridle_a_gain(math.radians(120))
    (True, False)
    """
    checked.between(0, math.pi * (1 - checked.SAME_RATIO), angle_rad=angle_rad)
    return angle_rad < NO_GAIN_RAD * (1 - checked.SAME_RATIO)


def unequal_leg_n(pull_n: float, own_angle_rad: float, other_angle_rad: float) -> float:
    """The pull in one of two fixed legs that lie at different angles either side of the pull.

    Formula: T1 = F sin b / sin(a + b), a this leg's angle from the pull, b the other's
    Valid: F >= 0; a, b >= 0; 0 < a + b < 180 degrees; a bridle that slides has equal legs instead
    Source: balance_of_forces, rigging_math_bridles

    >>> round(unequal_leg_n(1000.0, math.radians(15), math.radians(35)))
    749
    """
    checked.at_least(0, pull_n=pull_n, own_angle_rad=own_angle_rad, other_angle_rad=other_angle_rad)
    both_rad = own_angle_rad + other_angle_rad
    checked.positive(both_rad=both_rad)
    checked.between(0, math.pi * (1 - checked.SAME_RATIO), both_rad=both_rad)
    return pull_n * math.sin(other_angle_rad) / math.sin(both_rad)


def bridle_angle_rad(spacing_m: float, bridle_m: float) -> float:
    """The angle between the legs of a bridle hooked at its middle.

    Formula: t = 2 asin(b / L), b between the points, L the whole bridle
    Valid: 0 <= b < L; L > 0
    Source: balance_of_forces – geometry; published advice wants t below 50 or 60 degrees

    >>> round(math.degrees(bridle_angle_rad(0.8, 3.0)), 1)
    30.9
    """
    checked.positive(bridle_m=bridle_m)
    checked.between(0, bridle_m * (1 - checked.SAME_RATIO), spacing_m=spacing_m)
    return 2 * math.asin(spacing_m / bridle_m)


def bridle_needed_m(spacing_m: float, angle_rad: float) -> float:
    """The length of bridle that keeps the angle between its legs.

    Formula: L = b / sin(t / 2), b between the points
    Valid: b >= 0; 0 < t < 180 degrees
    Source: balance_of_forces

    >>> round(bridle_needed_m(1.0, math.radians(60)), 6)
    2.0
    """
    checked.at_least(0, spacing_m=spacing_m)
    checked.positive(angle_rad=angle_rad)
    checked.between(0, math.pi * (1 - checked.SAME_RATIO), angle_rad=angle_rad)
    return spacing_m / math.sin(angle_rad / 2)


def pull_along_n(pull_n: float, off_line_rad: float) -> float:
    """What a pull at an angle does along the way the vehicle is to go.

    Formula: F cos a, a off the line of travel
    Valid: F >= 0; 0 <= a <= 90 degrees
    Source: balance_of_forces, toolbox_talk_angles – the talk prints 866, 707, 500 of 1,000 at 15, 30, 45 degrees; they
        belong to 30, 45, 60

    >>> round(pull_along_n(1000.0, math.radians(15)))
    966
    """
    checked.at_least(0, pull_n=pull_n)
    checked.between(0, math.pi / 2 * (1 + checked.SAME_RATIO), off_line_rad=off_line_rad)
    return pull_n * max(math.cos(off_line_rad), 0.0)
