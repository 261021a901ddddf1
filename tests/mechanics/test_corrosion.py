"""Rates, lives and estimates: worked numbers, edges, and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import corrosion

walls_m = st.floats(0.0, 0.02)
rates = st.floats(0.0, 0.002)
spans_years = st.floats(0.01, 60.0)
exponents = st.floats(0.1, 1.0)


def test_a_wall_from_4_mm_to_2_mm_in_eight_years() -> None:
    rate = corrosion.long_term_rate_m_per_year(0.004, 0.002, 8)
    assert rate == pytest.approx(0.25e-3)
    assert corrosion.remaining_life_years(0.002, 0.0015, rate) == pytest.approx(2.0)


@pytest.mark.parametrize("rate_of", [corrosion.long_term_rate_m_per_year, corrosion.short_term_rate_m_per_year])
def test_a_wall_that_reads_thicker_than_before_has_lost_nothing(rate_of: object) -> None:
    assert callable(rate_of)
    assert rate_of(0.0040, 0.0041, 3) == 0


def test_the_largest_rate_governs_whatever_its_place() -> None:
    assert corrosion.governing_rate_m_per_year([1e-4, 4e-4, 2e-4]) == 4e-4


def test_a_wall_at_or_below_the_required_one_has_no_life_left() -> None:
    assert corrosion.remaining_life_years(0.0030, 0.0030, 1e-4) == 0
    assert corrosion.remaining_life_years(0.0029, 0.0030, 1e-4) == 0
    assert corrosion.remaining_life_years(0.0029, 0.0030, 0.0) == 0


def test_a_wall_above_the_required_one_by_rounding_only_has_no_life_left() -> None:
    assert corrosion.remaining_life_years(0.003 * (1 + 1e-12), 0.003, 0.0) == 0


def test_nothing_lost_is_an_endless_life_and_the_cap_sets_the_next_reading() -> None:
    life_years = corrosion.remaining_life_years(0.004, 0.003, 0.0)
    assert life_years == math.inf
    assert corrosion.half_life_interval_years(life_years, 10.0) == 10.0


def test_no_life_left_means_a_reading_now() -> None:
    assert corrosion.half_life_interval_years(0.0, 10.0) == 0


def test_an_estimate_never_falls_below_no_wall() -> None:
    assert corrosion.estimated_wall_m(0.004, 0.0003, 50) == 0
    assert corrosion.estimated_wall_m(0.004, 0.0003, 5) == pytest.approx(0.0025)


def test_the_open_air_law_gives_the_first_year_loss_after_one_year() -> None:
    assert corrosion.atmospheric_loss_m(80e-6, 1.0, 0.523) == pytest.approx(80e-6)
    assert corrosion.atmospheric_loss_m(80e-6, 0.0, 0.523) == 0


def test_an_exponent_above_one_is_refused() -> None:
    with pytest.raises(ValueError, match="exponent"):
        corrosion.atmospheric_loss_m(80e-6, 5.0, 1.01)


def test_the_tangent_leaves_the_curve_at_twenty_years_without_a_step_or_a_kink() -> None:
    at_20_m = corrosion.atmospheric_loss_m(80e-6, 20.0, 0.523)
    slope_before = (at_20_m - corrosion.atmospheric_loss_m(80e-6, 20.0 - 1e-4, 0.523)) / 1e-4
    slope_after = (corrosion.atmospheric_loss_m(80e-6, 20.0 + 1e-4, 0.523) - at_20_m) / 1e-4
    assert slope_after == pytest.approx(slope_before, rel=1e-4)
    in_a_line_m = corrosion.atmospheric_loss_m(80e-6, 40.0, 0.523) - at_20_m
    assert in_a_line_m == pytest.approx(20 * slope_after, rel=1e-4)


@given(walls_m, walls_m, walls_m, spans_years)
def test_a_thinner_latest_reading_never_gives_a_lower_rate(
    earlier_m: float, one_m: float, other_m: float, years: float
) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    thin_rate = corrosion.long_term_rate_m_per_year(earlier_m, thin_m, years)
    assert thin_rate >= corrosion.long_term_rate_m_per_year(earlier_m, thick_m, years) >= 0


@given(walls_m, walls_m, rates, rates)
def test_a_higher_rate_never_gives_a_longer_life(wall_m: float, required_m: float, one: float, other: float) -> None:
    slow, fast = sorted((one, other))
    long_years = corrosion.remaining_life_years(wall_m, required_m, slow)
    assert corrosion.remaining_life_years(wall_m, required_m, fast) <= long_years


@given(walls_m, walls_m, walls_m, rates)
def test_a_thinner_wall_never_has_a_longer_life(one_m: float, other_m: float, required_m: float, rate: float) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    thick_years = corrosion.remaining_life_years(thick_m, required_m, rate)
    assert corrosion.remaining_life_years(thin_m, required_m, rate) <= thick_years


@given(walls_m, walls_m, walls_m, rates)
def test_a_greater_need_never_gives_a_longer_life(wall_m: float, one_m: float, other_m: float, rate: float) -> None:
    low_m, high_m = sorted((one_m, other_m))
    low_years = corrosion.remaining_life_years(wall_m, low_m, rate)
    assert corrosion.remaining_life_years(wall_m, high_m, rate) <= low_years


@given(st.floats(0.0, 100.0), st.floats(0.0, 100.0), st.floats(0.1, 20.0))
def test_a_shorter_life_never_puts_the_next_reading_off(one: float, other: float, cap_years: float) -> None:
    short_years, long_years = sorted((one, other))
    interval_years = corrosion.half_life_interval_years(short_years, cap_years)
    assert interval_years <= corrosion.half_life_interval_years(long_years, cap_years) <= cap_years


@given(walls_m, rates, st.floats(0.0, 60.0), st.floats(0.0, 60.0))
def test_more_years_never_leave_more_wall(wall_m: float, rate: float, one: float, other: float) -> None:
    few_years, many_years = sorted((one, other))
    left_m = corrosion.estimated_wall_m(wall_m, rate, many_years)
    assert 0 <= left_m <= corrosion.estimated_wall_m(wall_m, rate, few_years) <= wall_m


@given(st.floats(0.002, 0.02), st.floats(0.0, 0.0019), st.floats(1e-5, 0.002))
def test_at_the_end_of_its_life_the_wall_is_the_required_one(wall_m: float, required_m: float, rate: float) -> None:
    life_years = corrosion.remaining_life_years(wall_m, required_m, rate)
    assert corrosion.estimated_wall_m(wall_m, rate, life_years) == pytest.approx(required_m, abs=1e-12)


@given(st.floats(0.0, 7e-4), st.floats(0.0, 60.0), st.floats(0.0, 60.0), exponents)
def test_more_years_in_the_open_never_cost_less(first_m: float, one: float, other: float, exponent: float) -> None:
    few_years, many_years = sorted((one, other))
    few_m = corrosion.atmospheric_loss_m(first_m, few_years, exponent)
    assert few_m <= corrosion.atmospheric_loss_m(first_m, many_years, exponent) * (1 + 1e-12)


@given(st.floats(1e-6, 7e-4), st.floats(1.0, 60.0), exponents)
def test_the_law_slows_down_and_never_passes_the_first_year_kept_up(
    first_m: float, years: float, exponent: float
) -> None:
    assert corrosion.atmospheric_loss_m(first_m, years, exponent) <= first_m * years * (1 + 1e-12)
