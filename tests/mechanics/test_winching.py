"""Ground, grade, tackle and drum: the direction of every effect, limits, worked numbers."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import drum, grade, ground, rating, tackle
from inspector.mechanics.drum import LayerRule
from inspector.mechanics.grade import GradeRule
from inspector.mechanics.ground import SCALES, Ground, ResistanceScale
from tests.each import each

loads_n = st.floats(1e3, 500e3)
capacities_n = st.floats(5e3, 200e3)
slopes_rad = st.floats(0.0, math.radians(85))


@each("where", list(Ground))
def test_the_largest_figure_stands_unless_a_scale_is_named(where: Ground) -> None:
    named = [ground.ground_resistance_ratio(where, scale) for scale, figures in SCALES.items() if where in figures]
    assert named and ground.ground_resistance_ratio(where) == max(named)


@pytest.mark.parametrize(
    ("where", "scale"),
    [(Ground.CAB_DEEP_MUD, ResistanceScale.CIVIL), (Ground.GRAVEL, ResistanceScale.MILITARY), (Ground.BOG, "press")],
)
def test_a_scale_that_is_silent_on_the_ground_is_refused(where: Ground, scale: str) -> None:
    with pytest.raises(ValueError, match="ground must"):
        ground.ground_resistance_ratio(where, ResistanceScale(scale))


def test_published_figures_for_one_bogging_differ_by_two_to_four() -> None:
    civil = ground.ground_resistance_ratio(Ground.BOG, ResistanceScale.CIVIL)
    army = [ground.ground_resistance_ratio(where, ResistanceScale.MILITARY) for where in list(Ground)[8:10]]
    assert [figure / civil for figure in army] == [2, 4]


def test_help_lowers_the_resistance_to_nothing_and_no_further() -> None:
    whole_n = ground.load_resistance_n(2000, 0.5)
    assert ground.load_resistance_n(2000, 0.5, whole_n) == 0
    with pytest.raises(ValueError, match="reduction_n"):
        ground.load_resistance_n(2000, 0.5, whole_n * 1.01)


def test_own_truck_as_an_anchor_holds_less_than_it_takes_to_drag_it() -> None:
    dragged_n = ground.load_resistance_n(3000, ground.ground_resistance_ratio(Ground.WHEELS_LOCKED))
    assert ground.anchor_value_n(3000) < dragged_n


# Calculated apart: degrees, exact, degrees over 60, per cent over 100
@pytest.mark.parametrize(
    ("degrees", "exact", "sixtieth", "per_cent"),
    [(5, 0.087, 0.083, 0.087), (15, 0.259, 0.250, 0.268), (30, 0.5, 0.5, 0.577), (45, 0.707, 0.75, 1.0)],
)
def test_three_rules_for_a_slope(degrees: float, exact: float, sixtieth: float, per_cent: float) -> None:
    found = [grade.grade_resistance_ratio(math.radians(degrees), rule) for rule in list(GradeRule)[:3]]
    assert found == pytest.approx([exact, sixtieth, per_cent], abs=0.00051)
    assert grade.grade_resistance_ratio(math.radians(degrees), GradeRule.WHOLE_WEIGHT) == 1


@given(slopes_rad, st.floats(0.0, 0.05), st.sampled_from(GradeRule))
def test_steeper_is_never_easier_and_the_whole_weight_bounds_the_exact_share(
    slope: float, more: float, rule: GradeRule
) -> None:
    share = grade.grade_resistance_ratio(slope, rule)
    assert grade.grade_resistance_ratio(slope + more, rule) >= share - 1e-12
    assert grade.grade_resistance_ratio(slope) <= grade.grade_resistance_ratio(slope, GradeRule.PER_CENT) + 1e-12
    assert grade.grade_resistance_ratio(slope) <= 1


def test_the_sixtieth_rule_is_low_below_thirty_degrees_and_stops_above_forty_five() -> None:
    at = [grade.grade_resistance_ratio(math.radians(degrees), GradeRule.SIXTIETH) for degrees in (20, 40, 45, 45.1)]
    assert at[0] < math.sin(math.radians(20)) and at[1] > math.sin(math.radians(40))
    assert at[2:] == pytest.approx([0.75, 1.0])


@pytest.mark.parametrize("rule", list(GradeRule))
def test_an_upright_wall_is_no_slope(rule: GradeRule) -> None:
    assert math.isfinite(grade.grade_resistance_ratio(math.radians(89.9), rule))
    with pytest.raises(ValueError, match="angle_rad"):
        grade.grade_resistance_ratio(math.radians(90), rule)


# Calculated apart: parts, army's rule, q = 0.90, q = 0.95, no loss
@pytest.mark.parametrize(
    ("parts", "army", "ninety", "ninety_five", "ideal"),
    [
        (2, 0.55, 0.526, 0.513, 0.5),
        (3, 0.4, 0.369, 0.351, 0.333),
        (4, 0.325, 0.291, 0.27, 0.25),
        (5, 0.28, 0.244, 0.221, 0.2),
    ],
)
def test_the_armys_rule_is_safe_while_a_sheave_passes_on_nine_tenths(
    parts: int, army: float, ninety: float, ninety_five: float, ideal: float
) -> None:
    assert tackle.fall_line_n(1, parts, parts - 1) == pytest.approx(army)
    found = [tackle.geometric_fall_line_n(1, parts, q) for q in (0.90, 0.95, 1.0)]
    assert found == pytest.approx([ninety, ninety_five, ideal], abs=0.00051)
    assert max(found) < army


def test_with_poor_sheaves_the_armys_rule_falls_short() -> None:
    assert tackle.geometric_fall_line_n(1, 2, 0.80) == pytest.approx(0.556, abs=0.00051)
    assert tackle.geometric_fall_line_n(1, 2, 0.80) > tackle.fall_line_n(1, 2, 1)


@given(loads_n, capacities_n)
def test_the_parts_are_just_enough(load_n: float, capacity_n: float) -> None:
    if capacity_n <= 0.11 * load_n:
        return
    parts = tackle.parts_needed_count(load_n, capacity_n)
    assert tackle.fall_line_n(load_n, parts, parts - 1) < capacity_n
    assert parts >= tackle.mechanical_advantage_count(load_n, capacity_n)
    if parts > 1:
        assert tackle.fall_line_n(load_n, parts - 1, parts - 2) >= capacity_n * (1 - 1e-8)


def test_a_load_of_ten_winches_is_refused_for_no_tackle_moves_it() -> None:
    assert tackle.parts_needed_count(99e3, 10e3) == 892
    for load_n in (100e3, 120e3):
        with pytest.raises(ValueError, match="a tenth of load_n"):
            tackle.parts_needed_count(load_n, 10e3)


@pytest.mark.parametrize(("load_n", "parts"), [(40e3, 1), (40.001e3, 2), (80e3, 2), (3 * 0.1 * 4e5, 3)])
def test_an_even_quotient_is_not_rounded_up_once_more(load_n: float, parts: int) -> None:
    assert tackle.mechanical_advantage_count(load_n, 40e3) == parts


@given(loads_n, st.integers(1, 8), st.floats(0.5, 1.0), st.floats(0.5, 1.0), st.integers(0, 3))
def test_better_sheaves_more_parts_and_fewer_leads_ease_the_line(
    load_n: float, parts: int, one: float, other: float, extra: int
) -> None:
    poor, good = sorted((one, other))
    line_n = tackle.geometric_fall_line_n(load_n, parts, poor, extra)
    assert tackle.geometric_fall_line_n(load_n, parts, good, extra) <= line_n * (1 + 1e-12)
    assert tackle.geometric_fall_line_n(load_n, parts + 1, poor, extra) < line_n
    assert tackle.geometric_fall_line_n(load_n, parts, poor, extra + 1) >= line_n


def test_the_winch_gains_and_the_vehicles_point_does_not() -> None:
    line_n = tackle.fall_line_n(90e3, 3, 2)
    assert tackle.dead_line_n(line_n, 3) == pytest.approx(tackle.tackle_total_n(90e3, 2))
    assert tackle.dead_line_n(line_n, 3) > 90e3


@given(st.floats(0, 200e3), st.floats(0, math.pi))
def test_a_block_never_bears_more_than_two_lines(pull_n: float, angle: float) -> None:
    load_n = tackle.block_load_n(pull_n, angle)
    assert load_n == pytest.approx(pull_n * rating.block_load_factor(angle))
    assert 0 <= load_n <= 2 * pull_n


@given(st.floats(1e3, 200e3), st.integers(1, 8), st.sampled_from(LayerRule))
def test_each_layer_takes_from_the_pull_and_the_trade_takes_most(first_n: float, layer: int, rule: LayerRule) -> None:
    assert drum.layer_pull_n(first_n, 1, rule) == first_n
    assert drum.layer_pull_n(first_n, layer + 1, rule) < drum.layer_pull_n(first_n, layer, rule)
    assert drum.layer_pull_n(first_n, layer) <= drum.layer_pull_n(first_n, layer, LayerRule.ARMY)


def test_five_layers_by_the_trades_rule_leave_about_half() -> None:
    assert drum.layer_pull_n(40e3, 5) == pytest.approx(drum.full_drum_pull_n(40e3), rel=0.05)


@given(st.floats(0.03, 0.3), st.floats(0.005, 0.02), st.integers(1, 6), st.floats(0.1, 10))
def test_a_drum_of_any_size_of_the_same_shape_loses_the_same_share(
    drum_m: float, rope_m: float, layer: int, scale: float
) -> None:
    share = drum.drum_layer_pull_n(1, drum_m, rope_m, layer)
    assert drum.drum_layer_pull_n(1, drum_m * scale, rope_m * scale, layer) == pytest.approx(share)
    assert drum.drum_layer_pull_n(1, drum_m, rope_m, 1) == pytest.approx(1)
    assert drum.drum_layer_pull_n(1, drum_m, rope_m, layer + 1) < share


WHOLE: list[tuple[Callable[..., float], dict[str, float], str]] = [
    (tackle.fall_line_n, {"load_n": 1.0, "sheave_count": 1}, "part_count"),
    (tackle.dead_line_n, {"fall_line_n": 1.0}, "line_count"),
    (tackle.geometric_fall_line_n, {"load_n": 1.0, "efficiency_ratio": 0.9}, "part_count"),
    (drum.layer_pull_n, {"first_layer_n": 1.0}, "layer_count"),
    (drum.drum_layer_pull_n, {"first_layer_n": 1.0, "drum_m": 0.06, "rope_m": 0.01}, "layer_count"),
]


@each(("deed", "figures", "name"), WHOLE, ids=lambda one: getattr(one, "__name__", None))
@each("count", [0, -1, 1.5, math.nan, math.inf])
def test_half_a_part_or_layer_is_refused(
    deed: Callable[..., float], figures: dict[str, float], name: str, count: float
) -> None:
    with pytest.raises(ValueError, match=f"{name} must be a whole number"):
        deed(**figures, **{name: count})


@pytest.mark.parametrize("count", [-1, 1.5, math.nan, math.inf])
def test_half_a_sheave_is_refused_and_none_is_not(count: float) -> None:
    assert tackle.tackle_resistance_n(100, 0) == 0
    assert tackle.geometric_fall_line_n(100, 1, 0.9, 0) == 100
    with pytest.raises(ValueError, match="sheave_count"):
        tackle.tackle_resistance_n(100, count)  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="extra_sheave_count"):
        tackle.geometric_fall_line_n(100, 2, 0.9, count)  # type: ignore[arg-type]
