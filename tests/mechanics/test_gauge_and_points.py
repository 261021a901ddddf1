"""Gauges, many readings and pits: the direction of every effect, limits, and edges."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import gauge, points
from inspector.mechanics.corrosion import remaining_life_years
from inspector.mechanics.gauge import Face, GaugeClaim

walls_m = st.floats(0.0, 0.02)
errors_m = st.floats(0.0, 0.001)
spans_years = st.floats(0.1, 30.0)
rates = st.floats(1e-6, 0.002)
grids = st.lists(st.floats(0.001, 0.02), min_size=15, max_size=30)


def test_the_unnamed_figures_are_the_severe_ones() -> None:
    assert gauge.gauge_accuracy_m() == max(gauge.gauge_accuracy_m(claim) for claim in GaugeClaim)
    assert gauge.over_reading_m() == max(gauge.over_reading_m(face) for face in Face)
    assert gauge.over_reading_m(Face.DRESSED) == 0


@given(walls_m, errors_m, errors_m, st.floats(0.0, 0.0022))
def test_a_worse_gauge_or_a_rougher_face_never_leaves_more_wall(
    reading_m: float, one_m: float, other_m: float, over_m: float
) -> None:
    good_m, bad_m = sorted((one_m, other_m))
    relied_m = gauge.relied_reading_m(reading_m, good_m, over_m)
    assert 0 <= gauge.relied_reading_m(reading_m, bad_m, over_m) <= relied_m <= reading_m
    assert relied_m <= gauge.relied_reading_m(reading_m, good_m, 0.0)


def test_a_reading_of_exactly_the_limit_is_within_the_probe() -> None:
    assert not gauge.is_below_probe(0.0015 * (1 - 1e-12))
    assert gauge.is_below_probe(0.00149)


@given(st.floats(1000.0, 9000.0), st.floats(1000.0, 9000.0))
def test_slower_steel_reads_too_thick(one: float, other: float) -> None:
    slow, fast = sorted((one, other))
    assert gauge.velocity_error_ratio(fast, slow) >= 0 >= gauge.velocity_error_ratio(slow, fast)
    assert gauge.velocity_error_ratio(slow, slow) == 0


@given(errors_m, spans_years, st.floats(1.0, 10.0))
def test_a_longer_wait_makes_a_rate_surer(accuracy_m: float, years: float, times: float) -> None:
    error = gauge.rate_error_m_per_year(accuracy_m, years)
    assert gauge.rate_error_m_per_year(accuracy_m, years * times) == pytest.approx(error / times)
    assert gauge.rate_error_m_per_year(accuracy_m * times, years) == pytest.approx(error * times)
    assert gauge.rate_half_width_m_per_year(accuracy_m, years, times) == pytest.approx(error * times)


@given(st.floats(0.0, 40.0), st.floats(0.0, 40.0), rates, errors_m, spans_years)
def test_a_longer_life_is_less_sure(
    one_years: float, other_years: float, rate: float, accuracy_m: float, years: float
) -> None:
    short, long = sorted((one_years, other_years))
    error = gauge.life_error_years(short, rate, accuracy_m, years)
    assert error <= gauge.life_error_years(long, rate, accuracy_m, years)
    assert error >= accuracy_m / rate * (1 - 1e-12)


@given(walls_m, walls_m, st.floats(0.0, 0.002), errors_m, errors_m, spans_years)
def test_a_worse_gauge_never_gives_a_longer_life_and_a_perfect_one_changes_nothing(
    wall_m: float, required_m: float, rate: float, one_m: float, other_m: float, years: float
) -> None:
    good_m, bad_m = sorted((one_m, other_m))
    life_years = gauge.least_life_years(wall_m, required_m, rate, good_m, years)
    assert 0 <= gauge.least_life_years(wall_m, required_m, rate, bad_m, years) <= life_years
    perfect_years = gauge.least_life_years(wall_m, required_m, rate, 0.0, years)
    assert perfect_years == pytest.approx(remaining_life_years(wall_m, required_m, rate))


def test_nothing_lost_with_a_perfect_gauge_is_endless() -> None:
    assert gauge.least_life_years(0.004, 0.003, 0.0, 0.0, 2.0) == math.inf
    assert gauge.least_life_years(0.003, 0.003, 0.0, 0.0, 2.0) == 0
    assert gauge.least_life_years(0.0031, 0.003, 0.0, 0.0002, 2.0) == 0


@given(grids, st.floats(0.1, 10.0))
def test_spread_scales_with_the_readings_and_its_ratio_does_not(readings: list[float], scale: float) -> None:
    spread, scaled = points.point_spread(readings), points.point_spread([scale * one for one in readings])
    assert scaled.mean_m == pytest.approx(scale * spread.mean_m)
    assert scaled.deviation_m == pytest.approx(scale * spread.deviation_m, abs=1e-15)
    assert scaled.variation_ratio == pytest.approx(spread.variation_ratio, abs=1e-12)
    assert spread.least_m <= spread.mean_m * (1 + 1e-12)
    assert points.may_average(readings) == (spread.variation_ratio <= 0.10)


def test_even_readings_have_no_spread() -> None:
    spread = points.point_spread([0.004] * 15)
    assert (spread.deviation_m, spread.variation_ratio) == pytest.approx((0.0, 0.0), abs=1e-15)


@given(walls_m, walls_m, walls_m)
def test_the_floor_never_falls_with_a_greater_need(nominal_m: float, one_m: float, other_m: float) -> None:
    low_m, high_m = sorted((one_m, other_m))
    floor_m = points.thickness_floor_m(low_m, nominal_m)
    assert 0.0025 <= floor_m <= points.thickness_floor_m(high_m, nominal_m)


@given(st.floats(1e-6, 0.01), st.floats(1.0, 20.0))
def test_an_even_loss_has_a_pitting_factor_of_one(average_m: float, deeper: float) -> None:
    assert points.pitting_factor(average_m, average_m) == 1
    assert points.pitting_factor(average_m * deeper, average_m) == pytest.approx(deeper)
    assert points.deepest_pit_m(average_m) == pytest.approx(5 * average_m)
