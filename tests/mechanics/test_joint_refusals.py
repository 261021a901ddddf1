"""The sums of eyes, single shear and weld lines refuse every figure outside their range."""

import inspect
import math
from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

from inspector.mechanics import eye_ends, single_shear, weld_direction, weld_twist
from tests.each import each

Sum = Callable[..., Any]
MODULES: list[ModuleType] = [eye_ends, single_shear, weld_direction, weld_twist]
PLATE = {"pull_n": 1e4, "hole_m": 0.022, "thickness_m": 0.012, "yield_pa": 235e6, "gamma_m0_factor": 1.0}
LEGS = {"leg_m": 0.05, "back_m": 0.1}
TUBE = {"side_m": 0.06, "corner_radius_m": 0.008}
GOOD: dict[Sum, dict[str, Any]] = {
    eye_ends.pin_end_distance_m: PLATE,
    eye_ends.pin_side_distance_m: PLATE,
    eye_ends.pin_plate_thickness_m: {"pull_n": 1e4, "yield_pa": 235e6, "gamma_m0_factor": 1.0},
    eye_ends.round_end_loss_m: {"pin_m": 0.02, "hole_m": 0.022, "end_radius_m": 0.03},
    eye_ends.round_eye_shear_n: {
        "beyond_m": 0.03,
        "pin_m": 0.02,
        "hole_m": 0.022,
        "thickness_m": 0.01,
        "ultimate_pa": 4e8,
        "end_radius_m": 0.03,
        "design_factor": 2.0,
    },
    eye_ends.us_eye_tension_n: {"thickness_m": 0.01, "edge_m": 0.03, "ultimate_pa": 4e8, "resistance_factor": 0.75},
    eye_ends.us_eye_shear_n: {
        "thickness_m": 0.01,
        "beyond_m": 0.03,
        "pin_m": 0.02,
        "ultimate_pa": 4e8,
        "resistance_factor": 0.75,
    },
    eye_ends.us_eye_bearing_n: {"thickness_m": 0.01, "pin_m": 0.02, "yield_pa": 2e8, "resistance_factor": 0.75},
    eye_ends.us_eye_yield_n: {"width_m": 0.1, "thickness_m": 0.01, "yield_pa": 2e8, "resistance_factor": 0.9},
    single_shear.single_shear_lever_m: {"pulled_plate_m": 0.05, "gap_m": 0.001, "holding_plate_m": 0.004},
    single_shear.single_shear_pull_n: {"lever_m": 0.03, "moment_resistance_n_m": 1e2, "shear_resistance_n": 3e4},
    single_shear.single_over_double_bending_ratio: {"inner_plate_m": 0.05, "gap_m": 0.001, "outer_plate_m": 0.004},
    weld_direction.fillet_angle_factor: {"angle_rad": 0.5},
    weld_direction.fillet_equivalent_limit_pa: {"ultimate_pa": 4e8, "correlation_factor": 0.8, "gamma_m2_factor": 1.25},
    weld_direction.fillet_normal_limit_pa: {"ultimate_pa": 4e8, "gamma_m2_factor": 1.25},
    weld_direction.fillet_least_length_m: {"throat_m": 0.003},
    weld_direction.fillet_effective_length_m: {"length_m": 0.1, "throat_m": 0.003},
    weld_direction.is_throat_below_rules: {"throat_m": 0.003},
    weld_twist.tube_weld_polar_m3: TUBE,
    weld_twist.tube_weld_reach_m: TUBE,
    weld_twist.weld_twist_n_per_m: {"torque_n_m": 1e3, "offset_m": 0.04, "polar_m3": 3e-4},
    weld_twist.weld_resultant_n_per_m: {"straight_n_per_m": 1.0, "across_n_per_m": 1.0, "along_n_per_m": 1.0},
    weld_twist.tube_weld_worst_n_per_m: TUBE | {"pull_n": 1.0, "moment_n_m": 1.0, "shear_n": 1.0, "torque_n_m": 1.0},
    weld_twist.three_sided_centre_m: LEGS,
    weld_twist.three_sided_polar_m3: LEGS,
}
SIGNED = {"straight_n_per_m", "across_n_per_m", "along_n_per_m"}


def test_the_table_holds_every_sum_of_these_rooms() -> None:
    public = {
        member
        for module in MODULES
        for name, member in vars(module).items()
        if inspect.isfunction(member) and member.__module__ == module.__name__ and not name.startswith("_")
    }
    assert public == set(GOOD)


@each("wrong", [math.nan, math.inf, -1.0])
@each(("of", "name"), [(of, name) for of, given_ in GOOD.items() for name in given_])
def test_a_figure_out_of_range_is_refused(of: Sum, name: str, wrong: float) -> None:
    assert math.isfinite(of(**GOOD[of]))
    if wrong == -1.0 and name in SIGNED:
        assert of(**GOOD[of] | {name: wrong}) == of(**GOOD[of])
        return
    with pytest.raises(ValueError, match="must"):
        of(**GOOD[of] | {name: wrong})


@each(("of", "name"), [(of, name) for of, given_ in GOOD.items() for name in given_])
def test_factors_stay_within_their_bounds(of: Sum, name: str) -> None:
    bounds = {"gamma_m0_factor": 0.99, "gamma_m2_factor": 0.99, "design_factor": 1.9, "resistance_factor": 1.01}
    if name in bounds:
        with pytest.raises(ValueError, match=name):
            of(**GOOD[of] | {name: bounds[name]})
