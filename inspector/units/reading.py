"""Text in, SI inside."""

from inspector.language import tr
from inspector.refused import Refused
from inspector.units.dimensions import Dimension, Figure
from inspector.units.factors import factor
from inspector.units.lexer import plain_text, split, two_meanings
from inspector.units.names import UNITS, advice, spoken_units

_LONGEST_TEXT = 60
# Nobody marks a thousandth of these on gear, so that three figures behind a sign are thousands.
_IN_THOUSANDS = {"newton", "kilogram_force", "pound_force", "gram", "kilogram", "pound"}


def read(text: str, dimension: Dimension, *, field: str, decimal: str = ".") -> Figure:
    """A figure from what the officer typed.

    text: number and unit, e.g. "2.9 mm", "3/4 in", "8,000 kg", "4.75 t". field: its name, for the refusal.
    decimal: the club's decimal sign, "." or ",", which settles "4.750" where nothing else does. Three figures behind
    the other sign, as in "4,750 t", may be either: they are thousands in kg, lb and N, and refused in any other unit.
    Raises Refused where the number is not clear or the unit is not one of this dimension.
    """
    shown = text.strip()
    if not shown or len(shown) > _LONGEST_TEXT:
        raise Refused(field, tr("Nothing readable was typed."), advice(dimension))
    plain = plain_text(shown)
    number, unit = split(plain, field, advice(dimension), decimal)
    name = _unit_name(unit, dimension, field)
    if name not in _IN_THOUSANDS:
        _refuse_either_way(shown, plain, field, decimal)
    if name == "fahrenheit":
        return Figure((number - 32) / 1.8, shown, dimension)
    return Figure(number * factor(name, dimension), shown, dimension)


def _refuse_either_way(shown: str, plain: str, field: str, decimal: str) -> None:
    if both := two_meanings(plain, decimal):
        lesser, greater = both
        why = tr("“{text}” can be {lesser} or {greater}.", text=shown, lesser=lesser, greater=greater)
        wanted = tr("Write {lesser} or {greater}, whichever it is, with the unit.", lesser=lesser, greater=greater)
        raise Refused(field, why, wanted)


def _unit_name(unit: str, dimension: Dimension, field: str) -> str:
    if unit.lower() in {"ton", "tons"} and dimension in {Dimension.FORCE, Dimension.MASS}:
        why = tr("“ton” can mean three different weights.")
        raise Refused(field, why, tr("Write t (1000 kg), short ton (2000 lb) or long ton (2240 lb)."))
    known = UNITS[dimension]
    name = known.get(unit) or known.get(unit.lower()) or known.get(spoken_units().get(unit.casefold(), ""))
    if name is None:
        why = tr("“{unit}” is not a unit for this field.", unit=unit) if unit else tr("The unit is missing.")
        raise Refused(field, why, advice(dimension))
    return name
