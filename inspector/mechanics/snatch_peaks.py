"""The peak of a kinetic pull when the bogged vehicle gives way, and the speeds that lead to a peak. Linear strap.

Each peak lies at or below the one with the bogged vehicle as an anchor, which is what a check sheet should use.
"""

import math

from inspector.mechanics import checked, snatch
from inspector.units import STANDARD_GRAVITY_M_PER_S2


def reduced_mass_kg(towing_kg: float, bogged_kg: float) -> float:
    """The mass that alone would swing on the strap as the two vehicles do.

    Formula: me = m1 m2 / (m1 + m2)
    Valid: m1, m2 > 0
    Source: balance_of_energy

    >>> reduced_mass_kg(2500.0, 2500.0)
    1250.0
    """
    checked.positive(towing_kg=towing_kg, bogged_kg=bogged_kg)
    return towing_kg * (bogged_kg / (towing_kg + bogged_kg))


def free_peak_n(stiffness_n_per_m: float, towing_kg: float, bogged_kg: float, speed_m_per_s: float) -> float:
    """The peak pull between two vehicles that both roll freely.

    Formula: F = v sqrt(k me), me = m1 m2 / (m1 + m2)
    Valid: k, m1, m2 > 0; v >= 0, the difference of the speeds; no ground resistance: never for a bogged vehicle's check
    Source: balance_of_energy

    >>> round(free_peak_n(43585.0, 2500.0, 2500.0, 10 / 3.6) / 1e3, 3)
    20.503
    """
    checked.positive(stiffness_n_per_m=stiffness_n_per_m, towing_kg=towing_kg, bogged_kg=bogged_kg)
    checked.at_least(0, speed_m_per_s=speed_m_per_s)
    return speed_m_per_s * math.sqrt(stiffness_n_per_m * reduced_mass_kg(towing_kg, bogged_kg))


def resisted_peak_n(
    resistance_n: float, stiffness_n_per_m: float, towing_kg: float, bogged_kg: float, speed_m_per_s: float
) -> float:
    """The peak pull on a bogged vehicle that the ground holds with a constant force, towing drive off.

    Formula: F = u1 R + sqrt(k me v^2 - u1 u2 R^2), u1 = m1 / (m1 + m2), u2 = m2 / (m1 + m2); F = v sqrt(k m1) where
        that does not exceed R: it never moves
    Valid: R, v >= 0; k, m1, m2 > 0; R constant once moving (Coulomb)
    Source: balance_of_energy

    >>> round(resisted_peak_n(15e3, 39227.0, 2800.0, 3000.0, 12 / 3.6) / 1e3, 3)
    31.222
    """
    checked.at_least(0, resistance_n=resistance_n)
    free_n = free_peak_n(stiffness_n_per_m, towing_kg, bogged_kg, speed_m_per_s)
    held_n = snatch.anchored_peak_n(0.0, stiffness_n_per_m, towing_kg, speed_m_per_s)
    if held_n <= resistance_n:
        return held_n
    share = towing_kg / (towing_kg + bogged_kg)
    return share * resistance_n + math.sqrt(free_n**2 - share * (1 - share) * resistance_n**2)


def snatch_peak_n(
    drive_n: float,
    resistance_n: float,
    stiffness_n_per_m: float,
    towing_kg: float,
    bogged_kg: float,
    speed_m_per_s: float,
) -> float:
    """The peak pull in general: drive kept on, ground holding the bogged vehicle with a constant force.

    Formula: F = C + sqrt((R - C)^2 + k me v1^2), C = me (R / m2 + T / m1), v1^2 = v^2 + (2 T R - R^2) / (k m1);
        F = T + sqrt(T^2 + k m1 v^2) where that does not exceed R: it never moves
    Valid: T, R, v >= 0; k, m1, m2 > 0; T and R constant through the pull
    Source: balance_of_energy

    >>> round(snatch_peak_n(8e3, 15e3, 39227.0, 2800.0, 3000.0, 12 / 3.6) / 1e3, 3)
    36.916
    """
    checked.positive(bogged_kg=bogged_kg)
    if not is_pulled_loose(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s):
        return snatch.anchored_peak_n(drive_n, stiffness_n_per_m, towing_kg, speed_m_per_s)
    left_n = breakout_n(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s)
    reduced_kg = reduced_mass_kg(towing_kg, bogged_kg)
    centre_n = reduced_kg * (resistance_n / bogged_kg + drive_n / towing_kg)
    return centre_n + math.hypot(resistance_n - centre_n, left_n * math.sqrt(reduced_kg / towing_kg))


def is_pulled_loose(
    drive_n: float, resistance_n: float, stiffness_n_per_m: float, towing_kg: float, speed_m_per_s: float
) -> bool:
    """Whether the bogged vehicle moves at all.

    Formula: T + sqrt(T^2 + k m1 v^2) > R
    Valid: T, R, v >= 0; k, m1 > 0
    Source: balance_of_energy

    >>> is_pulled_loose(0.0, 60e3, 43585.0, 2000.0, 8 / 3.6)
    False
    """
    checked.at_least(0, resistance_n=resistance_n)
    return snatch.anchored_peak_n(drive_n, stiffness_n_per_m, towing_kg, speed_m_per_s) > resistance_n


def breakout_n(
    drive_n: float, resistance_n: float, stiffness_n_per_m: float, towing_kg: float, speed_m_per_s: float
) -> float:
    """What is left of the towing vehicle's run as the bogged one breaks loose, as the pull it alone would still make.

    Formula: v1 sqrt(k m1), v1^2 = v^2 + (2 T R - R^2) / (k m1)
    Valid: T, R, v >= 0; k, m1 > 0; the bogged vehicle must break loose: T + sqrt(T^2 + k m1 v^2) > R
    Source: balance_of_energy

    >>> round(breakout_n(0.0, 15e3, 39227.0, 2800.0, 12 / 3.6) / 1e3, 3)
    31.55
    """
    if not is_pulled_loose(drive_n, resistance_n, stiffness_n_per_m, towing_kg, speed_m_per_s):
        raise ValueError(f"resistance_n must be below the pull on an anchor, or nothing moves, not {resistance_n!r}")
    run_n = speed_m_per_s * math.sqrt(stiffness_n_per_m * towing_kg)
    return math.sqrt(max(run_n**2 + (2 * drive_n - resistance_n) * resistance_n, 0.0))


def greatest_speed_m_per_s(limit_n: float, drive_n: float, stiffness_n_per_m: float, mass_kg: float) -> float:
    """The speed at which the pull on an anchor just reaches a limit.

    Formula: v = sqrt(F (F - 2 T) / (k m))
    Valid: T >= 0; F >= 2 T, for drive kept on pulls twice itself from a stand; k, m > 0
    Source: balance_of_energy

    >>> round(greatest_speed_m_per_s(20.6e3, 0.0, 43585.0, 2000.0) * 3.6, 1)
    7.9
    """
    checked.positive(stiffness_n_per_m=stiffness_n_per_m, mass_kg=mass_kg)
    checked.at_least(0, drive_n=drive_n)
    checked.at_least(2 * drive_n, limit_n=limit_n)
    return math.sqrt(limit_n * (limit_n - 2 * drive_n) / (stiffness_n_per_m * mass_kg))


def slack_speed_m_per_s(acceleration_m_per_s2: float, slack_m: float) -> float:
    """The speed of the towing vehicle as the slack runs out.

    Formula: v = sqrt(2 a s)
    Valid: a, s >= 0; a constant, from a stand
    Source: balance_of_energy

    >>> round(slack_speed_m_per_s(2.0, 2.0) * 3.6, 1)
    10.2
    """
    checked.at_least(0, acceleration_m_per_s2=acceleration_m_per_s2, slack_m=slack_m)
    return math.sqrt(2 * acceleration_m_per_s2 * slack_m)


def breaking_speed_m_per_s(strap_ratio: float, elongation_ratio: float, length_m: float) -> float:
    """The speed that breaks a linear strap on an anchored vehicle, drive off; the vehicle's mass drops out.

    Formula: v_b = sqrt(n g e L), n = MBS / (m1 g)
    Valid: n, e, L > 0
    Source: balance_of_energy

    >>> round(breaking_speed_m_per_s(2.0, 0.20, 9.0) * 3.6, 1)
    21.4
    """
    checked.positive(strap_ratio=strap_ratio, elongation_ratio=elongation_ratio, length_m=length_m)
    return math.sqrt(strap_ratio * STANDARD_GRAVITY_M_PER_S2 * elongation_ratio * length_m)


def peak_share_ratio(strap_ratio: float, elongation_ratio: float, length_m: float, speed_m_per_s: float) -> float:
    """The peak pull as a share of the strap's strength, anchored, drive off.

    Formula: F / MBS = v / sqrt(n g e L), n = MBS / (m1 g)
    Valid: n, e, L > 0; v >= 0; above 1 the strap breaks
    Source: balance_of_energy

    >>> round(peak_share_ratio(2.0, 0.20, 9.0, 10 / 3.6), 3)
    0.468
    """
    checked.at_least(0, speed_m_per_s=speed_m_per_s)
    return speed_m_per_s / breaking_speed_m_per_s(strap_ratio, elongation_ratio, length_m)
