"""Rope and webbing over a pin, hook or edge. D is the diameter it is bent over, d that of the rope."""

import math
from enum import StrEnum

from inspector.mechanics import checked


class Termination(StrEnum):
    """How the end of a sling is made."""

    HAND_SPLICE = "hand splice"
    CABLE_LAID_SPLICE = "cable laid splice"
    STEEL_FERRULE = "steel ferrule"
    ALUMINIUM_FERRULE = "aluminium ferrule"
    RESIN_SOCKET = "resin socket"
    SWAGED_EYE = "swaged eye"
    HMPE_SPLICE = "hmpe splice"


class FibreBend(StrEnum):
    """What a fibre rope is bent over: a pin that stands still, or a sheave; least and most of what is published."""

    PIN = "pin"
    PIN_SOME_TYPES = "pin some types"
    SHEAVE_LEAST = "sheave least"
    SHEAVE_MOST = "sheave most"


class EyeRule(StrEnum):
    """How long an eye is to be: the longer, better figure or the least."""

    BETTER = "better"
    LEAST = "least"


_TERMINATION_FACTOR: dict[Termination, float] = {
    Termination.HAND_SPLICE: 1.25,
    Termination.CABLE_LAID_SPLICE: 1.33,
    Termination.STEEL_FERRULE: 1.12,
    Termination.ALUMINIUM_FERRULE: 2.0,
    Termination.RESIN_SOCKET: 1.0,
    Termination.SWAGED_EYE: 1.0,
    Termination.HMPE_SPLICE: 1.0,  # the sling is tested with its splice
}
_FIBRE_BEND_RATIO: dict[FibreBend, float] = {
    FibreBend.PIN: 3.0,
    FibreBend.PIN_SOME_TYPES: 2.0,
    FibreBend.SHEAVE_LEAST: 5.0,
    FibreBend.SHEAVE_MOST: 20.0,
}
_EYE_PINS_RATIO: dict[EyeRule, float] = {EyeRule.BETTER: 5.0, EyeRule.LEAST: 3.0}
_EYE_ROPES_RATIO = 6.0
_EYE_OPENING_RAD = math.radians(20)
_BEARING_WIDTH_M = 0.075
_BEARING_RADIUS_RATIO = 0.75


def bend_ratio(pin_m: float, rope_m: float) -> float:
    """How tightly a rope is bent: diameter of the pin over that of the rope.

    Formula: D / d
    Valid: D > 0, d > 0
    Source: marine_lifting_0027

    >>> bend_ratio(0.022, 0.011)
    2.0
    """
    checked.positive(pin_m=pin_m, rope_m=rope_m)
    return pin_m / rope_m


def wire_rope_bend_factor(pin_m: float, rope_m: float) -> float:
    """By how much the strength of a steel wire rope is divided where it is bent round a pin, shackle or hook.

    Formula: gamma_b = 1 / (1 - 0.5 / sqrt(D / d))
    Valid: D / d >= 1; below, no rope body may touch, so it is refused; steel wire rope only
    Source: marine_lifting_0027 – an eye over less than 2 d is not recommended there either

    >>> round(wire_rope_bend_factor(0.020, 0.010), 2)
    1.55
    """
    ratio = bend_ratio(pin_m, rope_m)
    checked.at_least(1 - checked.SAME_RATIO, **{"pin_m over rope_m": ratio})
    return 1 / (1 - 0.5 / math.sqrt(ratio))


def bent_wire_rope_n(breaking_n: float, pin_m: float, rope_m: float) -> float:
    """Strength of a steel wire rope where it is bent round a pin.

    Formula: F = MBS / gamma_b
    Valid: MBS >= 0, D / d >= 1
    Source: marine_lifting_0027

    >>> round(bent_wire_rope_n(60e3, 0.010, 0.010))
    30000
    """
    checked.at_least(0, breaking_n=breaking_n)
    return breaking_n / wire_rope_bend_factor(pin_m, rope_m)


def termination_factor(termination: Termination) -> float:
    """By how much the strength of a sling is divided for the way its end is made.

    Formula: table: hand splice 1.25, steel ferrule 1.12, aluminium ferrule 2.0, socket, swaged eye, hmpe splice 1.0
    Valid: the ends listed; an hmpe splice only if the sling was tested with it
    Source: marine_lifting_0027

    >>> termination_factor(Termination.HAND_SPLICE)
    1.25
    """
    return _TERMINATION_FACTOR[Termination(termination)]


def sling_reduction_factor(end_factor: float, bend_factor: float) -> float:
    """By how much the strength of a sling is divided for its end and its bend: the worse stands, never the product.

    Formula: gamma_r = max(gamma_s, gamma_b)
    Valid: both factors >= 1
    Source: marine_lifting_0027

    >>> sling_reduction_factor(1.25, 1.55)
    1.55
    """
    checked.at_least(1, end_factor=end_factor, bend_factor=bend_factor)
    return max(end_factor, bend_factor)


def fibre_bend_factor(pin_m: float, makers_least_m: float) -> float:
    """By how much the strength of a fibre rope is divided where it is bent: not at all from its maker's least pin up.

    Formula: gamma_b = 1.0 if D >= D_min
    Valid: D_min > 0, D >= D_min; a thinner pin is refused, since no neutral table of strength by D / d exists
    Source: marine_lifting_0027

    >>> fibre_bend_factor(0.035, 0.033)
    1.0
    """
    checked.positive(makers_least_m=makers_least_m)
    checked.at_least(makers_least_m * (1 - checked.SAME_RATIO), pin_m=pin_m)
    return 1.0


def fibre_least_pin_m(rope_m: float, bend: FibreBend = FibreBend.PIN) -> float:
    """The thinnest pin or sheave for a fibre rope where its maker names none.

    Formula: D = 3 d on a pin (some types 2 d), 5 d to 20 d on a sheave
    Valid: d > 0
    Source: fibre_bend_guide – the maker's own figure goes first

    >>> round(fibre_least_pin_m(0.011), 4)
    0.033
    """
    checked.positive(rope_m=rope_m)
    return _FIBRE_BEND_RATIO[FibreBend(bend)] * rope_m


def may_bend_fibre(pin_m: float, rope_m: float, bend: FibreBend = FibreBend.PIN) -> bool:
    """Whether a pin or sheave is thick enough for a fibre rope where its maker names no figure.

    Formula: D >= 3 d on a pin (some types 2 d), 5 d to 20 d on a sheave
    Valid: D > 0, d > 0
    Source: fibre_bend_guide

    >>> may_bend_fibre(0.022, 0.011), may_bend_fibre(0.022, 0.011, FibreBend.PIN_SOME_TYPES)
    (False, True)
    """
    checked.positive(pin_m=pin_m)
    return pin_m >= fibre_least_pin_m(rope_m, bend) * (1 - checked.SAME_RATIO)


def eye_least_length_m(pin_m: float, rope_m: float, rule: EyeRule = EyeRule.BETTER) -> float:
    """How long a rope's eye is to be inside, so that it does not spread too far over the pin.

    Formula: max(5 D, 6 d); at the very least max(3 D, 6 d)
    Valid: D > 0, d > 0
    Source: fibre_bend_guide

    >>> round(eye_least_length_m(0.022, 0.011), 3)
    0.11
    """
    checked.positive(pin_m=pin_m, rope_m=rope_m)
    return max(_EYE_PINS_RATIO[EyeRule(rule)] * pin_m, _EYE_ROPES_RATIO * rope_m)


def may_open_eye(opening_rad: float) -> bool:
    """Whether the two sides of a webbing eye run close enough together.

    Formula: opening <= 20 deg
    Valid: 0 to 180 deg
    Source: en_1492_1_manual

    >>> may_open_eye(math.radians(20)), may_open_eye(math.radians(25))
    (True, False)
    """
    checked.between(0, math.pi, opening_rad=opening_rad)
    return opening_rad <= _EYE_OPENING_RAD * (1 + checked.SAME_RATIO)


def bearing_least_radius_m(bearing_width_m: float) -> float:
    """The tightest curve of a hook or pin, across its length, on which a webbing eye may bear.

    Formula: r = 0.75 x bearing width
    Valid: width above 0 and up to 75 mm; a wider eye needs a straight bearing, so it is refused
    Source: en_1492_1_manual

    >>> round(bearing_least_radius_m(0.060), 3)
    0.045
    """
    checked.positive(bearing_width_m=bearing_width_m)
    checked.between(0, _BEARING_WIDTH_M * (1 + checked.SAME_RATIO), bearing_width_m=bearing_width_m)
    return _BEARING_RADIUS_RATIO * bearing_width_m


def is_sharp_edge(radius_m: float, thickness_m: float) -> bool:
    """Whether an edge is sharp to a strap or rope laid over it.

    Formula: r < thickness of the strap, or diameter of the rope
    Valid: r >= 0, thickness > 0
    Source: dguv_109_017

    >>> is_sharp_edge(0.003, 0.006), is_sharp_edge(0.008, 0.006)
    (True, False)
    """
    checked.at_least(0, radius_m=radius_m)
    checked.positive(thickness_m=thickness_m)
    return radius_m < thickness_m * (1 - checked.SAME_RATIO)
