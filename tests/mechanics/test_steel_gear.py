"""Wear, shackles, hooks, chain and wire rope: worked numbers, edges and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import chain, hook, shackle, shackle_sizes, wear, wire_rope
from inspector.mechanics.chain import ChainGrade, ChainStretchRule, ChainWearRule
from inspector.mechanics.hook import HookRule
from inspector.mechanics.shackle import NavyGrade, ShackleHeatRule, UnitForm
from inspector.mechanics.shackle_sizes import ShackleSteel, SizeList
from inspector.mechanics.wear import WearRule, WornPart
from inspector.mechanics.wire_rope import BreakSpread, CountedLength, Lay, LayRule, RopeCore, Spooling, ThinRule
from tests.each import each

sizes_m = st.floats(0.007, 0.038)
left = st.floats(0.0, 1.2)
scales = st.floats(0.1, 10.0)


def test_ten_percent_of_the_diameter_is_nineteen_of_area_and_twenty_seven_of_bending() -> None:
    # calculated here: 1 - 0.9^2 and 1 - 0.9^3
    found = wear.round_bar_wear(0.020, 0.018)
    assert (found.diameter_ratio, found.area_ratio, found.bending_ratio) == pytest.approx((0.1, 0.19, 0.271))


@given(sizes_m, left, scales)
def test_wear_is_a_share_whatever_the_unit_and_hits_bending_hardest(size_m: float, share: float, scale: float) -> None:
    found = wear.round_bar_wear(size_m, size_m * share)
    scaled = wear.round_bar_wear(size_m * scale, size_m * share * scale)
    assert found.diameter_ratio == pytest.approx(scaled.diameter_ratio, abs=1e-12)
    assert 0 <= found.diameter_ratio <= found.area_ratio + 1e-12 <= found.bending_ratio + 2e-12 <= 1 + 2e-12


@given(sizes_m, left, left, st.sampled_from(WornPart), st.sampled_from(WearRule))
def test_more_wear_is_never_milder(size_m: float, one: float, other: float, part: WornPart, rule: WearRule) -> None:
    thin_m, thick_m = sorted((one * size_m, other * size_m))
    assert wear.is_worn_out(size_m, thin_m, part, rule) >= wear.is_worn_out(size_m, thick_m, part, rule)


@given(sizes_m, left, st.sampled_from(WornPart), st.sampled_from(WearRule))
def test_what_any_rule_rejects_the_strictest_rejects(
    size_m: float, share: float, part: WornPart, rule: WearRule
) -> None:
    now_m = share * size_m
    assert wear.is_worn_out(size_m, now_m, part) >= wear.is_worn_out(size_m, now_m, part, rule)


def test_exactly_ten_percent_is_worn_out_where_floats_fall_short_of_it() -> None:
    assert 1 - 17.1 / 19.0 < 0.1
    assert wear.is_worn_out(0.019, 0.0171, WornPart.BODY, WearRule.US_PRACTICE)


def test_exactly_six_percent_of_a_pin_still_passes_where_floats_exceed_it() -> None:
    assert 1 - 20.68 / 22 > 0.06
    assert not wear.is_worn_out(0.022, 0.02068, WornPart.PIN)


@given(st.floats(0, math.pi))
def test_legs_spread_to_120_degrees_and_no_further(angle_rad: float) -> None:
    assert shackle.may_spread(angle_rad) is (angle_rad <= math.radians(120) * (1 + 1e-9))


@given(sizes_m, sizes_m, st.sampled_from(UnitForm))
def test_a_thicker_shackle_without_a_mark_never_carries_less(one_m: float, other_m: float, form: UnitForm) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert shackle.unmarked_shackle_n(thin_m, form) <= shackle.unmarked_shackle_n(thick_m, form)


@given(sizes_m, st.floats(0.5, 2), st.sampled_from(UnitForm))
def test_a_shackle_without_a_mark_goes_by_the_square_of_its_size(size_m: float, scale: float, form: UnitForm) -> None:
    scaled_n = shackle.unmarked_shackle_n(size_m * scale, form)
    assert scaled_n == pytest.approx(scale**2 * shackle.unmarked_shackle_n(size_m, form))


@each("sizes", SizeList)
@each("bow_mm", [8, 10, 11, 13, 16, 19, 22, 25])
def test_without_a_mark_it_never_carries_more_than_with_one(sizes: SizeList, bow_mm: float) -> None:
    for form in UnitForm:
        assert shackle.unmarked_shackle_n(bow_mm / 1000, form) < shackle_sizes.bow_load_n(bow_mm / 1000, sizes)


@given(st.floats(1e3, 3e6))
def test_proof_lies_between_working_load_and_breaking(load_n: float) -> None:
    least_n, most_n = shackle.shackle_least_proof_n(load_n), shackle.shackle_most_proof_n(load_n)
    assert load_n < least_n < most_n < shackle.shackle_least_factor(load_n) * load_n


def test_navy_grade_b_is_used_more_carefully() -> None:
    assert shackle.navy_shackle_n(90e3, NavyGrade.B) < shackle.navy_shackle_n(90e3, NavyGrade.A)


@given(st.floats(-20, 400), st.floats(-20, 400))
def test_a_hotter_shackle_never_carries_more(one_c: float, other_c: float) -> None:
    cool_c, hot_c = sorted((one_c, other_c))
    assert shackle.shackle_heat_factor(hot_c) <= shackle.shackle_heat_factor(cool_c)


@given(st.floats(-270, 1000))
def test_at_full_load_the_strictest_range_lies_inside_every_other(degrees: float) -> None:
    if shackle.in_shackle_temperature(degrees):
        assert all(shackle.in_shackle_temperature(degrees, rule) for rule in ShackleHeatRule)
        assert shackle.shackle_heat_factor(degrees) == 1


@pytest.mark.parametrize("degrees", [-20.1, 400.1])
def test_too_cold_or_too_hot_is_refused(degrees: float) -> None:
    with pytest.raises(ValueError, match="temperature_c"):
        shackle.shackle_heat_factor(degrees)


@given(st.floats(100, 780e3), st.sampled_from(ShackleSteel))
def test_a_dee_shackle_of_the_sizes_for_a_load_carries_it(load_n: float, steel: ShackleSteel) -> None:
    body_m, pin_m = shackle_sizes.dee_body_m(load_n, steel), shackle_sizes.dee_pin_m(load_n, steel)
    assert shackle_sizes.dee_load_n(body_m, pin_m, steel) >= load_n
    assert not shackle.is_odd_pin(pin_m, body_m)
    assert shackle_sizes.dee_jaw_m(load_n) > pin_m


@given(st.floats(0.013, 0.15), st.floats(0.015, 0.15), st.floats(1, 2))
def test_a_thinner_pin_or_body_never_carries_more(body_m: float, pin_m: float, scale: float) -> None:
    load_n = shackle_sizes.dee_load_n(body_m, pin_m)
    assert load_n <= shackle_sizes.dee_load_n(body_m * scale, pin_m)
    assert load_n <= shackle_sizes.dee_load_n(body_m, pin_m * scale)
    assert load_n <= shackle_sizes.dee_load_n(body_m, pin_m, ShackleSteel.HIGHER_TENSILE)


def test_loads_and_sizes_outside_the_tables_are_refused() -> None:
    with pytest.raises(ValueError, match="working_load_n"):
        shackle_sizes.dee_body_m(81 * 9806.65, ShackleSteel.MILD)
    with pytest.raises(ValueError, match="body_m"):
        shackle_sizes.dee_load_n(0.012, 0.015)
    with pytest.raises(ValueError, match="pin_m"):
        shackle_sizes.dee_load_n(0.013, 0.014)
    with pytest.raises(ValueError, match="bow_m"):
        shackle_sizes.bow_load_n(0.0059)


@given(st.floats(0.006, 0.05), st.floats(0.006, 0.05), st.sampled_from(SizeList))
def test_a_thicker_bow_never_carries_less_and_its_pin_is_never_thinner(
    one_m: float, other_m: float, sizes: SizeList
) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert shackle_sizes.bow_load_n(thin_m, sizes) <= shackle_sizes.bow_load_n(thick_m, sizes)
    assert shackle_sizes.bow_pin_m(thin_m, sizes) <= shackle_sizes.bow_pin_m(thick_m, sizes)


@given(st.floats(0.01, 0.2), left, left, st.sampled_from(HookRule))
def test_a_wider_throat_or_a_thinner_saddle_is_never_milder(
    size_m: float, one: float, other: float, rule: HookRule
) -> None:
    small_m, large_m = sorted((one * size_m, other * size_m))
    assert hook.is_throat_opened(size_m, large_m, rule) >= hook.is_throat_opened(size_m, small_m, rule)
    assert hook.is_hook_worn(size_m, small_m, rule) >= hook.is_hook_worn(size_m, large_m, rule)
    assert hook.is_throat_opened(size_m, large_m) >= hook.is_throat_opened(size_m, large_m, rule)
    assert hook.is_hook_worn(size_m, small_m) >= hook.is_hook_worn(size_m, small_m, rule)


def test_a_throat_that_has_closed_has_not_opened() -> None:
    assert hook.throat_opening_ratio(0.040, 0.035) == 0


@given(sizes_m, sizes_m, st.sampled_from(ChainWearRule))
def test_a_larger_chain_never_needs_a_thinner_link(one_m: float, other_m: float, rule: ChainWearRule) -> None:
    small_m, large_m = sorted((one_m, other_m))
    assert chain.chain_least_thickness_m(small_m, rule) <= chain.chain_least_thickness_m(large_m, rule)


@given(sizes_m)
def test_the_us_table_always_lets_more_go_than_the_tenth(size_m: float) -> None:
    kept = chain.chain_least_thickness_m(size_m, ChainWearRule.US_TABLE) / size_m
    assert 0.77 < kept < 0.82 < chain.chain_least_thickness_m(size_m) / size_m


@pytest.mark.parametrize("size_m", [0.0063, 0.0382])
def test_chain_outside_the_us_table_is_refused(size_m: float) -> None:
    with pytest.raises(ValueError, match="nominal_m"):
        chain.chain_least_thickness_m(size_m, ChainWearRule.US_TABLE)


@given(st.floats(0.5, 1.5), st.floats(0.5, 1.5), st.sampled_from(ChainStretchRule))
def test_a_longer_chain_is_never_milder(one_m: float, other_m: float, rule: ChainStretchRule) -> None:
    short_m, long_m = sorted((one_m, other_m))
    assert chain.is_chain_stretched(1.0, long_m, rule) >= chain.is_chain_stretched(1.0, short_m, rule)


def test_a_chain_that_reads_short_has_not_stretched() -> None:
    assert chain.chain_stretch_ratio(1.0, 0.99) == 0


@given(sizes_m, st.floats(0.5, 2), st.sampled_from(ChainGrade))
def test_the_strength_of_a_chain_goes_by_the_square_of_its_size(size_m: float, scale: float, grade: ChainGrade) -> None:
    scaled_n = chain.chain_breaking_n(size_m * scale, grade)
    assert scaled_n == pytest.approx(scale**2 * chain.chain_breaking_n(size_m, grade))


def test_a_higher_grade_is_stronger() -> None:
    strengths_n = [chain.chain_breaking_n(0.010, grade) for grade in ChainGrade]
    assert strengths_n == sorted(set(strengths_n))
    assert chain.chain_proof_n(0.010) == pytest.approx(strengths_n[0] / 2)


@given(st.integers(1, 300), st.integers(1, 300), st.sampled_from(CountedLength), st.booleans())
def test_more_wires_never_mean_an_earlier_end(one: int, other: int, over: CountedLength, seale: bool) -> None:
    few, many = sorted((one, other))
    for lay in Lay:
        for spooling in Spooling:
            counts = [wire_rope.discard_wires_count(wires, over, lay, spooling, seale) for wires in (few, many)]
            assert 1 <= counts[0] <= counts[1]


@given(st.integers(1, 300), st.sampled_from(Lay), st.sampled_from(Spooling), st.booleans())
def test_a_count_over_the_longer_length_is_never_smaller(wires: int, lay: Lay, spooling: Spooling, seale: bool) -> None:
    over_six, over_thirty = [wire_rope.discard_wires_count(wires, over, lay, spooling, seale) for over in CountedLength]
    assert over_six <= over_thirty


@given(st.integers(1, 300), st.sampled_from(CountedLength), st.sampled_from(Lay), st.sampled_from(Spooling))
def test_unless_named_the_strictest_column_stands(
    wires: int, over: CountedLength, lay: Lay, spooling: Spooling
) -> None:
    default = wire_rope.discard_wires_count(wires, over)
    assert default <= wire_rope.discard_wires_count(wires, over, lay, spooling)
    assert wire_rope.discard_wires_count(wires, over, seale=True) <= default


@pytest.mark.parametrize("wires", [0, 301])
def test_ropes_outside_the_table_are_refused(wires: int) -> None:
    with pytest.raises(ValueError, match="outer_wires_count"):
        wire_rope.discard_wires_count(wires, CountedLength.SIX_DIAMETERS)


@pytest.mark.parametrize("spread", BreakSpread)
def test_the_winch_rule_stands_as_the_stricter(spread: BreakSpread) -> None:
    counts = [wire_rope.lay_discard_wires_count(spread, rule) for rule in LayRule]
    assert wire_rope.lay_discard_wires_count(spread) == min(counts)


@given(st.integers(0, 114), st.integers(0, 114), st.integers(0, 19))
def test_more_broken_wires_are_never_milder(one: int, other: int, in_strand: int) -> None:
    few, many = sorted((one, other))
    assert wire_rope.is_broken_by_share(many, 114) >= wire_rope.is_broken_by_share(few, 114)
    worse = wire_rope.is_mine_rope_broken(many, 114, in_strand, 19)
    assert worse >= wire_rope.is_mine_rope_broken(few, 114, in_strand, 19)


@pytest.mark.parametrize(("broken", "wires"), [(-1, 114), (115, 114), (1, 0), (1.5, 114)])
def test_counts_that_cannot_be_are_refused(broken: int, wires: int) -> None:
    with pytest.raises(ValueError, match="must"):
        wire_rope.is_broken_by_share(broken, wires)


@given(left, left, st.sampled_from(RopeCore), st.sampled_from(ThinRule))
def test_a_thinner_rope_is_never_milder(one: float, other: float, core: RopeCore, rule: ThinRule) -> None:
    thin_m, thick_m = sorted((one * 0.01, other * 0.01))
    thin = wire_rope.is_rope_too_thin(0.01, thin_m, core, rule)
    assert thin >= wire_rope.is_rope_too_thin(0.01, thick_m, core, rule)
    assert wire_rope.is_outer_wire_worn(0.01, thin_m) >= wire_rope.is_outer_wire_worn(0.01, thick_m)


@given(left, st.sampled_from(RopeCore), st.sampled_from([ThinRule.ASME_SLINGS, ThinRule.MINES]))
def test_a_rope_that_any_rule_rejects_the_strictest_rejects(share: float, core: RopeCore, rule: ThinRule) -> None:
    now_m = share * 0.01
    assert wire_rope.is_rope_too_thin(0.01, now_m, core) >= wire_rope.is_rope_too_thin(0.01, now_m, core, rule)


@given(st.floats(-200, 1200), st.floats(-200, 1200))
def test_more_heat_is_never_milder(one_c: float, other_c: float) -> None:
    cool_c, hot_c = sorted((one_c, other_c))
    assert wire_rope.is_fibre_core_spoilt(hot_c) >= wire_rope.is_fibre_core_spoilt(cool_c)
    assert chain.is_chain_spoilt_by_heat(hot_c) >= chain.is_chain_spoilt_by_heat(cool_c)
