"""Couplings for road towing: D-value, vertical value, test forces, balls and towing eyes.

The rules of couplings (UN R55, ADR 62/02) write gravity as 9.81 m/s2, not as the standard 9.80665.
"""

import math
from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2

RULE_GRAVITY_M_PER_S2 = 9.81  # the g that UN R55 and ADR 62/02 print
ADR_MOST_KG = 3500.0
BALL_NEW_M = 0.050
BALL_WORN_M = 0.049
_LOOSE_M = BALL_NEW_M - BALL_WORN_M


class Suspension(StrEnum):
    """Of the towing vehicle's rear axle: air or like air, or any other."""

    AIR = "air"
    OTHER = "other"


class Thrust(StrEnum):
    """Direction of a coupling's static test force."""

    LONGITUDINAL = "longitudinal"
    TRANSVERSE = "transverse"
    VERTICAL = "vertical"


_UPWARD_M_PER_S2 = {Suspension.AIR: 1.8, Suspension.OTHER: 2.4}
_ADR_SHARES = {Thrust.LONGITUDINAL: 1.5, Thrust.TRANSVERSE: 0.5, Thrust.VERTICAL: 0.5}


def d_value_n(towing_kg: float, trailer_kg: float) -> float:
    """D-value that a drawbar trailer asks of its coupling: a reference force for steady towing.

    D is a rating for years of steady towing, proved by fatigue in line with the road. It is no breaking strength, and
    it says nothing of one great pull, or of a pull sideways or upwards. So a snatch peak at or below D proves nothing,
    and a coupling is not passed for recovery by it. See snatch_over_d_ratio.

    Formula: D = g T R / (T + R), g = 9.81 m/s2
    Valid: both masses > 0
    Source: un_r55_d

    >>> round(d_value_n(18e3, 22e3) / 1e3, 2)
    97.12
    """
    checked.positive(towing_kg=towing_kg, trailer_kg=trailer_kg)
    return RULE_GRAVITY_M_PER_S2 * towing_kg * trailer_kg / (towing_kg + trailer_kg)


def other_mass_kg(rated_d_n: float, known_kg: float) -> float:
    """The trailer that a coupling's D-value and the towing vehicle allow; or the towing vehicle, from the trailer.

    Formula: R = T D / (g T - D), the D-value solved for the other mass
    Valid: D > 0, known mass > 0, D below g T (above it any mass is allowed)
    Source: un_r55_d – a reference page prints g R in the denominator: a misprint, it leaves R on both sides

    >>> round(other_mass_kg(97.119e3, 18e3))
    22000
    """
    checked.positive(rated_d_n=rated_d_n, known_kg=known_kg)
    spare_n = RULE_GRAVITY_M_PER_S2 * known_kg - rated_d_n
    if spare_n <= 0:
        raise ValueError("rated_d_n must lie below g times known_kg; above it any other mass is allowed")
    return known_kg * rated_d_n / spare_n


def centre_axle_d_n(towing_kg: float, axles_kg: float) -> float:
    """Dc-value that a centre-axle trailer asks of its coupling: from its axle loads, used with the V-value.

    Formula: Dc = g T C / (T + C), g = 9.81 m/s2; C the sum of the trailer's axle loads, nose weight left out
    Valid: both masses > 0
    Source: un_r55_d

    >>> round(centre_axle_d_n(3.0e3, 2.5e3) / 1e3, 2)
    13.38
    """
    checked.positive(axles_kg=axles_kg)
    return d_value_n(towing_kg, axles_kg)


def v_value_n(axles_kg: float, body_m: float, drawbar_m: float, suspension: Suspension = Suspension.OTHER) -> float:
    """V-value that a centre-axle trailer asks of its coupling: the up and down force of a rough road.

    Formula: V = a C x^2 / l^2, x^2 / l^2 not below 1; a = 1.8 m/s2 with air suspension, 2.4 with any other
    Valid: all > 0; nose weight to 10 % of the trailer and 1000 kg
    Source: un_r55_d

    >>> round(v_value_n(10e3, 6.0, 5.0) / 1e3, 2)
    34.56
    """
    checked.positive(axles_kg=axles_kg, body_m=body_m, drawbar_m=drawbar_m)
    return _UPWARD_M_PER_S2[Suspension(suspension)] * axles_kg * max(math.pow(body_m / drawbar_m, 2), 1.0)


def semi_trailer_d_n(towing_kg: float, trailer_kg: float, imposed_kg: float) -> float:
    """D-value that a semi-trailer asks of its fifth wheel.

    Formula: D = 0.6 g T R / (T + R - U), g = 9.81 m/s2; U the load on the fifth wheel, part of both T and R
    Valid: all > 0, U below the trailer's mass
    Source: un_r55_d – a reference page prints U for R above the line: a misprint, its own formula for U has R

    >>> round(semi_trailer_d_n(16e3, 16e3, 8e3) / 1e3, 2)
    62.78
    """
    checked.positive(towing_kg=towing_kg, trailer_kg=trailer_kg, imposed_kg=imposed_kg)
    if imposed_kg >= trailer_kg:
        raise ValueError("imposed_kg must lie below trailer_kg")
    return 0.6 * RULE_GRAVITY_M_PER_S2 * towing_kg * trailer_kg / (towing_kg + trailer_kg - imposed_kg)


def adr_test_n(trailer_kg: float, thrust: Thrust = Thrust.LONGITUDINAL) -> float:
    """Static force that a light coupling must stand for 10 s in an Australian test without lasting harm.

    Formula: 1.5 x 9.81 x ATM along, 0.5 x 9.81 x ATM across, 0.5 x 9.81 x ATM up and down
    Valid: ATM above 0, to 3500 kg
    Source: adr_62_02

    >>> round(adr_test_n(3500) / 1e3, 2)
    51.5
    """
    checked.positive(trailer_kg=trailer_kg)
    checked.between(0, ADR_MOST_KG, trailer_kg=trailer_kg)
    return _ADR_SHARES[Thrust(thrust)] * RULE_GRAVITY_M_PER_S2 * trailer_kg


def snatch_over_d_ratio(peak_n: float, rated_d_n: float) -> float:
    """How many times its D-value a snatch would put on a coupling: shown as a warning, never as a proof of safety.

    Above 1 the pull exceeds all that the coupling was tested for. At or below 1 it still proves nothing: D is a
    fatigue rating in line with the road, and towing couplings are barred from recovery whatever the figure.

    Formula: ratio = F_peak / D
    Valid: peak >= 0, D > 0
    Source: un_r55_d, strap_standard_s11

    >>> round(snatch_over_d_ratio(80e3, 13.4e3), 1)
    6.0
    """
    checked.at_least(0, peak_n=peak_n)
    checked.positive(rated_d_n=rated_d_n)
    return peak_n / rated_d_n


def ball_loss_ratio(ball_m: float, new_m: float = BALL_NEW_M) -> float:
    """Share of its diameter that a tow ball has lost; 0 when it measures more than new.

    Formula: loss = max(1 - d / d_new, 0)
    Valid: both diameters > 0
    Source: ball_wear

    >>> round(ball_loss_ratio(0.049), 4)
    0.02
    """
    checked.positive(ball_m=ball_m, new_m=new_m)
    return max(1 - ball_m / new_m, 0.0)


def is_ball_worn(ball_m: float) -> bool:
    """Is a 50 mm tow ball worn out? It must measure 49 mm at every place.

    Formula: d < 49.0 mm
    Valid: diameter > 0, measured at its thinnest
    Source: ball_wear

    >>> is_ball_worn(0.0489), is_ball_worn(0.049)
    (True, False)
    """
    checked.positive(ball_m=ball_m)
    return ball_m < BALL_WORN_M * (1 - checked.SAME_RATIO)


def is_ball_mismatched(ball_m: float, coupler_m: float) -> bool:
    """Whether a ball does not belong in this coupler: looser than a worn-out ball may sit, or too big to go in.

    Formula: coupler - ball > 1.0 mm, or ball - coupler > 1.0 mm; sizes as marked
    Valid: both diameters > 0
    Source: ball_mismatch, ball_wear – 47.6 in 50 mm is the published case; the 1.0 mm is that of the worn ball

    >>> is_ball_mismatched(0.0476, 0.050), is_ball_mismatched(0.050, 0.050)
    (True, False)
    """
    checked.positive(ball_m=ball_m, coupler_m=coupler_m)
    return abs(coupler_m - ball_m) > _LOOSE_M * (1 + checked.SAME_RATIO)


def towing_eye_n(laden_kg: float) -> float:
    """The pull and push that a vehicle's towing eye must at least stand. It is made for towing, not for recovery.

    Formula: F = m g / 2, m the permissible laden mass, g = 9.80665 m/s2 (the lower figure for what may be counted on)
    Valid: mass > 0; a static force
    Source: eu_1005_2010

    >>> round(towing_eye_n(3000) / 1e3, 2)
    14.71
    """
    checked.positive(laden_kg=laden_kg)
    return 0.5 * laden_kg * STANDARD_GRAVITY_M_PER_S2


def eye_over_strap_ratio(laden_kg: float, breaking_n: float) -> float:
    """What a towing eye must stand as a share of the strap's breaking strength: a quarter at twice the vehicle's mass.

    Formula: ratio = (m g / 2) / MBS
    Valid: mass and MBS > 0
    Source: eu_1005_2010, strap_standard_s8 – derived: MBS of 2 m g leaves 1/4, of 3 m g 1/6

    >>> round(eye_over_strap_ratio(3000, 2 * 3000 * 9.80665), 6)
    0.25
    """
    checked.positive(breaking_n=breaking_n)
    return towing_eye_n(laden_kg) / breaking_n
