"""Conversion factors, each from the definition of its unit; the tests hold them against another book of units."""

from inspector.units.dimensions import Dimension

STANDARD_GRAVITY_M_PER_S2 = 9.80665
DAYS_PER_YEAR = 365.25

_INCH_M = 0.0254
_FOOT_M = 12 * _INCH_M
_SQUARE_INCH_M2 = _INCH_M**2
_POUND_KG = 0.45359237
_POUND_FORCE_N = STANDARD_GRAVITY_M_PER_S2 * _POUND_KG
_FOOT_POUND_J = _POUND_FORCE_N * _FOOT_M
_PSI_PA = _POUND_FORCE_N * _INCH_M**-2
_DAY_S = 86400.0

_SI: dict[str, float] = {
    "micrometer": 1e-6,
    "millimeter": 1e-3,
    "centimeter": 1e-2,
    "meter": 1.0,
    "inch": _INCH_M,
    "foot": _FOOT_M,
    "newton": 1.0,
    "kilonewton": 1e3,
    "kilogram_force": STANDARD_GRAVITY_M_PER_S2,
    "tonne_force": 1e3 * STANDARD_GRAVITY_M_PER_S2,
    "pound_force": _POUND_FORCE_N,
    "short_ton_force": 2000 * _POUND_FORCE_N,
    "long_ton_force": 2240 * _POUND_FORCE_N,
    "gram": 1e-3,
    "kilogram": 1.0,
    "metric_ton": 1e3,
    "pound": _POUND_KG,
    "short_ton": 2000 * _POUND_KG,
    "long_ton": 2240 * _POUND_KG,
    "newton_meter": 1.0,
    "kilonewton_meter": 1e3,
    "pound_foot": _FOOT_POUND_J,
    "meter_per_second": 1.0,
    "kilometer_per_hour": 1e3 / 3600,
    "mile_per_hour": 5280 * _FOOT_M / 3600,
    "radian": 1.0,
    "degree": 0.017453292519943295,
    "second": 1.0,
    "minute": 60.0,
    "hour": 3600.0,
    "day": _DAY_S,
    "year": DAYS_PER_YEAR * _DAY_S,
    "pascal": 1.0,
    "kilopascal": 1e3,
    "megapascal": 1e6,
    "gigapascal": 1e9,
    "pound_force_per_square_inch": _PSI_PA,
    "kilopound_force_per_square_inch": 1e3 * _PSI_PA,
    "square_millimeter": 1e-6,
    "square_centimeter": 1e-4,
    "square_meter": 1.0,
    "square_inch": _SQUARE_INCH_M2,
    "cubic_millimeter": 1e-9,
    "cubic_centimeter": 1e-6,
    "cubic_inch": _INCH_M**3,
    "fourth_millimeter": 1e-12,
    "fourth_centimeter": 1e-8,
    "fourth_inch": _INCH_M**4,
    "newton_per_meter": 1.0,
    "kilonewton_per_meter": 1e3,
    "pound_force_per_inch": _POUND_FORCE_N / _INCH_M,
    "joule": 1.0,
    "kilojoule": 1e3,
    "foot_pound": _FOOT_POUND_J,
    "kilogram_per_meter": 1.0,
    "meter_per_second_squared": 1.0,
    "percent": 1e-2,
}
_INSIDE_SI = {Dimension.DAYS: _DAY_S, Dimension.YEARS: DAYS_PER_YEAR * _DAY_S}


def factor(unit: str, dimension: Dimension) -> float:
    """Inside unit per unit: SI's own, but for days and years."""
    return _SI[unit] / _INSIDE_SI.get(dimension, 1.0)


def years(days: float) -> float:
    """Days as years of 365.25 days."""
    return days / DAYS_PER_YEAR
