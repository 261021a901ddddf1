"""Which system of units somebody typed in, so that a limit can be told in the same one."""

import re

from inspector.units.dimensions import System

_WORDS = re.compile(r"[A-Za-z\"″']+")
_MARKS = {'"', "″", "'"}
_IMPERIAL = {"in", "inch", "inches", "ft", "feet", "lb", "lbs", "lbf", "ton", "tons", "psi", "ksi", "mph"} | _MARKS


def system_of(typed: str, otherwise: System) -> System:
    """The system of the unit in a typed figure; `otherwise` where it has none that tells."""
    words = {word.lower() for word in _WORDS.findall(typed)}
    if not words:
        return otherwise
    return System.IMPERIAL if words & _IMPERIAL else System.METRIC
