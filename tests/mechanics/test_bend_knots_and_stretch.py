"""Rope over a pin, knots, lasting stretch, cuts and temperature: worked numbers and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import bend, knots, stretch, temperature
from inspector.mechanics.bend import EyeRule, FibreBend
from inspector.mechanics.fibre import Fibre
from inspector.mechanics.knots import Knot, KnotTest, Splice, SplicedEnd
from inspector.mechanics.stretch import OverloadLimit, StretchLimit
from inspector.mechanics.temperature import Chemical, ColdRule, HeatRule
from tests.each import each

ratios = st.floats(1.0, 100.0)
sizes_m = st.floats(0.004, 0.2)


def test_a_rope_over_a_pin_of_its_own_size_keeps_half() -> None:
    assert bend.bent_wire_rope_n(60e3, 0.012, 0.012) == pytest.approx(30e3)


def test_over_a_very_large_drum_a_wire_rope_keeps_nearly_all() -> None:
    assert bend.wire_rope_bend_factor(1e6, 0.01) == pytest.approx(1.0, abs=1e-4)


@pytest.mark.parametrize("unit", [1.0, 1 / 25.4, 1 / 0.3048])
def test_the_unit_of_the_sizes_does_not_move_a_rope_below_its_limit(unit: float) -> None:
    assert bend.wire_rope_bend_factor(3 * 0.1 * unit, 0.3 * unit) == pytest.approx(2.0)


@given(ratios, ratios, sizes_m)
def test_a_thicker_pin_never_costs_a_wire_rope_more(one: float, other: float, rope_m: float) -> None:
    tight, wide = sorted((one, other))
    factors = [bend.wire_rope_bend_factor(ratio * rope_m * (1 + 1e-9), rope_m) for ratio in (tight, wide)]
    assert 1 < factors[1] <= factors[0] * (1 + 1e-12) <= 2 * (1 + 1e-9)


@given(ratios, sizes_m, st.floats(0.1, 10))
def test_only_the_ratio_of_pin_and_rope_counts(ratio: float, rope_m: float, scale: float) -> None:
    pin_m = ratio * rope_m * (1 + 1e-8)
    scaled = bend.wire_rope_bend_factor(pin_m * scale, rope_m * scale)
    assert scaled == pytest.approx(bend.wire_rope_bend_factor(pin_m, rope_m))


@given(st.floats(1, 3), st.floats(1, 3))
def test_end_and_bend_together_cost_no_more_than_the_worse_of_them(end: float, bent: float) -> None:
    assert bend.sling_reduction_factor(end, bent) == max(end, bent) <= end * bent


@given(sizes_m, st.sampled_from(FibreBend))
def test_the_thinnest_pin_for_a_fibre_rope_is_thick_enough(rope_m: float, over: FibreBend) -> None:
    least_m = bend.fibre_least_pin_m(rope_m, over)
    assert bend.may_bend_fibre(least_m, rope_m, over)
    assert not bend.may_bend_fibre(least_m * 0.999, rope_m, over)


@given(sizes_m, sizes_m)
def test_the_better_eye_is_never_the_shorter(pin_m: float, rope_m: float) -> None:
    better_m = bend.eye_least_length_m(pin_m, rope_m)
    assert better_m >= bend.eye_least_length_m(pin_m, rope_m, EyeRule.LEAST) >= 6 * rope_m


def test_a_square_arris_is_sharp_to_the_thinnest_strap() -> None:
    assert bend.is_sharp_edge(0.0, 0.001)


@each("knot", Knot)
def test_of_all_tests_the_worst_stands(knot: Knot) -> None:
    found = []
    for test in KnotTest:
        try:
            found.append(knots.knot_left_ratio(knot, test))
        except ValueError:
            continue
    assert knots.knot_left_ratio(knot) == min(found)
    assert 0.5 <= min(found) < 1


def test_a_knot_that_a_test_did_not_try_is_refused() -> None:
    with pytest.raises(ValueError, match="figure eight loop"):
        knots.knot_left_ratio(Knot.FIGURE_EIGHT, KnotTest.COAST_GUARD)


@pytest.mark.parametrize("end", SplicedEnd)
def test_every_splice_is_better_than_any_knot(end: SplicedEnd) -> None:
    best_knot = max(knots.knot_left_ratio(knot) for knot in Knot)
    assert all(knots.splice_left_ratio(splice, end) > best_knot for splice in Splice)


@given(st.floats(1, 20), st.floats(0, 0.5), st.floats(0.1, 10))
def test_lasting_stretch_is_a_share_whatever_the_unit(marked_m: float, grown: float, scale: float) -> None:
    found = stretch.permanent_stretch_ratio(marked_m * scale, marked_m * (1 + grown) * scale)
    assert found == pytest.approx(grown, abs=1e-12)


def test_a_strap_that_reads_short_has_not_stretched() -> None:
    assert stretch.permanent_stretch_ratio(9.0, 8.95) == 0


@given(st.floats(0, 0.3), st.floats(0, 0.3), st.sampled_from(StretchLimit))
def test_more_stretch_is_never_milder(one: float, other: float, limit: StretchLimit) -> None:
    less, more = sorted((one, other))
    assert stretch.is_overstretched(more, limit) >= stretch.is_overstretched(less, limit)


@given(st.floats(0, 200e3), st.floats(0, 200e3), st.sampled_from(OverloadLimit))
def test_a_greater_load_is_never_milder(one_n: float, other_n: float, limit: OverloadLimit) -> None:
    less_n, more_n = sorted((one_n, other_n))
    assert stretch.is_overload(more_n, 80e3, limit) >= stretch.is_overload(less_n, 80e3, limit)


@given(st.floats(0, 0.1), st.floats(0, 0.1))
def test_a_deeper_cut_never_leaves_more_and_two_cost_twice(one: float, other: float) -> None:
    shallow, deep = sorted((one, other))
    losses = [stretch.cut_edge_loss_ratio(share * 0.05, 0.05, 1) for share in (shallow, deep)]
    assert 0 <= losses[0] <= losses[1] <= 0.125 * (1 + 1e-9)
    assert stretch.cut_edge_loss_ratio(deep * 0.05, 0.05, 2) == pytest.approx(2 * losses[1])


@pytest.mark.parametrize(("cut_m", "edges"), [(0.0051, 1), (0.004, 3), (0.004, 0)])
def test_cuts_that_nobody_has_tried_are_refused(cut_m: float, edges: int) -> None:
    with pytest.raises(ValueError, match=r"cut_m|edge_count"):
        stretch.cut_edge_loss_ratio(cut_m, 0.050, edges)


def test_webbing_without_a_cut_is_not_cut_out() -> None:
    assert not stretch.is_webbing_cut_out(0.0, 0.05, at_edge=True)


@pytest.mark.parametrize("kind", Fibre)
def test_the_strictest_heat_limit_is_below_every_other(kind: Fibre) -> None:
    strictest_c = temperature.fibre_most_c(kind)
    for rule in HeatRule:
        try:
            assert strictest_c <= temperature.fibre_most_c(kind, rule)
        except ValueError:
            assert kind in {Fibre.HMPE, Fibre.POLYPROPYLENE}


@pytest.mark.parametrize("rule", [HeatRule.OSHA, HeatRule.EN_1492])
def test_a_rule_that_does_not_know_the_fibre_is_refused(rule: HeatRule) -> None:
    with pytest.raises(ValueError, match="hmpe"):
        temperature.fibre_most_c(Fibre.HMPE, rule)


def test_the_strictest_cold_limit_is_above_every_other() -> None:
    assert temperature.fibre_least_c() == max(temperature.fibre_least_c(rule) for rule in ColdRule)


@given(st.floats(-273, 500), st.sampled_from([Fibre.NYLON, Fibre.POLYESTER]), st.sampled_from(HeatRule))
def test_what_passes_the_strictest_passes_every_rule(degrees: float, kind: Fibre, rule: HeatRule) -> None:
    if temperature.in_fibre_temperature(degrees, kind):
        assert temperature.in_fibre_temperature(degrees, kind, rule, ColdRule.EN_1492)


def test_no_fibre_bears_everything() -> None:
    for kind in Fibre:
        assert any(temperature.is_barred_chemical(kind, chemical) for chemical in Chemical)


def test_an_eye_wide_open_is_refused_past_a_straight_line() -> None:
    with pytest.raises(ValueError, match="opening_rad"):
        bend.may_open_eye(math.radians(181))
