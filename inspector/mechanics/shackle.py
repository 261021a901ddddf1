"""Shackles: the spread of two legs, heat, an odd pin, a missing mark, and the loads a maker proves."""

import math
from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2


class UnitForm(StrEnum):
    """The two forms in which one manual prints one rule."""

    METRIC = "metric"
    US = "us"


class NavyGrade(StrEnum):
    """Grade of a US Navy safety shackle; B is marked HS."""

    A = "a"
    B = "b"


class ShackleHeatRule(StrEnum):
    """Whose range of temperature."""

    STRICTEST = "strictest"
    ASME = "asme"
    EN = "en"


_TONNE_N = 1000 * STANDARD_GRAVITY_M_PER_S2
_SHORT_TON_N = 907.18474 * STANDARD_GRAVITY_M_PER_S2
_INCH_M, _CENTIMETRE_M = 0.0254, 0.01
_GREAT_N = 150 * _SHORT_TON_N  # ASME B30.26: other factors above 150 short tons
_SPREAD_RAD = math.radians(120)
_NAVY_FACTOR: dict[NavyGrade, float] = {NavyGrade.A: 2.0, NavyGrade.B: 2.5}
_RANGE_C: dict[ShackleHeatRule, tuple[float, float]] = {
    ShackleHeatRule.STRICTEST: (-20.0, 200.0),
    ShackleHeatRule.ASME: (-40.0, 204.0),
    ShackleHeatRule.EN: (-20.0, 200.0),
}


def may_spread(included_rad: float) -> bool:
    """Whether two legs in the bow of a shackle may stand this far apart; up to there it keeps its full working load.

    Formula: included angle <= 120 deg
    Valid: 0 to 180 deg; the legs in the bow, in its plane, never on the pin
    Source: shackle_spread

    >>> may_spread(math.radians(120)), may_spread(math.radians(121))
    (True, False)
    """
    checked.between(0, math.pi, included_rad=included_rad)
    return included_rad <= _SPREAD_RAD * (1 + checked.SAME_RATIO)


def is_odd_pin(pin_m: float, bow_m: float) -> bool:
    """Whether a pin is no thicker than the bow: then it is likely a bolt or another shackle's pin.

    Formula: D <= d
    Valid: D > 0, d > 0; sizes as new
    Source: shackle_size_lists – in every row of the size tables the pin is thicker than the bow

    >>> is_odd_pin(0.019, 0.019), is_odd_pin(0.022, 0.019)
    (True, False)
    """
    checked.positive(pin_m=pin_m, bow_m=bow_m)
    return pin_m <= bow_m * (1 + checked.SAME_RATIO)


def unmarked_shackle_n(bow_m: float, form: UnitForm = UnitForm.METRIC) -> float:
    """Working load of a shackle nobody knows, by the thickness of its bow: a worst case, no leave to use it.

    Formula: 0.417 D^2 in tonnes, D in cm; by name 3 D^2 in short tons, D in inches
    Valid: D > 0
    Source: navedtra_14251 – the two forms differ: 3 D^2 is 0.4218 in metric, so the metric one, 1.2 % lower, stands

    >>> round(unmarked_shackle_n(0.0159) / 9806.65, 2)
    1.05
    """
    checked.positive(bow_m=bow_m)
    if UnitForm(form) is UnitForm.METRIC:
        return 0.417 * (bow_m / _CENTIMETRE_M) ** 2 * _TONNE_N
    return 3 * (bow_m / _INCH_M) ** 2 * _SHORT_TON_N


def shackle_least_factor(working_load_n: float) -> float:
    """The least design factor of a shackle by its working load.

    Formula: 5 up to 150 short tons, 4 above
    Valid: WLL > 0; screw pin and bolt type
    Source: asme_b30_26_factor

    >>> shackle_least_factor(46e3)
    5.0
    """
    checked.positive(working_load_n=working_load_n)
    return 5.0 if working_load_n <= _GREAT_N * (1 + checked.SAME_RATIO) else 4.0


def shackle_least_proof_n(working_load_n: float) -> float:
    """The least load with which a maker proves a shackle. Not for shackles in service: it may harm them.

    Formula: 2 x WLL up to 150 short tons, 1.33 x WLL above
    Valid: WLL > 0
    Source: asme_b30_26_proof – 2 x WLL also in EN 13889 and AS 2741, from memory

    >>> round(shackle_least_proof_n(46e3))
    92000
    """
    return (2.0 if shackle_least_factor(working_load_n) == 5 else 1.33) * working_load_n


def shackle_most_proof_n(working_load_n: float) -> float:
    """The greatest load with which a maker may prove a shackle.

    Formula: 2.2 x WLL up to 150 short tons, 2 x WLL above
    Valid: WLL > 0
    Source: asme_b30_26_proof

    >>> round(shackle_most_proof_n(46e3))
    101200
    """
    return (2.2 if shackle_least_factor(working_load_n) == 5 else 2.0) * working_load_n


def navy_shackle_n(proof_n: float, grade: NavyGrade) -> float:
    """Working load of a US Navy safety shackle by its proof load.

    Formula: grade A proof / 2, grade B proof / 2.5
    Valid: proof >= 0
    Source: tb_55_navy_shackles

    >>> navy_shackle_n(100e3, NavyGrade.B)
    40000.0
    """
    checked.at_least(0, proof_n=proof_n)
    return proof_n / _NAVY_FACTOR[NavyGrade(grade)]


def shackle_heat_factor(temperature_c: float) -> float:
    """Share of a shackle's working load left while it is hot.

    Formula: 1.00 to 200 C, 0.90 to 300 C, 0.75 to 400 C
    Valid: -20 to 400 C; hotter or colder it is not to be used
    Source: shackle_heat_sheet, en_13889_cold

    >>> shackle_heat_factor(250)
    0.9
    """
    checked.between(-20, 400, temperature_c=temperature_c)
    if temperature_c <= 200:
        return 1.0
    return 0.9 if temperature_c <= 300 else 0.75


def in_shackle_temperature(temperature_c: float, rule: ShackleHeatRule = ShackleHeatRule.STRICTEST) -> bool:
    """Whether a shackle keeps its full working load at a temperature without its maker being asked.

    Formula: -20 to 200 C (EN); by name -40 to 204 C (ASME)
    Valid: above absolute zero
    Source: asme_b30_26_temperature, shackle_heat_sheet, en_13889_cold

    >>> in_shackle_temperature(-30), in_shackle_temperature(-30, ShackleHeatRule.ASME)
    (False, True)
    """
    checked.at_least(-273.15, temperature_c=temperature_c)
    least_c, most_c = _RANGE_C[ShackleHeatRule(rule)]
    return least_c <= temperature_c <= most_c
