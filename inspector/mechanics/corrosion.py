"""Wall loss: rates from readings, remaining life, the next reading, and open-air loss. Years are of 365.25 days.

The arithmetic of rates and lives is that of API 510 for pressure vessels, used on gear by analogy only.
"""

import math
from collections.abc import Sequence

from inspector.mechanics import checked

LAW_YEARS = 20.0


def long_term_rate_m_per_year(initial_wall_m: float, wall_m: float, years: float) -> float:
    """(t_initial - t_actual) / years, in m per year; a wall that reads thicker than new has lost nothing (0).

    Valid for walls >= 0, years > 0. API 510 7.1.1.

    >>> round(long_term_rate_m_per_year(0.00780, 0.00324, 15) * 1e3, 3)
    0.304
    """
    return _rate_m_per_year(initial_wall_m, wall_m, years)


def short_term_rate_m_per_year(previous_wall_m: float, wall_m: float, years: float) -> float:
    """(t_previous - t_actual) / years, in m per year; a wall that reads thicker than last time has lost nothing (0).

    Valid for walls >= 0, years > 0. API 510 7.1.1.

    >>> round(short_term_rate_m_per_year(0.0040, 0.0037, 2) * 1e3, 3)
    0.15
    """
    return _rate_m_per_year(previous_wall_m, wall_m, years)


def governing_rate_m_per_year(rates_m_per_year: Sequence[float]) -> float:
    """max(rates), in m per year; at least one rate, each >= 0. API 510 7.1.1: the greater of long and short term.

    >>> governing_rate_m_per_year([0.00010, 0.00015])
    0.00015
    """
    if not rates_m_per_year:
        raise ValueError("rates_m_per_year must hold at least one rate")
    for rate_m_per_year in rates_m_per_year:
        checked.at_least(0, rate_m_per_year=rate_m_per_year)
    return max(rates_m_per_year)


def remaining_life_years(wall_m: float, required_m: float, rate_m_per_year: float) -> float:
    """RL = (t_actual - t_required) / rate, in years; 0 from the required wall down, infinite when nothing is lost.

    Valid for wall, required wall and rate >= 0. API 510 7.2.1.

    >>> round(remaining_life_years(0.0050, 0.0030, 0.0004), 6)
    5.0
    """
    checked.at_least(0, wall_m=wall_m, required_m=required_m, rate_m_per_year=rate_m_per_year)
    if wall_m <= required_m * (1 + checked.SAME_RATIO):
        return 0.0
    return (wall_m - required_m) / rate_m_per_year if rate_m_per_year > 0 else math.inf


def half_life_interval_years(life_years: float, cap_years: float) -> float:
    """min(RL / 2, cap), in years to the next reading; RL >= 0, infinite allowed; cap > 0.

    API 510 6.4.1, 6.5.1.1 (cap 10 years).

    >>> half_life_interval_years(9.0, 10.0)
    4.5
    """
    checked.between(0, math.inf, life_years=life_years)
    checked.positive(cap_years=cap_years)
    return min(life_years / 2, cap_years)


def atmospheric_loss_m(first_year_rate_m: float, years: float, exponent: float) -> float:
    """D = r t^b up to 20 years, then along the tangent D = r [20^b + b 20^(b-1) (t - 20)], in m for one face.

    r in m lost in the first year; valid for r >= 0, t >= 0, 0 < b <= 1, even attack in open air only. ISO 9224; the
    tangent from memory. b of carbon steel 0.523, conservative 0.575.

    >>> round(atmospheric_loss_m(80e-6, 10, 0.523) * 1e6)
    267
    """
    checked.at_least(0, first_year_rate_m=first_year_rate_m, years=years)
    checked.positive(exponent=exponent)
    checked.between(0, 1, exponent=exponent)
    within_law_years = min(years, LAW_YEARS)
    beyond_law_years = years - within_law_years
    slope = exponent * math.pow(LAW_YEARS, exponent - 1)
    return first_year_rate_m * (math.pow(within_law_years, exponent) + slope * beyond_law_years)


def estimated_wall_m(wall_m: float, rate_m_per_year: float, years: float) -> float:
    """t = max(t0 - rate x years, 0), in m, at a constant rate; all >= 0. API 510 7.2.1, turned round.

    >>> round(estimated_wall_m(0.004, 0.0003, 5) * 1e3, 3)
    2.5
    """
    checked.at_least(0, wall_m=wall_m, rate_m_per_year=rate_m_per_year, years=years)
    return max(wall_m - rate_m_per_year * years, 0.0)


def _rate_m_per_year(earlier_wall_m: float, wall_m: float, years: float) -> float:
    checked.at_least(0, earlier_wall_m=earlier_wall_m, wall_m=wall_m)
    checked.positive(years=years)
    return max(earlier_wall_m - wall_m, 0.0) / years
