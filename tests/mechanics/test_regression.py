"""The line through readings and its bands: limits, symmetry, and the direction of every effect."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from inspector.mechanics import regression, student

confidences = st.floats(0.5, 0.999)
freedoms = st.integers(1, 60)
walls = st.floats(0.001, 0.01)
scattered = st.lists(walls, min_size=3, max_size=12).map(lambda found: ([float(i) for i in range(len(found))], found))
ON_A_LINE = ([0.0, 1.0, 3.0, 7.0], [0.0050, 0.0048, 0.0044, 0.0036])
SCATTERED = ([0.0, 2.0, 4.0, 6.0, 8.0], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026])


@given(st.floats(0.001, 0.999), freedoms)
def test_quantile_and_probability_undo_each_other(probability: float, freedom: int) -> None:
    t_factor = student.student_t_factor(probability, freedom)
    assert student.student_probability_ratio(t_factor, freedom) == pytest.approx(probability, abs=1e-12)


@given(st.floats(-50.0, 50.0), freedoms)
def test_the_distribution_is_symmetric(t_factor: float, freedom: int) -> None:
    left, right = (student.student_probability_ratio(sign * t_factor, freedom) for sign in (-1, 1))
    assert left + right == pytest.approx(1.0, abs=1e-14)


@given(st.floats(0.51, 0.999), freedoms)
def test_more_readings_never_widen_the_quantile(probability: float, freedom: int) -> None:
    few, many = (student.student_t_factor(probability, count) for count in (freedom, freedom + 1))
    assert 0 < many < few


def test_one_degree_of_freedom_is_an_arctangent_and_many_are_the_normal_distribution() -> None:
    assert student.student_probability_ratio(1.0, 1) == pytest.approx(0.75)
    assert student.student_t_factor(0.975, 1000) == pytest.approx(1.960, abs=3e-3)
    assert student.student_t_factor(0.5, 7) == pytest.approx(0.0, abs=1e-12)


def test_readings_on_a_line_give_the_line_and_no_band() -> None:
    line = regression.wall_line(*ON_A_LINE)
    band = regression.reading_band(*ON_A_LINE, 10.0)
    assert line.slope_m_per_year == pytest.approx(-0.0002)
    assert line.intercept_m == pytest.approx(0.0050)
    assert line.spread_m == pytest.approx(0.0, abs=1e-15)
    assert line.explained_ratio == pytest.approx(1.0)
    assert (band.lower_m, band.line_m, band.upper_m) == pytest.approx((0.003, 0.003, 0.003))
    assert regression.band_life_years(*ON_A_LINE, 0.002) == pytest.approx(8.0)
    assert regression.greatest_rate_m_per_year(*ON_A_LINE) == pytest.approx(0.0002)


def test_level_readings_lose_nothing_for_ever() -> None:
    level = ([0.0, 1.0, 2.0], [0.004, 0.004, 0.004])
    assert regression.wall_line(*level).explained_ratio == 1.0
    assert regression.line_rate_m_per_year(*level) == 0
    assert regression.band_life_years(*level, 0.003) == math.inf
    assert regression.band_life_years(*level, 0.004) == 0


def test_rising_readings_lose_nothing_along_the_line() -> None:
    assert regression.line_rate_m_per_year([0.0, 1.0, 2.0], [0.0040, 0.0041, 0.0042]) == 0


@given(scattered, st.floats(-5.0, 20.0), confidences)
def test_the_bands_lie_round_the_line_the_new_reading_outside(
    taken: tuple[list[float], list[float]], at_years: float, confidence: float
) -> None:
    new, line = (band(*taken, at_years, confidence) for band in (regression.reading_band, regression.line_band))
    assert new.lower_m <= line.lower_m <= line.line_m <= line.upper_m <= new.upper_m
    assert new.line_m == line.line_m
    assert new.upper_m - new.line_m == pytest.approx(new.line_m - new.lower_m, abs=1e-12)


@given(scattered, st.floats(0.0, 20.0), st.floats(0.5, 0.9998))
def test_one_sided_is_two_sided_with_half_the_doubt(
    taken: tuple[list[float], list[float]], at_years: float, confidence: float
) -> None:
    two_sided = regression.reading_band(*taken, at_years, confidence)
    one_sided_m = regression.least_wall_m(*taken, at_years, (1 + confidence) / 2)
    assert one_sided_m == pytest.approx(max(two_sided.lower_m, 0.0), abs=1e-9)


@given(scattered, st.floats(0.0, 20.0), confidences, confidences)
def test_more_confidence_never_promises_more_wall_or_life_or_less_rate(
    taken: tuple[list[float], list[float]], at_years: float, one: float, other: float
) -> None:
    low, high = sorted((one, other))
    assert regression.least_wall_m(*taken, at_years, high) <= regression.least_wall_m(*taken, at_years, low) + 1e-15
    slow, fast = (regression.greatest_rate_m_per_year(*taken, confidence) for confidence in (low, high))
    assert regression.line_rate_m_per_year(*taken) <= slow + 1e-15
    assert slow <= fast + 1e-15
    short, long = (regression.band_life_years(*taken, 0.001, confidence) for confidence in (high, low))
    assert short <= long * (1 + 1e-9)


@given(scattered, st.floats(0.0, 0.01), confidences)
def test_at_the_end_of_the_bands_life_its_lower_bound_is_the_required_wall(
    taken: tuple[list[float], list[float]], required_m: float, confidence: float
) -> None:
    life_years = regression.band_life_years(*taken, required_m, confidence)
    assume(0 < life_years < 1000)
    bound_m = regression.least_wall_m(*taken, max(taken[0]) + life_years, confidence)
    assert bound_m == pytest.approx(required_m, abs=1e-9)


@given(scattered, st.floats(0.0, 0.01), st.floats(0.0, 0.01))
def test_a_greater_need_never_gives_a_longer_life(
    taken: tuple[list[float], list[float]], one_m: float, other_m: float
) -> None:
    low_m, high_m = sorted((one_m, other_m))
    assert regression.band_life_years(*taken, high_m) <= regression.band_life_years(*taken, low_m) * (1 + 1e-9)


@given(st.floats(0.1, 30.0), st.floats(-20.0, 20.0), st.floats(0.01, 100.0))
def test_walls_scale_the_line_and_a_shift_of_dates_moves_it(at_years: float, shift_years: float, scale: float) -> None:
    years, readings = SCATTERED
    band = regression.reading_band(years, readings, at_years)
    scaled = regression.reading_band(years, [scale * wall for wall in readings], at_years)
    moved = regression.reading_band([year + shift_years for year in years], readings, at_years + shift_years)
    assert scaled.lower_m == pytest.approx(scale * band.lower_m, rel=1e-9, abs=1e-12)
    assert moved.lower_m == pytest.approx(band.lower_m, rel=1e-9, abs=1e-12)


@given(st.permutations(range(5)))
def test_the_order_of_the_readings_does_not_matter(order: list[int]) -> None:
    years, readings = ([column[index] for index in order] for column in SCATTERED)
    assert regression.wall_line(years, readings).slope_m_per_year == pytest.approx(-0.1785e-3)
    assert regression.band_life_years(years, readings, 0.002) == pytest.approx(2.5534660)


def test_the_band_is_narrowest_in_the_middle_of_the_readings() -> None:
    widths = [
        band.upper_m - band.lower_m
        for band in (regression.reading_band(*SCATTERED, at_years) for at_years in (4.0, 6.0, 8.0, 12.0))
    ]
    assert widths == sorted(widths)


def test_a_bound_below_no_wall_is_no_wall() -> None:
    assert regression.least_wall_m(*SCATTERED, 60.0) == 0


def test_the_line_reaches_half_its_span_ahead() -> None:
    assert not regression.is_beyond_reach([8.0, 2.0, 4.0], 11.0)
    assert regression.is_beyond_reach([8.0, 2.0, 4.0], 11.001)
    assert not regression.is_beyond_reach([8.0, 2.0, 4.0], 0.0)
