"""Bridles: limits, balance of forces, and where they stop to help."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import bridle
from tests.each import each

pulls_n = st.floats(1.0, 200e3)
angles_rad = st.floats(0.0, math.radians(175))


# Calculated apart: spacing m, bridle m, degrees
@each(
    ("spacing_m", "bridle_m", "degrees"),
    [(0.7, 1.5, 55.6), (0.8, 3.0, 30.9), (1.2, 1.5, 106.3), (1.2, 3.0, 47.2), (1.2, 5.0, 27.8), (0.7, 4.0, 20.2)],
)
def test_the_angle_from_spacing_and_length(spacing_m: float, bridle_m: float, degrees: float) -> None:
    assert math.degrees(bridle.bridle_angle_rad(spacing_m, bridle_m)) == pytest.approx(degrees, abs=0.051)


@given(st.floats(0.3, 2.0), st.floats(1.01, 10.0), st.floats(0.1, 10))
def test_the_length_answers_the_angle_and_scale_does_not_matter(spacing_m: float, times: float, scale: float) -> None:
    angle = bridle.bridle_angle_rad(spacing_m, spacing_m * times)
    assert bridle.bridle_needed_m(spacing_m, angle) == pytest.approx(spacing_m * times)
    assert bridle.bridle_angle_rad(spacing_m * scale, spacing_m * times * scale) == pytest.approx(angle)


@given(pulls_n, angles_rad)
def test_the_legs_carry_the_pull_and_cancel_sideways(pull_n: float, angle: float) -> None:
    leg_n = bridle.bridle_leg_n(pull_n, angle)
    assert 2 * leg_n * math.cos(angle / 2) == pytest.approx(pull_n)
    side_n = bridle.bridle_side_load_n(pull_n, angle)
    assert math.hypot(side_n, pull_n / 2) == pytest.approx(leg_n)
    assert bridle.bridle_gain_factor(angle) == pytest.approx(pull_n / leg_n)
    assert bridle.unequal_leg_n(pull_n, angle / 2, angle / 2) == pytest.approx(leg_n) if angle > 1e-6 else True


@given(pulls_n, angles_rad, st.floats(0.0, math.radians(4)))
def test_wider_never_pulls_less(pull_n: float, angle: float, more: float) -> None:
    assert bridle.bridle_leg_n(pull_n, angle + more) >= bridle.bridle_leg_n(pull_n, angle) * (1 - 1e-12)
    assert bridle.bridle_side_load_n(pull_n, angle + more) >= bridle.bridle_side_load_n(pull_n, angle) * (1 - 1e-12)


@given(angles_rad)
def test_it_helps_just_where_a_leg_bears_less_than_the_pull(angle: float) -> None:
    if abs(angle - math.radians(120)) > 1e-6:
        assert bridle.is_bridle_a_gain(angle) == (bridle.bridle_leg_n(1, angle) < 1)


def test_a_bridle_doubles_only_with_parallel_legs() -> None:
    found = [bridle.bridle_gain_factor(math.radians(degrees)) for degrees in (0, 60, 90, 120)]
    assert found == pytest.approx([2, 1.7320508, 1.4142136, 1])


@given(pulls_n, st.floats(0.01, 1.5), st.floats(0.01, 1.5))
def test_unequal_legs_balance(pull_n: float, one: float, other: float) -> None:
    first_n, second_n = bridle.unequal_leg_n(pull_n, one, other), bridle.unequal_leg_n(pull_n, other, one)
    assert first_n * math.cos(one) + second_n * math.cos(other) == pytest.approx(pull_n)
    assert first_n * math.sin(one) == pytest.approx(second_n * math.sin(other))


def test_the_leg_in_line_with_the_pull_takes_it_all() -> None:
    assert bridle.unequal_leg_n(1000, 0, 0.5) == pytest.approx(1000)
    assert bridle.unequal_leg_n(1000, 0.5, 0) == 0


@pytest.mark.parametrize("both", [(0.0, 0.0), (math.pi / 2, math.pi / 2), (2.0, 2.0), (math.inf, 0.1)])
def test_legs_that_cannot_balance_are_refused(both: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="must"):
        bridle.unequal_leg_n(1000, *both)


def test_a_bridle_no_longer_than_the_spacing_is_refused() -> None:
    for bridle_m in (1.0, 0.9):
        with pytest.raises(ValueError, match="spacing_m"):
            bridle.bridle_angle_rad(1.0, bridle_m)
    with pytest.raises(ValueError, match="angle_rad"):
        bridle.bridle_needed_m(1.0, 0)


def test_straight_apart_no_bridle_pulls() -> None:
    for deed in (bridle.bridle_gain_factor, bridle.is_bridle_a_gain):
        with pytest.raises(ValueError, match="angle_rad"):
            deed(math.pi)


@given(pulls_n, st.floats(0, math.pi / 2))
def test_a_pull_at_an_angle_never_gains(pull_n: float, angle: float) -> None:
    assert 0 <= bridle.pull_along_n(pull_n, angle) <= pull_n
    assert bridle.pull_along_n(pull_n, 0) == pull_n


def test_a_pull_backwards_is_refused() -> None:
    assert bridle.pull_along_n(1000, math.pi / 2) == pytest.approx(0, abs=1e-9)
    with pytest.raises(ValueError, match="off_line_rad"):
        bridle.pull_along_n(1000, math.radians(90.1))
