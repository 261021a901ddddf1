"""A straight line through three or more readings of one place, and the band in which the next reading will lie.

The band is not monotone in the readings: it informs. Verdicts rest on rates that are (see corrosion).
"""

import math
from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct

from inspector.mechanics import checked
from inspector.mechanics.student import student_t_factor

LEAST_READINGS = 3
_BISECTIONS = 100
_LONGEST_YEARS = 10_000.0
_FAR = 1e9  # further out than any reading or date; keeps sums of squares finite


class WallLine(Struct, frozen=True):
    """The least-squares line t = b0 + b1 x: walls in metres, x in years."""

    intercept_m: float
    slope_m_per_year: float
    spread_m: float
    slope_error_m_per_year: float
    explained_ratio: float
    freedom_count: int


class WallBand(Struct, frozen=True):
    """The line's wall at a time, and the band round it."""

    line_m: float
    lower_m: float
    upper_m: float


class _Fit(Struct, frozen=True):
    slope: float
    mean_wall: float
    mean_years: float
    sxx: float
    spread: float
    explained: float
    freedom: int


def wall_line(taken_years: Sequence[float], walls_m: Sequence[float]) -> WallLine:
    """The least-squares line through readings of one place, with its scatter.

    Formula: b1 = Sxy / Sxx; b0 = ym - b1 xm, means of y and x; s^2 = SSE / (n - 2); se(b1) = s / sqrt(Sxx)
    Valid: at least 3 readings at 2 times or more, as many years as walls, all finite
    Source: montgomery_runger

    >>> line = wall_line([0, 2, 4, 6, 8], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026])
    >>> round(line.slope_m_per_year * 1e3, 4), round(line.spread_m * 1e3, 4)
    (-0.1785, 0.0491)
    """
    fit = _fitted(taken_years, walls_m)
    return WallLine(
        intercept_m=fit.mean_wall - fit.slope * fit.mean_years,
        slope_m_per_year=fit.slope,
        spread_m=fit.spread,
        slope_error_m_per_year=fit.spread / math.sqrt(fit.sxx),
        explained_ratio=fit.explained,
        freedom_count=fit.freedom,
    )


def reading_band(
    taken_years: Sequence[float],
    walls_m: Sequence[float],
    at_years: float,
    confidence_ratio: float = 0.95,
    least_spread_m: float = 0.0,
) -> WallBand:
    """The two-sided band in which one new reading will lie; readings that fit a line by chance claim no less than s0.

    Formula: b0 + b1 x0 +- t(1 - alpha/2, n - 2) max(s, s0) sqrt(1 + 1/n + (x0 - xm)^2 / Sxx)
    Valid: readings as for the line; confidence 0.5 to 0.9998; least scatter s0 >= 0, of a rounded display its last
        digit / sqrt(12)
    Source: montgomery_runger, gum

    >>> band = reading_band([0, 2, 4, 6, 8], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026], 10)
    >>> round(band.line_m * 1e3, 3), round((band.upper_m - band.line_m) * 1e3, 3)
    (2.273, 0.226)
    """
    checked.at_least(0, least_spread_m=least_spread_m)
    fit = _fitted(taken_years, walls_m)
    return _band(fit, max(fit.spread, least_spread_m), at_years, confidence_ratio, one=1.0)


def line_band(
    taken_years: Sequence[float], walls_m: Sequence[float], at_years: float, confidence_ratio: float = 0.95
) -> WallBand:
    """The two-sided band in which the line itself lies: narrower than that of a new reading.

    Formula: b0 + b1 x0 +- t(1 - alpha/2, n - 2) s sqrt(1/n + (x0 - xm)^2 / Sxx)
    Valid: readings as for the line; confidence 0.5 to 0.9998
    Source: montgomery_runger

    >>> band = line_band([0, 2, 4, 6, 8], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026], 10)
    >>> round((band.upper_m - band.line_m) * 1e3, 3)
    0.164
    """
    fit = _fitted(taken_years, walls_m)
    return _band(fit, fit.spread, at_years, confidence_ratio, one=0.0)


def least_wall_m(
    taken_years: Sequence[float], walls_m: Sequence[float], at_years: float, confidence_ratio: float = 0.95
) -> float:
    """The wall that one new reading will not undercut, one-sided; never less than none.

    Formula: b0 + b1 x0 - t(1 - alpha, n - 2) s sqrt(1 + 1/n + (x0 - xm)^2 / Sxx)
    Valid: readings as for the line; confidence 0.5 to 0.9999
    Source: montgomery_runger

    >>> round(least_wall_m([0, 2, 4, 6, 8], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026], 10) * 1e3, 3)
    2.106
    """
    checked.between(-_FAR, _FAR, at_years=at_years)
    fit = _fitted(taken_years, walls_m)
    return max(_lower(fit, at_years, _t_one_sided(fit, confidence_ratio)), 0.0)


def line_rate_m_per_year(taken_years: Sequence[float], walls_m: Sequence[float]) -> float:
    """Rate of wall loss along the line; 0 when the readings rise.

    Formula: rate = max(-b1, 0)
    Valid: readings as for the line
    Source: montgomery_runger

    >>> round(line_rate_m_per_year([0, 2, 4], [0.004, 0.0036, 0.0032]) * 1e3, 3)
    0.2
    """
    return max(-_fitted(taken_years, walls_m).slope, 0.0)


def greatest_rate_m_per_year(
    taken_years: Sequence[float], walls_m: Sequence[float], confidence_ratio: float = 0.95
) -> float:
    """The rate of wall loss that the readings do not rule out, one-sided; never less than none.

    Formula: rate = max(-b1 + t(1 - alpha, n - 2) s / sqrt(Sxx), 0)
    Valid: readings as for the line; confidence 0.5 to 0.9999
    Source: montgomery_runger

    >>> round(greatest_rate_m_per_year([0, 2, 4, 6, 8], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026]) * 1e3, 4)
    0.1968
    """
    fit = _fitted(taken_years, walls_m)
    return max(-fit.slope + _t_one_sided(fit, confidence_ratio) * fit.spread / math.sqrt(fit.sxx), 0.0)


def band_life_years(
    taken_years: Sequence[float], walls_m: Sequence[float], required_m: float, confidence_ratio: float = 0.95
) -> float:
    """Years from the last reading until the one-sided lower bound meets the required wall.

    Formula: b0 + b1 x - t(1 - alpha, n - 2) s sqrt(1 + 1/n + (x - xm)^2 / Sxx) = t_required, solved for x
    Valid: readings as for the line; required wall >= 0; confidence 0.5 to 0.9999; endless beyond 10000 years
    Source: montgomery_runger

    >>> round(band_life_years([0, 2, 4, 6, 8], [0.00405, 0.00372, 0.0033, 0.00305, 0.0026], 0.002), 2)
    2.55
    """
    checked.at_least(0, required_m=required_m)
    fit, last_years = _fitted(taken_years, walls_m), max(taken_years)
    t_factor = _t_one_sided(fit, confidence_ratio)
    low, high = 0.0, 1.0
    if _lower(fit, last_years, t_factor) <= required_m:
        return 0.0
    while _lower(fit, last_years + high, t_factor) > required_m:
        low, high = high, 2 * high
        if high > _LONGEST_YEARS:
            return math.inf
    for _ in range(_BISECTIONS):
        middle = (low + high) / 2
        above = _lower(fit, last_years + middle, t_factor) > required_m
        low, high = (middle, high) if above else (low, middle)
    return low


def is_beyond_reach(taken_years: Sequence[float], at_years: float) -> bool:
    """Is a time further ahead than half the span of the readings? A line should not be drawn out so far.

    Formula: x0 > x_last + (x_last - x_first) / 2
    Valid: at least 3 readings at 2 times or more
    Source: common_practice

    >>> is_beyond_reach([0, 2, 4, 6, 8], 12), is_beyond_reach([0, 2, 4, 6, 8], 12.5)
    (False, True)
    """
    checked.between(-_FAR, _FAR, at_years=at_years)
    _fitted(taken_years, [0.0] * len(taken_years))
    last_years = max(taken_years)
    return at_years > last_years + (last_years - min(taken_years)) / 2


def _fitted(taken_years: Sequence[float], walls_m: Sequence[float]) -> _Fit:
    return _squares(tuple(taken_years), tuple(walls_m))


@lru_cache(maxsize=8)  # a band is drawn at many times through the same readings
def _squares(taken_years: tuple[float, ...], walls_m: tuple[float, ...]) -> _Fit:
    if len(taken_years) != len(walls_m) or len(walls_m) < LEAST_READINGS:
        raise ValueError(f"taken_years and walls_m must hold the same number of readings, {LEAST_READINGS} or more")
    for year, wall in zip(taken_years, walls_m, strict=True):
        checked.between(-_FAR, _FAR, taken_years=year, walls_m=wall)
    count = len(walls_m)
    mean_years, mean_wall = math.fsum(taken_years) / count, math.fsum(walls_m) / count
    across = [year - mean_years for year in taken_years]
    up = [wall - mean_wall for wall in walls_m]
    sxx, syy = math.fsum(one * one for one in across), math.fsum(one * one for one in up)
    if sxx <= 0:
        raise ValueError("taken_years must hold two different times or more")
    slope = math.fsum(x * y for x, y in zip(across, up, strict=True)) / sxx
    left = math.fsum((y - slope * x) ** 2 for x, y in zip(across, up, strict=True))
    explained = 1 - left / syy if syy > 0 else 1.0
    return _Fit(slope, mean_wall, mean_years, sxx, math.sqrt(left / (count - 2)), explained, count - 2)


def _t_one_sided(fit: _Fit, confidence_ratio: float) -> float:
    checked.between(0.5, 0.9999, confidence_ratio=confidence_ratio)
    return student_t_factor(confidence_ratio, fit.freedom)


def _half_width(fit: _Fit, spread: float, at_years: float, t_factor: float, one: float) -> float:
    lever = (at_years - fit.mean_years) ** 2 / fit.sxx
    return t_factor * spread * math.sqrt(one + 1 / (fit.freedom + 2) + lever)


def _lower(fit: _Fit, at_years: float, t_factor: float) -> float:
    on_line = fit.mean_wall + fit.slope * (at_years - fit.mean_years)
    return on_line - _half_width(fit, fit.spread, at_years, t_factor, one=1.0)


def _band(fit: _Fit, spread: float, at_years: float, confidence_ratio: float, one: float) -> WallBand:
    checked.between(-_FAR, _FAR, at_years=at_years)
    checked.between(0.5, 0.9998, confidence_ratio=confidence_ratio)
    half = _half_width(fit, spread, at_years, student_t_factor((1 + confidence_ratio) / 2, fit.freedom), one)
    on_line = fit.mean_wall + fit.slope * (at_years - fit.mean_years)
    return WallBand(on_line, on_line - half, on_line + half)
