"""Couplings: limits, symmetry, and the direction of every effect."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import coupling, hitch_law
from inspector.mechanics.coupling import Suspension, Thrust
from inspector.mechanics.hitch_law import BenchPull, LawCopy, ProofStep

masses_kg = st.floats(100.0, 40e3)
light_kg = st.floats(1.0, 4535.0)
pulls = st.sampled_from(BenchPull)


@given(masses_kg, masses_kg)
def test_the_d_value_is_symmetric_and_below_the_weight_of_either(one_kg: float, other_kg: float) -> None:
    rated_n = coupling.d_value_n(one_kg, other_kg)
    assert rated_n == pytest.approx(coupling.d_value_n(other_kg, one_kg))
    assert 0 < rated_n < 9.81 * min(one_kg, other_kg)


@given(masses_kg, masses_kg, masses_kg)
def test_a_heavier_trailer_never_asks_for_less(towing_kg: float, one_kg: float, other_kg: float) -> None:
    light, heavy = sorted((one_kg, other_kg))
    assert coupling.d_value_n(towing_kg, light) <= coupling.d_value_n(towing_kg, heavy) * (1 + 1e-12)
    assert coupling.centre_axle_d_n(towing_kg, light) == coupling.d_value_n(towing_kg, light)


def test_equal_masses_give_half_the_weight() -> None:
    assert coupling.d_value_n(3000, 3000) == pytest.approx(9.81 * 3000 / 2)


@given(masses_kg, masses_kg)
def test_the_inverse_gives_back_the_other_mass(towing_kg: float, trailer_kg: float) -> None:
    rated_n = coupling.d_value_n(towing_kg, trailer_kg)
    assert coupling.other_mass_kg(rated_n, towing_kg) == pytest.approx(trailer_kg, rel=1e-6)
    assert coupling.other_mass_kg(rated_n, trailer_kg) == pytest.approx(towing_kg, rel=1e-6)


@given(masses_kg, st.floats(1.0, 12.0), st.floats(1.0, 12.0))
def test_a_steel_spring_asks_for_more_than_air_and_a_long_body_for_more_than_a_short_one(
    axles_kg: float, body_m: float, drawbar_m: float
) -> None:
    air_n = coupling.v_value_n(axles_kg, body_m, drawbar_m, Suspension.AIR)
    other_n = coupling.v_value_n(axles_kg, body_m, drawbar_m)
    assert other_n / air_n == pytest.approx(2.4 / 1.8)
    assert air_n >= 1.8 * axles_kg * (1 - 1e-12)
    assert coupling.v_value_n(axles_kg, 2 * body_m, drawbar_m) >= other_n
    assert coupling.v_value_n(axles_kg, 2 * drawbar_m, drawbar_m) == pytest.approx(4 * 2.4 * axles_kg)


@given(masses_kg, masses_kg, st.floats(0.01, 0.99))
def test_more_load_on_the_fifth_wheel_asks_for_more(towing_kg: float, trailer_kg: float, share: float) -> None:
    lighter_n = coupling.semi_trailer_d_n(towing_kg, trailer_kg, 0.5 * share * trailer_kg)
    assert lighter_n < coupling.semi_trailer_d_n(towing_kg, trailer_kg, share * trailer_kg)
    assert lighter_n > 0.6 * coupling.d_value_n(towing_kg, trailer_kg)


@given(st.floats(1.0, 3500.0))
def test_the_australian_test_is_three_times_as_hard_along_as_across(trailer_kg: float) -> None:
    along_n = coupling.adr_test_n(trailer_kg)
    for thrust in (Thrust.TRANSVERSE, Thrust.VERTICAL):
        assert along_n == pytest.approx(3 * coupling.adr_test_n(trailer_kg, thrust))


@given(st.floats(0.0, 5e5), st.floats(1.0, 2e5), st.floats(1.0, 5.0))
def test_the_snatch_ratio_grows_with_the_peak(peak_n: float, rated_n: float, times: float) -> None:
    ratio = coupling.snatch_over_d_ratio(peak_n, rated_n)
    assert coupling.snatch_over_d_ratio(times * peak_n, rated_n) == pytest.approx(times * ratio)


def test_the_d_value_says_that_it_is_no_strength() -> None:
    assert "no breaking strength" in " ".join((coupling.d_value_n.__doc__ or "").split())
    assert "never as a proof" in (coupling.snatch_over_d_ratio.__doc__ or "")


@given(st.floats(0.04, 0.06), st.floats(0.04, 0.06))
def test_a_thinner_ball_has_never_lost_less(one_m: float, other_m: float) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert 0 <= coupling.ball_loss_ratio(thick_m) <= coupling.ball_loss_ratio(thin_m) < 1
    assert coupling.is_ball_worn(thin_m) or not coupling.is_ball_worn(thick_m)


def test_rounding_moves_no_ball_across_its_limit() -> None:
    assert not coupling.is_ball_worn(0.049 * (1 - 1e-12))
    assert not coupling.is_ball_mismatched(0.049 * (1 - 1e-12), 0.050)
    assert coupling.is_ball_mismatched(0.04899, 0.050)


@given(st.floats(100.0, 5000.0), st.floats(2.0, 3.0))
def test_an_eye_never_stands_more_than_a_quarter_of_a_strap_in_its_band(laden_kg: float, times: float) -> None:
    ratio = coupling.eye_over_strap_ratio(laden_kg, times * laden_kg * 9.80665)
    assert ratio == pytest.approx(1 / (2 * times))
    assert 1 / 6 - 1e-9 <= ratio <= 1 / 4 + 1e-9


@given(light_kg, light_kg, st.sampled_from(ProofStep))
def test_a_heavier_trailer_never_has_a_lower_class_or_proof(one_kg: float, other_kg: float, step: ProofStep) -> None:
    light, heavy = sorted((one_kg, other_kg))
    assert 1 <= hitch_law.coupler_class_count(light) <= hitch_law.coupler_class_count(heavy) <= 4
    assert hitch_law.hitch_proof_n(light, step) <= hitch_law.hitch_proof_n(heavy, step)


@given(light_kg, pulls)
def test_the_unnamed_law_is_never_the_milder_one(trailer_kg: float, pull: BenchPull) -> None:
    default_n = hitch_law.coupler_breaking_n(trailer_kg, pull)
    assert default_n == max(hitch_law.coupler_breaking_n(trailer_kg, pull, law) for law in LawCopy)


@pytest.mark.parametrize(("limit_kg", "number"), [(907.18474, 1), (1587.573295, 2), (2267.96185, 3), (4535.9237, 4)])
def test_a_trailer_at_a_limit_belongs_to_the_lower_class_whatever_the_rounding(limit_kg: float, number: int) -> None:
    assert hitch_law.coupler_class_count(limit_kg * (1 + 1e-12)) == number
    assert hitch_law.coupler_class_count(limit_kg) == number
