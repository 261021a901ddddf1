"""Textile slings and tie-down gear: worked numbers, edges and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import rating, sling, tiedown
from inspector.mechanics.sling import SlingMode, TextileRule
from inspector.mechanics.tiedown import TiedownGrade

slopes_rad = st.floats(math.radians(30), math.radians(90))
LEGGED = [SlingMode.BASKET, SlingMode.TWO_LEGS, SlingMode.FOUR_LEGS]


@pytest.mark.parametrize("rule", TextileRule)
def test_working_load_and_breaking_strength_go_both_ways(rule: TextileRule) -> None:
    working_n = sling.textile_working_load_n(70e3, rule)
    assert rating.ultimate_n(working_n, sling.textile_design_factor(rule)) == pytest.approx(70e3)


@given(st.sampled_from(LEGGED), st.floats(0, math.pi / 3), st.floats(0, math.pi / 3))
def test_wider_legs_never_carry_more(mode: SlingMode, one_rad: float, other_rad: float) -> None:
    narrow_rad, wide_rad = sorted((one_rad, other_rad))
    assert sling.sling_mode_factor(mode, wide_rad) <= sling.sling_mode_factor(mode, narrow_rad)


@pytest.mark.parametrize("mode", SlingMode)
def test_an_angle_beyond_the_table_is_refused(mode: SlingMode) -> None:
    most = 60 if mode in LEGGED else 0
    assert sling.sling_mode_factor(mode, math.radians(most)) > 0
    with pytest.raises(ValueError, match="from_upright_rad"):
        sling.sling_mode_factor(mode, math.radians(most + 0.1))


@given(st.sampled_from([SlingMode.BASKET, SlingMode.TWO_LEGS]), st.floats(0.001, math.pi / 3))
def test_no_mode_factor_is_more_than_statics_allow(mode: SlingMode, angle_rad: float) -> None:
    # two legs at the steepest angle of a step hold 2 cos(angle); the table takes the flattest of the step
    assert sling.sling_mode_factor(mode, angle_rad) <= 2 * math.cos(angle_rad) * (1 + 1e-9)


@given(slopes_rad, slopes_rad)
def test_a_flatter_leg_never_pulls_less(one_rad: float, other_rad: float) -> None:
    flat_rad, steep_rad = sorted((one_rad, other_rad))
    assert sling.sling_leg_factor(flat_rad) >= sling.sling_leg_factor(steep_rad) >= 1


@given(slopes_rad)
def test_tension_and_what_is_lifted_are_one_sum_read_both_ways(slope_rad: float) -> None:
    assert sling.sling_leg_factor(slope_rad) * sling.sling_capacity_ratio(slope_rad) == pytest.approx(1)
    assert sling.sling_leg_factor(slope_rad) == pytest.approx(2 * rating.bridle_leg_factor(math.pi - 2 * slope_rad))


@pytest.mark.parametrize("degrees", [29.9, 90.1])
def test_legs_too_flat_or_past_upright_are_refused(degrees: float) -> None:
    with pytest.raises(ValueError, match="from_level_rad"):
        sling.sling_capacity_ratio(math.radians(degrees))


@given(st.floats(0.00636, 0.05), st.floats(0.00636, 0.05), st.sampled_from(TiedownGrade))
def test_a_thicker_chain_of_one_grade_never_holds_less(one_m: float, other_m: float, grade: TiedownGrade) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert tiedown.unmarked_chain_n(thin_m, grade) <= tiedown.unmarked_chain_n(thick_m, grade)


@given(st.floats(0.00636, 0.05), st.sampled_from(TiedownGrade))
def test_an_unknown_grade_never_holds_more_than_a_known_one(size_m: float, grade: TiedownGrade) -> None:
    assert tiedown.unmarked_chain_n(size_m) <= tiedown.unmarked_chain_n(size_m, grade)


@pytest.mark.parametrize("grade", [TiedownGrade.G80, TiedownGrade.G100])
def test_a_size_without_a_row_takes_the_row_below(grade: TiedownGrade) -> None:
    assert tiedown.unmarked_chain_n(0.0115, grade) == tiedown.unmarked_chain_n(0.010, grade)


@given(st.floats(0.045, 0.3), st.floats(0.045, 0.3))
def test_wider_webbing_never_holds_less(one_m: float, other_m: float) -> None:
    narrow_m, wide_m = sorted((one_m, other_m))
    assert tiedown.unmarked_webbing_n(narrow_m) <= tiedown.unmarked_webbing_n(wide_m)


@given(st.floats(0.00636, 0.05), st.floats(0.00636, 0.05))
def test_a_thicker_wire_rope_never_holds_less(one_m: float, other_m: float) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert tiedown.unmarked_wire_rope_n(thin_m) <= tiedown.unmarked_wire_rope_n(thick_m)


def test_gear_smaller_than_the_table_is_refused() -> None:
    with pytest.raises(ValueError, match="size_m"):
        tiedown.unmarked_chain_n(0.0063)
    with pytest.raises(ValueError, match="size_m"):
        tiedown.unmarked_webbing_n(0.044)


@given(st.lists(st.floats(0, 100e3), min_size=1), st.floats(0, 100e3))
def test_one_more_part_never_makes_a_line_stronger(parts_n: list[float], further_n: float) -> None:
    assert tiedown.weakest_part_n([*parts_n, further_n]) <= tiedown.weakest_part_n(parts_n)


def test_a_line_without_parts_is_refused() -> None:
    with pytest.raises(ValueError, match="parts_n"):
        tiedown.weakest_part_n([])
