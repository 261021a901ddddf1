"""The kinetic pull: worked numbers, a step-by-step run of the same pull, and the direction of every effect."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import snatch

KGF = 9.80665
drives_n = st.floats(0.0, 30e3)
stiffnesses = st.floats(5e3, 300e3)
masses_kg = st.floats(800.0, 8000.0)
speeds = st.floats(0.0, 8.0)


def kmh(speed: float) -> float:
    return speed / 3.6


# Calculated apart by solving the equation of motion: mass kg, stiffness kN/m, speed km/h, peak kN
@pytest.mark.parametrize(
    ("mass_kg", "stiffness", "speed", "peak_kn"), [(2500, 43.585, 10, 28.996), (2000, 43.585, 8, 20.748)]
)
def test_a_pull_on_an_anchor_without_drive(mass_kg: float, stiffness: float, speed: float, peak_kn: float) -> None:
    peak_n = snatch.anchored_peak_n(0, stiffness * 1e3, mass_kg, kmh(speed))
    assert peak_n / 1e3 == pytest.approx(peak_kn, abs=0.00051)


# Calculated apart: 8,000 kgf strap, 9 m, stretch at break, stiffness kN/m
@pytest.mark.parametrize(("stretch", "kn_per_m"), [(0.20, 43.59), (0.25, 34.87), (0.30, 29.06)])
def test_the_stiffness_of_an_8000_kg_strap(stretch: float, kn_per_m: float) -> None:
    stiffness = snatch.strap_stiffness_n_per_m(8000 * KGF, stretch, 9.0)
    assert stiffness / 1e3 == pytest.approx(kn_per_m, abs=0.0051)


# Calculated apart: 43.585 kN/m, force kN, energy kJ
@pytest.mark.parametrize(("force_kn", "energy_kj"), [(20, 4.59), (30, 10.32), (40, 18.35), (58, 38.6), (78.45, 70.6)])
def test_the_energy_in_the_strap(force_kn: float, energy_kj: float) -> None:
    energy_j = snatch.stored_energy_j(force_kn * 1e3, 43.585e3)
    assert energy_j / 1e3 == pytest.approx(energy_kj, abs=0.051 if energy_kj > 20 else 0.0051)


def test_from_a_stand_the_drive_counts_twice() -> None:
    assert snatch.anchored_peak_n(8e3, 40e3, 2500, 0) == pytest.approx(16e3)


def test_a_step_by_step_run_reaches_the_same_peak() -> None:
    drive_n, stiffness, mass_kg, speed, step_s = 8e3, 39.227e3, 2800.0, kmh(12), 1e-5
    stretch_m, peak_n = 0.0, 0.0
    while speed > 0:
        speed += (drive_n - stiffness * stretch_m) / mass_kg * step_s
        stretch_m += speed * step_s
        peak_n = max(peak_n, stiffness * stretch_m)
    assert snatch.anchored_peak_n(drive_n, stiffness, mass_kg, kmh(12)) == pytest.approx(peak_n, rel=1e-4)


# Calculated apart: strap n times the vehicle's weight, stretch e at break, 9 m, 10 km/h: peak as a share of MBS
@pytest.mark.parametrize(("n", "e", "share"), [(2, 0.2, 0.468), (3, 0.2, 0.382), (2.5, 0.12, 0.540), (2, 0.3, 0.382)])
def test_the_share_of_the_strap_does_not_depend_on_the_vehicle(n: float, e: float, share: float) -> None:
    for mass_kg in (1500.0, 4200.0):
        breaking_n = n * mass_kg * KGF
        stiffness = snatch.strap_stiffness_n_per_m(breaking_n, e, 9.0)
        assert snatch.anchored_peak_n(0, stiffness, mass_kg, kmh(10)) / breaking_n == pytest.approx(share, abs=0.00051)


@given(drives_n, stiffnesses, masses_kg, speeds)
def test_no_energy_is_lost_or_made(drive_n: float, stiffness: float, mass_kg: float, speed: float) -> None:
    peak_n = snatch.anchored_peak_n(drive_n, stiffness, mass_kg, speed)
    put_in_j = mass_kg * speed**2 / 2 + drive_n * peak_n / stiffness
    assert snatch.stored_energy_j(peak_n, stiffness) == pytest.approx(put_in_j, rel=1e-9, abs=1e-9)


@given(drives_n, stiffnesses, masses_kg, speeds, st.floats(1.0, 2.0))
def test_faster_heavier_stiffer_or_more_drive_never_pulls_less(
    drive_n: float, stiffness: float, mass_kg: float, speed: float, more: float
) -> None:
    peak_n = snatch.anchored_peak_n(drive_n, stiffness, mass_kg, speed) * (1 - 1e-12)
    assert snatch.anchored_peak_n(drive_n * more, stiffness, mass_kg, speed) >= peak_n
    assert snatch.anchored_peak_n(drive_n, stiffness * more, mass_kg, speed) >= peak_n
    assert snatch.anchored_peak_n(drive_n, stiffness, mass_kg * more, speed) >= peak_n
    assert snatch.anchored_peak_n(drive_n, stiffness, mass_kg, speed * more) >= peak_n


@given(st.floats(10e3, 300e3), st.floats(0.05, 0.4), st.floats(0.05, 0.4), st.floats(2.0, 30.0))
def test_a_strap_worn_stiff_never_pulls_more_gently(
    breaking_n: float, one: float, other: float, length_m: float
) -> None:
    stiff, stretchy = sorted((one, other))
    worn = snatch.strap_stiffness_n_per_m(breaking_n, stiff, length_m)
    assert worn >= snatch.strap_stiffness_n_per_m(breaking_n, stretchy, length_m)


@given(stiffnesses, masses_kg, st.floats(0.1, 8.0))
def test_four_times_the_stiffness_doubles_the_peak_without_drive(
    stiffness: float, mass_kg: float, speed: float
) -> None:
    peak_n = snatch.anchored_peak_n(0, stiffness, mass_kg, speed)
    assert snatch.anchored_peak_n(0, 4 * stiffness, mass_kg, speed) == pytest.approx(2 * peak_n)
    assert math.isclose(peak_n, speed * math.sqrt(stiffness * mass_kg))
