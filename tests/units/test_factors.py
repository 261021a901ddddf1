"""Each conversion factor beside the one that pint's own definitions give: a book of units that others keep."""

from typing import Any

import pint
import pytest

from inspector.units import DAYS_PER_YEAR, STANDARD_GRAVITY_M_PER_S2, Dimension
from inspector.units.factors import _INSIDE_SI, _SI, factor
from inspector.units.names import UNITS
from inspector.units.showing import _SHOWN

_SPELLED = {  # names that pint has no single word for, as it would write them
    "tonne_force": "metric_ton_force",
    "short_ton_force": "short_ton * g_0",
    "long_ton_force": "long_ton * g_0",
    "newton_meter": "newton * meter",
    "kilonewton_meter": "kilonewton * meter",
    "pound_foot": "pound_force * foot",
    "foot_pound": "foot * pound_force",
    "kilopound_force_per_square_inch": "kilopound_force / inch ** 2",
    "square_millimeter": "millimeter ** 2",
    "square_centimeter": "centimeter ** 2",
    "square_meter": "meter ** 2",
    "square_inch": "inch ** 2",
    "cubic_millimeter": "millimeter ** 3",
    "cubic_centimeter": "centimeter ** 3",
    "cubic_inch": "inch ** 3",
    "fourth_millimeter": "millimeter ** 4",
    "fourth_centimeter": "centimeter ** 4",
    "fourth_inch": "inch ** 4",
    "newton_per_meter": "newton / meter",
    "kilonewton_per_meter": "kilonewton / meter",
    "pound_force_per_inch": "pound_force / inch",
    "kilogram_per_meter": "kilogram / meter",
    "meter_per_second": "meter / second",
    "meter_per_second_squared": "meter / second ** 2",
}
_MEASURES = {
    Dimension.LENGTH: "meter",
    Dimension.FORCE: "newton",
    Dimension.MASS: "kilogram",
    Dimension.TORQUE: "newton * meter",
    Dimension.SPEED: "meter / second",
    Dimension.ANGLE: "radian",
    Dimension.DAYS: "day",
    Dimension.YEARS: "year",
    Dimension.SECONDS: "second",
    Dimension.STRESS: "pascal",
    Dimension.AREA: "meter ** 2",
    Dimension.MODULUS: "meter ** 3",
    Dimension.INERTIA: "meter ** 4",
    Dimension.STIFFNESS: "newton / meter",
    Dimension.ENERGY: "joule",
    Dimension.RATE: "meter",  # a year
    Dimension.LINEAR_MASS: "kilogram / meter",
    Dimension.ACCELERATION: "meter / second ** 2",
    Dimension.RATIO: "radian",
    Dimension.FACTOR: "radian",
    Dimension.COUNT: "radian",
}
_BY_NAME = {(dimension, unit) for dimension, names in UNITS.items() for unit in names.values()}
_PRINTED = {(dimension, unit) for (dimension, _), (unit, _, _) in _SHOWN.items()}
_USED = (_BY_NAME | _PRINTED | {(Dimension.LENGTH, "meter"), (Dimension.LENGTH, "foot")}) - {
    (Dimension.TEMPERATURE, "fahrenheit"),  # two scales, not a factor: a test of reading holds it
    (Dimension.TEMPERATURE, "radian"),  # degrees as they are
}


def test_every_factor_is_the_one_of_another_book_of_units() -> None:
    book: Any = pint.UnitRegistry()
    found = {
        (dimension, unit): book.Quantity(1, _SPELLED.get(unit, unit)).to(_MEASURES[dimension]).magnitude
        for dimension, unit in _USED
    }
    assert {each: factor(each[1], each[0]) for each in _USED} == {
        each: pytest.approx(there, rel=1e-15, abs=0) for each, there in found.items()
    }


def test_every_unit_has_a_factor_and_none_is_left_over() -> None:
    assert {unit for _, unit in _USED} == set(_SI)
    assert set(_INSIDE_SI) == {Dimension.DAYS, Dimension.YEARS}


def test_gravity_and_the_year_are_those_of_the_other_book() -> None:
    book: Any = pint.UnitRegistry()
    assert book.Quantity(1, "g_0").to("meter / second ** 2").magnitude == STANDARD_GRAVITY_M_PER_S2
    assert book.Quantity(1, "year").to("day").magnitude == DAYS_PER_YEAR
