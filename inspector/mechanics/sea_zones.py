"""Steel wet with water or earth: tabulated losses of piles, and published rates in the splash zone, one face.

Tables for piles in a temperate climate, used on a wet tube by analogy. The published rates disagree by a factor of ten.
"""

from enum import StrEnum
from itertools import pairwise

from inspector.mechanics import checked


class Exposure(StrEnum):
    """What the face stands in."""

    NATURAL_SOIL = "natural soil"
    POLLUTED_SOIL = "polluted soil"
    AGGRESSIVE_SOIL = "aggressive soil"
    LOOSE_FILL = "loose fill"
    AGGRESSIVE_FILL = "aggressive fill"
    FRESH_WATER = "fresh water"
    POLLUTED_WATER = "polluted water"
    SPLASH = "splash"
    IMMERSED = "immersed"


class SplashRate(StrEnum):
    """A published rate in the splash or tidal zone, by name."""

    WORST_TIDAL = "worst tidal"
    TROPICAL_ALLOWANCE = "tropical allowance"
    OFFSHORE_WARM = "offshore warm"
    OFFSHORE_TEMPERATE = "offshore temperate"
    MARINE_HIGH = "marine high"
    TROPICAL_PROPOSED = "tropical proposed"
    EN_EARLY = "en early"
    BS_MEAN = "bs mean"
    EN_LATER = "en later"
    COLD_REGIONS = "cold regions"
    MARINE_LOW = "marine low"


_COLUMNS_YEARS = (0.0, 5.0, 25.0, 50.0, 75.0, 100.0, 125.0)
_LOSS_M: dict[Exposure, tuple[float, ...]] = {
    Exposure.NATURAL_SOIL: (0.0, 0.0, 0.30e-3, 0.60e-3, 0.90e-3, 1.20e-3, 1.50e-3),
    Exposure.POLLUTED_SOIL: (0.0, 0.15e-3, 0.75e-3, 1.50e-3, 2.25e-3, 3.00e-3, 3.75e-3),
    Exposure.AGGRESSIVE_SOIL: (0.0, 0.20e-3, 1.00e-3, 1.75e-3, 2.50e-3, 3.25e-3, 4.00e-3),
    Exposure.LOOSE_FILL: (0.0, 0.18e-3, 0.70e-3, 1.20e-3, 1.70e-3, 2.20e-3, 2.70e-3),
    Exposure.AGGRESSIVE_FILL: (0.0, 0.50e-3, 2.00e-3, 3.25e-3, 4.50e-3, 5.75e-3, 7.00e-3),
    Exposure.FRESH_WATER: (0.0, 0.15e-3, 0.55e-3, 0.90e-3, 1.15e-3, 1.40e-3),
    Exposure.POLLUTED_WATER: (0.0, 0.30e-3, 1.30e-3, 2.30e-3, 3.30e-3, 4.30e-3),
    Exposure.SPLASH: (0.0, 0.55e-3, 1.90e-3, 3.75e-3, 5.60e-3, 7.50e-3),
    Exposure.IMMERSED: (0.0, 0.25e-3, 0.90e-3, 1.75e-3, 2.60e-3, 3.50e-3),
}
_SPLASH_M_PER_YEAR: dict[SplashRate, float] = {
    SplashRate.WORST_TIDAL: 1.30e-3,  # US Navy P-1010: 0.704 to 0.500 in over 4 years
    SplashRate.TROPICAL_ALLOWANCE: 0.40e-3,  # Shiou Ting et al. 2013: 12 mm in 30 years
    SplashRate.OFFSHORE_WARM: 0.40e-3,  # offshore wind practice, from memory
    SplashRate.OFFSHORE_TEMPERATE: 0.30e-3,  # offshore wind practice, from memory
    SplashRate.MARINE_HIGH: 0.25e-3,  # upper end of a US army figure, a web page quotes it
    SplashRate.TROPICAL_PROPOSED: 0.20e-3,  # Shiou Ting et al. 2013
    SplashRate.EN_EARLY: 0.11e-3,  # EN 1993-5: 0.55 mm in the first 5 years
    SplashRate.BS_MEAN: 0.09e-3,  # BS 6349-1-4:2021
    SplashRate.EN_LATER: 0.075e-3,  # EN 1993-5: 7.50 mm in 100 years
    SplashRate.COLD_REGIONS: 0.075e-3,  # LR-03-19 (2003)
    SplashRate.MARINE_LOW: 0.05e-3,  # lower end of the US army figure
}


def tabulated_loss_m(exposure: Exposure, years: float) -> float:
    """Loss of one face of a steel pile in earth or water over the years, even attack, temperate climate.

    Formula: table by 5, 25, 50, 75 and 100 years, straight lines between the columns and down to 0 at year 0
    Valid: 0 to 100 years; soils and fills to 125 years, the column of the UK annex
    Source: en_1993_5_soils, en_1993_5_sea, en_1993_5_fresh – the fresh-water rows from memory

    >>> round(tabulated_loss_m(Exposure.SPLASH, 10) * 1e3, 4)
    0.8875
    """
    losses_m = _LOSS_M[Exposure(exposure)]
    checked.between(0, _COLUMNS_YEARS[len(losses_m) - 1], years=years)
    columns = pairwise(zip(_COLUMNS_YEARS, losses_m, strict=False))
    (from_years, from_m), (to_years, to_m) = next(pair for pair in columns if years <= pair[1][0])
    return from_m + (to_m - from_m) * (years - from_years) / (to_years - from_years)


def splash_rate_m_per_year(published: SplashRate = SplashRate.WORST_TIDAL) -> float:
    """A published rate of loss of one face in salt splash; the largest that was read unless another is named.

    Formula: rate, by name: from 0.05 to 1.30 mm a year
    Valid: the names listed; bare steel, even attack
    Source: navy_p_1010_tidal, tropical_splash, offshore_splash, en_1993_5_sea, bs_6349_1_4, cold_regions_lr_03_19,
        army_marine_rates – they disagree; none was measured in a mud-packed tube

    >>> round(splash_rate_m_per_year(SplashRate.EN_EARLY) * 1e3, 3)
    0.11
    """
    return _SPLASH_M_PER_YEAR[SplashRate(published)]
