"""Rates, remaining life and open-air loss, against worked examples in print.

Sources: [API] worked examples on API 510 7.1.1 (rates), 7.2.1 (remaining life) and 6.5.1.1 (interval) in two public
question sheets for inspectors; [life] a remaining-life work sheet; [ISO] ISO 9224, D = r t^b with the exponents 0.523
(average) and 0.575 (conservative) for carbon steel as stated in public code for that standard. The powers of t are
"calculated here"; the tangent beyond 20 years is from memory. Tolerance: half a unit of the last printed digit.
"""

import pytest

from inspector.mechanics import corrosion

INCH_M = 0.0254


def printed(figure: str) -> object:
    decimals = len(figure.partition(".")[2])
    return pytest.approx(float(figure), abs=0.5001 * 10**-decimals)


# [API] inches then, inches now, years, inches a year
@pytest.mark.parametrize(
    ("then", "now", "years", "rate"),
    [(0.400, 0.260, 20, ".007"), (0.750, 0.675, 15, ".005"), (0.565, 0.521, 4.42, ".010")],
)
def test_corrosion_rates_of_the_worked_examples(then: float, now: float, years: float, rate: str) -> None:
    long_term = corrosion.long_term_rate_m_per_year(then * INCH_M, now * INCH_M, years)
    short_term = corrosion.short_term_rate_m_per_year(then * INCH_M, now * INCH_M, years)
    assert long_term / INCH_M == printed(rate)
    assert short_term / INCH_M == printed(rate)


def test_a_rate_in_millimetres() -> None:
    # [life] 7.8 mm to 3.24 mm in 15 years: .304 mm a year (the sheet then divides by .34; its life is not used here)
    assert corrosion.long_term_rate_m_per_year(0.0078, 0.00324, 15) * 1e3 == printed(".304")


# [API] wall, required wall, rate (inches), remaining life in years
@pytest.mark.parametrize(
    ("wall", "required", "rate", "life"), [(0.198, 0.150, 0.007, "6.9"), (0.211, 0.150, 0.003, "20.3")]
)
def test_remaining_lives_of_the_worked_examples(wall: float, required: float, rate: float, life: str) -> None:
    found = corrosion.remaining_life_years(wall * INCH_M, required * INCH_M, rate * INCH_M)
    assert found == printed(life)


def test_the_short_term_rate_controls_when_it_is_the_greater() -> None:
    # [API] short term .742 -> .718 in 6 years, long term .750 -> .718 in 13: .004 controls over .0025
    short_term = corrosion.short_term_rate_m_per_year(0.742 * INCH_M, 0.718 * INCH_M, 6)
    long_term = corrosion.long_term_rate_m_per_year(0.750 * INCH_M, 0.718 * INCH_M, 13)
    assert short_term / INCH_M == printed(".004")
    assert long_term / INCH_M == printed(".0025")
    assert corrosion.governing_rate_m_per_year([long_term, short_term]) / INCH_M == printed(".004")


# [API] remaining life, interval to the next reading: half of it, 10 years at the most
@pytest.mark.parametrize(("life", "interval"), [(18.7, "9.35"), (9, "4.5"), (5.5, "2.75"), (20, "10"), (11.2, "5.6")])
def test_intervals_of_the_worked_examples(life: float, interval: str) -> None:
    assert corrosion.half_life_interval_years(life, 10) == pytest.approx(float(interval))


def test_the_interval_is_never_above_ten_years() -> None:
    # [API] 6.5.1.1: the lesser of half the remaining life and 10 years
    assert corrosion.half_life_interval_years(30, 10) == 10


# Calculated here, [ISO] exponents: years, t^0.523, t^0.575
POWERS = [
    (1, "1.000", "1.000"),
    (2, "1.437", "1.490"),
    (5, "2.320", "2.523"),
    (10, "3.334", "3.758"),
    (15, "4.122", "4.745"),
    (20, "4.791", "5.599"),
]


@pytest.mark.parametrize(("years", "average", "conservative"), POWERS)
def test_growth_of_open_air_loss_as_calculated_here(years: float, average: str, conservative: str) -> None:
    assert corrosion.atmospheric_loss_m(1.0, years, 0.523) == printed(average)
    assert corrosion.atmospheric_loss_m(1.0, years, 0.575) == printed(conservative)


# Calculated here, from the upper bounds of ISO 9223 (C3 50, C4 80, C5 200 um in the first year): loss in um, b 0.523
@pytest.mark.parametrize(
    ("first_um", "years", "loss_um"), [(50, 5, "116"), (80, 10, "267"), (200, 15, "824"), (700, 20, "3354")]
)
def test_open_air_loss_of_carbon_steel_as_calculated_here(first_um: float, years: float, loss_um: str) -> None:
    assert corrosion.atmospheric_loss_m(first_um * 1e-6, years, 0.523) * 1e6 == printed(loss_um)


def test_beyond_twenty_years_the_loss_runs_on_along_the_tangent() -> None:
    # The tangent is from memory of ISO 9224; 4.791 + 0.523 x 20^-0.477 x 10 = 6.044, calculated here
    assert corrosion.atmospheric_loss_m(1.0, 30, 0.523) == printed("6.044")
