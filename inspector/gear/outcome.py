"""The four outcomes and what a piece may be used for."""

from collections.abc import Iterable
from enum import StrEnum


class Outcome(StrEnum):
    """Worst wins: retire > hold > derate > fit."""

    FIT = "fit"
    DERATE = "derate"
    HOLD = "hold"
    RETIRE = "retire"

    @property
    def severity(self) -> int:
        """0 for fit to 3 for retire."""
        return _SEVERITY[self]


_SEVERITY = {Outcome.FIT: 0, Outcome.DERATE: 1, Outcome.HOLD: 2, Outcome.RETIRE: 3}


def worst(outcomes: Iterable[Outcome]) -> Outcome:
    """The severest of the outcomes; fit for none at all."""
    return max(outcomes, key=_SEVERITY.__getitem__, default=Outcome.FIT)


class Purpose(StrEnum):
    """What a piece is pulled for."""

    KINETIC = "kinetic"
    STATIC = "static"
    TOWING = "towing"
