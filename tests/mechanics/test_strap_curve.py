"""Straps that stiffen: energy, limits, and an own integration of the pull."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import snatch, strap_curve
from tests.each import each

STRAP = (78453.2, 1.8)
powers = st.floats(1.0, 3.0)
speeds = st.floats(0.0, 8.0)
drives_n = st.floats(0.0, 40e3)
masses_kg = st.floats(800.0, 8000.0)
straps = st.tuples(st.floats(20e3, 300e3), st.floats(0.3, 6.0))


# Calculated apart: 2,500 kg, power, km/h, share of the strength
@each(
    ("power", "kmh", "share"),
    [
        (1, 10, 0.370),
        (1.5, 10, 0.346),
        (2, 10, 0.348),
        (1.5, 15, 0.563),
        (2, 15, 0.597),
        (1.5, 24, 0.990),
        (2, 24, 1.117),
    ],
)
def test_shares_of_the_strength(power: float, kmh: float, share: float) -> None:
    peak_n = strap_curve.stiffening_peak_n(0, *STRAP, power, 2500, kmh / 3.6)
    assert peak_n / STRAP[0] == pytest.approx(share, abs=0.00051)


@pytest.mark.parametrize(("power", "energy_kj"), [(1, 70.6), (1.5, 56.5), (2, 47.1)])
def test_the_energy_at_break(power: float, energy_kj: float) -> None:
    assert strap_curve.curve_energy_j(STRAP[0], *STRAP, power) / 1e3 == pytest.approx(energy_kj, abs=0.051)


@given(drives_n, straps, masses_kg, speeds)
def test_of_the_first_power_it_is_the_linear_strap(
    drive_n: float, strap: tuple[float, float], mass_kg: float, speed: float
) -> None:
    linear_n = snatch.anchored_peak_n(drive_n, strap[0] / strap[1], mass_kg, speed)
    assert strap_curve.stiffening_peak_n(drive_n, *strap, 1.0, mass_kg, speed) == pytest.approx(linear_n, abs=1e-6)


@given(drives_n, straps, powers, masses_kg, speeds)
def test_no_energy_is_lost_or_made(
    drive_n: float, strap: tuple[float, float], power: float, mass_kg: float, speed: float
) -> None:
    peak_n = strap_curve.stiffening_peak_n(drive_n, *strap, power, mass_kg, speed)
    put_in_j = mass_kg * speed**2 / 2 + drive_n * strap_curve.curve_stretch_m(peak_n, *strap, power)
    stored_j = strap_curve.curve_energy_j(peak_n, *strap, power)
    assert stored_j == pytest.approx(put_in_j, rel=1e-9, abs=1e-9)
    if drive_n == 0:
        assert strap_curve.curve_energy_peak_n(stored_j, *strap, power) == pytest.approx(peak_n, rel=1e-9, abs=1e-9)


@given(drives_n, straps, powers, masses_kg, speeds, st.floats(1.0, 2.0))
def test_faster_heavier_or_more_drive_never_pulls_less(
    drive_n: float, strap: tuple[float, float], power: float, mass_kg: float, speed: float, more: float
) -> None:
    peak_n = strap_curve.stiffening_peak_n(drive_n, *strap, power, mass_kg, speed) * (1 - 1e-9)
    assert strap_curve.stiffening_peak_n(drive_n * more, *strap, power, mass_kg, speed) >= peak_n
    assert strap_curve.stiffening_peak_n(drive_n, *strap, power, mass_kg * more, speed) >= peak_n
    assert strap_curve.stiffening_peak_n(drive_n, *strap, power, mass_kg, speed * more) >= peak_n
    bound_n = strap_curve.strap_bound_peak_n(drive_n, *strap, mass_kg, speed)
    assert strap_curve.strap_bound_peak_n(drive_n, *strap, mass_kg, speed * more) >= bound_n * (1 - 1e-9)


@given(straps, powers, st.floats(0.0, 1.2))
def test_stretch_and_pull_answer_each_other(strap: tuple[float, float], power: float, share: float) -> None:
    stretch_m = share * strap[1]
    pull_n = strap_curve.curve_force_n(stretch_m, *strap, power)
    assert strap_curve.curve_stretch_m(pull_n, *strap, power) == pytest.approx(stretch_m, abs=1e-9)
    assert strap_curve.curve_force_n(strap[1], *strap, power) == pytest.approx(strap[0])


def test_a_vehicle_that_stands_and_does_not_drive_pulls_nothing() -> None:
    assert strap_curve.stiffening_peak_n(0, *STRAP, 2, 2500, 0) == 0


def test_drive_alone_pulls_more_than_twice_itself_when_the_strap_stiffens() -> None:
    found = [strap_curve.stiffening_peak_n(8e3, *STRAP, power, 2500, 0) / 8e3 for power in (1, 2, 3)]
    assert found == pytest.approx([2, 3, 4])


def test_an_own_integration_reaches_the_same_peak() -> None:
    """Mid-step rule, strap of power 1.5, drive kept on."""
    drive_n, mass_kg, step_s = 8e3, 2500.0, 1e-5
    stretch_m, speed = 0.0, 10 / 3.6
    while speed > 0:
        half_m = stretch_m + speed * step_s / 2
        gained = (drive_n - STRAP[0] * (half_m / STRAP[1]) ** 1.5) / mass_kg * step_s
        stretch_m, speed = stretch_m + (speed + gained / 2) * step_s, speed + gained
    peak_n = STRAP[0] * (stretch_m / STRAP[1]) ** 1.5
    assert strap_curve.stiffening_peak_n(drive_n, *STRAP, 1.5, mass_kg, 10 / 3.6) == pytest.approx(peak_n, rel=1e-6)


@pytest.mark.parametrize("power", [0.99, 3.01])
def test_a_power_outside_the_range_is_refused(power: float) -> None:
    with pytest.raises(ValueError, match="power_factor"):
        strap_curve.stiffening_peak_n(0, *STRAP, power, 2500, 3)
