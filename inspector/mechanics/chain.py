"""Chain: how thin a link may wear, how far a chain may stretch, what heat does, and what its grade means."""

import math
from bisect import bisect_right
from enum import StrEnum

from inspector.mechanics import checked


class ChainWearRule(StrEnum):
    """Whose limit of wear: a tenth of the size, or the US table, which lets about a fifth go."""

    TENTH = "tenth"
    US_TABLE = "us table"


class ChainStretchRule(StrEnum):
    """Whose limit of stretch."""

    GERMAN = "german"
    AUSTRALIAN = "australian"


class ChainGrade(StrEnum):
    """Grade of a round steel chain, and in letters: M 4, P 5, S 6, T 8, V 10."""

    G4 = "4"
    G5 = "5"
    G6 = "6"
    G8 = "8"
    G10 = "10"


_INCH_M = 0.0254
# nominal size, least thickness at any point of a link; inches
_US_TABLE_IN: tuple[tuple[float, float], ...] = (
    *((1 / 4, 13 / 64), (3 / 8, 19 / 64), (1 / 2, 25 / 64), (5 / 8, 31 / 64), (3 / 4, 19 / 32), (7 / 8, 45 / 64)),
    *((1.0, 13 / 16), (1 + 1 / 8, 29 / 32), (1 + 1 / 4, 1.0), (1 + 3 / 8, 1 + 3 / 32), (1 + 1 / 2, 1 + 3 / 16)),
)
_SIZES_M = tuple(size_in * _INCH_M for size_in, _ in _US_TABLE_IN)
_STRETCH_RATIO: dict[ChainStretchRule, float] = {ChainStretchRule.GERMAN: 0.05, ChainStretchRule.AUSTRALIAN: 0.10}
_BREAKING_PA: dict[ChainGrade, float] = {
    ChainGrade.G4: 400e6,
    ChainGrade.G5: 500e6,
    ChainGrade.G6: 630e6,
    ChainGrade.G8: 800e6,
    ChainGrade.G10: 1000e6,
}
_SPOILT_C = (1000 - 32) / 1.8  # 1,000 F


def chain_least_thickness_m(nominal_m: float, rule: ChainWearRule = ChainWearRule.TENTH) -> float:
    """How thin a link may be at its thinnest place.

    Formula: 0.9 x size; by name the US table, straight lines between its rows
    Valid: size > 0; the US table from 1/4 to 1-1/2 in
    Source: australian_dogging, michigan_408_14923 – the table leaves 78 to 81 %, so the tenth stands

    >>> round(chain_least_thickness_m(0.0127) * 1e3, 2)
    11.43
    >>> round(chain_least_thickness_m(0.0127, ChainWearRule.US_TABLE) * 1e3, 2)
    9.92
    """
    checked.positive(nominal_m=nominal_m)
    if ChainWearRule(rule) is ChainWearRule.TENTH:
        return 0.9 * nominal_m
    near = checked.SAME_RATIO
    checked.between(_SIZES_M[0] * (1 - near), _SIZES_M[-1] * (1 + near), nominal_m=nominal_m)
    at = min(max(bisect_right(_SIZES_M, nominal_m) - 1, 0), len(_SIZES_M) - 2)
    (low_in, low_left_in), (high_in, high_left_in) = _US_TABLE_IN[at : at + 2]
    share = (nominal_m / _INCH_M - low_in) / (high_in - low_in)
    return (low_left_in + share * (high_left_in - low_left_in)) * _INCH_M


def is_chain_worn(nominal_m: float, now_m: float, rule: ChainWearRule = ChainWearRule.TENTH) -> bool:
    """Whether a link is worn so thin that the chain is out of use; the limit itself counts as worn for the tenth.

    Formula: d <= 0.9 x size; by name d < that of the US table
    Valid: size > 0, d >= 0; the US table from 1/4 to 1-1/2 in
    Source: australian_dogging, michigan_408_14923

    >>> is_chain_worn(0.010, 0.0085), is_chain_worn(0.010, 0.0085, ChainWearRule.US_TABLE)
    (True, False)
    """
    checked.at_least(0, now_m=now_m)
    widened = checked.SAME_RATIO if ChainWearRule(rule) is ChainWearRule.TENTH else -checked.SAME_RATIO
    return now_m < chain_least_thickness_m(nominal_m, rule) * (1 + widened)


def chain_stretch_ratio(original_m: float, now_m: float) -> float:
    """By how much a chain has grown over a number of links; one that reads shorter has not (0).

    Formula: (L - L0) / L0
    Valid: L0 > 0, L > 0
    Source: german_chain_stretch, australian_dogging

    >>> round(chain_stretch_ratio(1.00, 1.05), 3)
    0.05
    """
    checked.positive(original_m=original_m, now_m=now_m)
    return max((now_m - original_m) / original_m, 0.0)


def is_chain_stretched(original_m: float, now_m: float, rule: ChainStretchRule = ChainStretchRule.GERMAN) -> bool:
    """Whether a chain has grown so much that it is out of use; the limit itself counts.

    Formula: growth >= 0.05; by name >= 0.10
    Valid: L0 > 0, L > 0
    Source: german_chain_stretch, australian_dogging

    >>> is_chain_stretched(1.00, 1.06), is_chain_stretched(1.00, 1.06, ChainStretchRule.AUSTRALIAN)
    (True, False)
    """
    limit_ratio = _STRETCH_RATIO[ChainStretchRule(rule)]
    return chain_stretch_ratio(original_m, now_m) >= limit_ratio * (1 - checked.SAME_RATIO)


def is_chain_spoilt_by_heat(temperature_c: float) -> bool:
    """Whether alloy chain has been so hot that it is out of use for good.

    Formula: T > 538 C (1,000 F)
    Valid: above absolute zero
    Source: wac_55800_chain_heat

    >>> is_chain_spoilt_by_heat(600)
    True
    """
    checked.at_least(-273.15, temperature_c=temperature_c)
    return temperature_c > _SPOILT_C * (1 + checked.SAME_RATIO)


def chain_breaking_n(bar_m: float, grade: ChainGrade) -> float:
    """Breaking force of a round steel chain: its grade is the mean stress in the two bars of a link.

    Formula: BF = 2 (pi / 4) d^2 s, s = 400, 500, 630, 800, 1000 MPa for grade 4, 5, 6, 8, 10
    Valid: d > 0; the marked grade, unworn
    Source: en_818_grades, en_818_3_table_5

    >>> round(chain_breaking_n(0.010, ChainGrade.G8) / 1e3)
    126
    """
    checked.positive(bar_m=bar_m)
    return 2 * math.pi / 4 * bar_m**2 * _BREAKING_PA[ChainGrade(grade)]


def chain_proof_n(bar_m: float) -> float:
    """Load with which the maker of grade 4 chain proves it.

    Formula: MPF = BF / 2
    Valid: d > 0; grade 4 only
    Source: en_818_3_table_5

    >>> round(chain_proof_n(0.010) / 1e3, 1)
    31.4
    """
    return chain_breaking_n(bar_m, ChainGrade.G4) / 2
