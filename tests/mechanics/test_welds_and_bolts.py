"""Welds, bolts, eyes and one-sided walls: what physics demands of them whatever the figures."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import fasteners, lug, pin_service, plate, sections, shear, tube_faces, weld_fatigue, welds
from inspector.mechanics import weld_group as group
from tests.each import each

lengths = st.floats(0.001, 0.2)
sides = st.floats(0.03, 0.2)
shares = st.floats(0.01, 0.49)


@given(sides, shares, st.floats(0, 0.2), st.floats(0, 0.2))
def test_a_pull_farther_beside_the_axis_is_never_easier_on_the_weld(
    side: float, share: float, e: float, more: float
) -> None:
    near, far = (group.tube_weld_pull_n_per_m(1e3, one, side, share * side) for one in (e, e + more))
    assert far >= near
    assert group.tube_weld_capacity_n(e + more, side, share * side, 0.003, 2e8) <= group.tube_weld_capacity_n(
        e, side, share * side, 0.003, 2e8
    )


@given(sides, st.floats(0, 0.2), st.floats(1e-4, 0.5), st.floats(1e-4, 0.5))
def test_rounder_corners_never_make_the_weld_stronger(side: float, e: float, one: float, other: float) -> None:
    little, much = sorted((one * side, other * side))
    assert group.sharp_corner_error_ratio(e, side, much) >= group.sharp_corner_error_ratio(e, side, little) - 1e-12
    assert group.sharp_corner_error_ratio(e, side, little) >= -1e-12


@given(sides, st.floats(0, 0.2))
def test_sharp_corners_give_one_and_three_e_over_s(side: float, e: float) -> None:
    assert group.eccentric_over_straight_ratio(e, side) == pytest.approx(1 + 3 * e / side)
    assert group.tube_weld_modulus_m2(side) == pytest.approx(group.rectangle_weld_modulus_m2(side, side))


@given(sides, shares, st.floats(0, 0.2), st.floats(0.1, 10))
def test_lengths_scaled_scale_the_line_force_down_once(side: float, share: float, e: float, scale: float) -> None:
    small = group.tube_weld_pull_n_per_m(1e3, e, side, share * side)
    large = group.tube_weld_pull_n_per_m(1e3, e * scale, side * scale, share * side * scale)
    assert large == pytest.approx(small / scale, rel=1e-9)
    assert group.tube_weld_modulus_m2(side * scale) == pytest.approx(group.tube_weld_modulus_m2(side) * scale**2)


@given(sides, shares, st.floats(0, 0.2), st.floats(0.05, 1), st.floats(0.05, 1))
def test_the_hole_s_pull_gets_worse_with_rust_and_with_a_close_plate(
    side: float, share: float, e: float, one: float, other: float
) -> None:
    thin, sound = sorted((one, other))
    near = group.hole_over_pin_ratio(e, side, share * side, side / 2, sound)
    assert group.hole_over_pin_ratio(e, side, share * side, side / 2, thin) >= near
    assert near == pytest.approx(1.2 * group.hole_over_pin_ratio(e, side, share * side, side * 2, sound))
    assert near >= 1.2 / sound * (1 - 1e-12)


def test_straight_pull_through_the_pin_against_a_ball_hole_and_a_chain_hole() -> None:
    """Ball mount: 50 mm shank, plate 37 mm off its axis, close by; chain hole 50 mm under a 60 mm receiver.

    Calculated here: 1 + 3 x 37 / 50 = 3.22 sharp, times 1.2 close by; thinned to half the throat, twice that.
    """
    assert group.hole_over_pin_ratio(0.037, 0.050, 0.0, 0.025) == pytest.approx(1.2 * 3.22)
    assert group.hole_over_pin_ratio(0.050, 0.060, 0.0, 0.150) == pytest.approx(3.5)
    assert group.hole_over_pin_ratio(0.050, 0.060, 0.008, 0.150) > 3.5
    assert group.hole_over_pin_ratio(0.050, 0.060, 0.008, 0.150, 0.5) == pytest.approx(
        2 * group.hole_over_pin_ratio(0.050, 0.060, 0.008, 0.150)
    )


def test_both_together_turn_150_kn_into_about_21() -> None:
    """S235, 60 mm, straight and sound against e = 50 mm and a wall of 1.5 mm (calculated here)."""
    strength_pa = welds.weld_shear_strength_pa(360e6, 0.8)
    throat_m = welds.corroded_throat_m(0.003, 0.0, 0.0015)
    assert group.tube_weld_capacity_n(0.0, 0.060, 0.0, 0.003, strength_pa) == pytest.approx(149.6e3, rel=1e-3)
    assert group.tube_weld_capacity_n(0.050, 0.060, 0.0, throat_m, strength_pa) == pytest.approx(21.4e3, rel=2e-3)


@given(st.floats(0, 0.01), st.floats(0, 0.01), st.floats(0, 0.01), st.floats(0, 0.005))
def test_rust_never_thickens_a_throat(throat: float, loss: float, wall: float, more: float) -> None:
    left = welds.corroded_throat_m(throat, loss, wall)
    assert 0 <= welds.corroded_throat_m(throat, loss + more, wall) <= left <= min(throat, wall) + 1e-18


@given(st.floats(16e6, 900e6), st.floats(1.001, 1.5))
def test_a_larger_range_is_stood_fewer_times(stress: float, more: float) -> None:
    assert weld_fatigue.root_cycles_count(stress * more) <= weld_fatigue.root_cycles_count(stress)
    assert weld_fatigue.root_cycles_count(stress, 1.35) <= weld_fatigue.root_cycles_count(stress, 1.0) or stress < 20e6


@given(sides, shares, st.floats(0.02, 0.2), st.floats(0.02, 0.2))
def test_a_thinner_face_never_makes_a_tube_stiffer(side: float, share: float, one: float, other: float) -> None:
    thin, thick = sorted((one * side, other * side))
    walls = (side, side, min(share * side / 4, 3 * thin), thick, thick)
    assert tube_faces.faced_tube_inertia_m4(*walls, thin) <= tube_faces.faced_tube_inertia_m4(*walls, thick) * (
        1 + 1e-9
    )
    assert tube_faces.faced_tube_centroid_m(*walls, thin) >= side / 2 - 1e-12


@given(sides, st.floats(0.03, 0.2))
def test_with_sharp_corners_an_even_tube_is_that_of_the_sections(side: float, share: float) -> None:
    wall = share * side
    faced = tube_faces.faced_tube_inertia_m4(side, side, 0.0, wall, wall, wall)
    assert faced == pytest.approx(sections.square_tube_inertia_m4(side, wall, 0.0))
    plastic = tube_faces.tube_plastic_modulus_m3(side, wall, 0.0)
    assert plastic >= sections.square_tube_modulus_m3(side, wall, 0.0)


@given(st.floats(0.006, 0.024), st.floats(0.0005, 0.003))
def test_a_higher_class_is_never_weaker_and_breaks_after_its_proof(diameter: float, pitch: float) -> None:
    proof = [fasteners.bolt_proof_n(diameter, pitch, grade) for grade in fasteners.BoltClass]
    broken = [fasteners.bolt_tensile_n(diameter, pitch, grade) for grade in fasteners.BoltClass]
    assert proof == sorted(proof) and broken == sorted(broken)
    assert all(held < end for held, end in zip(proof, broken, strict=True))


@given(lengths, lengths, lengths, lengths)
def test_a_loose_pin_presses_harder_than_a_close_one(pull: float, pin: float, loose: float, looser: float) -> None:
    near, far = (pin_service.pin_contact_pa(pull * 1e6, pin, pin + gap, 0.004) for gap in sorted((loose, looser)))
    assert far >= near >= 0


def test_a_ball_against_a_pin_and_single_against_double_shear_come_out_as_numbers() -> None:
    """22 mm shank pulled at 50 mm against a 5/8 in pin in a solid 50 mm insert (calculated here)."""
    ratio = pin_service.ball_over_pin_ratio(0.022, 0.050, 0.015875, 0.050, 0.001, 0.004)
    assert ratio == pytest.approx((0.050 / 1045.4e-9) / (0.00775 / 392.8e-9), rel=1e-3)
    single, double = (shear.shear_plane_stress_pa(40e3, 0.015875, planes) for planes in (1, 2))
    assert single == pytest.approx(2 * double)
    assert pin_service.hollow_insert_lever_m(0.004, 0.001, 0.005) < shear.pin_lever_m(0.050, 0.001, 0.004)
    assert pin_service.pin_service_moment_n_m(0.016, 355e6) < shear.pin_moment_resistance_n_m(0.016, 355e6)
    assert pin_service.pin_service_bearing_n(0.004, 0.0159, 235e6, 2) < shear.pin_bearing_n(0.004, 0.0159, 235e6, 2)


@given(st.floats(0, 0.999), st.floats(0, 0.999))
def test_the_net_stress_falls_and_the_net_area_shrinks_as_the_hole_grows(one: float, other: float) -> None:
    small, large = sorted((one, other))
    assert 1 <= plate.hole_raiser_factor(large, 1.0) <= plate.hole_raiser_factor(small, 1.0) + 1e-9
    assert plate.plate_net_area_m2(1.0, 0.01, large) <= plate.plate_net_area_m2(1.0, 0.01, small)
    assert plate.plate_net_tension_n(0.0, 360e6) == 0


REFUSED: list[Callable[[], object]] = [
    lambda: welds.weld_shear_strength_pa(0.0, 0.8),
    lambda: welds.weld_shear_strength_pa(360e6, 0.8, 0.9),
    lambda: welds.fillet_throat_m(-0.001),
    lambda: welds.fillet_n_per_m(math.nan, 2e8),
    lambda: welds.weld_direction_factor(2.0),
    lambda: welds.corroded_throat_m(0.003, -0.001, 0.004),
    lambda: welds.full_strength_throat_ratio(235e6, 360e6, 0.0),
    lambda: welds.fillet_equivalent_pa(math.inf, 0.0, 0.0),
    lambda: welds.electrode_fillet_n_per_m(0.005, -1.0),
    lambda: group.tube_weld_length_m(0.06, 0.031),
    lambda: group.tube_weld_pull_n_per_m(-1.0, 0.0, 0.06),
    lambda: group.tube_weld_pull_n_per_m(1.0, -0.01, 0.06),
    lambda: group.hole_over_pin_ratio(0.05, 0.06, 0.0, 0.1, 0.0),
    lambda: group.hole_over_pin_ratio(0.05, 0.06, 0.0, 0.1, 1.1),
    lambda: group.close_plate_factor(-0.01, 0.06),
    lambda: group.tube_wall_stress_pa(1.0, 0.0, 0.0, 1e-6),
    lambda: group.rectangle_weld_polar_m3(0.0, 0.06),
    lambda: group.is_root_opened(math.nan),
    lambda: weld_fatigue.root_cycles_count(0.0),
    lambda: weld_fatigue.root_cycles_count(5e6, 1.0),
    lambda: plate.hole_raiser_factor(1.0, 1.0),
    lambda: plate.plate_net_area_m2(1.0, 0.01, 1.1),
    lambda: fasteners.bolt_stress_area_m2(0.012, 0.013),
    lambda: fasteners.inch_bolt_proof_n(0.0255, 0.003, fasteners.BoltGrade.G5),
    lambda: fasteners.bolt_shear_n(0.0, 8e8, fasteners.BoltClass.C8_8),
    lambda: lug.pin_fit_factor(1.1, 1.0),
    lambda: lug.eye_tension_n(0.01, 0.02, 4e8, 1.2),
    lambda: lug.eye_tension_n(0.01, 0.02, 4e8, 1.0, 1.5),
    lambda: lug.eye_fracture_n(0.03, 0.01, 0.03, 0.01, 4e8),
    lambda: lug.eye_bearing_n(0.02, 0.01, 2.35e8, 1.0),
    lambda: lug.eye_effective_width_m(0.01, 0.02, 0.02, 0.9),
    lambda: lug.eye_shear_n(0.0, 0.02, 0.02, 0.01, 4e8),
    lambda: pin_service.pin_contact_pa(1.0, 0.02, 0.019, 0.004),
    lambda: pin_service.pin_service_bearing_n(0.004, 0.016, 2.35e8, 0),
    lambda: pin_service.hollow_insert_lever_m(0.004, -0.001, 0.005),
    lambda: tube_faces.faced_tube_area_m2(0.06, 0.06, 0.0, 0.03, 0.004, 0.004),
    lambda: tube_faces.faced_tube_area_m2(0.06, 0.06, 0.031, 0.004, 0.004, 0.004),
    lambda: tube_faces.tube_plastic_modulus_m3(0.06, 0.031, 0.008),
]


@each("number", range(len(REFUSED)))
def test_figures_out_of_range_are_refused(number: int) -> None:
    with pytest.raises(ValueError, match="must"):
        REFUSED[number]()
