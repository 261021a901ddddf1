"""A deed that something outside it broke off: a server that went away, a lock that did not come free."""

from collections.abc import Callable
from time import sleep
from typing import TypeVar

from inspector.duties.office import Office
from inspector.refused import Refused
from inspector.register.turns import Disturbed

Result = TypeVar("Result")
_TRIES = 3
_PAUSE_S = 0.3


def may_repeat(refusal: Refused) -> bool:
    """Whether nothing of the deed was kept, so that it may be done again from its start."""
    return isinstance(refusal, Disturbed) and refusal.may_repeat


def undisturbed(deed: Callable[..., Result], *given: object) -> Result:
    """Do `deed(*given)`, again from its start where it was broken off before anything of it was kept."""
    for _ in range(_TRIES - 1):
        _begin(given)
        try:
            return deed(*given)
        except Refused as refusal:
            if not may_repeat(refusal):
                raise
            sleep(_PAUSE_S)
    _begin(given)
    return deed(*given)


def _begin(given: tuple[object, ...]) -> None:
    """Whatever this thread keeps from now on belongs to this deed."""
    for one in given:
        if isinstance(one, Office):
            one.book.deed_begins()
