"""Fillet welds: what a length of throat carries, and what rust leaves of it."""

import math
from enum import StrEnum

from inspector.mechanics import checked

GAMMA_M2_FACTOR = 1.25


class Steel(StrEnum):
    """Structural steels by their yield strength in MPa."""

    S235 = "s235"
    S275 = "s275"
    S355 = "s355"
    S420 = "s420"
    S460 = "s460"


_CORRELATION = {Steel.S235: 0.80, Steel.S275: 0.85, Steel.S355: 0.90, Steel.S420: 1.0, Steel.S460: 1.0}


def weld_correlation_factor(steel: Steel = Steel.S235) -> float:
    """How a fillet's strength follows from that of the steel it joins; unknown steel counts as S235 with its own fu.

    Formula: bw, a table by steel: 0.80, 0.85, 0.90, 1.0, 1.0
    Valid: the steels of the table
    Source: en_1993_1_8_fillets

    >>> weld_correlation_factor(Steel.S355)
    0.9
    """
    return _CORRELATION[steel]


def weld_shear_strength_pa(
    ultimate_pa: float, correlation_factor: float, gamma_m2_factor: float = GAMMA_M2_FACTOR
) -> float:
    """Design strength of a fillet's throat whatever the direction of the force.

    Formula: fvw,d = fu / (sqrt(3) bw gM2), fu of the weaker part joined
    Valid: fu > 0, bw > 0, gM2 >= 1
    Source: en_1993_1_8_fillets

    >>> round(weld_shear_strength_pa(360e6, 0.80) / 1e6, 1)
    207.8
    """
    checked.positive(ultimate_pa=ultimate_pa, correlation_factor=correlation_factor)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return ultimate_pa / (math.sqrt(3) * correlation_factor * gamma_m2_factor)


def fillet_throat_m(leg_m: float) -> float:
    """Throat of a fillet with equal legs.

    Formula: a = leg / sqrt(2)
    Valid: leg >= 0
    Source: elementary_statics

    >>> round(fillet_throat_m(0.00424) * 1e3, 2)
    3.0
    """
    checked.at_least(0, leg_m=leg_m)
    return leg_m / math.sqrt(2)


def fillet_n_per_m(throat_m: float, shear_strength_pa: float) -> float:
    """What a length of fillet carries by the simplified method.

    Formula: Fw,Rd = a fvw,d
    Valid: a >= 0, fvw,d > 0; below a = 3 mm the rule no longer covers the weld
    Source: en_1993_1_8_fillets

    >>> round(fillet_n_per_m(0.003, 207.8e6) / 1e3)
    623
    """
    checked.at_least(0, throat_m=throat_m)
    checked.positive(shear_strength_pa=shear_strength_pa)
    return throat_m * shear_strength_pa


def transverse_fillet_n_per_m(throat_m: float, shear_strength_pa: float) -> float:
    """What a length of fillet carries across its length by the directional method.

    Formula: sqrt(3/2) a fvw,d, from s90 = t90 = q / (a sqrt 2)
    Valid: a >= 0, fvw,d > 0
    Source: en_1993_1_8_fillets

    >>> round(transverse_fillet_n_per_m(0.003, 207.8e6) / 1e3)
    764
    """
    return math.sqrt(1.5) * fillet_n_per_m(throat_m, shear_strength_pa)


def fillet_equivalent_pa(normal_pa: float, across_pa: float, along_pa: float) -> float:
    """Stress of a fillet's throat that the directional method compares with fu / (bw gM2).

    Formula: sqrt(s90^2 + 3 (t90^2 + t0^2))
    Valid: any finite stresses
    Source: en_1993_1_8_fillets

    >>> round(fillet_equivalent_pa(100e6, 100e6, 0.0) / 1e6)
    200
    """
    checked.at_least(0, normal_pa=abs(normal_pa), across_pa=abs(across_pa), along_pa=abs(along_pa))
    return math.sqrt(normal_pa**2 + 3 * (across_pa**2 + along_pa**2))


def full_strength_throat_ratio(
    yield_pa: float, ultimate_pa: float, correlation_factor: float, gamma_m2_factor: float = GAMMA_M2_FACTOR
) -> float:
    """Throat of each of two fillets, in plate thicknesses, that is as strong as the plate pulled across them.

    Formula: a / t = fy bw gM2 / (sqrt(2) fu), gM0 = 1
    Valid: fy > 0, fu > 0, bw > 0, gM2 >= 1
    Source: en_1993_1_8_fillets

    >>> round(full_strength_throat_ratio(235e6, 360e6, 0.80), 2)
    0.46
    """
    checked.positive(yield_pa=yield_pa, ultimate_pa=ultimate_pa, correlation_factor=correlation_factor)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return yield_pa * correlation_factor * gamma_m2_factor / (math.sqrt(2) * ultimate_pa)


def electrode_fillet_n_per_m(leg_m: float, electrode_pa: float) -> float:
    """Nominal strength of a length of fillet by the strength of its electrode, without a bonus for direction.

    Formula: Rn = 0.60 FEXX 0.707 leg
    Valid: leg >= 0, FEXX > 0
    Source: aisc_360_welds

    >>> round(electrode_fillet_n_per_m(0.0047625, 482.6e6) / 1e3)
    975
    """
    checked.positive(electrode_pa=electrode_pa)
    return 0.60 * electrode_pa * fillet_throat_m(leg_m)


def weld_direction_factor(angle_rad: float) -> float:
    """The American bonus for a force across the weld; leave it out at hollow sections, where it may be unsafe.

    Formula: 1 + 0.5 sin^1.5(theta), theta between force and weld
    Valid: 0 <= theta <= 90 degrees
    Source: aisc_360_welds

    >>> round(weld_direction_factor(math.pi / 2), 3)
    1.5
    """
    checked.between(0, math.pi / 2, angle_rad=angle_rad)
    return 1 + 0.5 * math.pow(math.sin(angle_rad), 1.5)


def corroded_throat_m(throat_m: float, loss_m: float, wall_m: float) -> float:
    """What rust leaves of a throat; the wall behind the weld must pass the force on and bounds it too.

    Formula: a_eff = min(a - D, t), not below 0
    Valid: a >= 0, D >= 0, t >= 0
    Source: own_weld_model

    >>> corroded_throat_m(0.003, 0.0005, 0.002)
    0.002
    """
    checked.at_least(0, throat_m=throat_m, loss_m=loss_m, wall_m=wall_m)
    return min(max(throat_m - loss_m, 0.0), wall_m)
