"""Wear of a round bar - shackle body, pin, eye - and the published limits, which disagree."""

from enum import StrEnum

from msgspec import Struct

from inspector.mechanics import checked
from inspector.mechanics.sections import round_area_loss_ratio, round_modulus_loss_ratio


class WornPart(StrEnum):
    """Which part of a fitting."""

    PIN = "pin"
    BODY = "body"


class WearRule(StrEnum):
    """Whose limit: the strictest of all, or one by name."""

    STRICTEST = "strictest"
    ISO_16855 = "iso 16855"
    UK_GUIDE = "uk guide"
    US_PRACTICE = "us practice"
    DOE = "doe"


class RoundBarWear(Struct, frozen=True):
    """What wear has taken of a round bar: of its diameter, its area and its strength in bending."""

    diameter_ratio: float
    area_ratio: float
    bending_ratio: float


_LIMIT_RATIO: dict[WearRule, dict[WornPart, float]] = {
    WearRule.ISO_16855: {WornPart.PIN: 0.06, WornPart.BODY: 0.10},
    WearRule.UK_GUIDE: {WornPart.PIN: 0.08, WornPart.BODY: 0.08},
    WearRule.US_PRACTICE: {WornPart.PIN: 0.10, WornPart.BODY: 0.10},
    WearRule.DOE: {WornPart.PIN: 0.15, WornPart.BODY: 0.15},
}


def worn_ratio(original_m: float, now_m: float) -> float:
    """Share of its size that a part has lost; one that reads thicker than new has lost nothing (0).

    Formula: (d0 - d) / d0
    Valid: d0 > 0, d >= 0
    Source: shackle_ten_percent – the original or the catalogue size

    >>> round(worn_ratio(0.019, 0.0171), 3)
    0.1
    """
    checked.positive(original_m=original_m)
    checked.at_least(0, now_m=now_m)
    return max((original_m - now_m) / original_m, 0.0)


def round_bar_wear(original_m: float, now_m: float) -> RoundBarWear:
    """What wear has taken of a round bar, in terms of its diameter, its area and its strength in bending.

    Formula: x = (d0 - d) / d0; area 1 - (1 - x)^2; bending 1 - (1 - x)^3
    Valid: d0 > 0, d >= 0; worn evenly round
    Source: common_practice – geometry

    >>> found = round_bar_wear(0.020, 0.018)
    >>> round(found.diameter_ratio, 3), round(found.area_ratio, 3), round(found.bending_ratio, 3)
    (0.1, 0.19, 0.271)
    """
    lost_ratio = worn_ratio(original_m, now_m)
    return RoundBarWear(lost_ratio, round_area_loss_ratio(lost_ratio), round_modulus_loss_ratio(lost_ratio))


def wear_limit_ratio(part: WornPart, rule: WearRule = WearRule.STRICTEST) -> float:
    """How much of its diameter a shackle's pin or body may lose; the strictest published limit unless one is named.

    Formula: pin 0.06 (ISO 16855), body 0.08 (UK guide); by name 0.10 (US practice), 0.15 (DOE, the loosest)
    Valid: the names listed
    Source: iso_16855_pins, iso_16855_parts, en_13889_guide, shackle_ten_percent, doe_1090

    >>> wear_limit_ratio(WornPart.PIN), wear_limit_ratio(WornPart.BODY)
    (0.06, 0.08)
    """
    part, rule = WornPart(part), WearRule(rule)
    rules = _LIMIT_RATIO.values() if rule is WearRule.STRICTEST else [_LIMIT_RATIO[rule]]
    return min(limits[part] for limits in rules)


def is_worn_out(original_m: float, now_m: float, part: WornPart, rule: WearRule = WearRule.STRICTEST) -> bool:
    """Whether a shackle's pin or body has lost more of its diameter than the limit; under US practice at the limit too.

    Formula: (d0 - d) / d0 > limit; US practice >= 0.10
    Valid: d0 > 0, d >= 0
    Source: iso_16855_pins, iso_16855_parts, en_13889_guide, shackle_ten_percent, doe_1090 – some US lists say “a 10 %
        reduction”, others “more than 10 %”: the stricter reading stands

    >>> is_worn_out(0.022, 0.0206, WornPart.PIN), is_worn_out(0.022, 0.0206, WornPart.PIN, WearRule.US_PRACTICE)
    (True, False)
    """
    limit_ratio = wear_limit_ratio(part, rule)
    widened = -checked.SAME_RATIO if WearRule(rule) is WearRule.US_PRACTICE else checked.SAME_RATIO
    return worn_ratio(original_m, now_m) > limit_ratio * (1 + widened)
