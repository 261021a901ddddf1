"""What holds a vehicle on the ground it stands in, as a share of its weight. Printed scales differ by 2 to 4 times."""

from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2

ANCHOR_VALUE_RATIO = 0.666  # own truck, all brakes on, as an anchor
RIGHTING_RATIO = 0.5  # overturned vehicle, to right it


class Ground(StrEnum):
    """What the vehicle stands in."""

    HARD_ROAD = "hard_road"
    GRASS = "grass"
    HARD_WET_SAND = "hard_wet_sand"
    GRAVEL = "gravel"
    SOFT_WET_SAND = "soft_wet_sand"
    SOFT_DRY_SAND = "soft_dry_sand"
    SHALLOW_MUD = "shallow_mud"
    BOG = "bog"  # or clinging clay
    WHEEL_DEEP_MUD = "wheel_deep_mud"
    SILL_DEEP_MUD = "sill_deep_mud"  # or fender deep
    CAB_DEEP_MUD = "cab_deep_mud"
    WHEELS_LOCKED = "wheels_locked"  # dragged


class ResistanceScale(StrEnum):
    """Whose figure to take; largest: the largest that anybody prints for this ground."""

    LARGEST = "largest"
    MILITARY = "military"
    CIVIL = "civil"
    CIVIL_FRACTION = "civil_fraction"
    TOW_TRADE = "tow_trade"
    PRESS = "press"
    SELLER = "seller"


SCALES: dict[ResistanceScale, dict[Ground, float]] = {
    ResistanceScale.MILITARY: {Ground.WHEEL_DEEP_MUD: 1.0, Ground.SILL_DEEP_MUD: 2.0, Ground.CAB_DEEP_MUD: 3.0},
    ResistanceScale.CIVIL: {
        Ground.HARD_ROAD: 0.04,
        Ground.GRASS: 0.145,
        Ground.HARD_WET_SAND: 0.17,
        Ground.GRAVEL: 0.20,
        Ground.SOFT_WET_SAND: 0.20,
        Ground.SOFT_DRY_SAND: 0.25,
        Ground.SHALLOW_MUD: 0.33,
        Ground.BOG: 0.50,
    },
    ResistanceScale.CIVIL_FRACTION: {
        Ground.HARD_ROAD: 1 / 25,
        Ground.GRASS: 1 / 7,
        Ground.HARD_WET_SAND: 1 / 6,
        Ground.GRAVEL: 1 / 5,
        Ground.SOFT_DRY_SAND: 1 / 4,
        Ground.SHALLOW_MUD: 1 / 3,
        Ground.BOG: 1 / 2,
    },
    ResistanceScale.TOW_TRADE: {
        Ground.HARD_ROAD: 0.10,
        Ground.GRASS: 0.33,
        Ground.GRAVEL: 0.33,
        Ground.WHEEL_DEEP_MUD: 1.0,
        Ground.SILL_DEEP_MUD: 2.0,
        Ground.CAB_DEEP_MUD: 3.0,
        Ground.WHEELS_LOCKED: 0.67,
    },
    ResistanceScale.PRESS: {Ground.HARD_ROAD: 0.05, Ground.SILL_DEEP_MUD: 1.50},
    ResistanceScale.SELLER: {Ground.SILL_DEEP_MUD: 2.0},
}


def ground_resistance_ratio(ground: Ground, scale: ResistanceScale = ResistanceScale.LARGEST) -> float:
    """The pull that the ground asks for, as a share of the vehicle's weight with its load.

    Formula: f = R / W, read from the scale; largest: the largest f of all scales for this ground
    Valid: a ground that the scale names; the civil scales stop at 0.5, the military one names deep mud only
    Source: winching_tips_scale, winching_theory_scale, tow_trade_scale, mire_by_depth, press_scale – for one bogging
        the scales differ by a factor of 2 to 4, so the largest stands unless another is named

    >>> ground_resistance_ratio(Ground.GRAVEL), ground_resistance_ratio(Ground.GRAVEL, ResistanceScale.CIVIL)
    (0.33, 0.2)
    """
    if scale is ResistanceScale.LARGEST:
        return max(figures[ground] for figures in SCALES.values() if ground in figures)
    if ground not in SCALES[scale]:
        raise ValueError(f"ground must be one that the scale {scale} names, not {ground}")
    return SCALES[scale][ground]


def load_resistance_n(mass_kg: float, resistance_ratio: float, reduction_n: float = 0.0) -> float:
    """What a vehicle on the level resists with, less what it does for itself.

    Formula: LR = W f - r, W = m g, m with all its load
    Valid: m > 0; f >= 0; 0 <= r <= W f; without a source for the help, r = 0
    Source: army_recovery_steps – the slides name a reduction and give no size for wheels; the 40 % of tracked vehicles
        is not for wheels

    >>> round(load_resistance_n(2000.0, 0.20) / 9.80665, 6)
    400.0
    """
    checked.positive(mass_kg=mass_kg)
    checked.at_least(0, resistance_ratio=resistance_ratio)
    whole_n = mass_kg * STANDARD_GRAVITY_M_PER_S2 * resistance_ratio
    checked.between(0, whole_n, reduction_n=reduction_n)
    return whole_n - reduction_n


def total_resistance_n(ground_n: float, grade_n: float) -> float:
    """What a vehicle on a slope resists with.

    Formula: R = R_ground + R_grade
    Valid: both >= 0: pulling uphill
    Source: winching_tips_scale

    >>> total_resistance_n(4000.0, 5000.0)
    9000.0
    """
    checked.at_least(0, ground_n=ground_n, grade_n=grade_n)
    return ground_n + grade_n


def righting_resistance_n(mass_kg: float) -> float:
    """The pull that rights an overturned vehicle.

    Formula: R = W / 2, W = m g
    Valid: m > 0; a rule of thumb, for a vehicle on its side
    Source: mire_by_depth

    >>> round(righting_resistance_n(2000.0) / 9.80665, 6)
    1000.0
    """
    checked.positive(mass_kg=mass_kg)
    return RIGHTING_RATIO * mass_kg * STANDARD_GRAVITY_M_PER_S2


def anchor_value_n(mass_kg: float) -> float:
    """What a vehicle with all its brakes on can hold as an anchor before it slides.

    Formula: A = 0.666 W, W = m g
    Valid: m > 0; firm level ground, all wheels braked
    Source: anchor_value_own – dragged with locked wheels the tow trade reckons 0.67 W to move it; the lower stands

    >>> round(anchor_value_n(3000.0) / 9.80665, 6)
    1998.0
    """
    checked.positive(mass_kg=mass_kg)
    return ANCHOR_VALUE_RATIO * mass_kg * STANDARD_GRAVITY_M_PER_S2
