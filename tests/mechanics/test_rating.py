"""Marks, side pull, blocks and bridles: worked numbers, edges, and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import rating
from tests.each import each

TONNE_FORCE_N = 9806.65
quarter_turn = st.floats(0.0, math.pi / 2)
half_turn = st.floats(0.0, math.pi)


def test_the_same_mark_can_mean_two_strengths() -> None:
    # 4.75 short tons at 5:1 against 4.75 tonnes at 6:1, calculated here
    assert rating.ultimate_n(4.75 * 0.90718474 * TONNE_FORCE_N, 5) == pytest.approx(211.3e3, abs=50)
    assert rating.ultimate_n(4.75 * TONNE_FORCE_N, 6) == pytest.approx(279.5e3, abs=50)


def test_a_factor_below_one_is_refused() -> None:
    with pytest.raises(ValueError, match="design_factor"):
        rating.ultimate_n(40e3, 0.99)


@pytest.mark.parametrize("in_turns", [5 / 360, 45 / 360, 90 / 360])
def test_the_unit_of_an_angle_does_not_move_it_off_its_step(in_turns: float) -> None:
    exact_rad = math.radians(in_turns * 360)
    by_rounding_rad = math.nextafter(math.nextafter(in_turns * 2 * math.pi, math.inf), math.inf)
    assert rating.side_load_factor(by_rounding_rad) == rating.side_load_factor(exact_rad)


def test_more_than_a_square_side_pull_is_refused() -> None:
    with pytest.raises(ValueError, match="angle_rad"):
        rating.side_load_factor(math.radians(90.1))


def test_lines_that_run_straight_on_put_no_load_on_the_block() -> None:
    assert rating.block_load_factor(math.pi) == pytest.approx(0.0, abs=1e-12)
    with pytest.raises(ValueError, match="angle_rad"):
        rating.block_load_factor(math.radians(180.1))


def test_a_flat_bridle_is_refused() -> None:
    assert rating.bridle_leg_factor(math.radians(179)) > 50
    with pytest.raises(ValueError, match="angle_rad"):
        rating.bridle_leg_factor(math.pi)


# Calculated apart: leg load per pull, included angle in degrees
@each(("degrees", "leg"), [(0, 0.500), (30, 0.518), (60, 0.577), (90, 0.707), (120, 1.000), (150, 1.932), (170, 5.737)])
def test_from_120_degrees_each_leg_carries_the_whole_pull_or_more(degrees: float, leg: float) -> None:
    assert rating.bridle_leg_factor(math.radians(degrees)) == pytest.approx(leg, abs=0.00051)


@given(quarter_turn, quarter_turn)
def test_a_wider_side_pull_never_leaves_more(one_rad: float, other_rad: float) -> None:
    narrow_rad, wide_rad = sorted((one_rad, other_rad))
    assert rating.side_load_factor(wide_rad) <= rating.side_load_factor(narrow_rad)


@given(half_turn, half_turn)
def test_a_wider_block_angle_never_loads_the_block_more(one_rad: float, other_rad: float) -> None:
    narrow_rad, wide_rad = sorted((one_rad, other_rad))
    assert 0 <= rating.block_load_factor(wide_rad) <= rating.block_load_factor(narrow_rad) <= 2


@given(st.floats(0.0, 3.0), st.floats(0.0, 3.0))
def test_a_wider_bridle_never_loads_its_legs_less(one_rad: float, other_rad: float) -> None:
    narrow_rad, wide_rad = sorted((one_rad, other_rad))
    assert rating.bridle_leg_factor(wide_rad) >= rating.bridle_leg_factor(narrow_rad) >= 0.5


@given(st.floats(0.0, 500e3), st.floats(0.0, 500e3), st.floats(1.0, 10.0))
def test_a_lower_rating_never_means_more_strength(one_n: float, other_n: float, factor: float) -> None:
    low_n, high_n = sorted((one_n, other_n))
    assert rating.ultimate_n(low_n, factor) <= rating.ultimate_n(high_n, factor)
