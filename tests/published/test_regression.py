"""Student's t and the straight line through readings, against printed tables, textbooks and certified data.

Sources: [T] a published table of upper critical values of t, 0.10 to 0.005, the same figures as the NIST e-Handbook
1.3.6.7.2; [T2] a second table, of a statistics course, with the 0.001 column; [T3] a handbook;
[MR] Montgomery and Runger, 3rd ed.,
table 11-1 and section 11; [NORRIS] NIST StRD, data set Norris, certified values; [ANSCOMBE] Anscombe, American
Statistician 27 (1973), data and values from memory; [FIVE] a worked answer on a homework site, five points;
[SCIPY], [STATSMODELS] computed with scipy 1.17.1 and statsmodels 0.15.0 apart from this program. x stands for years and
y for walls, whatever the source measures. Known misprints of t tables are traps and shown as such.
"""

import pytest

from inspector.mechanics import regression, student
from tests.each import each
from tests.printed import printed

# [T] nu: upper 0.10, 0.05, 0.025, 0.01, 0.005
T_ROWS = """
1 3.078 6.314 12.706 31.821 63.657
2 1.886 2.920 4.303 6.965 9.925
3 1.638 2.353 3.182 4.541 5.841
4 1.533 2.132 2.776 3.747 4.604
5 1.476 2.015 2.571 3.365 4.032
6 1.440 1.943 2.447 3.143 3.707
7 1.415 1.895 2.365 2.998 3.499
8 1.397 1.860 2.306 2.896 3.355
9 1.383 1.833 2.262 2.821 3.250
10 1.372 1.812 2.228 2.764 3.169
11 1.363 1.796 2.201 2.718 3.106
12 1.356 1.782 2.179 2.681 3.055
13 1.350 1.771 2.160 2.650 3.012
14 1.345 1.761 2.145 2.624 2.977
15 1.341 1.753 2.131 2.602 2.947
20 1.325 1.725 2.086 2.528 2.845
25 1.316 1.708 2.060 2.485 2.787
30 1.310 1.697 2.042 2.457 2.750
40 1.303 1.684 2.021 2.423 2.704
60 1.296 1.671 2.000 2.390 2.660
100 1.290 1.660 1.984 2.364 2.626
"""
# [T2] nu: upper 0.001
T_THOUSANDTH = [
    *[(1, "318.309"), (2, "22.327"), (3, "10.215"), (4, "7.173"), (5, "5.893"), (6, "5.208"), (7, "4.785")],
    *[(8, "4.501"), (9, "4.297"), (10, "4.144"), (11, "4.025"), (12, "3.930"), (20, "3.552"), (30, "3.385")],
]


@pytest.mark.printed(
    "Table of Student's t, NIST e-Handbook figures",
    "student.student_t_factor",
    "student.student_probability_ratio",
    values=5,
)
@each("row", T_ROWS.split("\n")[1:-1])
def test_quantiles_of_a_printed_table(row: str) -> None:
    freedom, *figures = row.split()
    for upper, figure in zip((0.10, 0.05, 0.025, 0.01, 0.005), figures, strict=True):
        assert student.student_t_factor(1 - upper, int(freedom)) == printed(figure)
        assert student.student_probability_ratio(float(figure), int(freedom)) == pytest.approx(1 - upper, abs=1e-4)


@pytest.mark.printed("Table of Student's t, a statistics course", "student.student_t_factor")
@each(("freedom", "figure"), T_THOUSANDTH)
def test_quantiles_far_out(freedom: int, figure: str) -> None:
    assert student.student_t_factor(0.999, freedom) == printed(figure)


@pytest.mark.printed("Table of Student's t, a handbook's appendix", "student.student_t_factor")
@each(
    ("probability", "freedom", "misprint", "right"),
    [
        (0.999, 1, "318.313", "318.309"),  # the 0.001 column of [T] is a little off for 1 and for 7 to 12
        (0.999, 7, "4.782", "4.785"),
        (0.999, 8, "4.499", "4.501"),
        (0.90, 3, "1.683", "1.638"),  # figures swapped in a table for schools
        (0.9995, 19, "4.883", "3.883"),
        (0.995, 18, "2.818", "2.878"),  # a handbook's appendix
    ],
)
def test_misprinted_quantiles_are_not_reproduced(probability: float, freedom: int, misprint: str, right: str) -> None:
    found = student.student_t_factor(probability, freedom)
    assert found == printed(right)
    assert found != printed(misprint)


@pytest.mark.printed("scipy 1.17.1", "student.student_t_factor")
@each(
    ("probability", "freedom", "value"),
    [
        (0.95, 1, 6.313751514675037),
        (0.975, 4, 2.7764451051977934),
        (0.9, 7, 1.4149239276505086),
        (0.6, 13, 0.2585908577117678),
        (0.05, 9, -1.8331129326562376),
        (0.9999, 2, 70.70007107496818),
        (0.995, 250, 2.5956376304661806),
        (0.999, 1000, 3.0984021639129233),
    ],
)
def test_quantiles_of_a_library(probability: float, freedom: int, value: float) -> None:
    assert student.student_t_factor(probability, freedom) == pytest.approx(value, rel=1e-9)


@pytest.mark.printed("scipy 1.17.1", "student.student_probability_ratio")
@each(
    ("t_factor", "freedom", "value"),
    [
        (-1.5, 1, 0.18716704181099886),
        (0.3, 2, 0.6037571695799112),
        (2.0, 5, 0.9490302605850708),
        (4.2, 10, 0.9990856517598662),
        (-0.7, 99, 0.2427844959155266),
        (1.1, 400, 0.8640031581310565),
    ],
)
def test_probabilities_of_a_library(t_factor: float, freedom: int, value: float) -> None:
    assert student.student_probability_ratio(t_factor, freedom) == pytest.approx(value, rel=1e-12)


# [MR] table 11-1: hydrocarbon level in percent, purity in percent
LEVELS = [0.99, 1.02, 1.15, 1.29, 1.46, 1.36, 0.87, 1.23, 1.55, 1.40, 1.19, 1.15, 0.98, 1.01, 1.11, 1.20, 1.26, 1.32]
LEVELS += [1.43, 0.95]
PURITIES = [90.01, 89.05, 91.43, 93.74, 96.73, 94.45, 87.59, 91.77, 99.42, 93.65, 93.54, 92.52, 90.56, 89.54, 89.85]
PURITIES += [90.39, 93.25, 93.41, 94.98, 87.33]


@pytest.mark.printed("Montgomery and Runger, 3rd ed., Table 11-2", "regression.wall_line", values=4)
def test_the_line_of_the_textbook() -> None:
    line = regression.wall_line(LEVELS, PURITIES)
    assert line.intercept_m == printed("74.283")
    assert line.slope_m_per_year == printed("14.947")
    assert line.spread_m == printed("1.087")
    assert line.explained_ratio * 100 == printed("87.7")


@pytest.mark.printed(
    "Montgomery and Runger, 3rd ed., Table 11-2", "regression.reading_band", "regression.line_band", values=5
)
def test_the_bands_of_the_textbook() -> None:
    """At x = 1.00: fit 89.231, line 88.486 to 89.975, new reading 86.830 to 91.632."""
    new, line = (band(LEVELS, PURITIES, 1.00) for band in (regression.reading_band, regression.line_band))
    assert new.line_m == printed("89.231")
    assert line.lower_m == printed("88.486")
    assert line.upper_m == printed("89.975")
    assert new.lower_m == printed("86.830")
    assert new.upper_m == printed("91.632")


# [NORRIS] y, x
NORRIS = """
0.1 0.2 338.8 337.4 118.1 118.2 888.0 884.6 9.2 10.1 228.1 226.5 668.5 666.3 998.5 996.3 449.1 448.6 778.9 777.0
559.2 558.2 0.3 0.4 0.1 0.6 778.1 775.5 668.8 666.9 339.3 338.0 448.9 447.5 10.8 11.6 557.7 556.0 228.3 228.1
998.0 995.8 888.8 887.6 119.6 120.2 0.3 0.3 0.6 0.3 557.6 556.8 339.3 339.1 888.0 887.2 998.5 999.0 778.9 779.0
10.2 11.1 117.6 118.3 228.9 229.2 668.4 669.1 449.2 448.9 0.2 0.5
"""


@pytest.mark.printed("NIST StRD Norris, certified values", "regression.wall_line", values=5)
def test_the_certified_line() -> None:
    figures = [float(figure) for figure in NORRIS.split()]
    line = regression.wall_line(figures[1::2], figures[0::2])
    assert line.freedom_count == 34
    assert line.intercept_m == printed("-0.262323073774029")
    assert line.slope_m_per_year == printed("1.00211681802045")
    assert line.spread_m == printed("0.884796396144373")
    assert line.slope_error_m_per_year == printed("0.000429796848199937")
    assert line.explained_ratio == printed("0.999993745883712")


# [ANSCOMBE] four sets with one line
_X = [10.0, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
ANSCOMBE = [
    (_X, [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]),
    (_X, [9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74]),
    (_X, [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73]),
    ([8.0] * 7 + [19.0] + [8.0] * 3, [6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89]),
]


@pytest.mark.printed("Anscombe 1973, from memory", "regression.wall_line", values=4)
@each(("xs", "ys"), ANSCOMBE)
def test_four_sets_with_one_line(xs: list[float], ys: list[float]) -> None:
    line = regression.wall_line(xs, ys)
    assert line.intercept_m == printed("3.0")
    assert line.slope_m_per_year == printed("0.50")
    assert line.slope_error_m_per_year == printed("0.118")
    assert line.explained_ratio == printed("0.67")


@pytest.mark.printed("Worked answer on five points", "regression.reading_band", "regression.line_band", values=4)
def test_a_worked_answer_on_five_points() -> None:
    """[FIVE] t rounded to 3.182 there, so the last digit may differ by one: to 0.001."""
    xs, ys = [-1.0, 2.0, 6.0, 9.0, 12.0], [-1.0, 0.0, 5.0, 6.0, 11.0]
    new, line = (band(xs, ys, 1.0) for band in (regression.reading_band, regression.line_band))
    assert (new.lower_m, new.upper_m) == pytest.approx((-4.4960, 4.5217), abs=1e-3)
    assert (line.lower_m, line.upper_m) == pytest.approx((-2.3838, 2.4094), abs=1e-3)


# Readings made up here, in mm; values [STATSMODELS], the lives with scipy's root finder on statsmodels' bound
EVEN = ([0.0, 2, 4, 6, 8], [4.05, 3.72, 3.30, 3.05, 2.60])
UNEVEN = ([0.0, 1.1, 2.4, 3.0, 4.7, 6.2], [5.02, 4.81, 4.66, 4.35, 4.28, 3.77])


@pytest.mark.printed(
    "statsmodels 0.15.0", "regression.reading_band", "regression.line_band", "regression.least_wall_m", values=6
)
@each(
    ("taken", "at_years", "confidence", "figures"),
    [
        (EVEN, 8, 0.95, "2.630000 2.432381 2.827619 2.508983 2.751017 2.483864"),
        (EVEN, 10, 0.95, "2.273000 2.046599 2.499401 2.109143 2.436857 2.105580"),
        (EVEN, 12, 0.95, "1.916000 1.654574 2.177426 1.706393 2.125607 1.722680"),
        (EVEN, 10, 0.99, "2.273000 1.857474 2.688526 1.972264 2.573736 1.949971"),
        (UNEVEN, 7.5, 0.90, "3.604416 3.279883 3.928950 3.376142 3.832691 3.371014"),
    ],
)
def test_bands_of_a_library(
    taken: tuple[list[float], list[float]], at_years: float, confidence: float, figures: str
) -> None:
    new, line = (band(*taken, at_years, confidence) for band in (regression.reading_band, regression.line_band))
    least = regression.least_wall_m(*taken, at_years, confidence)
    found = (new.line_m, new.lower_m, new.upper_m, line.lower_m, line.upper_m, least)
    assert list(found) == [printed(figure) for figure in figures.split()]


@pytest.mark.printed(
    "statsmodels 0.15.0", "regression.line_rate_m_per_year", "regression.greatest_rate_m_per_year", values=2
)
@each(
    ("taken", "confidence", "rate", "greatest"),
    [(EVEN, 0.95, "0.1785", "0.196767"), (EVEN, 0.99, "0.1785", "0.213745"), (UNEVEN, 0.90, "0.190707", "0.223218")],
)
def test_rates_of_a_library(
    taken: tuple[list[float], list[float]], confidence: float, rate: str, greatest: str
) -> None:
    assert regression.line_rate_m_per_year(*taken) == printed(rate)
    assert regression.greatest_rate_m_per_year(*taken, confidence) == printed(greatest)


@pytest.mark.printed("statsmodels 0.15.0", "regression.band_life_years")
@each(
    ("taken", "required", "confidence", "life"),
    [(EVEN, 2.0, 0.95, "2.553466"), (EVEN, 1.0, 0.95, "7.736894"), (UNEVEN, 2.5, 0.90, "5.343551")],
)
def test_lives_of_a_library(
    taken: tuple[list[float], list[float]], required: float, confidence: float, life: str
) -> None:
    assert regression.band_life_years(*taken, required, confidence) == printed(life)
