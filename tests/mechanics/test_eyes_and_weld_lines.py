"""Eyes, single shear, fillets at an angle, twisted welds, tubes with one thin face: the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import (
    eye_ends,
    fasteners,
    lug,
    sections,
    shear,
    single_shear,
    tube_faces,
    weld_direction,
    weld_group,
    weld_twist,
)

lengths = st.floats(0.001, 0.2)
pulls = st.floats(0.0, 400e3)
steels = st.floats(150e6, 1200e6)
angles = st.floats(0.0, math.pi / 2)
sides = st.floats(0.03, 0.2)
rounded = st.floats(0.0, 0.5)


@given(pulls, pulls, lengths, lengths, steels)
def test_a_harder_pull_never_needs_less_plate_round_the_hole(
    one: float, other: float, hole: float, thickness: float, fy: float
) -> None:
    less, more = sorted((one, other))
    for needed in (eye_ends.pin_end_distance_m, eye_ends.pin_side_distance_m):
        assert needed(less, hole, thickness, fy) <= needed(more, hole, thickness, fy)
    end = eye_ends.pin_end_distance_m(more, hole, thickness, fy)
    assert end - eye_ends.pin_side_distance_m(more, hole, thickness, fy) == pytest.approx(hole / 3)
    assert eye_ends.pin_plate_thickness_m(less, fy) <= eye_ends.pin_plate_thickness_m(more, fy)


def test_a_partial_factor_asks_for_more_plate() -> None:
    """F gM0 / (2 t fy): 50 kN on 12 mm of 235 MPa is 8.87 mm, a tenth of it more at 1.1 (calculated here)."""
    for needed in (eye_ends.pin_end_distance_m, eye_ends.pin_side_distance_m):
        more_m = needed(50e3, 0.022, 0.012, 235e6, 1.1) - needed(50e3, 0.022, 0.012, 235e6)
        assert more_m == pytest.approx(0.887e-3, rel=1e-3)


def test_without_a_pull_the_hole_alone_asks_for_plate() -> None:
    assert eye_ends.pin_end_distance_m(0.0, 0.024, 0.01, 235e6) == pytest.approx(0.016)
    assert eye_ends.pin_plate_thickness_m(0.0, 235e6) == 0


@given(lengths, st.floats(0.5, 1.0), st.floats(0.6, 5.0), lengths)
def test_a_round_end_never_helps_and_a_flat_one_loses_nothing(
    hole: float, fit: float, radius: float, beyond: float
) -> None:
    pin = hole * fit
    loss = eye_ends.round_end_loss_m(pin, hole, radius * hole)
    assert 0 <= loss <= pin / 2
    assert eye_ends.round_end_loss_m(pin, hole, 1e4 * hole) < 1e-4 * hole
    square = lug.eye_shear_n(loss + beyond, pin, hole, 0.01, 400e6)
    assert eye_ends.round_eye_shear_n(loss + beyond, pin, hole, 0.01, 400e6, radius * hole) <= square


@given(lengths, lengths, lengths, steels, st.floats(0.1, 1.0))
def test_the_american_eye_grows_with_its_steel(t: float, edge: float, more: float, fu: float, phi: float) -> None:
    assert eye_ends.us_eye_tension_n(t, edge, fu) <= eye_ends.us_eye_tension_n(t, edge + more, fu)
    assert eye_ends.us_eye_tension_n(t, edge, fu, phi) <= eye_ends.us_eye_tension_n(t, edge, fu, 1.0)
    assert eye_ends.us_eye_shear_n(t, edge, more, fu) >= eye_ends.us_eye_shear_n(t, edge, more / 2, fu)
    assert eye_ends.us_eye_bearing_n(2 * t, edge, fu) == pytest.approx(2 * eye_ends.us_eye_bearing_n(t, edge, fu))
    assert eye_ends.us_eye_yield_n(2 * edge, t, fu) == pytest.approx(2 * eye_ends.us_eye_yield_n(edge, t, fu))


@given(lengths, st.floats(0.0, 0.02), lengths, st.floats(10.0, 2000.0), st.floats(1e3, 500e3))
def test_a_pin_held_on_one_side_always_carries_less(
    inner: float, gap: float, outer: float, moment: float, plane: float
) -> None:
    one_m, two_m = single_shear.single_shear_lever_m(inner, gap, outer), shear.pin_lever_m(inner, gap, outer)
    assert single_shear.single_over_double_bending_ratio(inner, gap, outer) == pytest.approx(one_m / two_m)
    assert 2 - 1e-9 <= one_m / two_m <= 4 + 1e-9
    one_n = single_shear.single_shear_pull_n(one_m, moment, plane)
    assert one_n <= min(moment / one_m, plane) * (1 + 1e-12)
    assert one_n * 2 <= shear.pin_combined_pull_n(two_m, moment, plane) * (1 + 1e-9)


def test_one_plate_instead_of_two_turns_17_kn_into_5() -> None:
    """5/8 in pin of 235/360 in a 60 mm receiver with a solid insert (calculated here): 17.3 kN and 4.9 kN."""
    moment, plane = shear.pin_moment_resistance_n_m(0.015875, 235e6), shear.pin_shear_per_plane_n(0.015875, 360e6)
    both = shear.pin_combined_pull_n(shear.pin_lever_m(0.050, 0.001, 0.004), moment, plane)
    lever = single_shear.single_shear_lever_m(0.050, 0.001, 0.004)
    assert both == pytest.approx(17.3e3, abs=50)
    assert single_shear.single_shear_pull_n(lever, moment, plane) == pytest.approx(4.9e3, abs=50)


@given(angles, angles)
def test_the_bonus_for_direction_grows_with_the_angle_from_nothing(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert 1 - 1e-12 <= weld_direction.fillet_angle_factor(low) <= weld_direction.fillet_angle_factor(high) + 1e-12
    assert weld_direction.fillet_angle_factor(high) <= math.sqrt(1.5) + 1e-12


@given(angles)
def test_the_factor_is_what_the_equivalent_stress_says(angle: float) -> None:
    across, along = math.sin(angle) / math.sqrt(2), math.cos(angle)
    equivalent = math.sqrt(across**2 + 3 * (across**2 + along**2))
    assert weld_direction.fillet_angle_factor(angle) == pytest.approx(math.sqrt(3) / equivalent)


@given(lengths, lengths, st.floats(0.001, 0.02))
def test_a_longer_run_never_counts_less_and_never_more_than_it_is(one: float, other: float, throat: float) -> None:
    short, long = sorted((one, other))
    counted = weld_direction.fillet_effective_length_m(long, throat)
    assert weld_direction.fillet_effective_length_m(short, throat) <= counted <= long
    assert counted <= weld_direction.fillet_effective_length_m(long, throat, is_closed=True)


@given(steels, st.floats(0.8, 1.0), st.floats(1.0, 1.5))
def test_a_larger_partial_factor_lowers_both_limits(fu: float, bw: float, gamma: float) -> None:
    equivalent_pa = weld_direction.fillet_equivalent_limit_pa(fu, bw, gamma)
    assert equivalent_pa * gamma == pytest.approx(weld_direction.fillet_equivalent_limit_pa(fu, bw, 1.0))
    normal_pa = weld_direction.fillet_normal_limit_pa(fu, gamma)
    assert normal_pa * gamma == pytest.approx(weld_direction.fillet_normal_limit_pa(fu, 1.0))
    assert normal_pa < equivalent_pa


@given(sides, rounded, st.floats(0, 1e5), st.floats(0, 5e3), st.floats(0, 1e5), st.floats(0, 5e3))
def test_every_load_more_never_makes_the_weld_s_worst_milder(
    side: float, share: float, pull: float, moment: float, cross: float, torque: float
) -> None:
    loads = (pull, moment, cross, torque)
    worst = weld_twist.tube_weld_worst_n_per_m(*loads, side, share * side)
    for index in range(4):
        less = [load / 2 if at == index else load for at, load in enumerate(loads)]
        lighter = weld_twist.tube_weld_worst_n_per_m(less[0], less[1], less[2], less[3], side, share * side)
        assert lighter <= worst * (1 + 1e-12)
    pulled = weld_group.tube_weld_pull_n_per_m(pull, 0.05, side, share * side)
    assert weld_twist.tube_weld_worst_n_per_m(pull, pull * 0.05, 0, 0, side, share * side) == pytest.approx(pulled)


@given(sides, st.floats(0.1, 10.0), rounded)
def test_a_weld_line_scaled_has_a_polar_moment_of_the_third_power(side: float, scale: float, share: float) -> None:
    small = weld_twist.tube_weld_polar_m3(side, share * side)
    assert weld_twist.tube_weld_polar_m3(side * scale, share * side * scale) == pytest.approx(small * scale**3)
    three = weld_twist.three_sided_polar_m3(side, side / 2)
    assert weld_twist.three_sided_polar_m3(side * scale, side * scale / 2) == pytest.approx(three * scale**3)
    assert 0 < weld_twist.three_sided_centre_m(side, side / 2) < side / 2


def test_a_cross_pull_is_shared_by_the_whole_weld_and_meets_the_twist_square_to_the_pull() -> None:
    """60 mm, sharp: 240 mm long; 24 kN across is 100 N/mm, 288 N m of twist 42.4 N/mm, 24 kN straight 100 N/mm."""
    twist = 288.0 * 0.030 * math.sqrt(2) / 288e-6
    assert weld_twist.tube_weld_worst_n_per_m(0.0, 0.0, 24e3, 0.0, 0.060) == pytest.approx(100e3)
    together = weld_twist.tube_weld_worst_n_per_m(24e3, 0.0, 24e3, 288.0, 0.060)
    assert together == pytest.approx(math.hypot(100e3, 100e3 + twist))


def test_a_weld_round_a_full_circle_is_that_of_a_round_tube() -> None:
    # Elementary geometry: radius r, Jw = 2 pi r^3, reach r
    assert weld_twist.tube_weld_polar_m3(0.060, 0.030) == pytest.approx(2 * math.pi * 0.030**3)
    assert weld_twist.tube_weld_reach_m(0.060, 0.030) == pytest.approx(0.030)
    assert weld_twist.tube_weld_reach_m(0.060) == pytest.approx(0.030 * math.sqrt(2))


@given(sides, st.floats(0.02, 0.2), rounded)
def test_an_even_tube_with_its_inner_rounding_is_that_of_the_sections(side: float, share: float, round_: float) -> None:
    wall, outer = share * side, round_ * side
    walls = (side, side, outer, wall, wall, wall, max(outer - wall, 0.0))
    assert tube_faces.faced_tube_area_m2(*walls) == pytest.approx(sections.square_tube_area_m2(side, wall, outer))
    inertia = sections.square_tube_inertia_m4(side, wall, outer)
    assert tube_faces.faced_tube_inertia_m4(*walls) == pytest.approx(inertia)
    assert tube_faces.faced_tube_centroid_m(*walls) == pytest.approx(side / 2)


@given(sides, sides, st.floats(0.02, 0.15), st.floats(0.02, 0.15), st.floats(0.0, 1.0))
def test_a_thinner_face_never_bends_harder_and_pushes_the_axes_away(
    width: float, height: float, one: float, other: float, share: float
) -> None:
    least = min(width, height)
    thin, thick = min(one, other) * least, max(one, other) * least
    inner = share * thin
    walls = (width, height, inner + thin, thick, thick)
    sound, rusted = (*walls, thick, inner), (*walls, thin, inner)
    assert tube_faces.faced_tube_modulus_m3(*rusted) <= tube_faces.faced_tube_modulus_m3(*sound) * (1 + 1e-9)
    assert tube_faces.faced_tube_centroid_m(*rusted) >= height / 2 * (1 - 1e-9)


@given(sides, st.floats(2.01, 4.0), st.floats(0.02, 0.15), st.floats(0.02, 0.15), st.floats(0.0, 1.0))
def test_a_thinner_face_never_bends_over_harder(
    width: float, slender: float, one: float, other: float, share: float
) -> None:
    """Tall tubes: there the plastic axis stays in the straight of the sides."""
    thin, thick = min(one, other) * width, max(one, other) * width
    inner = share * thin
    walls = (width, width * slender, inner + thin, thick, thick)
    sound, rusted = (*walls, thick, inner), (*walls, thin, inner)
    assert tube_faces.faced_tube_plastic_axis_m(*rusted) >= tube_faces.faced_tube_centroid_m(*rusted) * (1 - 1e-9)
    plastic = tube_faces.faced_tube_plastic_modulus_m3(*rusted)
    assert tube_faces.faced_tube_modulus_m3(*rusted) <= plastic * (1 + 1e-9)
    assert plastic <= tube_faces.faced_tube_plastic_modulus_m3(*sound) * (1 + 1e-9)


def test_an_inner_corner_that_breaks_through_is_refused_and_one_that_is_rounded_is_not() -> None:
    """60 mm, outer radius 8, all walls at 2 mm: a sharp inside would stick out of the corner, 6 mm fits exactly."""
    walls = (0.060, 0.060, 0.008, 0.002, 0.002, 0.002)
    for inner_m in (0.0, 0.001):
        with pytest.raises(ValueError, match="corner_wall_m"):
            tube_faces.faced_tube_area_m2(*walls, inner_m)
    assert tube_faces.faced_tube_area_m2(*walls, 0.006) == pytest.approx(439.965e-6, rel=1e-6)
    blunt = tube_faces.faced_tube_area_m2(0.060, 0.060, 0.002, 0.004, 0.004, 0.004, 0.005)
    assert blunt == pytest.approx(896e-6 + (4 - math.pi) * (25e-6 - 4e-6))
    with pytest.raises(ValueError, match="inner_radius_m"):
        tube_faces.faced_tube_area_m2(0.060, 0.060, 0.008, 0.004, 0.004, 0.004, 0.027)


@pytest.mark.parametrize(("top_mm", "bottom_mm"), [(4, 9), (9, 4)])
def test_a_plastic_axis_in_the_corner_is_refused(top_mm: float, bottom_mm: float) -> None:
    """60 mm, walls 4 mm, one face 9: the axis lies 13.75 mm from it, the rounding of the inside ends at 15 mm."""
    walls = (0.060, 0.060, 0.008, 0.004, top_mm / 1e3, bottom_mm / 1e3)
    with pytest.raises(ValueError, match="plastic_axis_m"):
        tube_faces.faced_tube_plastic_axis_m(*walls, 0.006)
    sharp_m = tube_faces.faced_tube_plastic_axis_m(*walls, 0.001)
    assert min(sharp_m, 0.060 - sharp_m) == pytest.approx(0.01375)


def test_a_thin_eye_is_held_to_four_thicknesses() -> None:
    assert lug.eye_effective_width_m(0.002, 0.030, 0.020, 1.6) == pytest.approx(0.008)


@pytest.mark.parametrize(("grade", "share"), [("4.6", 0.6), ("8.8", 0.6), ("10.9", 0.5)])
def test_the_thread_of_a_bolt_shears_at_a_share_of_its_strength(grade: str, share: float) -> None:
    found_n = fasteners.bolt_shear_n(100e-6, 1000e6, fasteners.BoltClass(grade), 1.0)
    assert found_n == pytest.approx(share * 100e3)


@pytest.mark.parametrize("diameter_m", [0.01905, 0.01905 * (1 + 1e-12)])
def test_three_quarters_of_an_inch_is_still_the_stronger_size_in_any_unit(diameter_m: float) -> None:
    pitch_m = 0.00254
    of = fasteners.inch_bolt_proof_n(diameter_m, pitch_m, fasteners.BoltGrade.G2)
    assert of == pytest.approx(379.21e6 * fasteners.inch_stress_area_m2(diameter_m, pitch_m))
