"""How stiff a strap or rope is, from what is quoted of it: stretch at part of its strength, axial stiffness, a test."""

from collections.abc import Sequence

from inspector.mechanics import checked

NYLON_AXIAL_FACTOR = 3.54  # AE over mean breaking strength, double-braid nylon, dry, cyclic


def stiffness_at_share_n_per_m(
    breaking_n: float, share_ratio: float, elongation_ratio: float, length_m: float
) -> float:
    """The stiffness of a strap whose stretch is quoted at a part of its breaking strength.

    Formula: k = s MBS / (e L), e the stretch at the pull s MBS
    Valid: MBS, e, L > 0; 0 < s <= 1; where s is not told take 1: the stiffer strap pulls harder
    Source: hooke_law

    >>> round(stiffness_at_share_n_per_m(78453.2, 0.5, 0.20, 9.0))
    21793
    """
    checked.positive(breaking_n=breaking_n, share_ratio=share_ratio)
    checked.positive(elongation_ratio=elongation_ratio, length_m=length_m)
    checked.between(0, 1, share_ratio=share_ratio)
    return share_ratio * breaking_n / (elongation_ratio * length_m)


def series_stiffness_n_per_m(stiffnesses_n_per_m: Sequence[float]) -> float:
    """The stiffness of straps joined end to end.

    Formula: 1 / k = 1 / k1 + 1 / k2 + ...
    Valid: at least one strap, each k > 0; two like straps halve k and lower the peak by 29 %
    Source: hooke_law

    >>> round(series_stiffness_n_per_m([1200.0, 1800.0]), 6)
    720.0
    """
    if not stiffnesses_n_per_m:
        raise ValueError("stiffnesses_n_per_m must hold at least one strap")
    for stiffness_n_per_m in stiffnesses_n_per_m:
        checked.positive(stiffnesses_n_per_m=stiffness_n_per_m)
    return 1 / sum(1 / stiffness_n_per_m for stiffness_n_per_m in stiffnesses_n_per_m)


def nylon_axial_n(breaking_n: float) -> float:
    """The pull per unit of stretch of double-braid nylon rope, dry and cyclically loaded.

    Formula: AE = 3.54 MBS
    Valid: MBS > 0; a straight line through a strongly bent curve: 28 % at break if it were straight
    Source: ufc_nylon_stiffness – the row of 1.8 in prints 417.0 kips, a slip for 389.4

    >>> round(nylon_axial_n(100e3))
    354000
    """
    checked.positive(breaking_n=breaking_n)
    return NYLON_AXIAL_FACTOR * breaking_n


def axial_stiffness_n_per_m(axial_n: float, length_m: float) -> float:
    """The stiffness of a length of rope from its axial stiffness.

    Formula: k = AE / L
    Valid: AE, L > 0
    Source: hooke_law

    >>> axial_stiffness_n_per_m(360e3, 9.0)
    40000.0
    """
    checked.positive(axial_n=axial_n, length_m=length_m)
    return axial_n / length_m


def stopping_stiffness_n_per_m(mass_kg: float, speed_m_per_s: float, stretch_m: float) -> float:
    """The stiffness found from a run that a stretch brought to a stand.

    Formula: k = m v^2 / x^2
    Valid: m, v, x > 0; drive off, the far end held
    Source: balance_of_energy

    >>> round(stopping_stiffness_n_per_m(35e3, 0.2, 0.12))
    97222
    """
    checked.positive(mass_kg=mass_kg, speed_m_per_s=speed_m_per_s, stretch_m=stretch_m)
    return mass_kg * (speed_m_per_s / stretch_m) ** 2
