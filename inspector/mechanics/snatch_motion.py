"""How a kinetic pull goes on in time: stretch, time to the peak, speed handed over, damping, the strap's own mass."""

import math

from inspector.mechanics import checked, snatch_peaks


def stretch_m(force_n: float, stiffness_n_per_m: float) -> float:
    """How far a linear strap stretches under a pull.

    Formula: x = F / k
    Valid: F >= 0; k > 0
    Source: hooke_law

    >>> round(stretch_m(28.996e3, 43585.0), 3)
    0.665
    """
    checked.at_least(0, force_n=force_n)
    checked.positive(stiffness_n_per_m=stiffness_n_per_m)
    return force_n / stiffness_n_per_m


def peak_time_s(
    drive_n: float,
    resistance_n: float,
    stiffness_n_per_m: float,
    towing_kg: float,
    bogged_kg: float,
    speed_m_per_s: float,
) -> float:
    """The time from the strap coming taut to the peak of the pull.

    Formula: t = t1 + t2, w1 = sqrt(k / m1), w2 = sqrt(k / me);
        t1 = (atan2(R - T, v1 sqrt(k m1)) - atan2(-T, v sqrt(k m1))) / w1;
        t2 = (pi / 2 - atan2(R - C, v1 sqrt(k me))) / w2, C and v1 as for the peak;
        if it never moves (pi / 2 - atan2(-T, v sqrt(k m1))) / w1
    Valid: T, R >= 0; v, k, m1, m2 > 0
    Source: balance_of_energy

    >>> round(peak_time_s(8e3, 15e3, 39227.0, 2800.0, 3000.0, 12 / 3.6), 3)
    0.387
    """
    checked.positive(speed_m_per_s=speed_m_per_s, bogged_kg=bogged_kg)
    loose = snatch_peaks.is_pulled_loose(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s)
    before_s = math.sqrt(towing_kg / stiffness_n_per_m)
    start_rad = math.atan2(-drive_n, speed_m_per_s * math.sqrt(stiffness_n_per_m * towing_kg))
    if not loose:
        return (math.pi / 2 - start_rad) * before_s
    left_n = snatch_peaks.breakout_n(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s)
    held_s = (math.atan2(resistance_n - drive_n, left_n) - start_rad) * before_s
    return held_s + _loose_s(drive_n, resistance_n, stiffness_n_per_m, towing_kg, bogged_kg, left_n)


def pulled_speed_m_per_s(
    drive_n: float,
    resistance_n: float,
    stiffness_n_per_m: float,
    towing_kg: float,
    bogged_kg: float,
    speed_m_per_s: float,
) -> float:
    """The speed of the bogged vehicle at the peak of the pull, which is then that of both.

    Formula: u = (m1 v1 + (T - R) t2) / (m1 + m2), v1 and t2 as for the time to the peak; 0 if it never moves
    Valid: T, R >= 0; v, k, m1, m2 > 0
    Source: balance_of_energy

    >>> round(pulled_speed_m_per_s(8e3, 15e3, 39227.0, 2800.0, 3000.0, 12 / 3.6), 2)
    1.29
    """
    checked.positive(speed_m_per_s=speed_m_per_s, bogged_kg=bogged_kg)
    if not snatch_peaks.is_pulled_loose(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s):
        return 0.0
    left_n = snatch_peaks.breakout_n(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s)
    loose_s = _loose_s(drive_n, resistance_n, stiffness_n_per_m, towing_kg, bogged_kg, left_n)
    run_kg_m_per_s = left_n * math.sqrt(towing_kg / stiffness_n_per_m)
    return max((run_kg_m_per_s + (drive_n - resistance_n) * loose_s) / (towing_kg + bogged_kg), 0.0)


def damped_peak_factor(damping_ratio: float) -> float:
    """How far viscous damping would lower the first peak; shown to a class, never credited.

    Formula: c = exp(-z (pi / 2 - 3 asin z) / sqrt(1 - z^2)), the greatest of spring and damper together
    Valid: 0 <= z <= 0.5, the damping ratio; anchored, drive off; above 0.5 the damper itself pulls hardest at the start
    Source: balance_of_energy – no damping ratio of recovery webbing is published, so no check may use this

    >>> round(damped_peak_factor(0.10), 3)
    0.88
    """
    checked.between(0, 0.5, damping_ratio=damping_ratio)
    lag_rad = math.pi / 2 - 3 * math.asin(damping_ratio)
    return math.exp(-damping_ratio * lag_rad / math.sqrt(1 - damping_ratio**2))


def wave_time_s(strap_kg: float, stiffness_n_per_m: float) -> float:
    """The time a jerk takes from one end of the strap to the other; the strap may count as massless if it is short.

    Formula: t = sqrt(m_strap / k)
    Valid: m_strap, k > 0
    Source: balance_of_energy

    >>> round(wave_time_s(2.5, 43585.0) * 1e3, 1)
    7.6
    """
    checked.positive(strap_kg=strap_kg, stiffness_n_per_m=stiffness_n_per_m)
    return math.sqrt(strap_kg / stiffness_n_per_m)


def _loose_s(
    drive_n: float, resistance_n: float, stiffness_n_per_m: float, towing_kg: float, bogged_kg: float, left_n: float
) -> float:
    """From breaking loose to the peak."""
    reduced_kg = snatch_peaks.reduced_mass_kg(towing_kg, bogged_kg)
    centre_n = reduced_kg * (resistance_n / bogged_kg + drive_n / towing_kg)
    start_rad = math.atan2(resistance_n - centre_n, left_n * math.sqrt(reduced_kg / towing_kg))
    return (math.pi / 2 - start_rad) * math.sqrt(reduced_kg / stiffness_n_per_m)
