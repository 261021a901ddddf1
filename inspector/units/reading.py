"""Text in, SI inside."""

from inspector.language import tr
from inspector.refused import Refused
from inspector.units.dimensions import Dimension, Figure
from inspector.units.factors import factor
from inspector.units.lexer import plain_text, split
from inspector.units.names import UNITS, advice, spoken_units

_LONGEST_TEXT = 60


def read(text: str, dimension: Dimension, *, field: str, decimal: str = ".") -> Figure:
    """A figure from what the officer typed.

    text: number and unit, e.g. "2.9 mm", "3/4 in", "8,000 kg", "4.75 t". field: its name, for the refusal.
    decimal: the club's decimal sign, "." or ",", which settles "4.750" where nothing else does.
    Raises Refused where the number is not clear or the unit is not one of this dimension.
    """
    shown = text.strip()
    if not shown or len(shown) > _LONGEST_TEXT:
        raise Refused(field, tr("Nothing readable was typed."), advice(dimension))
    number, unit = split(plain_text(shown), field, advice(dimension), decimal)
    if dimension is Dimension.TEMPERATURE and UNITS[dimension].get(unit) == "fahrenheit":
        return Figure((number - 32) / 1.8, shown, dimension)
    return Figure(number * _unit_factor(unit, dimension, field), shown, dimension)


def _unit_factor(unit: str, dimension: Dimension, field: str) -> float:
    if unit.lower() in {"ton", "tons"} and dimension in {Dimension.FORCE, Dimension.MASS}:
        why = tr("“ton” can mean three different weights.")
        raise Refused(field, why, tr("Write t (1000 kg), short ton (2000 lb) or long ton (2240 lb)."))
    known = UNITS[dimension]
    name = known.get(unit) or known.get(unit.lower()) or known.get(spoken_units().get(unit.casefold(), ""))
    if name is None:
        why = tr("“{unit}” is not a unit for this field.", unit=unit) if unit else tr("The unit is missing.")
        raise Refused(field, why, advice(dimension))
    return factor(name, dimension)
