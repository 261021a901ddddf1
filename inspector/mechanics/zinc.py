"""Galvanising: how thick the zinc is when new, and how long it lasts in open air.

The inside of a tube is often bare even where the outside is galvanised.
"""

import math

from inspector.mechanics import checked
from inspector.mechanics.atmosphere import Corrosivity, Metal, first_year_least_m, first_year_most_m

# ISO 1461:2009 table 3, articles not centrifuged: from this steel thickness up, least local and least mean zinc
_ABOVE_M = (6.0e-3, 3.0e-3, 1.5e-3, 0.0)
_LOCAL_M = (70e-6, 55e-6, 45e-6, 35e-6)
_MEAN_M = (85e-6, 70e-6, 55e-6, 45e-6)


def least_local_zinc_m(steel_m: float) -> float:
    """The least zinc at any one place of a galvanised part when new, by the thickness of its steel.

    Formula: 70 um above 6 mm, 55 um above 3 mm, 45 um above 1.5 mm, else 35 um
    Valid: steel > 0; dipped, not centrifuged
    Source: iso_1461 – copies differ on exactly 1.5 mm; the thinner zinc stands here

    >>> round(least_local_zinc_m(0.004) * 1e6)
    55
    """
    return _tabulated_m(steel_m, _LOCAL_M)


def least_mean_zinc_m(steel_m: float) -> float:
    """The least mean zinc of a galvanised part when new, by the thickness of its steel.

    Formula: 85 um above 6 mm, 70 um above 3 mm, 55 um above 1.5 mm, else 45 um
    Valid: steel > 0; dipped, not centrifuged
    Source: iso_1461 – copies differ on exactly 1.5 mm; the thinner zinc stands here

    >>> round(least_mean_zinc_m(0.004) * 1e6)
    70
    """
    return _tabulated_m(steel_m, _MEAN_M)


def zinc_life_years(zinc_m: float, rate_m_per_year: float) -> float:
    """Years until the zinc is gone at a constant rate; endless when nothing is lost.

    Formula: life = thickness / rate
    Valid: thickness and rate >= 0
    Source: iso_1461 – its annex E: life is about proportional to thickness

    >>> round(zinc_life_years(85e-6, 4.2e-6), 1)
    20.2
    """
    checked.at_least(0, zinc_m=zinc_m, rate_m_per_year=rate_m_per_year)
    if zinc_m == 0:
        return 0.0
    return zinc_m / rate_m_per_year if rate_m_per_year > 0 else math.inf


def least_zinc_life_years(zinc_m: float, category: Corrosivity) -> float:
    """The shortest life of the zinc in a class of air: at the upper bound of its rate. Reckon with this one.

    Formula: life = thickness / r_most
    Valid: thickness >= 0; open air, the first-year rate kept up
    Source: iso_14713_life, iso_9223

    >>> round(least_zinc_life_years(85e-6, Corrosivity.C5))
    10
    """
    return zinc_life_years(zinc_m, first_year_most_m(category, Metal.ZINC))


def most_zinc_life_years(zinc_m: float, category: Corrosivity) -> float:
    """The longest life of the zinc in a class of air: at the lower bound of its rate; endless in C1.

    Formula: life = thickness / r_least
    Valid: thickness >= 0; open air
    Source: iso_14713_life, iso_9223

    >>> round(most_zinc_life_years(85e-6, Corrosivity.C5))
    20
    """
    return zinc_life_years(zinc_m, first_year_least_m(category, Metal.ZINC))


def _tabulated_m(steel_m: float, row_m: tuple[float, ...]) -> float:
    checked.positive(steel_m=steel_m)
    relied_m = steel_m / (1 + checked.SAME_RATIO)
    return next(zinc for above_m, zinc in zip(_ABOVE_M, row_m, strict=True) if relied_m > above_m)
