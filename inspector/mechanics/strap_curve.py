"""A strap that grows stiffer as it stretches: pull as a power of the stretch, ending at the breaking strength.

A linear strap is slightly safe below about 12 km/h and unsafe above about 15 km/h for a strap that stiffens, so the
bound takes the worst of three curves.
"""

import math

from inspector.mechanics import checked

LEAST_POWER = 1.0
MOST_POWER = 3.0
BOUND_POWERS = (1.0, 1.5, 2.0)
_STEPS = 200


def curve_force_n(stretch_m: float, breaking_n: float, breaking_stretch_m: float, power_factor: float) -> float:
    """The pull in a strap that stiffens.

    Formula: F = Fb (x / xb)^p, xb the stretch at break
    Valid: x >= 0; Fb, xb > 0; 1 <= p <= 3, p = 1 the linear strap; above xb it has broken
    Source: strap_power_law

    >>> round(curve_force_n(0.9, 78453.2, 1.8, 2.0))
    19613
    """
    checked.at_least(0, stretch_m=stretch_m)
    _curve(breaking_n, breaking_stretch_m, power_factor)
    return float(breaking_n * (stretch_m / breaking_stretch_m) ** power_factor)


def curve_stretch_m(force_n: float, breaking_n: float, breaking_stretch_m: float, power_factor: float) -> float:
    """The stretch of a strap that stiffens.

    Formula: x = xb (F / Fb)^(1 / p)
    Valid: F >= 0; Fb, xb > 0; 1 <= p <= 3
    Source: strap_power_law

    >>> round(curve_stretch_m(19613.3, 78453.2, 1.8, 2.0), 6)
    0.9
    """
    checked.at_least(0, force_n=force_n)
    _curve(breaking_n, breaking_stretch_m, power_factor)
    return float(breaking_stretch_m * (force_n / breaking_n) ** (1 / power_factor))


def curve_energy_j(force_n: float, breaking_n: float, breaking_stretch_m: float, power_factor: float) -> float:
    """The energy in a strap that stiffens, under a pull.

    Formula: E = F x / (p + 1); at break Eb = Fb xb / (p + 1)
    Valid: F >= 0; Fb, xb > 0; 1 <= p <= 3
    Source: strap_power_law

    >>> round(curve_energy_j(78453.2, 78453.2, 1.8, 2.0) / 1e3, 1)
    47.1
    """
    stretch_m = curve_stretch_m(force_n, breaking_n, breaking_stretch_m, power_factor)
    return force_n * stretch_m / (power_factor + 1)


def curve_energy_peak_n(energy_j: float, breaking_n: float, breaking_stretch_m: float, power_factor: float) -> float:
    """The pull at which a strap that stiffens has taken up an energy.

    Formula: F = Fb (E / Eb)^(p / (p + 1)), Eb = Fb xb / (p + 1)
    Valid: E >= 0; Fb, xb > 0; 1 <= p <= 3; above Fb it has broken
    Source: strap_power_law

    >>> round(curve_energy_peak_n(9645.0, 78453.2, 1.8, 2.0) / 78453.2, 3)
    0.348
    """
    checked.at_least(0, energy_j=energy_j)
    _curve(breaking_n, breaking_stretch_m, power_factor)
    share = energy_j * (power_factor + 1) / (breaking_n * breaking_stretch_m)
    return float(breaking_n * share ** (power_factor / (power_factor + 1)))


def stiffening_peak_n(
    drive_n: float,
    breaking_n: float,
    breaking_stretch_m: float,
    power_factor: float,
    mass_kg: float,
    speed_m_per_s: float,
) -> float:
    """The peak pull through a strap that stiffens, the bogged vehicle as an anchor, drive kept on.

    Formula: F = Fb y^p, y the positive root of Fb xb y^(p + 1) / (p + 1) - T xb y - m v^2 / 2 = 0
    Valid: T, v >= 0; Fb, xb, m > 0; 1 <= p <= 3; above Fb it has broken
    Source: strap_power_law, balance_of_energy

    >>> round(stiffening_peak_n(0.0, 78453.2, 1.8, 2.0, 2500.0, 20 / 3.6) / 78453.2, 3)
    0.876
    """
    checked.at_least(0, drive_n=drive_n, speed_m_per_s=speed_m_per_s)
    checked.positive(mass_kg=mass_kg)
    _curve(breaking_n, breaking_stretch_m, power_factor)
    drive = drive_n / breaking_n
    energy = mass_kg * speed_m_per_s**2 / (2 * breaking_n * breaking_stretch_m)
    return float(breaking_n * _root(drive, energy, power_factor) ** power_factor)


def strap_bound_peak_n(
    drive_n: float, breaking_n: float, breaking_stretch_m: float, mass_kg: float, speed_m_per_s: float
) -> float:
    """The peak pull to reckon with when the strap's curve is not known: anchored, drive kept on.

    Formula: the greatest F of the curves p = 1, 1.5 and 2
    Valid: T, v >= 0; Fb, xb, m > 0; xb the least credible stretch at break
    Source: strap_power_law, balance_of_energy

    >>> round(strap_bound_peak_n(0.0, 78453.2, 1.8, 2500.0, 10 / 3.6) / 78453.2, 3)
    0.37
    """
    return max(
        stiffening_peak_n(drive_n, breaking_n, breaking_stretch_m, power, mass_kg, speed_m_per_s)
        for power in BOUND_POWERS
    )


def stiffening_speed_m_per_s(
    limit_n: float,
    drive_n: float,
    breaking_n: float,
    breaking_stretch_m: float,
    power_factor: float,
    mass_kg: float,
) -> float:
    """The speed at which the pull through a strap that stiffens just reaches a limit, the bogged vehicle as an anchor.

    Formula: v = sqrt(2 (E(F) - T x(F)) / m), E and x the energy and stretch of the strap at the limit F; 0 where the
        drive alone pulls that much
    Valid: F, T >= 0; Fb, xb, m > 0; 1 <= p <= 3
    Source: strap_power_law, balance_of_energy

    >>> round(stiffening_speed_m_per_s(0.876 * 78453.2, 0.0, 78453.2, 1.8, 2.0, 2500.0) * 3.6, 1)
    20.0
    """
    checked.at_least(0, drive_n=drive_n)
    checked.positive(mass_kg=mass_kg)
    stored_j = curve_energy_j(limit_n, breaking_n, breaking_stretch_m, power_factor)
    driven_j = drive_n * curve_stretch_m(limit_n, breaking_n, breaking_stretch_m, power_factor)
    return math.sqrt(2 * max(stored_j - driven_j, 0.0) / mass_kg)


def _curve(breaking_n: float, breaking_stretch_m: float, power_factor: float) -> None:
    checked.positive(breaking_n=breaking_n, breaking_stretch_m=breaking_stretch_m)
    checked.between(LEAST_POWER, MOST_POWER, power_factor=power_factor)


def _root(drive: float, energy: float, power: float) -> float:
    """y^(p + 1) / (p + 1) - drive y - energy = 0. The left side curves upwards: from above each step lands above."""
    stretch = 2 * max((energy * (power + 1)) ** (1 / (power + 1)), (drive * (power + 1)) ** (1 / power))
    for _ in range(_STEPS if stretch else 0):
        value = stretch ** (power + 1) / (power + 1) - drive * stretch - energy
        step = value / (stretch**power - drive)
        stretch -= step
        if abs(step) <= 1e-15 * stretch:
            break
    return float(stretch)
