"""Wall loss: rates from readings, remaining life, the next reading, and open-air loss. Years are of 365.25 days.

The arithmetic of rates and lives is that of API 510 for pressure vessels, used on gear by analogy only.
"""

import math
from collections.abc import Sequence

from inspector.mechanics import checked

LAW_YEARS = 20.0  # ISO 9224: the power law runs to 20 years


def long_term_rate_m_per_year(initial_wall_m: float, wall_m: float, years: float) -> float:
    """Long-term rate of wall loss, from new to now; a wall that reads thicker than new has lost nothing (0).

    Formula: rate (LT) = (t_initial - t_actual) / years
    Valid: walls >= 0, years > 0
    Source: api_510

    >>> round(long_term_rate_m_per_year(0.00780, 0.00324, 15) * 1e3, 3)
    0.304
    """
    return _rate_m_per_year(initial_wall_m, wall_m, years)


def short_term_rate_m_per_year(previous_wall_m: float, wall_m: float, years: float) -> float:
    """Short-term rate of wall loss, from the last reading to now; a wall that reads thicker has lost nothing (0).

    Formula: rate (ST) = (t_previous - t_actual) / years
    Valid: walls >= 0, years > 0
    Source: api_510

    >>> round(short_term_rate_m_per_year(0.0040, 0.0037, 2) * 1e3, 3)
    0.15
    """
    return _rate_m_per_year(previous_wall_m, wall_m, years)


def governing_rate_m_per_year(rates_m_per_year: Sequence[float]) -> float:
    """The rate to reckon with: the greatest of those that are known.

    Formula: rate = max(rate (LT), rate (ST), ...)
    Valid: at least one rate, each >= 0
    Source: api_510

    >>> governing_rate_m_per_year([0.00010, 0.00015])
    0.00015
    """
    if not rates_m_per_year:
        raise ValueError("rates_m_per_year must hold at least one rate")
    for rate_m_per_year in rates_m_per_year:
        checked.at_least(0, rate_m_per_year=rate_m_per_year)
    return max(rates_m_per_year)


def remaining_life_years(wall_m: float, required_m: float, rate_m_per_year: float) -> float:
    """Years until the wall is down to the required one; 0 from there down, endless when nothing is lost.

    Formula: RL = (t_actual - t_required) / rate
    Valid: wall, required wall and rate >= 0
    Source: api_510

    >>> round(remaining_life_years(0.0050, 0.0030, 0.0004), 6)
    5.0
    """
    checked.at_least(0, wall_m=wall_m, required_m=required_m, rate_m_per_year=rate_m_per_year)
    if wall_m <= required_m * (1 + checked.SAME_RATIO):
        return 0.0
    return (wall_m - required_m) / rate_m_per_year if rate_m_per_year > 0 else math.inf


def half_life_interval_years(life_years: float, cap_years: float) -> float:
    """Years to the next reading: half the remaining life, at most the cap (10 years in API 510).

    Formula: interval = min(RL / 2, cap)
    Valid: RL >= 0, endless allowed; cap > 0
    Source: api_510

    >>> half_life_interval_years(9.0, 10.0)
    4.5
    """
    checked.between(0, math.inf, life_years=life_years)
    checked.positive(cap_years=cap_years)
    return min(life_years / 2, cap_years)


def atmospheric_loss_m(first_year_rate_m: float, years: float, exponent_ratio: float) -> float:
    """Loss of one face in open air: a power law for 20 years, then along its tangent.

    Formula: D = r t^b to 20 years; D = r [20^b + b 20^(b-1) (t - 20)] beyond; r the loss of the first year
    Valid: r >= 0, t >= 0, 0 < b <= 1; even attack in open air only, not inside a tube packed with salt and mud
    Source: iso_9224 – b of carbon steel 0.523, conservative 0.575; the tangent from memory

    >>> round(atmospheric_loss_m(80e-6, 10, 0.523) * 1e6)
    267
    """
    checked.at_least(0, first_year_rate_m=first_year_rate_m, years=years)
    checked.positive(exponent_ratio=exponent_ratio)
    checked.between(0, 1, exponent_ratio=exponent_ratio)
    within_law_years = min(years, LAW_YEARS)
    beyond_law_years = years - within_law_years
    slope = exponent_ratio * math.pow(LAW_YEARS, exponent_ratio - 1)
    return first_year_rate_m * (math.pow(within_law_years, exponent_ratio) + slope * beyond_law_years)


def estimated_wall_m(wall_m: float, rate_m_per_year: float, years: float) -> float:
    """The wall after some years at a constant rate; never less than none.

    Formula: t = max(t_0 - rate years, 0), the remaining-life formula turned round
    Valid: wall, rate and years >= 0
    Source: api_510

    >>> round(estimated_wall_m(0.004, 0.0003, 5) * 1e3, 3)
    2.5
    """
    checked.at_least(0, wall_m=wall_m, rate_m_per_year=rate_m_per_year, years=years)
    return max(wall_m - rate_m_per_year * years, 0.0)


def _rate_m_per_year(earlier_wall_m: float, wall_m: float, years: float) -> float:
    checked.at_least(0, earlier_wall_m=earlier_wall_m, wall_m=wall_m)
    checked.positive(years=years)
    return max(earlier_wall_m - wall_m, 0.0) / years
