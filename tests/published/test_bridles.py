"""Bridles against figures in print and against a solver of linear equations.

Sources: [legs] sling load factors as a rigging supplier works them; [left] capacity left by angle from the horizontal,
as in rigging tables; [primer] a public primer of stage rigging, bridles; [rule] a hoisting rule quoted in a physics
forum: points no further apart than a leg is long leave the leg at 60 degrees or more from the horizontal; [talk] a
public toolbox talk. "numpy" marks values computed with numpy 2.4.6, linalg.solve on the balance of forces, apart from
this program.
"""

import math

import pytest

from inspector.mechanics import bridle
from tests.each import each
from tests.printed import printed


# [legs] 1,000 lb, degrees from the horizontal, pounds in each of two legs
@pytest.mark.printed("Rigging supplier's worked sling legs", "bridle.bridle_leg_n")
@each(("degrees", "leg_lb"), [(60, "577"), (45, "707")])
def test_a_thousand_pounds_on_two_legs(degrees: float, leg_lb: str) -> None:
    assert bridle.bridle_leg_n(1000, math.radians(180 - 2 * degrees)) == printed(leg_lb)


# [left] degrees from the horizontal, per cent of two upright legs
@pytest.mark.printed("Sling capacity left by angle", "bridle.bridle_gain_factor")
@each(("degrees", "left"), [(90, "100"), (75, "96.6"), (60, "86.6"), (45, "70.7"), (30, "50.0")])
def test_what_two_legs_still_lift(degrees: float, left: str) -> None:
    assert bridle.bridle_gain_factor(math.radians(180 - 2 * degrees)) / 2 * 100 == printed(left)


@pytest.mark.printed("Primer of stage rigging, bridles", "bridle.is_bridle_a_gain", "bridle.bridle_leg_n")
def test_from_120_degrees_a_leg_bears_the_whole_load() -> None:
    assert bridle.bridle_leg_n(1, math.radians(120)) == pytest.approx(1)
    assert [bridle.is_bridle_a_gain(math.radians(degrees)) for degrees in (0, 119, 120, 150)] == [
        True,
        True,
        False,
        False,
    ]


@pytest.mark.printed("Hoisting rule of one leg length", "bridle.bridle_angle_rad", "bridle.bridle_needed_m")
def test_points_one_leg_apart_leave_sixty_degrees() -> None:
    assert math.degrees(bridle.bridle_angle_rad(1, 2)) == printed("60")
    assert bridle.bridle_needed_m(1, math.radians(60)) == pytest.approx(2)


# numpy: degrees between the legs, inward pull per pull
@pytest.mark.printed("numpy 2.4.6 linalg.solve", "bridle.bridle_side_load_n", "bridle.bridle_leg_n", values=2)
@each(
    ("degrees", "leg", "side"),
    [
        *((15, "0.50431448", "0.06582625"), (30, "0.51763809", "0.13397460"), (60, "0.57735027", "0.28867513")),
        *((90, "0.70710678", "0.50000000"), (120, "1.00000000", "0.86602540"), (150, "1.93185165", "1.86602540")),
    ],
)
def test_legs_and_inward_pull(degrees: float, leg: str, side: str) -> None:
    assert bridle.bridle_leg_n(1, math.radians(degrees)) == printed(leg)
    assert bridle.bridle_side_load_n(1, math.radians(degrees)) == printed(side)


# numpy: pull N, angles of the two legs from the pull, N in each
@pytest.mark.printed("numpy 2.4.6 linalg.solve", "bridle.unequal_leg_n", values=2)
@each(
    ("pull_n", "one", "other", "one_n", "other_n"),
    [
        (1000, 15, 35, "748.750861", "337.864268"),
        (40e3, 20, 50, "32608.2988", "14558.8094"),
        (25e3, 70, 30, "12692.8326", "23854.7224"),
    ],
)
def test_unequal_legs(pull_n: float, one: float, other: float, one_n: str, other_n: str) -> None:
    one_rad, other_rad = math.radians(one), math.radians(other)
    assert bridle.unequal_leg_n(pull_n, one_rad, other_rad) == printed(one_n)
    assert bridle.unequal_leg_n(pull_n, other_rad, one_rad) == printed(other_n)


@pytest.mark.printed("Primer of stage rigging, bridles", "bridle.unequal_leg_n", values=2)
def test_the_primers_own_equation_for_its_own_bridle() -> None:
    """500 lb, upright 4 and 3 ft, across 3 and 6 ft: T1 = F L1 H2 / (V1 H2 + V2 H1), the equation as printed."""
    load, upright, across = 500.0, (4.0, 3.0), (3.0, 6.0)
    angles = [math.atan2(out, down) for out, down in zip(across, upright, strict=True)]
    below = upright[0] * across[1] + upright[1] * across[0]
    first, second = (math.hypot(out, down) for out, down in zip(across, upright, strict=True))
    assert bridle.unequal_leg_n(load, angles[0], angles[1]) == pytest.approx(load * first * across[1] / below)
    assert bridle.unequal_leg_n(load, angles[1], angles[0]) == pytest.approx(load * second * across[0] / below)


# [talk] the list of forces is right, the degrees beside it are not
@pytest.mark.printed("Public toolbox talk on pulls at an angle", "bridle.pull_along_n")
@each(("degrees", "beside", "lbf"), [(30, 15, "866"), (45, 30, "707"), (60, 45, "500")])
def test_the_toolbox_talks_angles_are_not_followed(degrees: float, beside: float, lbf: str) -> None:
    assert bridle.pull_along_n(1000, math.radians(degrees)) == printed(lbf)
    assert bridle.pull_along_n(1000, math.radians(beside)) != printed(lbf)
