"""The best of all rigs that the pieces at hand make."""

from msgspec.structs import replace

from inspector.gear.rig import Method, RigFacts
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.check import checked
from inspector.rulebook.rigs.limits import Asked, Limited
from inspector.rulebook.rigs.search import Candidate, Pulls, candidates
from inspector.units import System


def best_candidate(
    asked: Asked,
    facts: RigFacts,
    at_hand: tuple[Limited, ...],
    book: Rulebook,
    program: str,
    system: System,
    pulls: Pulls | None = None,
) -> Candidate | None:
    """The rig with the greatest least margin, then the fewest joints; None where the pieces make none.

    A winch rig that moves the vehicle and keeps its margins goes before one that does not, where somebody said what it
    stands in. pulls: what earlier searches under the same conditions found out.
    """
    found = list(candidates(asked, facts, at_hand, book, {} if pulls is None else pulls))
    if asked.method is Method.WINCH and asked.conditions.bogged_in is not None:
        does: dict[tuple[str, int], bool] = {}
        for one in found:  # whether it moves is a matter of the winch and of the parts of line
            if _shape(one) not in does:
                does[_shape(one)] = _moves(one, facts, book, program, system)
        found = [one for one in found if does[_shape(one)] and _keeps_margin(one)] or found
    return min(found, key=lambda one: (-one.margin, one.joint_count, one.rig.runs), default=None)


def _keeps_margin(one: Candidate) -> bool:
    return one.margin >= 1 - SAME_RATIO


def _shape(one: Candidate) -> tuple[str, int]:
    return one.rig.runs[0][0], len(one.rig.runs)


def _moves(one: Candidate, facts: RigFacts, book: Rulebook, program: str, system: System) -> bool:
    return bool(checked(replace(facts, rig=one.rig), book, program, system).result.load.moves)
