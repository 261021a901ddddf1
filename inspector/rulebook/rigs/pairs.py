"""Which vehicles of a trip the kit can bring out with which: the best rig of each pair, checked."""

from collections.abc import Callable
from itertools import permutations

from msgspec.structs import replace

from inspector.gear.rig import Method, RigFacts
from inspector.gear.rig_result import PairLine, RigOutcome, RigResult
from inspector.language import tr
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.check import checked
from inspector.rulebook.rigs.choice import best_candidate
from inspector.rulebook.rigs.limits import Asked, sorted_out
from inspector.rulebook.rigs.propose import missing
from inspector.rulebook.rigs.saying import speed_within
from inspector.rulebook.rigs.search import Pulls
from inspector.units import Dimension, System, show

_SLOWEST = 3 / 3.6  # slower than this no strap stretches enough to be of use; a club's trip leader would not try
Told = Callable[[int, int], None]


def pairs(
    facts: RigFacts,
    vehicles: tuple[str, ...],
    book: Rulebook,
    program: str,
    system: System,
    told: Told | None = None,
) -> tuple[PairLine, ...]:
    """A line for each vehicle that might pull each other one: by strap, and by winch where it carries one.

    facts.rig gives the conditions; facts.pieces the kit and what sits on the vehicles. told: called with how many of
    how many are done.
    """
    asked = [one for pulling, bogged in permutations(vehicles, 2) for one in _asked(facts, pulling, bogged, book)]
    found: list[PairLine] = []
    pulls: Pulls = {}
    for done, one in enumerate(asked, start=1):
        found.append(_line(one, facts, book, program, system, pulls))
        if told is not None:
            told(done, len(asked))
    return tuple(found)


def _asked(facts: RigFacts, pulling: str, bogged: str, book: Rulebook) -> list[Asked]:
    conditions = facts.rig.conditions
    found = [Asked(Method.KINETIC, pulling, bogged, conditions)]
    winches = [one for one in facts.pieces.values() if book.roles[one.kind].key == "winch" and one.fitted is not None]
    if any(one.fitted is not None and one.fitted.vehicle == pulling for one in winches):
        found.append(Asked(Method.WINCH, pulling, bogged, conditions))
    return found


def _line(asked: Asked, facts: RigFacts, book: Rulebook, program: str, system: System, pulls: Pulls) -> PairLine:
    at_hand, _ = sorted_out(asked, facts, book)
    best = best_candidate(asked, facts, at_hand, book, program, system, pulls)
    if best is None:
        lacks = tr("The kit lacks {what}.", what="; ".join(missing(asked, facts, at_hand, book)))
        return PairLine(asked.method.value, asked.pulling, asked.bogged, None, lacks)
    rig = replace(best.rig, dampers=facts.rig.dampers)
    result = checked(replace(facts, rig=rig), book, program, system).result
    slower = _slower(result, replace(facts, rig=rig), book, program, system)
    if slower is None:
        return _told(asked, result, result.headline)
    speed, at_that = slower
    says = tr("Up to {speed}: {headline}", speed=show(speed, Dimension.SPEED, system), headline=at_that.headline)
    return replace(_told(asked, at_that, says), up_to_m_per_s=speed)


def _told(asked: Asked, result: RigResult, says: str) -> PairLine:
    return PairLine(
        asked.method.value,
        asked.pulling,
        asked.bogged,
        result.outcome,
        says,
        result.rig.runs,
        safety_factor=result.safety_factor,
    )


def _slower(
    result: RigResult, facts: RigFacts, book: Rulebook, program: str, system: System
) -> tuple[float, RigResult] | None:
    """The greatest speed, in tenths of km/h or mph, at which a rig that is unsound for its speed alone is not."""
    greatest = result.sensitivity.greatest_speed_m_per_s
    if result.outcome is not RigOutcome.UNSOUND or greatest is None or greatest < _SLOWEST:
        return None
    speed = speed_within(greatest, system)
    conditions = replace(facts.rig.conditions, speed=speed)
    at_that = checked(replace(facts, rig=replace(facts.rig, conditions=conditions)), book, program, system).result
    return None if at_that.outcome is RigOutcome.UNSOUND else (speed.si, at_that)
