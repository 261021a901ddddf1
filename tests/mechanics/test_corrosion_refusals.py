"""The sums of air, water, zinc, gauges, points, lines and couplings refuse figures outside their range."""

import inspect
import math
from collections.abc import Callable
from enum import StrEnum
from types import ModuleType
from typing import Any, get_type_hints

import pytest
from msgspec import Struct

from inspector.mechanics import (
    atmosphere,
    coupling,
    gauge,
    hitch_law,
    points,
    regression,
    sea_zones,
    student,
    zinc,
)
from inspector.mechanics.atmosphere import Corrosivity
from inspector.mechanics.hitch_law import BenchPull, ProofStep
from inspector.mechanics.sea_zones import Exposure
from tests.each import each

Sum = Callable[..., Any]
MODULES: list[ModuleType] = [atmosphere, coupling, gauge, hitch_law, points, regression, sea_zones, student, zinc]

READINGS: dict[str, Any] = {"taken_years": [0.0, 2.0, 4.0, 6.0], "walls_m": [0.004, 0.0036, 0.0033, 0.0029]}
FIFTEEN = {"readings_m": [0.004 + step * 1e-5 for step in range(15)]}

GOOD: dict[Sum, dict[str, Any]] = {
    atmosphere.first_year_least_m: {"category": Corrosivity.C4},
    atmosphere.first_year_most_m: {"category": Corrosivity.C4},
    atmosphere.in_corrosivity: {"first_year_m": 6e-5, "category": Corrosivity.C4},
    atmosphere.growth_exponent_ratio: {},
    atmosphere.category_loss_m: {"category": Corrosivity.C4, "years": 5.0},
    atmosphere.first_year_steel_m: {
        "temperature_c": 12.0,
        "humidity_ratio": 0.78,
        "sulphur_ratio": 5.0,
        "chloride_ratio": 60.0,
    },
    coupling.d_value_n: {"towing_kg": 3000.0, "trailer_kg": 2500.0},
    coupling.other_mass_kg: {"rated_d_n": 13e3, "known_kg": 3000.0},
    coupling.centre_axle_d_n: {"towing_kg": 3000.0, "axles_kg": 2500.0},
    coupling.v_value_n: {"axles_kg": 2500.0, "body_m": 4.0, "drawbar_m": 5.0},
    coupling.semi_trailer_d_n: {"towing_kg": 17e3, "trailer_kg": 33e3, "imposed_kg": 10e3},
    coupling.adr_test_n: {"trailer_kg": 3000.0},
    coupling.snatch_over_d_ratio: {"peak_n": 80e3, "rated_d_n": 13e3},
    coupling.ball_loss_ratio: {"ball_m": 0.0495, "new_m": 0.05},
    coupling.is_ball_worn: {"ball_m": 0.0495},
    coupling.is_ball_mismatched: {"ball_m": 0.0495, "coupler_m": 0.05},
    coupling.towing_eye_n: {"laden_kg": 3000.0},
    coupling.eye_over_strap_ratio: {"laden_kg": 3000.0, "breaking_n": 80e3},
    gauge.gauge_accuracy_m: {},
    gauge.over_reading_m: {},
    gauge.relied_reading_m: {"reading_m": 0.004, "accuracy_m": 1e-4, "over_m": 6e-4},
    gauge.is_below_probe: {"reading_m": 0.001, "least_m": 0.0015},
    gauge.velocity_error_ratio: {"set_m_per_s": 5865.0, "part_m_per_s": 5700.0},
    gauge.rate_error_m_per_year: {"accuracy_m": 1e-4, "years": 2.0},
    gauge.rate_half_width_m_per_year: {"accuracy_m": 1e-4, "years": 2.0, "coverage_factor": 2.0},
    gauge.life_error_years: {"life_years": 5.0, "rate_m_per_year": 2e-4, "accuracy_m": 1e-4, "years": 2.0},
    gauge.least_life_years: {
        "wall_m": 0.003,
        "required_m": 0.002,
        "rate_m_per_year": 2e-4,
        "accuracy_m": 1e-4,
        "years": 2.0,
    },
    hitch_law.coupler_class_count: {"trailer_kg": 1500.0},
    hitch_law.coupler_breaking_n: {"trailer_kg": 1500.0, "pull": BenchPull.TENSION},
    hitch_law.hitch_proof_n: {"trailer_kg": 1500.0, "step": ProofStep.ALONG},
    points.point_spread: FIFTEEN,
    points.may_average: FIFTEEN,
    points.thickness_floor_m: {"required_m": 0.003, "nominal_m": 0.004},
    points.pitting_factor: {"deepest_m": 9e-4, "average_m": 3e-4},
    points.deepest_pit_m: {"average_m": 3e-4},
    regression.wall_line: READINGS,
    regression.reading_band: READINGS | {"at_years": 8.0, "confidence_ratio": 0.9},
    regression.line_band: READINGS | {"at_years": 8.0, "confidence_ratio": 0.9},
    regression.least_wall_m: READINGS | {"at_years": 8.0, "confidence_ratio": 0.9},
    regression.line_rate_m_per_year: READINGS,
    regression.greatest_rate_m_per_year: READINGS | {"confidence_ratio": 0.9},
    regression.band_life_years: READINGS | {"required_m": 0.002, "confidence_ratio": 0.9},
    regression.is_beyond_reach: {"taken_years": [0.0, 2.0, 4.0], "at_years": 5.0},
    sea_zones.tabulated_loss_m: {"exposure": Exposure.SPLASH, "years": 5.0},
    sea_zones.splash_rate_m_per_year: {},
    student.student_probability_ratio: {"t_factor": 2.0, "freedom_count": 5},
    student.student_t_factor: {"probability_ratio": 0.95, "freedom_count": 5},
    zinc.least_local_zinc_m: {"steel_m": 0.004},
    zinc.least_mean_zinc_m: {"steel_m": 0.004},
    zinc.zinc_life_years: {"zinc_m": 55e-6, "rate_m_per_year": 4e-6},
    zinc.least_zinc_life_years: {"zinc_m": 55e-6, "category": Corrosivity.C4},
    zinc.most_zinc_life_years: {"zinc_m": 55e-6, "category": Corrosivity.C4},
}
BELOW_ZERO = {"taken_years", "walls_m", "at_years", "temperature_c", "t_factor"}  # here a negative figure makes sense
ZERO_REFUSED = {
    *("towing_kg", "trailer_kg", "rated_d_n", "known_kg", "axles_kg", "body_m", "drawbar_m", "imposed_kg", "ball_m"),
    *("new_m", "coupler_m", "laden_kg", "breaking_n", "least_m", "set_m_per_s", "part_m_per_s", "coverage_factor"),
    *("readings_m", "steel_m", "confidence_ratio", "probability_ratio", "freedom_count", "humidity_ratio"),
}
ARGUMENTS = [(deed, name) for deed, good in GOOD.items() for name, value in good.items() if not isinstance(value, str)]


def with_bad(deed: Sum, name: str, bad: float) -> dict[str, Any]:
    good = GOOD[deed]
    return good | {name: [*good[name][:-1], bad] if isinstance(good[name], list) else bad}


def names(pair: tuple[Sum, str]) -> str:
    return f"{pair[0].__name__}-{pair[1]}"


def test_the_table_holds_every_public_sum_of_its_modules() -> None:
    public = {
        member
        for module in MODULES
        for name, member in inspect.getmembers(module, inspect.isfunction)
        if not name.startswith("_") and member.__module__ == module.__name__
    }
    assert public == set(GOOD)


@each("deed", GOOD, ids=lambda deed: deed.__name__)
def test_the_good_figures_are_taken(deed: Sum) -> None:
    found = deed(**GOOD[deed])
    figures = [getattr(found, name) for name in found.__struct_fields__] if isinstance(found, Struct) else [found]
    assert all(math.isfinite(figure) for figure in figures)


@each("pair", ARGUMENTS, ids=names)
@each("bad", [math.nan, -1.0, math.inf, -math.inf], ids=str)
def test_a_figure_outside_the_range_is_refused(pair: tuple[Sum, str], bad: float) -> None:
    deed, name = pair
    if name == "t_factor" and not math.isnan(bad):
        assert 0 <= deed(**with_bad(deed, name, bad)) <= 1
    elif name in BELOW_ZERO and bad == -1.0:
        deed(**with_bad(deed, name, bad))
    else:
        with pytest.raises(ValueError, match="must") as refused:
            deed(**with_bad(deed, name, bad))
        assert name in str(refused.value)


@each("pair", ARGUMENTS, ids=names)
def test_zero_is_refused_where_it_makes_no_sense_and_taken_where_it_does(pair: tuple[Sum, str]) -> None:
    deed, name = pair
    divides = {
        (gauge.rate_error_m_per_year, "years"),
        (gauge.rate_half_width_m_per_year, "years"),
        (gauge.life_error_years, "years"),
        (gauge.life_error_years, "rate_m_per_year"),
        (gauge.least_life_years, "years"),
        (points.pitting_factor, "average_m"),
        (points.pitting_factor, "deepest_m"),
    }
    if name in ZERO_REFUSED or pair in divides:
        with pytest.raises(ValueError, match="must"):
            deed(**with_bad(deed, name, 0))
    else:
        deed(**with_bad(deed, name, 0))


@each("deed", GOOD, ids=lambda deed: deed.__name__)
def test_a_word_that_is_none_of_the_names_is_refused(deed: Sum) -> None:
    hints = get_type_hints(deed)
    words = [name for name, hint in hints.items() if isinstance(hint, type) and issubclass(hint, StrEnum)]
    for name in words:
        with pytest.raises(ValueError, match="nonsense"):
            deed(**GOOD[deed] | {name: "nonsense"})


@pytest.mark.parametrize(
    ("taken_years", "walls_m"),
    [
        ([0.0, 1.0], [0.004, 0.003]),
        ([0.0, 1.0, 2.0], [0.004, 0.003]),
        ([], []),
        ([3.0, 3.0, 3.0], [0.004, 0.003, 0.002]),
    ],
    ids=["two", "unequal", "none", "one day"],
)
def test_a_line_needs_three_readings_at_two_times(taken_years: list[float], walls_m: list[float]) -> None:
    with pytest.raises(ValueError, match="taken_years"):
        regression.wall_line(taken_years, walls_m)


def test_a_count_of_freedom_is_whole_and_not_beyond_a_thousand() -> None:
    for freedom in (0, 1001):
        with pytest.raises(ValueError, match="freedom_count"):
            student.student_t_factor(0.95, freedom)


def test_tables_end_where_print_ends() -> None:
    assert sea_zones.tabulated_loss_m(Exposure.LOOSE_FILL, 125) > 0
    for exposure, years in ((Exposure.LOOSE_FILL, 125.01), (Exposure.SPLASH, 100.01), (Exposure.FRESH_WATER, 101)):
        with pytest.raises(ValueError, match="years"):
            sea_zones.tabulated_loss_m(exposure, years)


@pytest.mark.parametrize(
    ("name", "bad"),
    [("temperature_c", 28.8), ("temperature_c", -17.2), ("humidity_ratio", 0.94), ("humidity_ratio", 0.33)],
)
def test_a_climate_outside_the_data_is_refused(name: str, bad: float) -> None:
    with pytest.raises(ValueError, match=name):
        atmosphere.first_year_steel_m(**GOOD[atmosphere.first_year_steel_m] | {name: bad})


def test_more_salt_or_sulphur_than_the_data_hold_is_refused() -> None:
    for name, bad in (("sulphur_ratio", 150.5), ("chloride_ratio", 760.6)):
        with pytest.raises(ValueError, match=name):
            atmosphere.first_year_steel_m(**GOOD[atmosphere.first_year_steel_m] | {name: bad})


def test_couplings_refuse_impossible_pairs() -> None:
    with pytest.raises(ValueError, match="rated_d_n"):
        coupling.other_mass_kg(9.81 * 3000, 3000)
    with pytest.raises(ValueError, match="imposed_kg"):
        coupling.semi_trailer_d_n(17e3, 10e3, 10e3)
    with pytest.raises(ValueError, match="trailer_kg"):
        hitch_law.coupler_class_count(4536)
    with pytest.raises(ValueError, match="deepest_m"):
        points.pitting_factor(0.0002, 0.0003)
