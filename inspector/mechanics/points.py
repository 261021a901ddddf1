"""Many readings of one wall, and pits: may they be averaged, what is the least wall, how deep is the deepest pit."""

import math
from collections.abc import Sequence
from enum import StrEnum

from msgspec import Struct

from inspector.mechanics import checked

LEAST_POINTS = 15
AVERAGE_MOST_RATIO = 0.10
LEAST_LIMIT_M = 2.5e-3


class PointSpread(Struct, frozen=True):
    """Point readings in figures: mean, standard deviation, their ratio, the thinnest, how many."""

    mean_m: float
    deviation_m: float
    variation_ratio: float
    least_m: float
    reading_count: int


class PitScatter(StrEnum):
    """A published pitting factor: the middle of the scatter, or a value that nine in ten stay below."""

    CENTRAL = "central"
    HIGH = "high"


_PIT_FACTORS = {PitScatter.CENTRAL: 3.0, PitScatter.HIGH: 5.0}


def point_spread(readings_m: Sequence[float]) -> PointSpread:
    """Point readings of one wall in figures.

    Formula: mean = sum t / n; s^2 = sum (t - mean)^2 / (n - 1); COV = s / mean
    Valid: at least 15 readings, each > 0
    Source: api_579_points

    >>> spread = point_spread([t / 1e3 for t in (13, 12, 11, 13, 10, 12, 11, 12, 13, 13, 11, 12, 12, 13, 13)])
    >>> round(spread.mean_m * 1e3, 4), round(spread.variation_ratio, 4)
    (12.0667, 0.0797)
    """
    if len(readings_m) < LEAST_POINTS:
        raise ValueError(f"readings_m must hold {LEAST_POINTS} readings or more, not {len(readings_m)}")
    for reading_m in readings_m:
        checked.positive(readings_m=reading_m)
    count, mean = len(readings_m), math.fsum(readings_m) / len(readings_m)
    deviation = math.sqrt(math.fsum((one - mean) ** 2 for one in readings_m) / (count - 1))
    return PointSpread(mean, deviation, deviation / mean, min(readings_m), count)


def may_average(readings_m: Sequence[float]) -> bool:
    """May these point readings be averaged, the loss being even enough? If not, take profiles, or the thinnest.

    Formula: COV = s / mean <= 10 %
    Valid: at least 15 readings, each > 0
    Source: api_579_points

    >>> may_average([t / 1e3 for t in (13, 12, 11, 13, 10, 12, 11, 12, 13, 13, 11, 12, 12, 13, 13)])
    True
    """
    return point_spread(readings_m).variation_ratio <= AVERAGE_MOST_RATIO


def thickness_floor_m(required_m: float, nominal_m: float) -> float:
    """The least wall that is ever accepted, however good the mean.

    Formula: t_lim = max(0.5 t_min, 0.2 t_nom, 2.5 mm)
    Valid: required and nominal wall >= 0; written for pressure vessels, used by analogy only
    Source: api_579_floor

    >>> round(thickness_floor_m(0.008, 0.012) * 1e3, 6)
    4.0
    """
    checked.at_least(0, required_m=required_m, nominal_m=nominal_m)
    return max(0.5 * required_m, 0.2 * nominal_m, LEAST_LIMIT_M)


def pitting_factor(deepest_m: float, average_m: float) -> float:
    """How much deeper the deepest pit is than the average loss.

    Formula: pitting factor = deepest penetration / average penetration (from mass loss)
    Valid: average > 0, deepest >= average
    Source: astm_g46

    >>> round(pitting_factor(0.0009, 0.0003), 6)
    3.0
    """
    checked.positive(average_m=average_m)
    checked.at_least(average_m, deepest_m=deepest_m)
    return deepest_m / average_m


def deepest_pit_m(average_m: float, scatter: PitScatter = PitScatter.HIGH) -> float:
    """The pit to reckon with when none could be measured; a measured pit goes before this guess.

    Formula: deepest = pitting factor x average; factor 3 in the middle, 5 for nine cases in ten
    Valid: average >= 0
    Source: pitting_factors, astm_g46 – the factors are a public code's defaults without a primary source

    >>> round(deepest_pit_m(0.0003) * 1e3, 6)
    1.5
    """
    checked.at_least(0, average_m=average_m)
    return _PIT_FACTORS[PitScatter(scatter)] * average_m
