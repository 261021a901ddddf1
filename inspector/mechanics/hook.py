"""Hooks: how far the throat has opened and how much of the saddle has worn away. US and German limits are swapped."""

import math
from enum import StrEnum

from inspector.mechanics import checked
from inspector.mechanics.wear import worn_ratio


class HookRule(StrEnum):
    """Whose limits: the strictest of all, or one by name."""

    STRICTEST = "strictest"
    US = "us"
    GERMAN = "german"
    AUSTRALIAN = "australian"


_OPENING_RATIO: dict[HookRule, float] = {
    HookRule.STRICTEST: 0.05,
    HookRule.US: 0.05,
    HookRule.GERMAN: 0.10,
    HookRule.AUSTRALIAN: 0.05,
}
_WEAR_RATIO: dict[HookRule, float] = {
    HookRule.STRICTEST: 0.05,
    HookRule.US: 0.10,
    HookRule.GERMAN: 0.05,
    HookRule.AUSTRALIAN: 0.10,
}
_MOST_GROWTH_M: dict[HookRule, float] = {HookRule.STRICTEST: 0.006, HookRule.US: 0.006}  # printed as 1/4 in (6 mm)


def throat_opening_ratio(original_m: float, now_m: float) -> float:
    """By how much the throat of a hook has opened; one that reads narrower than new has not (0).

    Formula: (a - a0) / a0
    Valid: a0 > 0, a >= 0
    Source: hook_opening

    >>> round(throat_opening_ratio(0.030, 0.0315), 3)
    0.05
    """
    checked.positive(original_m=original_m)
    checked.at_least(0, now_m=now_m)
    return max((now_m - original_m) / original_m, 0.0)


def throat_most_growth_m(original_m: float, rule: HookRule = HookRule.STRICTEST) -> float:
    """By how much the throat of a hook may open before it is out of use.

    Formula: min(0.05 a0, 6 mm); by name 0.10 a0 (German), 0.05 a0 (Australian)
    Valid: a0 > 0
    Source: hook_opening, german_hook_opening, australian_dogging

    >>> round(throat_most_growth_m(0.030) * 1e3, 2), round(throat_most_growth_m(0.200) * 1e3, 2)
    (1.5, 6.0)
    """
    checked.positive(original_m=original_m)
    rule = HookRule(rule)
    return min(_OPENING_RATIO[rule] * original_m, _MOST_GROWTH_M.get(rule, math.inf))


def is_throat_opened(original_m: float, now_m: float, rule: HookRule = HookRule.STRICTEST) -> bool:
    """Whether the throat of a hook has opened so far that the hook is out of use.

    Formula: growth >= 0.05 a0 or 6 mm; by name > 0.10 a0 (German), >= 0.05 a0 (Australian)
    Valid: a0 > 0, a >= 0
    Source: hook_opening, german_hook_opening, australian_dogging

    >>> is_throat_opened(0.030, 0.0315), is_throat_opened(0.030, 0.0315, HookRule.GERMAN)
    (True, False)
    """
    most_m = throat_most_growth_m(original_m, rule)
    growth_m = throat_opening_ratio(original_m, now_m) * original_m
    widened = checked.SAME_RATIO if HookRule(rule) is HookRule.GERMAN else -checked.SAME_RATIO
    return growth_m > most_m * (1 + widened)


def hook_wear_limit_ratio(rule: HookRule = HookRule.STRICTEST) -> float:
    """How much of its section the saddle of a hook may lose.

    Formula: 0.05 (German); by name 0.10 (US, Australian)
    Valid: the rules listed
    Source: hook_wear, wac_55800_hook_wear, australian_dogging – US and German limits of opening and wear are swapped

    >>> hook_wear_limit_ratio(), hook_wear_limit_ratio(HookRule.US)
    (0.05, 0.1)
    """
    return _WEAR_RATIO[HookRule(rule)]


def is_hook_worn(original_m: float, now_m: float, rule: HookRule = HookRule.STRICTEST) -> bool:
    """Whether the saddle of a hook has lost so much that the hook is out of use; the limit itself still passes.

    Formula: (h0 - h) / h0 > 0.05; by name > 0.10
    Valid: h0 > 0, h >= 0
    Source: hook_wear, wac_55800_hook_wear, australian_dogging

    >>> is_hook_worn(0.025, 0.0235), is_hook_worn(0.025, 0.0235, HookRule.US)
    (True, False)
    """
    return worn_ratio(original_m, now_m) > hook_wear_limit_ratio(rule) * (1 + checked.SAME_RATIO)
