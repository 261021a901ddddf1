"""What a flying part weighs and from what energy on it counts as dangerous to a person."""

import math
from enum import StrEnum

from inspector.mechanics import checked

STEEL_KG_PER_M3 = 7850.0


class HazardRule(StrEnum):
    """Whose threshold; lowest: the lower of the two that speak of a flying fragment."""

    LOWEST = "lowest"
    HAZARDOUS_FRAGMENT = "hazardous_fragment"
    RANGE_SAFETY = "range_safety"
    SKULL_STRAIN = "skull_strain"


class FlyingPart(StrEnum):
    """A generic part that has torn off."""

    SMALL_BOW_SHACKLE = "small_bow_shackle"
    TOW_BALL = "tow_ball"
    LARGE_BOW_SHACKLE = "large_bow_shackle"
    BALL_MOUNT_LIGHT = "ball_mount_light"
    BALL_MOUNT_HEAVY = "ball_mount_heavy"
    ARMY_SNATCH_BLOCK = "army_snatch_block"


HAZARD_J = {HazardRule.HAZARDOUS_FRAGMENT: 78.6, HazardRule.RANGE_SAFETY: 14.9}  # 58 and 11 foot-pounds
PART_KG = {
    FlyingPart.SMALL_BOW_SHACKLE: 0.7,
    FlyingPart.TOW_BALL: 0.8,
    FlyingPart.LARGE_BOW_SHACKLE: 1.4,
    FlyingPart.BALL_MOUNT_LIGHT: 4.54,
    FlyingPart.BALL_MOUNT_HEAVY: 6.80,
    FlyingPart.ARMY_SNATCH_BLOCK: 90.7,
}


def hazard_energy_j(rule: HazardRule = HazardRule.LOWEST) -> float:
    """The energy from which a flying fragment counts as dangerous to a person.

    Formula: hazardous fragment 58 ft lbf (79 J); range safety 11 ft lbf (15 J); lowest: the lower of the two
    Valid: a rule that speaks of a fragment's own energy; the skull's strain energy is refused
    Source: hazardous_fragment_79, range_safety_15, skull_strain – 453 mJ is strain energy inside bone, not the energy
        of what strikes: the figures cannot be compared

    >>> hazard_energy_j(), hazard_energy_j(HazardRule.HAZARDOUS_FRAGMENT)
    (14.9, 78.6)
    """
    if rule is HazardRule.SKULL_STRAIN:
        raise ValueError("rule must speak of a fragment's own energy; skull_strain is strain energy inside the bone")
    return min(HAZARD_J.values()) if rule is HazardRule.LOWEST else HAZARD_J[rule]


def is_hazardous(energy_j: float, rule: HazardRule = HazardRule.LOWEST) -> bool:
    """Whether a flying part reaches the threshold.

    Formula: E >= E_hazard
    Valid: E >= 0; a rule that speaks of a fragment's own energy
    Source: hazardous_fragment_79, range_safety_15

    >>> is_hazardous(20.0), is_hazardous(20.0, HazardRule.HAZARDOUS_FRAGMENT)
    (True, False)
    """
    checked.at_least(0, energy_j=energy_j)
    return energy_j >= hazard_energy_j(rule) * (1 - checked.SAME_RATIO)


def hazard_share_ratio(stored_j: float, rule: HazardRule = HazardRule.LOWEST) -> float:
    """How small a share of the energy in a line is enough to make a part dangerous.

    Formula: E_hazard / E
    Valid: E > 0; a rule that speaks of a fragment's own energy
    Source: hazardous_fragment_79, range_safety_15 – so a damper or a lighter shackle makes no failed point safe

    >>> round(hazard_share_ratio(18355.0, HazardRule.HAZARDOUS_FRAGMENT) * 100, 2)
    0.43
    """
    checked.positive(stored_j=stored_j)
    return hazard_energy_j(rule) / stored_j


def part_mass_kg(part: FlyingPart) -> float:
    """What a generic part weighs; weigh the real one where it can be had.

    Formula: read from a list
    Valid: the parts named
    Source: flying_part_masses – shackles and ball from memory; the ball mount is 10 to 15 lb in the press, the block
        200 lb in an army safety text

    >>> part_mass_kg(FlyingPart.TOW_BALL)
    0.8
    """
    return PART_KG[part]


def steel_sphere_kg(diameter_m: float) -> float:
    """What a steel ball weighs, without its neck and shank.

    Formula: m = 7850 pi d^3 / 6
    Valid: d >= 0
    Source: steel_density

    >>> round(steel_sphere_kg(0.050), 2)
    0.51
    """
    checked.at_least(0, diameter_m=diameter_m)
    return STEEL_KG_PER_M3 * math.pi * diameter_m**3 / 6
