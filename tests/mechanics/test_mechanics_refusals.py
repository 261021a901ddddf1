"""Every sum refuses every argument that lies outside its range, and every docstring's worked example is right."""

import doctest
import importlib
import inspect
import math
import pkgutil
from collections.abc import Callable
from enum import StrEnum
from types import ModuleType
from typing import Any

import pytest

import inspector.mechanics
from inspector.mechanics import corrosion, fibre, rating, sections, shear, snatch
from tests.each import each

Sum = Callable[..., Any]

TUBE = {"side_m": 0.060, "wall_m": 0.004, "outer_radius_m": 0.008}
PLATES = {"inner_plate_m": 0.05, "gap_m": 0.001, "outer_plate_m": 0.004}
SHANK = {"diameter_m": 0.022, "lever_m": 0.05, "yield_pa": 235e6}
BEARING = {"diameter_m": 0.016, "yield_pa": 235e6, "wall_count": 2, "gamma_m0_factor": 1.0}

GOOD: dict[Sum, dict[str, Any]] = {
    shear.pin_area_m2: {"diameter_m": 0.016},
    shear.shear_plane_stress_pa: {"pull_n": 1e4, "diameter_m": 0.016, "plane_count": 2},
    shear.pin_shear_per_plane_n: {"diameter_m": 0.016, "ultimate_pa": 360e6, "gamma_m2_factor": 1.25},
    shear.pin_shear_n: {"diameter_m": 0.016, "ultimate_pa": 360e6, "plane_count": 2, "gamma_m2_factor": 1.25},
    shear.pin_bearing_n: BEARING | {"wall_m": 0.004},
    shear.bearing_wall_needed_m: BEARING | {"pull_n": 1e4},
    shear.pin_lever_m: PLATES,
    shear.pin_moment_n_m: PLATES | {"pull_n": 1e4},
    shear.pin_moment_resistance_n_m: {"diameter_m": 0.016, "yield_pa": 235e6, "gamma_m0_factor": 1.0},
    shear.pin_utilisation_ratio: {
        "moment_n_m": 50.0,
        "moment_resistance_n_m": 100.0,
        "shear_n": 1e4,
        "shear_resistance_n": 2e4,
    },
    shear.pin_bending_pull_n: {"lever_m": 0.006, "moment_resistance_n_m": 214.0},
    shear.pin_combined_pull_n: {"lever_m": 0.006, "moment_resistance_n_m": 214.0, "shear_resistance_n": 49e3},
    shear.shank_stress_pa: {"pull_n": 1e4, "diameter_m": 0.022, "lever_m": 0.05},
    shear.shank_elastic_limit_n: SHANK,
    shear.shank_plastic_limit_n: SHANK,
    sections.square_tube_area_m2: TUBE,
    sections.square_tube_inertia_m4: TUBE,
    sections.square_tube_modulus_m3: TUBE,
    sections.square_tube_net_area_m2: TUBE | {"hole_m": 0.016},
    sections.two_walls_net_area_m2: {"width_m": 0.044, "wall_m": 0.004, "hole_m": 0.016},
    sections.round_elastic_modulus_m3: {"diameter_m": 0.022},
    sections.round_plastic_modulus_m3: {"diameter_m": 0.022},
    sections.round_inertia_m4: {"diameter_m": 0.022},
    sections.round_area_loss_ratio: {"diameter_loss_ratio": 0.1},
    sections.round_modulus_loss_ratio: {"diameter_loss_ratio": 0.1},
    corrosion.long_term_rate_m_per_year: {"initial_wall_m": 0.004, "wall_m": 0.003, "years": 5.0},
    corrosion.short_term_rate_m_per_year: {"previous_wall_m": 0.004, "wall_m": 0.003, "years": 5.0},
    corrosion.governing_rate_m_per_year: {"rates_m_per_year": [1e-4, 2e-4]},
    corrosion.remaining_life_years: {"wall_m": 0.004, "required_m": 0.003, "rate_m_per_year": 1e-4},
    corrosion.half_life_interval_years: {"life_years": 8.0, "cap_years": 10.0},
    corrosion.atmospheric_loss_m: {"first_year_rate_m": 80e-6, "years": 10.0, "exponent_ratio": 0.523},
    corrosion.estimated_wall_m: {"wall_m": 0.004, "rate_m_per_year": 1e-4, "years": 5.0},
    fibre.wet_nylon_strength_n: {"dry_n": 80e3},
    fibre.wet_loss_ratio: {"fibre": fibre.Fibre.NYLON, "published": fibre.WetFigure.MANUALS},
    fibre.nylon_sun_loss_ratio: {"exposed_years": 1.0},
    fibre.polyester_sun_loss_ratio: {"exposed_years": 1.0},
    fibre.sunlight_loss_ratio: {"fibre": fibre.Fibre.HMPE, "exposed_years": 1.0},
    fibre.ageing_loss_ratio: {"losses_ratio": [0.1, 0.2]},
    fibre.residual_strength_ratio: {"measured_n": 20e3, "new_n": 50e3},
    fibre.strength_left_n: {"strength_n": 80e3, "loss_ratio": 0.1},
    fibre.strap_band_ratio: {"breaking_n": 80e3, "vehicle_mass_kg": 3000.0},
    fibre.in_strap_band: {"band_ratio": 2.5},
    rating.ultimate_n: {"working_load_n": 40e3, "design_factor": 5.0},
    rating.side_load_factor: {"angle_rad": 0.1},
    rating.block_load_factor: {"angle_rad": 0.1},
    rating.bridle_leg_factor: {"angle_rad": 0.1},
    snatch.strap_stiffness_n_per_m: {"breaking_n": 80e3, "elongation_ratio": 0.2, "length_m": 9.0},
    snatch.anchored_peak_n: {"drive_n": 8e3, "stiffness_n_per_m": 40e3, "mass_kg": 2500.0, "speed_m_per_s": 3.0},
    snatch.stored_energy_j: {"force_n": 40e3, "stiffness_n_per_m": 40e3},
}

# Arguments for which zero is outside the range; every other one takes zero.
ABOVE_ZERO = {
    *("diameter_m", "ultimate_pa", "yield_pa", "side_m", "width_m", "lever_m", "inner_plate_m", "outer_plate_m"),
    *("moment_resistance_n_m", "shear_resistance_n", "plane_count", "wall_count", "gamma_m0_factor", "gamma_m2_factor"),
    *("design_factor", "cap_years", "exponent_ratio", "vehicle_mass_kg", "elongation_ratio", "length_m"),
    *("stiffness_n_per_m", "mass_kg", "new_n"),
}
ENDLESS = {"life_years"}

ARGUMENTS = [(deed, name) for deed, good in GOOD.items() for name in good if not isinstance(good[name], StrEnum)]


def modules() -> list[ModuleType]:
    names = [found.name for found in pkgutil.iter_modules(inspector.mechanics.__path__)]
    return [importlib.import_module(f"inspector.mechanics.{name}") for name in names]


def public_sums() -> list[Sum]:
    return [
        member
        for module in modules()
        if not module.__name__.endswith(".checked")
        for name, member in inspect.getmembers(module, inspect.isfunction)
        if not name.startswith("_") and member.__module__ == module.__name__
    ]


def with_bad(deed: Sum, name: str, bad: float) -> dict[str, Any]:
    good = GOOD[deed]
    return good | {name: [good[name][0], bad] if isinstance(good[name], list) else bad}


def _name(argument: tuple[Sum, str]) -> str:
    return f"{argument[0].__name__}-{argument[1]}"


def test_the_table_holds_every_public_sum_of_its_modules() -> None:
    covered = {deed.__module__ for deed in GOOD}
    assert {deed for deed in public_sums() if deed.__module__ in covered} == set(GOOD)
    assert all(set(inspect.signature(deed).parameters) == set(good) for deed, good in GOOD.items())


def test_the_good_figures_are_taken() -> None:
    assert all(math.isfinite(deed(**good)) for deed, good in GOOD.items())


@each("argument", ARGUMENTS, ids=_name)
def test_a_negative_figure_is_refused(argument: tuple[Sum, str]) -> None:
    deed, name = argument
    with pytest.raises(ValueError, match="must"):
        deed(**with_bad(deed, name, -1))


@each("argument", ARGUMENTS, ids=_name)
def test_a_figure_that_is_no_number_is_refused(argument: tuple[Sum, str]) -> None:
    deed, name = argument
    with pytest.raises(ValueError, match="must"):
        deed(**with_bad(deed, name, math.nan))


@each("argument", ARGUMENTS, ids=_name)
def test_an_endless_figure_is_refused_except_for_a_life(argument: tuple[Sum, str]) -> None:
    deed, name = argument
    if name in ENDLESS:
        assert math.isfinite(deed(**with_bad(deed, name, math.inf)))
    else:
        with pytest.raises(ValueError, match="must"):
            deed(**with_bad(deed, name, math.inf))


@each("argument", ARGUMENTS, ids=_name)
def test_zero_is_refused_where_it_makes_no_sense_and_taken_where_it_does(argument: tuple[Sum, str]) -> None:
    deed, name = argument
    needs_more = name in ABOVE_ZERO or (deed, name) in {
        (corrosion.long_term_rate_m_per_year, "years"),
        (corrosion.short_term_rate_m_per_year, "years"),
        (snatch.strap_stiffness_n_per_m, "breaking_n"),
    }
    if needs_more:
        with pytest.raises(ValueError, match="must"):
            deed(**with_bad(deed, name, 0))
    else:
        assert deed(**with_bad(deed, name, 0)) >= 0


@pytest.mark.parametrize("deed", [corrosion.governing_rate_m_per_year, fibre.ageing_loss_ratio])
def test_no_figures_at_all_are_not_taken_for_no_loss(deed: Sum) -> None:
    with pytest.raises(ValueError, match="at least one"):
        deed([])


@pytest.mark.parametrize("module", modules(), ids=lambda module: module.__name__.rpartition(".")[2])
def test_every_worked_example_is_right(module: ModuleType) -> None:
    assert doctest.testmod(module).failed == 0


@each("deed", public_sums(), ids=lambda deed: deed.__name__)
def test_every_sum_shows_a_worked_example(deed: Sum) -> None:
    assert ">>> " in (deed.__doc__ or "")
