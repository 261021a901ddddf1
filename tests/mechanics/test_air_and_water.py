"""Open air, water and zinc: the direction of every effect, the edges of classes and tables."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import atmosphere, sea_zones, zinc
from inspector.mechanics.atmosphere import Corrosivity, Growth, Metal
from inspector.mechanics.corrosion import atmospheric_loss_m
from inspector.mechanics.sea_zones import Exposure, SplashRate
from tests.each import each

categories = st.sampled_from(Corrosivity)
metals = st.sampled_from(Metal)
exposures = st.sampled_from(Exposure)
spans_years = st.floats(0.0, 100.0)


@pytest.mark.parametrize("metal", Metal)
def test_the_classes_lie_end_to_end(metal: Metal) -> None:
    for milder, harsher in pairwise(Corrosivity):
        assert atmosphere.first_year_most_m(milder, metal) == atmosphere.first_year_least_m(harsher, metal)


@given(st.floats(0.0, 25e-6), metals)
def test_every_loss_belongs_to_one_class(loss_m: float, metal: Metal) -> None:
    assert sum(atmosphere.in_corrosivity(loss_m, category, metal) for category in Corrosivity) == 1


def test_a_loss_beyond_the_last_class_belongs_to_none() -> None:
    assert not any(atmosphere.in_corrosivity(701e-6, category) for category in Corrosivity)


@given(categories, metals, st.floats(0.0, 60.0), st.floats(0.0, 60.0))
def test_more_years_in_the_open_never_cost_less(
    category: Corrosivity, metal: Metal, one_years: float, other_years: float
) -> None:
    few, many = sorted((one_years, other_years))
    few_m = atmosphere.category_loss_m(category, few, metal)
    assert few_m <= atmosphere.category_loss_m(category, many, metal) * (1 + 1e-12)


@given(categories, metals, st.floats(1.0, 60.0))
def test_the_default_exponent_is_the_safe_one_after_the_first_year(
    category: Corrosivity, metal: Metal, years: float
) -> None:
    average_m = atmosphere.category_loss_m(category, years, metal, Growth.AVERAGE)
    assert atmosphere.category_loss_m(category, years, metal) >= average_m


@given(categories, metals, st.sampled_from(Growth), st.floats(0.0, 60.0))
def test_the_class_is_its_upper_bound_in_the_law(
    category: Corrosivity, metal: Metal, growth: Growth, years: float
) -> None:
    most_m, exponent = atmosphere.first_year_most_m(category, metal), atmosphere.growth_exponent_ratio(metal, growth)
    assert atmosphere.category_loss_m(category, years, metal, growth) == atmospheric_loss_m(most_m, years, exponent)


climates = st.fixed_dictionaries(
    {
        "temperature_c": st.floats(-17.1, 28.7),
        "humidity_ratio": st.floats(0.34, 0.93),
        "sulphur_ratio": st.floats(0.0, 150.4),
        "chloride_ratio": st.floats(0.0, 760.5),
    }
)


@given(climates, st.floats(0.34, 0.93), st.floats(0.0, 150.4), st.floats(0.0, 760.5))
def test_wetter_dirtier_or_saltier_air_never_takes_less(
    climate: dict[str, float], humidity: float, sulphur: float, chloride: float
) -> None:
    calm_m = atmosphere.first_year_steel_m(**climate)
    for name, other in (("humidity_ratio", humidity), ("sulphur_ratio", sulphur), ("chloride_ratio", chloride)):
        worse_m = atmosphere.first_year_steel_m(**climate | {name: max(climate[name], other)})
        assert math.isfinite(worse_m) and worse_m >= calm_m >= 0


def test_clean_air_without_salt_takes_nothing_and_the_warmth_term_turns_at_ten_degrees() -> None:
    assert atmosphere.first_year_steel_m(10, 0.75, 0, 0) == 0
    at_ten, cooler, warmer = (atmosphere.first_year_steel_m(t, 0.75, 20, 0) for t in (10.0, 9.0, 11.0))
    assert cooler / at_ten == pytest.approx(math.exp(-0.150))
    assert warmer / at_ten == pytest.approx(math.exp(-0.054))


@given(exposures, spans_years, spans_years)
def test_more_years_in_water_or_earth_never_cost_less(exposure: Exposure, one: float, other: float) -> None:
    few, many = sorted((one, other))
    few_m = sea_zones.tabulated_loss_m(exposure, few)
    assert 0 <= few_m <= sea_zones.tabulated_loss_m(exposure, many) + 1e-15


@given(spans_years)
def test_the_splash_zone_takes_the_most_of_the_sea(years: float) -> None:
    splash_m = sea_zones.tabulated_loss_m(Exposure.SPLASH, years)
    assert splash_m >= sea_zones.tabulated_loss_m(Exposure.IMMERSED, years)


@each("years", [5, 25, 50, 75])
@each("exposure", Exposure)
def test_the_table_has_no_steps(exposure: Exposure, years: float) -> None:
    before_m, after_m = (sea_zones.tabulated_loss_m(exposure, years + shift) for shift in (-1e-6, 1e-6))
    assert after_m - before_m < 1e-9


def test_between_two_columns_the_loss_lies_halfway() -> None:
    at_m = [sea_zones.tabulated_loss_m(Exposure.SPLASH, years) for years in (5, 15, 25)]
    assert at_m[1] == pytest.approx((at_m[0] + at_m[2]) / 2)
    assert sea_zones.tabulated_loss_m(Exposure.SPLASH, 0) == 0


def test_the_unnamed_splash_rate_is_the_largest_published() -> None:
    rates = [sea_zones.splash_rate_m_per_year(published) for published in SplashRate]
    assert sea_zones.splash_rate_m_per_year() == max(rates)
    assert rates == sorted(rates, reverse=True)
    assert min(rates) == pytest.approx(0.05e-3)


@given(st.floats(1e-4, 0.05), st.floats(1e-4, 0.05))
def test_thicker_steel_never_carries_less_zinc(one_m: float, other_m: float) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert zinc.least_local_zinc_m(thin_m) <= zinc.least_local_zinc_m(thick_m)
    assert zinc.least_mean_zinc_m(thin_m) <= zinc.least_mean_zinc_m(thick_m)
    assert zinc.least_local_zinc_m(thick_m) < zinc.least_mean_zinc_m(thick_m)


@pytest.mark.parametrize("limit_m", [0.0015, 0.003, 0.006])
def test_a_limit_belongs_to_the_thinner_steel_whatever_the_rounding(limit_m: float) -> None:
    for steel_m in (limit_m, limit_m * (1 + 1e-12), limit_m * (1 - 1e-12)):
        assert zinc.least_local_zinc_m(steel_m) == zinc.least_local_zinc_m(limit_m * 0.99)
    assert zinc.least_local_zinc_m(limit_m * 1.01) > zinc.least_local_zinc_m(limit_m)


@given(st.floats(0.0, 3e-4), categories)
def test_the_shortest_life_is_never_above_the_longest(zinc_m: float, category: Corrosivity) -> None:
    least_years = zinc.least_zinc_life_years(zinc_m, category)
    assert 0 <= least_years <= zinc.most_zinc_life_years(zinc_m, category)


@given(st.floats(1e-6, 3e-4), st.floats(1e-8, 1e-4), st.floats(1.0, 10.0))
def test_life_grows_with_thickness_and_falls_with_the_rate(zinc_m: float, rate: float, more: float) -> None:
    years = zinc.zinc_life_years(zinc_m, rate)
    assert zinc.zinc_life_years(more * zinc_m, rate) == pytest.approx(more * years)
    assert zinc.zinc_life_years(zinc_m, more * rate) == pytest.approx(years / more)


def test_no_rate_is_an_endless_life_and_no_zinc_is_none() -> None:
    assert zinc.zinc_life_years(85e-6, 0.0) == math.inf
    assert zinc.zinc_life_years(0.0, 0.0) == 0
    assert zinc.most_zinc_life_years(85e-6, Corrosivity.C1) == math.inf
