"""Every sum of winching, snatch, energy and distance refuses every figure that lies outside its range."""

import inspect
import math
from collections.abc import Callable
from typing import Any

import pytest

from inspector.mechanics import (
    bridle,
    drum,
    energy,
    fragments,
    grade,
    ground,
    snatch_motion,
    snatch_peaks,
    stand_off,
    strap_curve,
    strap_stiffness,
    tackle,
)
from tests.each import each

Sum = Callable[..., Any]

# A figure that every argument of this name takes; a sum's own where it differs
USUAL: dict[str, float] = {
    "mass_kg": 2500.0,
    "towing_kg": 2500.0,
    "bogged_kg": 3000.0,
    "speed_m_per_s": 3.0,
    "stiffness_n_per_m": 40e3,
    "breaking_n": 80e3,
    "breaking_stretch_m": 1.8,
    "power_factor": 1.5,
    "angle_rad": 0.5,
    "own_angle_rad": 0.3,
    "other_angle_rad": 0.4,
    "off_line_rad": 0.3,
    "efficiency_ratio": 0.9,
    "share_ratio": 0.5,
    "elongation_ratio": 0.2,
    "damping_ratio": 0.1,
    "reduction_n": 0.0,
    "limit_n": 60e3,
    "resistance_n": 10e3,
    "load_n": 90e3,
    "capacity_n": 40e3,
    "part_count": 3,
    "line_count": 2,
    "sheave_count": 2,
    "extra_sheave_count": 1,
    "layer_count": 3,
    "spacing_m": 0.8,
    "bridle_m": 3.0,
    "strap_ratio": 2.5,
    "drum_m": 0.06,
    "rope_m": 0.01,
}
OTHERWISE = 5.0
MODULES = [bridle, drum, energy, fragments, grade, ground, snatch_motion, snatch_peaks]
MODULES += [stand_off, strap_curve, strap_stiffness, tackle]
SUMS = [
    member
    for module in MODULES
    for name, member in inspect.getmembers(module, inspect.isfunction)
    if not name.startswith("_") and member.__module__ == module.__name__
]

# Arguments for which zero lies outside the range; every other one takes it
ABOVE_ZERO = {
    *("mass_kg", "towing_kg", "bogged_kg", "stiffness_n_per_m", "breaking_n", "breaking_stretch_m", "power_factor"),
    *("elongation_ratio", "length_m", "strap_ratio", "axial_n", "share_ratio", "efficiency_ratio", "capacity_n"),
    *("bridle_m", "drum_m", "rope_m", "part_count", "line_count", "layer_count", "part_kg", "strap_kg", "stored_j"),
}
TAKES_ZERO = {
    *((energy.thrown_speed_m_per_s, "strap_kg"), (energy.thrown_energy_j, "strap_kg")),
    *((energy.thrown_speed_m_per_s, "share_ratio"), (energy.thrown_energy_j, "share_ratio")),
    *((energy.kinetic_energy_j, "mass_kg"), (energy.least_throw_energy_j, "mass_kg")),
}
NEEDS_MORE = {
    *((tackle.mechanical_advantage_count, "load_n"), (tackle.parts_needed_count, "load_n")),
    *((snatch_motion.peak_time_s, "speed_m_per_s"), (snatch_motion.pulled_speed_m_per_s, "speed_m_per_s")),
    *((strap_stiffness.stopping_stiffness_n_per_m, name) for name in ("speed_m_per_s", "stretch_m")),
    *((bridle.bridle_needed_m, "angle_rad"), (snatch_peaks.greatest_speed_m_per_s, "limit_n")),
    *((snatch_peaks.breakout_n, "speed_m_per_s"),),
}


def figures(deed: Sum) -> dict[str, float]:
    """The arguments that take a plain number."""
    wanted = inspect.signature(deed).parameters.values()
    return {one.name: USUAL.get(one.name, OTHERWISE) for one in wanted if one.annotation in {float, int}}


ARGUMENTS = [(deed, name) for deed in SUMS for name in figures(deed)]


def _name(argument: tuple[Sum, str]) -> str:
    return f"{argument[0].__name__}-{argument[1]}"


def test_nothing_is_left_out() -> None:
    kinds = {one.annotation for deed in SUMS for one in inspect.signature(deed).parameters.values()}
    assert len(SUMS) > 60 and len(ARGUMENTS) > 150
    assert {kind for kind in kinds if kind not in {float, int}} == {
        *(ground.Ground, ground.ResistanceScale, grade.GradeRule, drum.LayerRule, fragments.HazardRule),
        *(fragments.FlyingPart, stand_off.DistanceRule),
        inspect.signature(strap_stiffness.series_stiffness_n_per_m).parameters["stiffnesses_n_per_m"].annotation,
    }


@each("deed", [deed for deed in SUMS if figures(deed)], ids=lambda deed: deed.__name__)
def test_usual_figures_are_taken(deed: Sum) -> None:
    if deed not in {ground.ground_resistance_ratio, fragments.part_mass_kg}:
        found = deed(**figures(deed))
        assert isinstance(found, str) or math.isfinite(found)


@each("bad", [-1.0, math.nan, math.inf, -math.inf])
@each("argument", ARGUMENTS, ids=_name)
def test_a_figure_outside_every_range_is_refused(argument: tuple[Sum, str], bad: float) -> None:
    deed, name = argument
    with pytest.raises(ValueError, match="must"):
        deed(**figures(deed) | {name: bad})


@each("argument", ARGUMENTS, ids=_name)
def test_zero_is_refused_where_it_makes_no_sense_and_taken_where_it_does(argument: tuple[Sum, str]) -> None:
    deed, name = argument
    refused = (name in ABOVE_ZERO or argument in NEEDS_MORE) and argument not in TAKES_ZERO
    if refused:
        with pytest.raises(ValueError, match="must"):
            deed(**figures(deed) | {name: 0})
    else:
        assert deed(**figures(deed) | {name: 0}) is not None
