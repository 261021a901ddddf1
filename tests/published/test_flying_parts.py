"""Energy, flying parts and distances against figures in print.

Sources: [gun] a spring gun on a question site, 80 N/m, 12 cm, 15 g; [toy] Crowell, a toy gun, 10 N/m, 10 cm, 5 g; [TOW]
TB 55-1900-232-10 p. C-5: 500 mph, 224 m/s; [catapult] a range calculator's example, g = 9.81; [TP12] Technical Paper 12
as restated; [range] range safety practice; [Sahoo] Sahoo et al. 2016; [press] the press on a death of 2022; [FM] a
public safety text after FM 21-305; [TM356] TM 9-2320-356-BD p. 4-4; [strap] recovery strap instructions; [balls]
balls per kilogram in a maker's table; [trainer] a South African trade article; [blog] common practice.
"""

import pytest

from inspector.mechanics import energy, fragments, snatch, stand_off
from inspector.mechanics.fragments import FlyingPart, HazardRule
from inspector.mechanics.stand_off import DistanceRule
from tests.each import each
from tests.printed import printed

POUND_KG = 0.45359237
FOOT_POUND_J = 1.3558179483314004
MILE_PER_HOUR = 0.44704
G_RATIO = 9.80665 / 9.81


@pytest.mark.printed(
    "Spring gun on a question site", "snatch.stored_energy_j", "energy.speed_of_energy_m_per_s", values=2
)
def test_a_spring_guns_answer_without_its_root_is_not_followed() -> None:
    """Printed 76.8 m/s: that is the square of the speed."""
    energy_j = snatch.stored_energy_j(80 * 0.12, 80)
    assert energy_j == printed("0.576")
    speed = energy.speed_of_energy_m_per_s(0.015, energy_j)
    assert speed**2 == printed("76.8")
    assert speed != printed("76.8")


@pytest.mark.printed(
    "Crowell, toy gun",
    "snatch.stored_energy_j",
    "energy.thrown_energy_j",
    "energy.kinetic_energy_j",
)
def test_a_toy_gun() -> None:
    assert snatch.stored_energy_j(10 * 0.10, 10) == printed("0.05")
    assert energy.thrown_energy_j(snatch.stored_energy_j(1.0, 10), 0.005) == printed("0.05")


@pytest.mark.printed("TB 55-1900-232-10 p. C-5", "energy.bare_end_speed_m_per_s")
def test_the_end_of_a_parted_line_is_as_fast_as_published() -> None:
    """500 mph, 224 m/s, lies between a strap of 8,000 kgf at 58 kN and the same strap at break."""
    assert printed("224") == 500 * MILE_PER_HOUR
    assert energy.bare_end_speed_m_per_s(58e3, 43585, 2.5) < 224 < energy.bare_end_speed_m_per_s(78453.2, 43585, 2.5)


@pytest.mark.printed(
    "Range of a catapult", "energy.throw_range_m", "energy.least_throw_speed_m_per_s", "energy.least_throw_energy_j"
)
def test_a_catapult_at_twenty_metres_a_second() -> None:
    assert energy.throw_range_m(20) * G_RATIO == printed("40.77")
    assert energy.least_throw_speed_m_per_s(40.77 / G_RATIO) == pytest.approx(20, abs=0.005 / 40.77 * 10)
    assert energy.least_throw_energy_j(1, 40.77 / G_RATIO) == pytest.approx(200, abs=0.005 / 40.77 * 200)


@pytest.mark.printed(
    "DDESB Technical Paper 12, restated", "fragments.hazard_energy_j", "fragments.is_hazardous", values=2
)
def test_a_hazardous_fragment() -> None:
    limit_j = fragments.hazard_energy_j(HazardRule.HAZARDOUS_FRAGMENT)
    assert limit_j == printed("79")
    assert limit_j / FOOT_POUND_J == printed("58")
    assert fragments.is_hazardous(79, HazardRule.HAZARDOUS_FRAGMENT)
    assert fragments.is_hazardous(58 * FOOT_POUND_J, HazardRule.HAZARDOUS_FRAGMENT)
    assert not fragments.is_hazardous(78, HazardRule.HAZARDOUS_FRAGMENT)


@pytest.mark.printed("US range safety practice", "fragments.hazard_energy_j", "fragments.is_hazardous", values=2)
def test_range_safety_is_stricter_and_stands() -> None:
    limit_j = fragments.hazard_energy_j(HazardRule.RANGE_SAFETY)
    assert limit_j == printed("15")
    assert limit_j / FOOT_POUND_J == printed("11")
    assert fragments.hazard_energy_j() == limit_j
    assert fragments.is_hazardous(11 * FOOT_POUND_J) and not fragments.is_hazardous(14)


@pytest.mark.printed("Sahoo et al. 2016", "fragments.hazard_energy_j")
def test_the_skulls_453_millijoules_are_not_compared_with_a_fragment() -> None:
    with pytest.raises(ValueError, match="inside the bone"):
        fragments.hazard_energy_j(HazardRule.SKULL_STRAIN)
    with pytest.raises(ValueError, match="inside the bone"):
        fragments.is_hazardous(0.453, HazardRule.SKULL_STRAIN)


@pytest.mark.printed("Press on a death of 2022", "fragments.part_mass_kg")
@each(("part", "pounds"), [(FlyingPart.BALL_MOUNT_LIGHT, "10"), (FlyingPart.BALL_MOUNT_HEAVY, "15")])
def test_a_ball_with_its_shank(part: FlyingPart, pounds: str) -> None:
    assert fragments.part_mass_kg(part) / POUND_KG == printed(pounds)


@pytest.mark.printed("from memory", "fragments.part_mass_kg", values=3)
def test_shackles_and_ball() -> None:
    assert fragments.part_mass_kg(FlyingPart.SMALL_BOW_SHACKLE) == printed("0.7")
    assert fragments.part_mass_kg(FlyingPart.TOW_BALL) == printed("0.8")
    assert fragments.part_mass_kg(FlyingPart.LARGE_BOW_SHACKLE) == printed("1.4")


@pytest.mark.printed("Safety text after FM 21-305", "fragments.part_mass_kg", "energy.least_throw_speed_m_per_s")
def test_a_snatch_block_of_200_pounds_that_flew_300_yards() -> None:
    """At least 51.9 m/s and 122 kJ, calculated here: less than the free end of a parted strap."""
    mass_kg = fragments.part_mass_kg(FlyingPart.ARMY_SNATCH_BLOCK)
    assert mass_kg / POUND_KG == printed("200")
    assert energy.least_throw_speed_m_per_s(300 * 0.9144) == printed("51.9")
    assert energy.least_throw_energy_j(mass_kg, 300 * 0.9144) / 1e3 == printed("122")


# [balls] diameter mm, balls in a kilogram; ball steel is 0.2 % lighter than the 7850 kg/m3 of structural steel
@pytest.mark.printed("Balls per kilogram, maker's table", "fragments.steel_sphere_kg")
@each(("diameter_mm", "count"), [(19.05, 35.27), (20, 30.50), (25, 15.60), (25.4, 14.88)])
def test_steel_balls(diameter_mm: float, count: float) -> None:
    assert 1 / fragments.steel_sphere_kg(diameter_mm / 1e3) == pytest.approx(count, rel=0.003)


def test_a_tow_ball_is_heavier_than_its_sphere() -> None:
    """0.51 kg for 50 mm, calculated here."""
    assert fragments.steel_sphere_kg(0.050) == printed("0.51")
    assert fragments.steel_sphere_kg(0.050) < fragments.part_mass_kg(FlyingPart.TOW_BALL)


@pytest.mark.printed("Safety text after FM 21-305", "stand_off.stand_off_m")
@each(("rule", "lines"), [(DistanceRule.ONE_LINE, 1), (DistanceRule.TWO_LINES, 2)])
def test_one_safety_text_prints_one_line_and_two(rule: DistanceRule, lines: float) -> None:
    assert stand_off.stand_off_m(30, 0, rule) / 30 == pytest.approx(lines)


@pytest.mark.printed("TM 9-2320-356-BD p. 4-4", "stand_off.stand_off_m")
def test_nobody_nearer_than_the_longest_cable() -> None:
    assert stand_off.stand_off_m(30, 0, DistanceRule.ONE_LINE) / 30 == pytest.approx(1)


@pytest.mark.printed("Recovery strap instructions", "stand_off.stand_off_m")
def test_one_and_a_half_straps_from_either_vehicle() -> None:
    assert stand_off.stand_off_m(0, 9, DistanceRule.STRAP_AND_HALF) / 9 == pytest.approx(1.5)


@pytest.mark.printed("South African trade article on kinetic straps", "stand_off.stand_off_m")
def test_three_to_four_straps() -> None:
    assert stand_off.stand_off_m(0, 9, DistanceRule.FOUR_STRAPS) / 9 == pytest.approx(4)


@pytest.mark.printed("common practice, no source", "stand_off.stand_off_m")
def test_twenty_metres() -> None:
    assert stand_off.stand_off_m(0, 0, DistanceRule.TWENTY_METRES) == pytest.approx(20)


@pytest.mark.printed("Safety text after FM 21-305", "stand_off.stand_off_m", "stand_off.governing_distance_rule")
def test_of_all_rules_the_longest_stands() -> None:
    assert stand_off.governing_distance_rule(30, 9) is DistanceRule.TWO_LINES
    assert stand_off.stand_off_m(30, 9) / 30 == pytest.approx(2)
