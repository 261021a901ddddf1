"""Conversion factors: the definitions, and the only call of pint.

Only a unit's name goes to pint, and only after it was found in the white list of the field's dimension.
"""

from functools import cache
from typing import Any

from inspector.units.dimensions import Dimension

STANDARD_GRAVITY_M_PER_S2 = 9.80665
DAYS_PER_YEAR = 365.25

_SECONDS_INSIDE = {Dimension.DAYS: 86400.0, Dimension.YEARS: 86400.0 * DAYS_PER_YEAR}
_DEFINITIONS = """
micro- = 1e-6 = u-
milli- = 1e-3 = m-
centi- = 1e-2 = c-
kilo- = 1e3 = k-
mega- = 1e6 = M-
giga- = 1e9 = G-
meter = [length] = m
second = [time] = s
gram = [mass] = g
radian = [] = rad
degree = 0.017453292519943295 * radian = deg
percent = 0.01
minute = 60 * second = min
hour = 60 * minute = h
day = 24 * hour = d
year = 365.25 * day = a
g_0 = 9.80665 * meter / second ** 2
metric_ton = 1000 * kilogram = t
pound = 0.45359237 * kilogram = lb
short_ton = 2000 * pound
long_ton = 2240 * pound
inch = 0.0254 * meter = in
foot = 12 * inch = ft
mile = 5280 * foot
newton = kilogram * meter / second ** 2 = N
kilogram_force = g_0 * kilogram = kgf
tonne_force = g_0 * metric_ton = tf
pound_force = g_0 * pound = lbf
short_ton_force = g_0 * short_ton
long_ton_force = g_0 * long_ton
pascal = newton / meter ** 2 = Pa
joule = newton * meter = J
newton_meter = newton * meter
newton_per_meter = newton / meter
pound_force_per_inch = pound_force / inch
pound_force_per_square_inch = pound_force / inch ** 2
square_meter = meter ** 2
square_inch = inch ** 2
cubic_meter = meter ** 3
cubic_inch = inch ** 3
fourth_meter = meter ** 4
fourth_inch = inch ** 4
square_millimeter = 1e-6 * meter ** 2
square_centimeter = 1e-4 * meter ** 2
cubic_millimeter = 1e-9 * meter ** 3
cubic_centimeter = 1e-6 * meter ** 3
fourth_millimeter = 1e-12 * meter ** 4
fourth_centimeter = 1e-8 * meter ** 4
foot_pound = pound_force * foot
kilogram_per_meter = kilogram / meter
meter_per_second_squared = meter / second ** 2
pound_foot = pound_force * foot
kilometer_per_hour = kilometer / hour
mile_per_hour = mile / hour
meter_per_second = meter / second
@system SI
    second
    meter
    kilogram
@end
"""


@cache
def _registry() -> Any:
    import pint  # here: a tenth of a second that a list without figures does not need

    registry: Any = pint.UnitRegistry(_DEFINITIONS.strip().splitlines())
    registry.default_system = "SI"  # else the base unit of mass is the gram
    return registry


@cache
def factor(unit: str, dimension: Dimension) -> float:
    """Inside unit per unit: SI's own, but for days and years."""
    si = float(_registry().Quantity(1, unit).to_base_units().magnitude)
    return si / _SECONDS_INSIDE.get(dimension, 1.0)


def years(days: float) -> float:
    """Days as years of 365.25 days."""
    return days / DAYS_PER_YEAR
