"""Text in, SI inside, text out: the only module with a conversion factor in it and the only importer of pint.

A number is read by a lexer of our own, because a general parser silently misreads "4,75 t" or "1 3/4 in"; only the
unit's name goes to pint, and only after it was found in the white list of the field's dimension.
"""

import math
import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from inspector.language import tr
from inspector.refused import Refused

STANDARD_GRAVITY_M_PER_S2 = 9.80665
DAYS_PER_YEAR = 365.25

_DEFINITIONS = """
milli- = 1e-3 = m-
centi- = 1e-2 = c-
kilo- = 1e3 = k-
mega- = 1e6 = M-
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


class Dimension(StrEnum):
    """What a figure measures; SI unit inside in brackets."""

    LENGTH = "length"  # metre
    FORCE = "force"  # newton; kg and t on gear are forces
    MASS = "mass"  # kilogram
    TORQUE = "torque"  # newton metre
    SPEED = "speed"  # metre per second
    ANGLE = "angle"  # radian
    DAYS = "days"  # day
    RATIO = "ratio"  # pure number, shown in per cent
    FACTOR = "factor"  # pure number
    COUNT = "count"  # whole number


class System(StrEnum):
    """Which units are printed first. Both are first class."""

    METRIC = "metric"
    IMPERIAL = "imperial"


@dataclass(frozen=True, slots=True)
class Figure:
    """A value in SI with the text the officer wrote, which is what prints."""

    si: float
    as_typed: str
    dimension: Dimension


_LENGTH = {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot"}
_LENGTH |= {'"': "inch", "″": "inch", "inch": "inch", "inches": "inch", "'": "foot", "feet": "foot"}
_TONS = {"short ton": "short_ton", "short tons": "short_ton", "long ton": "long_ton", "long tons": "long_ton"}
_MASS = {"kg": "kilogram", "t": "metric_ton", "tonne": "metric_ton", "tonnes": "metric_ton", "g": "gram"} | _TONS
_MASS |= {"lb": "pound", "lbs": "pound"}
_FORCE = {"N": "newton", "kN": "kilonewton", "kgf": "kilogram_force", "tf": "tonne_force", "lbf": "pound_force"}
_FORCE |= {"kg": "kilogram_force", "t": "tonne_force", "tonne": "tonne_force", "tonnes": "tonne_force"}
_FORCE |= {"lb": "pound_force", "lbs": "pound_force"} | {name: f"{unit}_force" for name, unit in _TONS.items()}

_UNITS: dict[Dimension, dict[str, str]] = {
    Dimension.LENGTH: _LENGTH,
    Dimension.FORCE: _FORCE,
    Dimension.MASS: _MASS,
    Dimension.TORQUE: {"N m": "newton_meter", "Nm": "newton_meter", "lbf ft": "pound_foot", "ft lb": "pound_foot"},
    Dimension.SPEED: {"km/h": "kilometer_per_hour", "mph": "mile_per_hour", "m/s": "meter_per_second"},
    Dimension.ANGLE: {"deg": "degree", "°": "degree", "rad": "radian"},
    Dimension.DAYS: {"d": "day", "day": "day", "days": "day", "h": "hour", "year": "year", "years": "year"},
    Dimension.RATIO: {"%": "percent", "": "radian"},
    Dimension.FACTOR: {"": "radian", ":1": "radian"},
    Dimension.COUNT: {"": "radian"},
}

_FRACTIONS = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_VULGAR = re.compile(r"^(?P<sign>[-+]?)(?:(?P<whole>\d{1,6})[ -])?(?P<top>\d{1,4})/(?P<bottom>\d{1,4})(?P<unit>\D.*)?$")
_PLAIN = re.compile(r"^(?P<sign>[-+]?)(?P<number>\d[\d., ]*?)\s*(?P<unit>[^\d., ].*|)$")
_LONGEST_TEXT = 60
_DAYS_BEFORE_YEARS = 730  # a longer time is easier to grasp in years


@cache
def _registry() -> Any:
    import pint  # here: a tenth of a second that a list without figures does not need

    registry: Any = pint.UnitRegistry(_DEFINITIONS.strip().splitlines())
    registry.default_system = "SI"  # else the base unit of mass is the gram
    return registry


@cache
def _factor(unit: str, dimension: Dimension) -> float:
    """SI per unit. Days are the one inside unit that is not SI's own."""
    si = float(_registry().Quantity(1, unit).to_base_units().magnitude)
    return si / 86400 if dimension is Dimension.DAYS else si


def read(text: str, dimension: Dimension, *, field: str, decimal: str = ".") -> Figure:
    """A figure from what the officer typed.

    text: number and unit, e.g. "2.9 mm", "3/4 in", "8,000 kg", "4.75 t". field: its name, for the refusal.
    decimal: the club's decimal sign, "." or ",", which settles "4.750" where nothing else does.
    Raises Refused where the number is not clear or the unit is not one of this dimension.
    """
    shown = text.strip()
    if not shown or len(shown) > _LONGEST_TEXT:
        raise Refused(field, tr("Nothing readable was typed."), _advice(dimension))
    number, unit = _split(_plain_text(shown), field, dimension, decimal)
    return Figure(number * _unit_factor(unit, dimension, field), shown, dimension)


def _plain_text(text: str) -> str:
    plain = unicodedata.normalize("NFC", text).replace("\u00a0", " ").replace("\u202f", " ").replace("−", "-")
    for sign, fraction in _FRACTIONS.items():
        plain = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", plain).replace(sign, fraction)
    return re.sub(r"\s+", " ", re.sub(r"\s*/\s*(?=\d)", "/", plain)).strip()


def _split(text: str, field: str, dimension: Dimension, decimal: str) -> tuple[float, str]:
    if (vulgar := _VULGAR.match(text)) and int(vulgar["bottom"]):
        value = int(vulgar["whole"] or 0) + int(vulgar["top"]) / int(vulgar["bottom"])
        return _signed(value, vulgar["sign"]), (vulgar["unit"] or "").strip()
    if plain := _PLAIN.match(text):
        value = _number(plain["number"].strip(), field, dimension, decimal)
        return _signed(value, plain["sign"]), plain["unit"].strip()
    raise Refused(field, tr("“{text}” does not begin with a number.", text=text), _advice(dimension))


def _signed(value: float, sign: str) -> float:
    return -value if sign == "-" else value


def _number(digits: str, field: str, dimension: Dimension, decimal: str) -> float:
    """The value of digits with separators; the last of two different signs is the decimal one."""
    point = _decimal_sign(digits, decimal)
    whole, _, part = digits.rpartition(point) if point else (digits, "", "")
    groups = re.split(r"[., ]", whole)
    grouped = len(groups) == 1 or (1 <= len(groups[0]) <= 3 and all(len(group) == 3 for group in groups[1:]))
    one_sign = len(set(re.findall(r"[., ]", whole))) <= 1
    if not (grouped and one_sign and (whole or part) and (part.isdigit() or not point)):
        raise Refused(field, tr("“{text}” can be read in more than one way.", text=digits), _advice(dimension))
    return float("".join(groups) + "." + (part or "0"))


def _decimal_sign(digits: str, decimal: str) -> str:
    signs = re.findall(r"[.,]", digits)
    if not signs:
        return ""
    last = str(signs[-1])
    if signs.count(last) > 1:
        return ""
    if len(set(signs)) > 1 or " " in digits:
        return last
    before, _, after = digits.partition(last)
    could_be_group = len(after) == 3 and 1 <= len(before) <= 3 and before != "0"
    return "" if could_be_group and last != decimal else last


def _unit_factor(unit: str, dimension: Dimension, field: str) -> float:
    if unit.lower() in {"ton", "tons"} and dimension in {Dimension.FORCE, Dimension.MASS}:
        why = tr("“ton” can mean three different weights.")
        raise Refused(field, why, tr("Write t (1000 kg), short ton (2000 lb) or long ton (2240 lb)."))
    known = _UNITS[dimension]
    name = known.get(unit) or known.get(unit.lower())
    if name is None:
        why = tr("“{unit}” is not a unit for this field.", unit=unit) if unit else tr("The unit is missing.")
        raise Refused(field, why, _advice(dimension))
    return _factor(name, dimension)


def _advice(dimension: Dimension) -> str:
    examples = {
        Dimension.LENGTH: tr("Write a number with mm, cm, m, in or ft, for example 2.9 mm or 3/4 in."),
        Dimension.FORCE: tr("Write a number with t, kg, kN, lbf, lb or short ton, for example 4.75 t."),
        Dimension.MASS: tr("Write a number with kg, t or lb, for example 2650 kg."),
        Dimension.TORQUE: tr("Write a number with N m or lbf ft, for example 110 N m."),
        Dimension.SPEED: tr("Write a number with km/h or mph, for example 8 km/h."),
        Dimension.ANGLE: tr("Write a number of degrees, for example 60 deg."),
        Dimension.DAYS: tr("Write a number of days, for example 90 days."),
        Dimension.RATIO: tr("Write a number or a percentage, for example 12 %."),
        Dimension.FACTOR: tr("Write a plain number, for example 5."),
        Dimension.COUNT: tr("Write a whole number, for example 3."),
    }
    return examples[dimension]


_SHOWN: dict[tuple[Dimension, System], tuple[str, str, int]] = {
    (Dimension.LENGTH, System.METRIC): ("millimeter", "mm", 2),
    (Dimension.LENGTH, System.IMPERIAL): ("inch", "in", 3),
    (Dimension.FORCE, System.METRIC): ("kilonewton", "kN", 1),
    (Dimension.FORCE, System.IMPERIAL): ("pound_force", "lbf", 0),
    (Dimension.MASS, System.METRIC): ("kilogram", "kg", 0),
    (Dimension.MASS, System.IMPERIAL): ("pound", "lb", 0),
    (Dimension.TORQUE, System.METRIC): ("newton_meter", "N m", 0),
    (Dimension.TORQUE, System.IMPERIAL): ("pound_foot", "lbf ft", 0),
    (Dimension.SPEED, System.METRIC): ("kilometer_per_hour", "km/h", 1),
    (Dimension.SPEED, System.IMPERIAL): ("mile_per_hour", "mph", 1),
}


def show(si: float, dimension: Dimension, system: System = System.METRIC, finer_places: int = 0) -> str:
    """The value as it is printed, e.g. "2.7 mm", "228.6 kN", "14 %", "90 days"; long lengths in m or ft.

    finer_places: more decimal places than usual, where two different values would print alike.
    """
    if dimension is Dimension.RATIO:
        return f"{_trimmed(si * 100, 1 + finer_places)} %"
    if dimension is Dimension.DAYS:
        return _show_days(si)
    if dimension is Dimension.ANGLE:
        return f"{_trimmed(math.degrees(si), 1)}°"
    if dimension in {Dimension.COUNT, Dimension.FACTOR}:
        return _trimmed(si, 2)
    return _with_unit(si, dimension, system, finer_places)


def _show_days(days: float) -> str:
    if days >= _DAYS_BEFORE_YEARS:
        return tr("{count} years", count=_trimmed(years(days), 1))
    return tr("1 day") if days == 1 else tr("{count} days", count=_trimmed(days, 0))


def _with_unit(si: float, dimension: Dimension, system: System, finer_places: int) -> str:
    unit, symbol, places = _SHOWN[dimension, system]
    if dimension is Dimension.LENGTH and abs(si) >= 1:
        unit, symbol, places = ("meter", "m", 2) if system is System.METRIC else ("foot", "ft", 1)
    return f"{_trimmed(si / _factor(unit, dimension), places + finer_places)} {symbol}"


def _trimmed(value: float, places: int) -> str:
    """Rounded, thousands apart, no idle zeros; a comma of thousands is a thin gap so no reader mistakes it."""
    text = f"{value:,.{places}f}"
    whole, _, part = text.partition(".")
    part = part.rstrip("0")
    grouped = whole.replace(",", "\u202f") if len(whole.replace(",", "").lstrip("-")) > 4 else whole.replace(",", "")
    return f"{grouped}.{part}" if part else grouped


def years(days: float) -> float:
    """Days as years of 365.25 days."""
    return days / DAYS_PER_YEAR
