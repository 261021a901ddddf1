"""What the energy of a loaded line can throw. All of it counts as motion unless a source says less."""

import math

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2


def kinetic_energy_j(mass_kg: float, speed_m_per_s: float) -> float:
    """The energy of a moving part.

    Formula: E = m v^2 / 2
    Valid: m, v >= 0
    Source: balance_of_energy

    >>> kinetic_energy_j(2.0, 10.0)
    100.0
    """
    checked.at_least(0, mass_kg=mass_kg, speed_m_per_s=speed_m_per_s)
    return mass_kg * speed_m_per_s**2 / 2


def speed_of_energy_m_per_s(mass_kg: float, energy_j: float) -> float:
    """The speed at which a part carries an energy.

    Formula: v = sqrt(2 E / m)
    Valid: m > 0; E >= 0
    Source: balance_of_energy

    >>> round(speed_of_energy_m_per_s(0.8, 79.0), 1)
    14.1
    """
    checked.positive(mass_kg=mass_kg)
    checked.at_least(0, energy_j=energy_j)
    return math.sqrt(2 * energy_j / mass_kg)


def thrown_speed_m_per_s(energy_j: float, part_kg: float, strap_kg: float = 0.0, share_ratio: float = 1.0) -> float:
    """The speed of a part that tears off and is thrown by the line.

    Formula: v = sqrt(2 h E / (M + m_strap / 3)), h the share of the energy that becomes motion
    Valid: E >= 0; M > 0; m_strap >= 0; 0 <= h <= 1; without a source for less, h = 1 and m_strap = 0: the bound
    Source: balance_of_energy – a film study of lines measured the share; its figures were not seen

    >>> round(thrown_speed_m_per_s(18355.0, 0.8, 2.5, 0.25))
    75
    """
    checked.at_least(0, energy_j=energy_j, strap_kg=strap_kg)
    checked.positive(part_kg=part_kg)
    checked.between(0, 1, share_ratio=share_ratio)
    return math.sqrt(2 * share_ratio * energy_j / (part_kg + strap_kg / 3))


def thrown_energy_j(energy_j: float, part_kg: float, strap_kg: float = 0.0, share_ratio: float = 1.0) -> float:
    """The energy that goes with a part thrown by the line; the rest stays in the strap that flies with it.

    Formula: E_part = h E M / (M + m_strap / 3)
    Valid: E >= 0; M > 0; m_strap >= 0; 0 <= h <= 1; without a source for less, h = 1 and m_strap = 0: the bound
    Source: balance_of_energy

    >>> round(thrown_energy_j(18355.0, 0.8, 2.5, 0.25) / 1e3, 1)
    2.2
    """
    return kinetic_energy_j(part_kg, thrown_speed_m_per_s(energy_j, part_kg, strap_kg, share_ratio))


def bare_end_speed_m_per_s(force_n: float, stiffness_n_per_m: float, strap_kg: float) -> float:
    """The speed of the free end of a strap that parts, nothing tied to it.

    Formula: v = F / sqrt(k m_strap)
    Valid: F >= 0; k, m_strap > 0; no air drag
    Source: balance_of_energy, tb_55_snap_back – the towing manual says up to 500 mph (224 m/s), of the same order

    >>> round(bare_end_speed_m_per_s(58e3, 43585.0, 2.5))
    176
    """
    checked.at_least(0, force_n=force_n)
    checked.positive(stiffness_n_per_m=stiffness_n_per_m, strap_kg=strap_kg)
    return force_n / math.sqrt(stiffness_n_per_m * strap_kg)


def throw_range_m(speed_m_per_s: float) -> float:
    """How far a thrown part can fly.

    Formula: R = v^2 / g, thrown at 45 degrees
    Valid: v >= 0; level ground, no air drag: an upper bound
    Source: balance_of_energy

    >>> round(throw_range_m(51.9))
    275
    """
    checked.at_least(0, speed_m_per_s=speed_m_per_s)
    return speed_m_per_s**2 / STANDARD_GRAVITY_M_PER_S2


def least_throw_speed_m_per_s(range_m: float) -> float:
    """The least speed with which a part can have flown a distance.

    Formula: v = sqrt(g R)
    Valid: R >= 0; level ground, no air drag: a lower bound
    Source: balance_of_energy

    >>> round(least_throw_speed_m_per_s(274.32), 1)
    51.9
    """
    checked.at_least(0, range_m=range_m)
    return math.sqrt(STANDARD_GRAVITY_M_PER_S2 * range_m)


def least_throw_energy_j(mass_kg: float, range_m: float) -> float:
    """The least energy with which a part can have flown a distance.

    Formula: E = m g R / 2
    Valid: m, R >= 0; level ground, no air drag: a lower bound
    Source: balance_of_energy

    >>> round(least_throw_energy_j(90.718, 274.32) / 1e3)
    122
    """
    return kinetic_energy_j(mass_kg, least_throw_speed_m_per_s(range_m))
