"""Pins and ball shanks: worked numbers (calculated apart from this program) and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import shear

MPA = 1e6
diameters_m = st.floats(0.005, 0.06)
walls_m = st.floats(0.0, 0.02)
pulls_n = st.floats(0.0, 400e3)
strengths_pa = st.floats(100e6, 1500e6)
counts = st.integers(1, 4)


def test_a_16_mm_pin_under_40_kn_in_double_shear() -> None:
    # 40 000 N / (2 x 201.06 mm2), calculated here
    assert shear.shear_plane_stress_pa(40e3, 0.016, 2) == pytest.approx(99.47 * MPA, rel=1e-4)


def test_single_shear_doubles_the_stress() -> None:
    double_pa = shear.shear_plane_stress_pa(40e3, 0.016, 2)
    assert shear.shear_plane_stress_pa(40e3, 0.016, 1) == pytest.approx(2 * double_pa)


def test_the_characteristic_shear_is_the_design_one_times_its_partial_factor() -> None:
    # 0.6 x 201.06 mm2 x 510 MPa = 61.5 kN, calculated here
    assert shear.pin_shear_n(0.016, 510 * MPA, 1, gamma_m2_factor=1.0) == pytest.approx(61.52e3, rel=1e-3)
    assert shear.pin_shear_n(0.016, 510 * MPA, 1) == pytest.approx(61.52e3 / 1.25, rel=1e-3)


def test_a_partial_factor_on_yield_lowers_bearing_and_bending_and_asks_for_more_wall() -> None:
    at_one = (
        shear.pin_bearing_n(0.004, 0.016, 235 * MPA, 2),
        shear.pin_moment_resistance_n_m(0.016, 235 * MPA),
        1 / shear.bearing_wall_needed_m(20e3, 0.016, 235 * MPA, 2),
    )
    at_more = (
        shear.pin_bearing_n(0.004, 0.016, 235 * MPA, 2, gamma_m0_factor=1.1),
        shear.pin_moment_resistance_n_m(0.016, 235 * MPA, gamma_m0_factor=1.1),
        1 / shear.bearing_wall_needed_m(20e3, 0.016, 235 * MPA, 2, gamma_m0_factor=1.1),
    )
    assert [more * 1.1 for more in at_more] == pytest.approx(at_one)


def test_a_partial_factor_below_one_is_refused() -> None:
    with pytest.raises(ValueError, match="gamma_m2_factor"):
        shear.pin_shear_n(0.016, 510 * MPA, 1, gamma_m2_factor=0.9)


def test_the_pin_of_a_60_mm_receiver_with_a_solid_insert() -> None:
    # (50 + 4 x 1 + 2 x 4) / 8 = 7.75 N m per kN, calculated here
    assert shear.pin_moment_n_m(1e3, 0.050, 0.001, 0.004) == pytest.approx(7.75)


def test_the_pull_that_uses_the_pin_up_gives_a_utilisation_of_one() -> None:
    moment_resistance_n_m = shear.pin_moment_resistance_n_m(0.015875, 640 * MPA)
    plane_n = shear.pin_shear_per_plane_n(0.015875, 800 * MPA)
    lever_m = shear.pin_lever_m(0.050, 0.001, 0.004)
    pull_n = shear.pin_combined_pull_n(lever_m, moment_resistance_n_m, plane_n)
    used = shear.pin_utilisation_ratio(pull_n * lever_m, moment_resistance_n_m, pull_n / 2, plane_n)
    assert used == pytest.approx(1.0)
    assert pull_n < shear.pin_bending_pull_n(lever_m, moment_resistance_n_m)


# Calculated apart with Wel = pi d^3/32, Wpl = d^3/6: d mm, h mm, MPa at 20 kN, kN elastic / plastic at fy 235 and 640
BALL_SHANKS = [
    (22, 50, 957, 4.9, 8.3, 13.4, 22.7),
    (22, 75, 1435, 3.3, 5.6, 8.9, 15.1),
    (24, 50, 737, 6.4, 10.8, 17.4, 29.5),
    (25, 75, 978, 4.8, 8.2, 13.1, 22.2),
]


@pytest.mark.parametrize(("d", "h", "mpa", "el_235", "pl_235", "el_640", "pl_640"), BALL_SHANKS)
def test_a_tow_ball_shank_yields_at_a_few_kilonewtons(
    d: int, h: int, mpa: float, el_235: float, pl_235: float, el_640: float, pl_640: float
) -> None:
    diameter_m, lever_m = d / 1e3, h / 1e3
    assert shear.shank_stress_pa(20e3, diameter_m, lever_m) / MPA == pytest.approx(mpa, abs=0.51)
    for yield_mpa, elastic_kn, plastic_kn in ((235, el_235, pl_235), (640, el_640, pl_640)):
        elastic_n = shear.shank_elastic_limit_n(diameter_m, lever_m, yield_mpa * MPA)
        plastic_n = shear.shank_plastic_limit_n(diameter_m, lever_m, yield_mpa * MPA)
        assert elastic_n / 1e3 == pytest.approx(elastic_kn, abs=0.051)
        assert plastic_n / 1e3 == pytest.approx(plastic_kn, abs=0.051)


@given(diameters_m, st.floats(0.01, 0.3), strengths_pa)
def test_at_its_elastic_limit_the_shank_is_just_at_yield(diameter_m: float, lever_m: float, yield_pa: float) -> None:
    limit_n = shear.shank_elastic_limit_n(diameter_m, lever_m, yield_pa)
    assert shear.shank_stress_pa(limit_n, diameter_m, lever_m) == pytest.approx(yield_pa)
    shape_factor = shear.shank_plastic_limit_n(diameter_m, lever_m, yield_pa) / limit_n
    assert shape_factor == pytest.approx(16 / (3 * math.pi))


@given(diameters_m, diameters_m, strengths_pa)
def test_a_thinner_pin_is_never_stronger(one_m: float, other_m: float, strength_pa: float) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    assert shear.pin_shear_n(thin_m, strength_pa, 2) <= shear.pin_shear_n(thick_m, strength_pa, 2)
    thin_n_m = shear.pin_moment_resistance_n_m(thin_m, strength_pa)
    assert thin_n_m <= shear.pin_moment_resistance_n_m(thick_m, strength_pa)
    assert shear.shank_elastic_limit_n(thin_m, 0.05, strength_pa) <= shear.shank_elastic_limit_n(
        thick_m, 0.05, strength_pa
    )


@given(walls_m, walls_m, diameters_m, strengths_pa, counts)
def test_a_thinner_wall_never_bears_more(
    one_m: float, other_m: float, diameter_m: float, yield_pa: float, wall_count: int
) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    thin_n = shear.pin_bearing_n(thin_m, diameter_m, yield_pa, wall_count)
    assert thin_n <= shear.pin_bearing_n(thick_m, diameter_m, yield_pa, wall_count)


@given(pulls_n, diameters_m, strengths_pa, counts)
def test_the_wall_needed_bears_the_pull(pull_n: float, diameter_m: float, yield_pa: float, wall_count: int) -> None:
    wall_m = shear.bearing_wall_needed_m(pull_n, diameter_m, yield_pa, wall_count)
    assert shear.pin_bearing_n(wall_m, diameter_m, yield_pa, wall_count) == pytest.approx(pull_n)


@given(pulls_n, diameters_m, strengths_pa)
def test_two_walls_are_meant_unless_told_otherwise(pull_n: float, diameter_m: float, yield_pa: float) -> None:
    two_walls_m = shear.bearing_wall_needed_m(pull_n, diameter_m, yield_pa, 2)
    assert shear.bearing_wall_needed_m(pull_n, diameter_m, yield_pa) == two_walls_m


@given(st.floats(0.001, 0.1), st.floats(0.0, 0.02), st.floats(0.0, 0.02), st.floats(0.001, 0.02))
def test_a_wider_gap_never_bends_the_pin_less(inner_m: float, one_m: float, other_m: float, outer_m: float) -> None:
    narrow_m, wide_m = sorted((one_m, other_m))
    assert shear.pin_lever_m(inner_m, narrow_m, outer_m) <= shear.pin_lever_m(inner_m, wide_m, outer_m)


@given(st.floats(0.001, 0.05), st.floats(10.0, 2000.0), st.floats(1e3, 500e3))
def test_bending_and_shear_together_carry_less_than_either_alone(
    lever_m: float, moment_n_m: float, plane_n: float
) -> None:
    together_n = shear.pin_combined_pull_n(lever_m, moment_n_m, plane_n)
    either_n = min(shear.pin_bending_pull_n(lever_m, moment_n_m), 2 * plane_n)
    assert 0.7 * either_n < together_n <= either_n * (1 + 1e-12)
