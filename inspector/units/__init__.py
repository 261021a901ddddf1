"""Text in, SI inside, text out: the only room with a conversion factor in it.

A number is read by a lexer of our own, because a general parser silently misreads "4,75 t" or "1 3/4 in".
"""

from inspector.units.dimensions import Dimension, Figure, System
from inspector.units.factors import DAYS_PER_YEAR, STANDARD_GRAVITY_M_PER_S2, years
from inspector.units.reading import read
from inspector.units.showing import show, show_bound, show_typed
from inspector.units.si_names import si_unit
from inspector.units.typed_in import system_of

__all__ = [
    "DAYS_PER_YEAR",
    "STANDARD_GRAVITY_M_PER_S2",
    "Dimension",
    "Figure",
    "System",
    "read",
    "show",
    "show_bound",
    "show_typed",
    "si_unit",
    "system_of",
    "years",
]
