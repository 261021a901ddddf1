"""Energy, flying parts and distances: limits, directions, worked numbers."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import energy, fragments, snatch, stand_off
from inspector.mechanics.fragments import FlyingPart, HazardRule
from inspector.mechanics.stand_off import DistanceRule

energies_j = st.just(0.0) | st.floats(1e-6, 200e3)
masses_kg = st.floats(0.1, 100.0)
lengths_m = st.floats(0.0, 60.0)


# Calculated apart: kg, speed of 15 J, speed of 79 J
@pytest.mark.parametrize(
    ("mass_kg", "slow", "fast"), [(0.7, 6.5, 15.0), (0.8, 6.1, 14.1), (1.4, 4.6, 10.6), (4.5, 2.6, 5.9)]
)
def test_the_speed_that_makes_a_part_dangerous(mass_kg: float, slow: float, fast: float) -> None:
    found = [energy.speed_of_energy_m_per_s(mass_kg, energy_j) for energy_j in (15, 79)]
    assert found == pytest.approx([slow, fast], abs=0.051)


# Calculated apart, 40 kN, a quarter of the energy as motion, strap of 2.5 kg: kg, m/s, kJ
@pytest.mark.parametrize(("mass_kg", "speed", "energy_kj"), [(0.8, 75, 2.2), (1.4, 64, 2.9), (4.5, 41, 3.9)])
def test_parts_thrown_with_a_quarter_of_the_energy(mass_kg: float, speed: float, energy_kj: float) -> None:
    stored_j = snatch.stored_energy_j(40e3, 43585)
    assert energy.thrown_speed_m_per_s(stored_j, mass_kg, 2.5, 0.25) == pytest.approx(speed, abs=0.51)
    assert energy.thrown_energy_j(stored_j, mass_kg, 2.5, 0.25) / 1e3 == pytest.approx(energy_kj, abs=0.051)


@given(energies_j, masses_kg, st.floats(0.0, 20.0), st.floats(0.0, 1.0))
def test_all_of_the_energy_as_motion_is_the_bound(
    stored_j: float, part_kg: float, strap_kg: float, share: float
) -> None:
    bound = energy.thrown_speed_m_per_s(stored_j, part_kg)
    assert energy.thrown_speed_m_per_s(stored_j, part_kg, strap_kg, share) <= bound
    assert energy.thrown_energy_j(stored_j, part_kg) == pytest.approx(stored_j)
    assert energy.thrown_energy_j(stored_j, part_kg, strap_kg, share) <= stored_j * share * (1 + 1e-12) + 1e-300


@given(energies_j, masses_kg)
def test_speed_and_energy_answer_each_other(energy_j: float, mass_kg: float) -> None:
    speed = energy.speed_of_energy_m_per_s(mass_kg, energy_j)
    assert energy.kinetic_energy_j(mass_kg, speed) == pytest.approx(energy_j)


@pytest.mark.parametrize(("force_kn", "speed"), [(30, 91), (58, 176), (78.4532, 238)])
def test_the_free_end_of_a_strap(force_kn: float, speed: float) -> None:
    assert energy.bare_end_speed_m_per_s(force_kn * 1e3, 43585, 2.5) == pytest.approx(speed, abs=0.51)


def test_the_free_end_has_more_speed_than_all_energy_shared_over_the_strap() -> None:
    """Only the end moves so fast: the bound of a thrown part with no mass, by the root of three."""
    bare = energy.bare_end_speed_m_per_s(40e3, 43585, 2.5)
    thrown = energy.thrown_speed_m_per_s(snatch.stored_energy_j(40e3, 43585), 1e-12, 2.5)
    assert thrown / bare == pytest.approx(math.sqrt(3))


@given(st.floats(0.0, 500.0), masses_kg)
def test_range_and_speed_answer_each_other(range_m: float, mass_kg: float) -> None:
    speed = energy.least_throw_speed_m_per_s(range_m)
    assert energy.throw_range_m(speed) == pytest.approx(range_m)
    assert energy.least_throw_energy_j(mass_kg, range_m) == pytest.approx(energy.kinetic_energy_j(mass_kg, speed))


@given(energies_j, st.floats(1.0, 2.0))
def test_more_energy_is_never_less_dangerous(energy_j: float, more: float) -> None:
    for rule in list(HazardRule)[:3]:
        assert fragments.is_hazardous(energy_j * more, rule) >= fragments.is_hazardous(energy_j, rule)
        assert fragments.is_hazardous(energy_j) >= fragments.is_hazardous(energy_j, rule)


def test_half_a_percent_of_a_strap_at_40_kilonewtons_is_enough() -> None:
    stored_j = snatch.stored_energy_j(40e3, 43585)
    assert fragments.hazard_share_ratio(stored_j, HazardRule.HAZARDOUS_FRAGMENT) == pytest.approx(0.0043, abs=0.00005)
    assert fragments.hazard_share_ratio(stored_j) < 0.001
    with pytest.raises(ValueError, match="inside the bone"):
        fragments.hazard_share_ratio(stored_j, HazardRule.SKULL_STRAIN)


@given(st.floats(0.0, 0.5), st.floats(0.1, 3.0))
def test_a_sphere_grows_with_the_cube(diameter_m: float, scale: float) -> None:
    mass_kg = fragments.steel_sphere_kg(diameter_m)
    assert fragments.steel_sphere_kg(diameter_m * scale) == pytest.approx(mass_kg * scale**3)


def test_every_part_has_a_mass() -> None:
    assert all(fragments.part_mass_kg(part) > 0 for part in FlyingPart)


@given(lengths_m, lengths_m)
def test_the_longest_rule_governs(line_m: float, strap_m: float) -> None:
    longest_m = stand_off.stand_off_m(line_m, strap_m)
    governing = stand_off.governing_distance_rule(line_m, strap_m)
    assert governing is not DistanceRule.LONGEST
    assert stand_off.stand_off_m(line_m, strap_m, governing) == longest_m >= 20


@given(lengths_m, lengths_m, st.floats(0, 10))
def test_longer_gear_never_brings_people_nearer(line_m: float, strap_m: float, more: float) -> None:
    distance_m = stand_off.stand_off_m(line_m, strap_m)
    assert stand_off.stand_off_m(line_m + more, strap_m) >= distance_m
    assert stand_off.stand_off_m(line_m, strap_m + more) >= distance_m


@pytest.mark.parametrize(
    ("rule", "named"),
    [
        *((DistanceRule.ONE_LINE, "line_m"), (DistanceRule.TWO_LINES, "line_m")),
        *((DistanceRule.STRAP_AND_HALF, "strap_m"), (DistanceRule.FOUR_STRAPS, "strap_m")),
    ],
)
def test_a_rule_without_the_length_it_needs_is_refused(rule: DistanceRule, named: str) -> None:
    lengths = {"line_m": 30.0, "strap_m": 9.0} | {named: 0.0}
    with pytest.raises(ValueError, match=named):
        stand_off.stand_off_m(lengths["line_m"], lengths["strap_m"], rule)


def test_with_neither_line_nor_strap_told_twenty_metres_stand() -> None:
    assert stand_off.stand_off_m(0, 0) == 20
    assert stand_off.governing_distance_rule(0, 0) is DistanceRule.TWENTY_METRES


def test_more_than_all_of_the_energy_is_refused() -> None:
    for deed in (energy.thrown_speed_m_per_s, energy.thrown_energy_j):
        with pytest.raises(ValueError, match="share_ratio"):
            deed(1000, 1.0, 0.0, 1.01)


@pytest.mark.parametrize("rule", list(HazardRule)[:3])
def test_the_threshold_itself_is_dangerous_in_any_unit(rule: HazardRule) -> None:
    limit_j = fragments.hazard_energy_j(rule)
    assert fragments.is_hazardous(limit_j, rule)
    assert fragments.is_hazardous(limit_j * (1 - 1e-12), rule)
    assert not fragments.is_hazardous(limit_j * (1 - 1e-6), rule)
