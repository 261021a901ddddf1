"""Square tubes thinned from inside and round bars worn: worked numbers and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import sections

SIDE_M, RADIUS_M = 0.060, 0.008
walls_m = st.floats(0.0, 0.030)
shares = st.floats(0.0, 1.0)


def test_a_sharp_cornered_tube_is_a_square_less_a_square() -> None:
    assert sections.square_tube_area_m2(0.060, 0.004, 0.0) == pytest.approx(0.060**2 - 0.052**2)
    assert sections.square_tube_inertia_m4(0.060, 0.004, 0.0) == pytest.approx((0.060**4 - 0.052**4) / 12)


def test_a_square_of_two_half_side_radii_is_a_round_tube() -> None:
    # outer radius 30 mm, wall 4 mm: pi/4 (30^4 - 26^4) mm4, elementary geometry
    round_tube_m4 = math.pi / 4 * (0.030**4 - 0.026**4)
    assert sections.square_tube_inertia_m4(0.060, 0.004, 0.030) == pytest.approx(round_tube_m4)
    assert sections.square_tube_area_m2(0.060, 0.004, 0.030) == pytest.approx(math.pi * (0.030**2 - 0.026**2))


def test_a_wall_thicker_than_the_outer_radius_has_a_sharp_inner_corner() -> None:
    # 40^2 - 20^2 less (4 - pi) 5^2 mm2, calculated here
    assert sections.square_tube_area_m2(0.040, 0.010, 0.005) == pytest.approx(1178.54e-6, rel=1e-6)


def test_no_wall_no_section() -> None:
    assert sections.square_tube_area_m2(SIDE_M, 0.0, RADIUS_M) == 0
    assert sections.square_tube_modulus_m3(SIDE_M, 0.0, RADIUS_M) == 0


def test_half_the_wall_lost_leaves_55_percent_of_the_bending_strength() -> None:
    # 60 x 60 x 4 thinned to 2 mm, calculated apart with a general section program
    left = sections.square_tube_modulus_m3(SIDE_M, 0.002, RADIUS_M)
    assert left / sections.square_tube_modulus_m3(SIDE_M, 0.004, RADIUS_M) == pytest.approx(0.55, abs=0.005)


def test_a_pin_hole_takes_its_width_out_of_two_walls() -> None:
    # 854.8 mm2 - 2 x 15.9 x 4 mm2 = 727.6 mm2, calculated here
    assert sections.square_tube_net_area_m2(SIDE_M, 0.004, RADIUS_M, 0.0159) == pytest.approx(727.6e-6, abs=0.05e-6)
    assert sections.two_walls_net_area_m2(0.044, 0.004, 0.0159) == pytest.approx(224.8e-6)


def test_a_hole_may_take_nearly_all_of_the_flat_of_the_face() -> None:
    whole_m2 = sections.square_tube_area_m2(SIDE_M, 0.004, RADIUS_M)
    left_m2 = sections.square_tube_net_area_m2(SIDE_M, 0.004, RADIUS_M, 0.0439)
    assert whole_m2 - left_m2 == pytest.approx(2 * 0.0439 * 0.004)


def test_a_hole_wider_than_the_flat_of_the_face_is_refused() -> None:
    with pytest.raises(ValueError, match="hole_m"):
        sections.square_tube_net_area_m2(SIDE_M, 0.004, RADIUS_M, 0.0441)
    with pytest.raises(ValueError, match="hole_m"):
        sections.two_walls_net_area_m2(0.044, 0.004, 0.0441)


@pytest.mark.parametrize(("wall_m", "radius_m"), [(0.0301, 0.008), (0.004, 0.0301)])
def test_a_wall_or_corner_beyond_the_middle_is_refused(wall_m: float, radius_m: float) -> None:
    with pytest.raises(ValueError, match=r"must lie from 0 to 0\.03"):
        sections.square_tube_area_m2(SIDE_M, wall_m, radius_m)


def test_ten_percent_of_the_diameter_is_nineteen_of_area_and_twenty_seven_of_bending() -> None:
    assert sections.round_area_loss_ratio(0.10) == pytest.approx(0.19)
    assert sections.round_modulus_loss_ratio(0.10) == pytest.approx(0.271)


@pytest.mark.parametrize("lost", [sections.round_area_loss_ratio, sections.round_modulus_loss_ratio])
def test_all_of_a_bar_can_be_lost_and_no_more(lost: object) -> None:
    assert callable(lost)
    assert (lost(0.0), lost(1.0)) == (0.0, 1.0)
    with pytest.raises(ValueError, match="diameter_loss_ratio"):
        lost(1.01)


@given(walls_m, walls_m, st.floats(0.0, 0.030))
def test_a_thinner_wall_never_has_more_area_or_modulus(one_m: float, other_m: float, radius_m: float) -> None:
    thin_m, thick_m = sorted((one_m, other_m))
    rounding_m2, rounding_m3 = 1e-12 * SIDE_M**2, 1e-12 * SIDE_M**3
    thin_area_m2 = sections.square_tube_area_m2(SIDE_M, thin_m, radius_m)
    assert thin_area_m2 <= sections.square_tube_area_m2(SIDE_M, thick_m, radius_m) + rounding_m2
    thin_modulus_m3 = sections.square_tube_modulus_m3(SIDE_M, thin_m, radius_m)
    assert thin_modulus_m3 <= sections.square_tube_modulus_m3(SIDE_M, thick_m, radius_m) + rounding_m3


@given(walls_m, st.floats(0.0, 0.030), st.floats(0.0, 0.030))
def test_rounder_corners_never_add_strength(wall_m: float, one_m: float, other_m: float) -> None:
    sharp_m, rounder_m = sorted((one_m, other_m))
    rounder_m3 = sections.square_tube_modulus_m3(SIDE_M, wall_m, rounder_m)
    assert rounder_m3 <= sections.square_tube_modulus_m3(SIDE_M, wall_m, sharp_m) + 1e-12 * SIDE_M**3


@given(shares, shares)
def test_more_wear_never_leaves_a_bar_stronger(one: float, other: float) -> None:
    little, much = sorted((one, other))
    assert sections.round_area_loss_ratio(little) <= sections.round_area_loss_ratio(much)
    assert sections.round_modulus_loss_ratio(little) <= sections.round_modulus_loss_ratio(much)


@given(shares)
def test_bending_suffers_at_least_as_much_as_area(share: float) -> None:
    area_ratio, rounding = sections.round_area_loss_ratio(share), 1e-12
    assert sections.round_modulus_loss_ratio(share) >= area_ratio - rounding >= share - 2 * rounding


@given(st.floats(0.005, 0.06), st.floats(0.0, 0.9))
def test_the_loss_ratio_is_what_the_moduli_say(diameter_m: float, share: float) -> None:
    left = sections.round_elastic_modulus_m3(diameter_m * (1 - share)) / sections.round_elastic_modulus_m3(diameter_m)
    assert 1 - left == pytest.approx(sections.round_modulus_loss_ratio(share), abs=1e-12)
