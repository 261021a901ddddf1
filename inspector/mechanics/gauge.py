"""What a thickness gauge's reading is worth: its error carried into wall, rate and remaining life."""

import math
from enum import StrEnum

from inspector.mechanics import checked

COVERAGE_95_FACTOR = 1.96  # JCGM 100: 95 % of a normal distribution
ROOT_TWO = math.sqrt(2)


class GaugeClaim(StrEnum):
    """Whose word on the accuracy of a hand gauge on clean steel."""

    PORT_CODE = "port code"
    TRADE = "trade"


class Face(StrEnum):
    """The face under the probe."""

    DRESSED = "dressed"
    ROUGH = "rough"
    ROUGH_LEAST = "rough least"


_ACCURACY_M = {GaugeClaim.PORT_CODE: 0.2e-3, GaugeClaim.TRADE: 0.1e-3}
_OVER_M = {Face.DRESSED: 0.0, Face.ROUGH: 2.2e-3, Face.ROUGH_LEAST: 0.6e-3}
_LEAST_PROBE_M = 1.5e-3


def gauge_accuracy_m(claim: GaugeClaim = GaugeClaim.PORT_CODE) -> float:
    """How far a gauge may be out on clean, dressed steel; the wider figure unless the other is named.

    Formula: u = 0.2 mm (port inspection code) or 0.1 mm (trade)
    Valid: the names listed
    Source: gauge_annex, common_practice – 0.1 mm is a trade claim without a source

    >>> gauge_accuracy_m() * 1e3
    0.2
    """
    return _ACCURACY_M[GaugeClaim(claim)]


def over_reading_m(face: Face = Face.ROUGH) -> float:
    """How much too thick a gauge reads on a face; the upper end for a rough one unless the lower is named.

    Formula: mean error 0 dressed, 0.6 to 2.2 mm on rough corroded faces not dressed flat
    Valid: the names listed
    Source: rough_faces

    >>> over_reading_m() * 1e3
    2.2
    """
    return _OVER_M[Face(face)]


def relied_reading_m(reading_m: float, accuracy_m: float, over_m: float) -> float:
    """The wall to rely on: the reading less the gauge's error and less what it reads too thick; never below none.

    Formula: t = max(reading - u - over-reading, 0)
    Valid: all >= 0
    Source: common_practice, rough_faces

    >>> round(relied_reading_m(0.0040, 0.0002, 0.0006) * 1e3, 6)
    3.2
    """
    checked.at_least(0, reading_m=reading_m, accuracy_m=accuracy_m, over_m=over_m)
    return max(reading_m - accuracy_m - over_m, 0.0)


def is_below_probe(reading_m: float, least_m: float = _LEAST_PROBE_M) -> bool:
    """Is a reading below what the common two-crystal probe can measure? There it reads too thick.

    Formula: reading < 1.5 mm
    Valid: reading >= 0, limit > 0
    Source: thin_wall_probe, common_practice – the limit is given as 1 to 1.5 mm, 1.3 mm in a course; the upper end

    >>> is_below_probe(0.0014), is_below_probe(0.0015)
    (True, False)
    """
    checked.at_least(0, reading_m=reading_m)
    checked.positive(least_m=least_m)
    return reading_m < least_m * (1 - checked.SAME_RATIO)


def velocity_error_ratio(set_m_per_s: float, part_m_per_s: float) -> float:
    """The share by which a gauge set to one steel reads another too thick (or, below 0, too thin).

    Formula: error = v_set / v_part - 1, as t = v time / 2
    Valid: both speeds of sound > 0
    Source: ndt_velocities

    >>> round(velocity_error_ratio(5865, 5700), 4)
    0.0289
    """
    checked.positive(set_m_per_s=set_m_per_s, part_m_per_s=part_m_per_s)
    return set_m_per_s / part_m_per_s - 1


def rate_error_m_per_year(accuracy_m: float, years: float) -> float:
    """How far a rate from two readings may be out when each reading may be out by u.

    Formula: u(rate) = sqrt(2) u / years
    Valid: u >= 0, years > 0; the two errors independent
    Source: gum, errors_amplified

    >>> round(rate_error_m_per_year(0.0001, 2) * 1e3, 3)
    0.071
    """
    checked.at_least(0, accuracy_m=accuracy_m)
    checked.positive(years=years)
    return ROOT_TWO * accuracy_m / years


def rate_half_width_m_per_year(accuracy_m: float, years: float, coverage_factor: float = COVERAGE_95_FACTOR) -> float:
    """Half the band round a rate from two readings: at 95 % as wide as the first-year loss of a coast.

    Formula: k u(rate) = k sqrt(2) u / years
    Valid: u >= 0, years > 0, k > 0
    Source: gum, errors_amplified

    >>> round(rate_half_width_m_per_year(0.0001, 2) * 1e3, 3)
    0.139
    """
    checked.positive(coverage_factor=coverage_factor)
    return coverage_factor * rate_error_m_per_year(accuracy_m, years)


def life_error_years(life_years: float, rate_m_per_year: float, accuracy_m: float, years: float) -> float:
    """How far a remaining life from two readings may be out; the last reading counts twice, in wall and in rate.

    Formula: u(RL) = (u / rate) sqrt((1 + RL / years)^2 + (RL / years)^2), first order
    Valid: RL >= 0, rate > 0, u >= 0, years > 0; u(rate) small beside the rate
    Source: gum, api_510 – RL = (t_actual - t_required) / rate with rate = (t_previous - t_actual) / years

    >>> round(life_error_years(5.0, 0.0002, 0.0001, 2), 3)
    2.151
    """
    checked.at_least(0, life_years=life_years, accuracy_m=accuracy_m)
    checked.positive(rate_m_per_year=rate_m_per_year, years=years)
    periods = life_years / years
    return accuracy_m / rate_m_per_year * math.hypot(1 + periods, periods)


def least_life_years(
    wall_m: float, required_m: float, rate_m_per_year: float, accuracy_m: float, years: float
) -> float:
    """The remaining life with the gauge's error taken against the part, in the wall and in the rate.

    Formula: RL = (t_actual - u - t_required) / (rate + sqrt(2) u / years); 0 when nothing is left
    Valid: wall, required wall, rate and u >= 0, years > 0
    Source: api_510, gum

    >>> round(least_life_years(0.0030, 0.0020, 0.0002, 0.0001, 2), 3)
    3.325
    """
    checked.at_least(0, wall_m=wall_m, required_m=required_m, rate_m_per_year=rate_m_per_year)
    rate = rate_m_per_year + rate_error_m_per_year(accuracy_m, years)
    spare_m = wall_m - accuracy_m - required_m
    if spare_m <= required_m * checked.SAME_RATIO:
        return 0.0
    return spare_m / rate if rate > 0 else math.inf
