"""SI inside, text out."""

import math

from inspector.language import later, once_a_language, tr
from inspector.units.dimensions import Dimension, System
from inspector.units.factors import factor, years
from inspector.units.names import PSI

_HAIR = 1e-6  # of the last printed place; a bound this close to a printed figure is that figure
_DAYS_BEFORE_YEARS = 730  # a longer time is easier to grasp in years

_SHOWN: dict[tuple[Dimension, System], tuple[str, str, int]] = {
    (Dimension.LENGTH, System.METRIC): ("millimeter", "mm", 2),
    (Dimension.LENGTH, System.IMPERIAL): ("inch", "in", 3),
    (Dimension.FORCE, System.METRIC): ("kilonewton", "kN", 1),
    (Dimension.FORCE, System.IMPERIAL): ("pound_force", "lbf", 0),
    (Dimension.MASS, System.METRIC): ("kilogram", "kg", 0),
    (Dimension.MASS, System.IMPERIAL): ("pound", "lb", 0),
    (Dimension.TORQUE, System.METRIC): ("newton_meter", "N m", 0),
    (Dimension.TORQUE, System.IMPERIAL): ("pound_foot", "lbf ft", 0),
    (Dimension.STRESS, System.METRIC): ("megapascal", "MPa", 1),
    (Dimension.STRESS, System.IMPERIAL): (f"kilo{PSI}", "ksi", 2),
    (Dimension.AREA, System.METRIC): ("square_millimeter", "mm²", 1),
    (Dimension.AREA, System.IMPERIAL): ("square_inch", "in²", 4),
    (Dimension.MODULUS, System.METRIC): ("cubic_centimeter", "cm³", 4),
    (Dimension.MODULUS, System.IMPERIAL): ("cubic_inch", "in³", 5),
    (Dimension.INERTIA, System.METRIC): ("fourth_centimeter", "cm⁴", 3),
    (Dimension.INERTIA, System.IMPERIAL): ("fourth_inch", "in⁴", 4),
    (Dimension.STIFFNESS, System.METRIC): ("kilonewton_per_meter", "kN/m", 2),
    (Dimension.STIFFNESS, System.IMPERIAL): ("pound_force_per_inch", "lbf/in", 1),
    (Dimension.ENERGY, System.METRIC): ("kilojoule", "kJ", 3),
    (Dimension.ENERGY, System.IMPERIAL): ("foot_pound", "ft lbf", 0),
    (Dimension.RATE, System.METRIC): ("millimeter", later("mm/year"), 3),
    (Dimension.RATE, System.IMPERIAL): ("inch", later("in/year"), 4),
    (Dimension.LINEAR_MASS, System.METRIC): ("kilogram_per_meter", "kg/m", 3),
    (Dimension.LINEAR_MASS, System.IMPERIAL): ("kilogram_per_meter", "kg/m", 3),
    (Dimension.ACCELERATION, System.METRIC): ("meter_per_second_squared", "m/s²", 2),
    (Dimension.ACCELERATION, System.IMPERIAL): ("meter_per_second_squared", "m/s²", 2),
    (Dimension.SPEED, System.METRIC): ("kilometer_per_hour", "km/h", 1),
    (Dimension.SPEED, System.IMPERIAL): ("mile_per_hour", "mph", 1),
}


_PLAIN_NUMBERS = {
    Dimension.COUNT: "",
    Dimension.FACTOR: "",
    Dimension.SECONDS: " s",
    Dimension.TEMPERATURE: " °C",
}


def show(si: float, dimension: Dimension, system: System = System.METRIC, finer_places: int = 0) -> str:
    """The value as it is printed, e.g. "2.7 mm", "228.6 kN", "14 %", "90 days"; long lengths in m or ft.

    finer_places: more decimal places than usual, where two different values would print alike.
    """
    if dimension is Dimension.RATIO:
        return f"{_trimmed(si * 100, 1 + finer_places)} %"
    if dimension is Dimension.DAYS:
        return _show_days(si)
    if dimension is Dimension.YEARS:
        return tr("{count} years", count=_trimmed(si, 2 + finer_places))
    if dimension is Dimension.ANGLE:
        return f"{_trimmed(math.degrees(si), 1)}°"
    if dimension in _PLAIN_NUMBERS:
        return f"{_trimmed(si, 2 + finer_places)}{_PLAIN_NUMBERS[dimension]}"
    return _with_unit(si, dimension, system, finer_places)


def show_typed(as_typed: str) -> str:
    """A figure as it was typed, its days or years in the officer's language: units have signs, times have words."""
    count, _, unit = as_typed.rpartition(" ")
    if unit not in _times():
        return as_typed
    return _times()[unit].replace("{count}", count)


@once_a_language
def _times() -> dict[str, str]:
    return {
        "day": tr("{count} day"),
        "days": tr("{count} days"),
        "year": tr("{count} year"),
        "years": tr("{count} years"),
    }


def show_bound(si: float, dimension: Dimension, system: System, *, least: bool) -> str:
    """A length or a plain number as a bound that is never milder in print than it is: a least one is rounded up, a
    greatest one down. E.g. at least 17.484 mm prints as "17.49 mm".
    """
    unit, symbol, places = _SHOWN.get((dimension, system), ("", "", 2))
    scale = 10**places / (factor(unit, dimension) if unit else 1.0)
    steps = math.ceil(si * scale - _HAIR) if least else math.floor(si * scale + _HAIR)
    return f"{_trimmed(steps / 10**places, places)} {symbol}".strip()


def _show_days(days: float) -> str:
    if days >= _DAYS_BEFORE_YEARS:
        return tr("{count} years", count=_trimmed(years(days), 1))
    return tr("1 day") if days == 1 else tr("{count} days", count=_trimmed(days, 0))


def _with_unit(si: float, dimension: Dimension, system: System, finer_places: int) -> str:
    unit, symbol, places = _SHOWN[dimension, system]
    if dimension is Dimension.LENGTH and abs(si) >= 1:
        unit, symbol, places = ("meter", "m", 2) if system is System.METRIC else ("foot", "ft", 1)
    symbol = tr(symbol) if dimension is Dimension.RATE else symbol
    return f"{_trimmed(si / factor(unit, dimension), places + finer_places)} {symbol}"


def _trimmed(value: float, places: int) -> str:
    """Rounded, thousands apart, no idle zeros; a comma of thousands is a thin gap so no reader mistakes it."""
    text = f"{value:,.{places}f}"
    whole, _, part = text.partition(".")
    part = part.rstrip("0")
    if "," in whole:
        plain = whole.replace(",", "")
        whole = whole.replace(",", "\u202f") if len(plain.lstrip("-")) > 4 else plain
    return f"{whole}.{part}" if part else whole
