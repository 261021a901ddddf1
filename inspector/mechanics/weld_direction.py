"""Fillets pulled at an angle, the second check of the directional method, and the length of a fillet that counts."""

import math

from inspector.mechanics import checked

LEAST_THROAT_M = 0.003
_LEAST_LENGTH_M = 0.030
_LEAST_THROATS = 6


def fillet_angle_factor(angle_rad: float) -> float:
    """How much more than the simplified method the directional one gives a fillet pulled at an angle to its length.

    Formula: sqrt(3 / (2 + cos^2(theta))), from s90 = t90 = q sin(theta) / (a sqrt 2), t0 = q cos(theta) / a
    Valid: 0 <= theta <= 90 degrees, equal legs; unknown welds count without it
    Source: en_1993_1_8_fillets

    >>> round(fillet_angle_factor(math.pi / 2), 3)
    1.225
    """
    checked.between(0, math.pi / 2, angle_rad=angle_rad)
    return math.sqrt(3 / (2 + math.cos(angle_rad) ** 2))


def fillet_equivalent_limit_pa(ultimate_pa: float, correlation_factor: float, gamma_m2_factor: float = 1.25) -> float:
    """The most that the equivalent stress of a fillet's throat may be.

    Formula: fu / (bw gM2), fu of the weaker part joined
    Valid: fu > 0, bw > 0, gM2 >= 1
    Source: en_1993_1_8_fillets

    >>> round(fillet_equivalent_limit_pa(490e6, 0.90) / 1e6, 1)
    435.6
    """
    checked.positive(ultimate_pa=ultimate_pa, correlation_factor=correlation_factor)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return ultimate_pa / (correlation_factor * gamma_m2_factor)


def fillet_normal_limit_pa(ultimate_pa: float, gamma_m2_factor: float = 1.25) -> float:
    """The most that the stress straight across a fillet's throat may be; it is checked beside the equivalent stress.

    Formula: 0.9 fu / gM2
    Valid: fu > 0, gM2 >= 1
    Source: en_1993_1_8_fillets

    >>> round(fillet_normal_limit_pa(490e6) / 1e6, 1)
    352.8
    """
    checked.positive(ultimate_pa=ultimate_pa)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return 0.9 * ultimate_pa / gamma_m2_factor


def fillet_least_length_m(throat_m: float) -> float:
    """The shortest run of fillet that may be counted on.

    Formula: max(30 mm, 6 a)
    Valid: a > 0
    Source: en_1993_1_8_lengths

    >>> fillet_least_length_m(0.004), round(fillet_least_length_m(0.006), 3)
    (0.03, 0.036)
    """
    checked.positive(throat_m=throat_m)
    return max(_LEAST_LENGTH_M, _LEAST_THROATS * throat_m)


def fillet_effective_length_m(length_m: float, throat_m: float, is_closed: bool = False) -> float:
    """How much of a run of fillet counts: its ends do not, and a short run counts for nothing.

    Formula: l - 2 a; l for a weld all round; 0 where that is below max(30 mm, 6 a)
    Valid: l >= 0, a > 0
    Source: en_1993_1_8_lengths

    >>> round(fillet_effective_length_m(0.050, 0.003), 3), fillet_effective_length_m(0.030, 0.003)
    (0.044, 0.0)
    """
    checked.at_least(0, length_m=length_m)
    least_m = fillet_least_length_m(throat_m)
    counted_m = length_m if is_closed else length_m - 2 * throat_m
    return counted_m if counted_m >= least_m * (1 - checked.SAME_RATIO) else 0.0


def is_throat_below_rules(throat_m: float) -> bool:
    """Whether a fillet, new or rusted, is so thin that the design rules no longer speak of it.

    Formula: a < 3 mm
    Valid: a >= 0
    Source: en_1993_1_8_lengths – 4.5.2, from memory

    >>> is_throat_below_rules(0.0029), is_throat_below_rules(0.003)
    (True, False)
    """
    checked.at_least(0, throat_m=throat_m)
    return throat_m < LEAST_THROAT_M * (1 - checked.SAME_RATIO)
