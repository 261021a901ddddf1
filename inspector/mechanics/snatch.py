"""The kinetic pull: a towing vehicle brought up by a stretching strap. Strap massless, linear, undamped.

The linear strap is slightly safe below about 12 km/h and falls short above about 15 km/h for webbing that stiffens.
"""

import math

from inspector.mechanics import checked


def strap_stiffness_n_per_m(breaking_n: float, elongation_ratio: float, length_m: float) -> float:
    """The stiffness of a strap whose stretch is quoted at its breaking strength.

    Formula: k = MBS / (e L), e the stretch at MBS as a share of the length L
    Valid: MBS, e, L > 0; take the marked MBS and the least credible stretch: a worn strap is stiffer, never softer
    Source: hooke_law

    >>> round(strap_stiffness_n_per_m(78453.2, 0.20, 9.0))
    43585
    """
    checked.positive(breaking_n=breaking_n, elongation_ratio=elongation_ratio, length_m=length_m)
    return breaking_n / (elongation_ratio * length_m)


def anchored_peak_n(drive_n: float, stiffness_n_per_m: float, mass_kg: float, speed_m_per_s: float) -> float:
    """The peak pull when the bogged vehicle holds like an anchor and the towing one keeps its drive on: the safe bound.

    Formula: F = T + sqrt(T^2 + k m v^2), from m v^2 / 2 + T x = k x^2 / 2 and F = k x
    Valid: T, v >= 0; k, m > 0; v the speed as the strap comes taut; an upper bound for a vehicle that gives way
    Source: balance_of_energy

    >>> round(anchored_peak_n(0.0, 43585.0, 2500.0, 10 / 3.6) / 1e3, 3)
    28.996
    """
    checked.at_least(0, drive_n=drive_n, speed_m_per_s=speed_m_per_s)
    checked.positive(stiffness_n_per_m=stiffness_n_per_m, mass_kg=mass_kg)
    return drive_n + math.hypot(drive_n, speed_m_per_s * math.sqrt(stiffness_n_per_m * mass_kg))


def stored_energy_j(force_n: float, stiffness_n_per_m: float) -> float:
    """The energy in a linear strap under a pull.

    Formula: E = F^2 / (2 k) = F x / 2
    Valid: F >= 0; k > 0
    Source: hooke_law

    >>> round(stored_energy_j(40e3, 43585.0) / 1e3, 2)
    18.35
    """
    checked.at_least(0, force_n=force_n)
    checked.positive(stiffness_n_per_m=stiffness_n_per_m)
    return force_n**2 / (2 * stiffness_n_per_m)
