"""Textile slings: the factor behind a working load, how the sling is laid, and what the angle of its legs costs.

A recovery strap carries no working load, only its breaking strength: do not put it through these.
"""

import math
from enum import StrEnum

from inspector.mechanics import checked


class TextileRule(StrEnum):
    """Whose design factor for textile slings and ropes."""

    US_WEB_SLINGS = "us web slings"
    EN_1492 = "en 1492"
    ROPE_LEAST = "rope least"
    ROPE_MOST = "rope most"


class SlingMode(StrEnum):
    """How a sling is laid."""

    STRAIGHT = "straight"
    CHOKED = "choked"
    BASKET = "basket"
    TWO_LEGS = "two legs"
    FOUR_LEGS = "four legs"


_DESIGN_FACTOR: dict[TextileRule, float] = {
    TextileRule.US_WEB_SLINGS: 5.0,
    TextileRule.EN_1492: 7.0,
    TextileRule.ROPE_LEAST: 5.0,
    TextileRule.ROPE_MOST: 12.0,
}
# mode factor upright, to 45 deg, to 60 deg from upright
_MODE_FACTOR: dict[SlingMode, tuple[float, float, float]] = {
    SlingMode.STRAIGHT: (1.0, math.nan, math.nan),
    SlingMode.CHOKED: (0.8, math.nan, math.nan),
    SlingMode.BASKET: (2.0, 1.4, 1.0),
    SlingMode.TWO_LEGS: (1.4, 1.4, 1.0),
    SlingMode.FOUR_LEGS: (2.1, 2.1, 1.5),
}
_LEVEL_LEAST_RAD = math.radians(30)


def textile_design_factor(rule: TextileRule) -> float:
    """How many times its working load a textile sling or rope breaks at, by the rule it was made to.

    Formula: US web slings 5, EN 1492 7, general rope 5 to 12
    Valid: the rules listed; no default, since the factor belongs to the mark
    Source: web_sling_factor_us, en_1492_factor, ci_1401_factor

    >>> textile_design_factor(TextileRule.EN_1492)
    7.0
    """
    return _DESIGN_FACTOR[TextileRule(rule)]


def textile_working_load_n(breaking_n: float, rule: TextileRule) -> float:
    """Working load of a textile sling or rope of known breaking strength.

    Formula: WLL = MBS / design factor
    Valid: MBS >= 0
    Source: web_sling_factor_us, en_1492_factor, ci_1401_factor

    >>> textile_working_load_n(70e3, TextileRule.EN_1492)
    10000.0
    """
    checked.at_least(0, breaking_n=breaking_n)
    return breaking_n / textile_design_factor(rule)


def sling_mode_factor(mode: SlingMode, from_upright_rad: float) -> float:
    """By how much the working load of a webbing sling is multiplied for the way it is laid.

    Formula: straight 1.0, choked 0.8; basket 2.0 upright, 1.4 to 45 deg, 1.0 to 60 deg; two legs 1.4 and 1.0; three
        or four legs 2.1 and 1.5
    Valid: 0 to 60 deg from upright; straight and choked only upright
    Source: en_1492_1_manual

    >>> sling_mode_factor(SlingMode.BASKET, math.radians(30))
    1.4
    """
    wider = 1 + checked.SAME_RATIO
    mode = SlingMode(mode)
    most_rad = 0.0 if mode in {SlingMode.STRAIGHT, SlingMode.CHOKED} else math.radians(60) * wider
    checked.between(0, most_rad, from_upright_rad=from_upright_rad)
    upright, half, wide = _MODE_FACTOR[mode]
    if from_upright_rad == 0:
        return upright
    return half if from_upright_rad <= math.radians(45) * wider else wide


def sling_leg_factor(from_level_rad: float) -> float:
    """Tension in a sloping leg against an upright one that holds as much, by its angle from the horizontal.

    Formula: 1 / sin(angle)
    Valid: 30 to 90 deg from the horizontal; flatter legs are not used
    Source: sling_leg_tables – statics

    >>> round(sling_leg_factor(math.radians(60)), 3)
    1.155
    """
    return 1 / sling_capacity_ratio(from_level_rad)


def sling_capacity_ratio(from_level_rad: float) -> float:
    """Share of its working load that a sloping leg can lift, by its angle from the horizontal.

    Formula: sin(angle)
    Valid: 30 to 90 deg from the horizontal; flatter legs are not used
    Source: sling_leg_tables, toolbox_talk_angles – statics; a safety talk prints this list a row off

    >>> round(sling_capacity_ratio(math.radians(45)), 3)
    0.707
    """
    steep_rad = math.pi / 2 * (1 + checked.SAME_RATIO)
    checked.between(_LEVEL_LEAST_RAD * (1 - checked.SAME_RATIO), steep_rad, from_level_rad=from_level_rad)
    return math.sin(from_level_rad)
