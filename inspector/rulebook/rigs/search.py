"""Every rig worth drawing from the pieces at hand, with the least margin each would have: sums only, nothing checked.

What a line bears does not depend on the connectors, so the strongest connectors go where most is borne: no other
choice of them has a greater least margin.
"""

import math
from collections.abc import Iterator, Mapping

from msgspec import Struct

from inspector.gear.rig import Method, Rig, RigFacts, RigPiece
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.connectors import Slot, connectors
from inspector.rulebook.rigs.layout import Layout, Part
from inspector.rulebook.rigs.limits import Asked, Limited
from inspector.rulebook.rigs.links import hung_margin, usual_margin
from inspector.rulebook.rigs.loads import run_of, stall_of
from inspector.rulebook.rigs.mounts import Mount, best, mounts
from inspector.rulebook.rigs.saying import Account
from inspector.units import System

_TWO_PARTS = 2.0

Pulls = dict[tuple[str, str], float]  # the bound in newtons by strap and pulling vehicle, for one method and conditions


class Candidate(Struct, frozen=True):
    """A rig that could be drawn. margin: the least of what its parts may bear over what they bear; joint_count."""

    rig: Rig
    margin: float
    joint_count: int


class Plan(Struct, frozen=True):
    """A rig without its connectors. runs: with None where a connector goes, in the order of slots.

    pull_n: in the line; limit_n: the pull at which the first of the planned pieces has used up what it may bear.
    """

    runs: tuple[tuple[str | None, ...], ...]
    slots: tuple[Slot, ...]
    pull_n: float
    limit_n: float
    used: frozenset[str]


def candidates(
    asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook, pulls: Pulls
) -> Iterator[Candidate]:
    """Rigs of the method that the pieces at hand make; one that cannot reach what another of its shape has is left out.

    Of one shape are all pulls by another vehicle, and all pulls by one winch with as many parts of line. pulls: filled
    with what each strap leads to behind each vehicle, so that another search under the same conditions need not ask.
    """
    free = best(at_hand, "shackle", len(at_hand)) + best(at_hand, "soft", len(at_hand))
    free.sort(key=lambda one: (-one.limit_n, one.tag))
    reached: dict[tuple[str | None, int], float] = {}
    plans = _winch_plans if asked.method is Method.WINCH else _pull_plans
    for plan in plans(asked, facts, at_hand, book, pulls):
        shape = (plan.runs[0][0], len(plan.runs)) if asked.method is Method.WINCH else ("", 0)
        could = plan.limit_n / plan.pull_n if plan.pull_n > 0 else math.inf
        if len(free) < len(plan.slots) or could < reached.get(shape, 0.0):
            continue
        found = _filled(plan, free, asked)
        if found is None:
            continue
        reached[shape] = max(found.margin, reached.get(shape, 0.0))
        yield found


def _filled(plan: Plan, free: list[Limited], asked: Asked) -> Candidate | None:
    """The plan with its connectors; None where none fit."""
    found = connectors(plan.slots, free, plan.limit_n)
    if found is None:
        return None
    chosen, limit_n = found
    tags = iter([one.tag for one in chosen])
    runs = tuple(tuple(tag if tag is not None else next(tags) for tag in run) for run in plan.runs)
    margin = limit_n / plan.pull_n if plan.pull_n > 0 else math.inf
    return Candidate(_rig(asked, runs), margin, sum(len(run) - 1 for run in runs))


def _rig(asked: Asked, runs: tuple[tuple[str, ...], ...]) -> Rig:
    return Rig("", asked.method, asked.bogged, asked.pulling, runs, asked.conditions)


def _pull_plans(
    asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook, pulls: Pulls
) -> Iterator[Plan]:
    role = "stretch" if asked.method is Method.KINETIC else "strap"
    bogged_mounts = mounts(facts.vehicles[asked.bogged], at_hand, book)
    pulling_mounts = mounts(facts.vehicles[asked.pulling], at_hand, book)
    if not bogged_mounts or not pulling_mounts:
        return
    for strap, pull_n in _straps(asked, facts, [one for one in at_hand if one.role == role], book, pulls):
        for near in bogged_mounts:
            for far in pulling_mounts:
                used = frozenset((*near.used, *far.used, strap.tag))
                if len(used) < len(near.used) + len(far.used) + 1:
                    continue
                runs, slots = _joined(near, strap.tag, far, facts.pieces)
                yield Plan(runs, slots, pull_n, min(near.limit_n, far.limit_n, strap.limit_n), used)


def _straps(
    asked: Asked, facts: RigFacts, straps: list[Limited], book: Rulebook, pulls: Pulls
) -> list[tuple[Limited, float]]:
    """Straps that no other betters, each with the pull it leads to: to bear more under less pull is better."""
    for one in straps:
        if (one.tag, asked.pulling) not in pulls:
            alone = _alone(facts, book, one, asked)
            pulls[one.tag, asked.pulling] = run_of(alone, Account(book, System.METRIC)).peak_n()
    found = [(one, pulls[one.tag, asked.pulling]) for one in straps]
    return [pair for pair in found if not any(_betters(other, pair) for other in found)]


def _betters(other: tuple[Limited, float], pair: tuple[Limited, float]) -> bool:
    (better, less_n), (one, pull_n) = other, pair
    if less_n == pull_n and better.limit_n == one.limit_n:
        return better.tag < one.tag
    return less_n <= pull_n and better.limit_n >= one.limit_n


def _alone(facts: RigFacts, book: Rulebook, strap: Limited, asked: Asked) -> Layout:
    """The strap by itself, for the sum of its pull."""
    part = Part(strap.tag, strap.role, book.roles[strap.piece.kind], strap.piece)
    only = RigFacts(_rig(asked, ()), facts.on, facts.pieces, facts.vehicles)
    return Layout(only, book, {strap.tag: part}, ())


def _joined(
    near: Mount, line: str, far: Mount, pieces: Mapping[str, RigPiece]
) -> tuple[tuple[tuple[str | None, ...], ...], tuple[Slot, ...]]:
    """The runs from one vehicle to the other through the line."""

    def at_steel(mount: Mount, leg: int = 0) -> Slot:
        return Slot(mount.slot_shares[leg], pieces[mount.inner[leg][-1]])

    if not near.middle and not far.middle:
        run = (*near.inner[0], None, line, None, *reversed(far.inner[0]))
        return (run,), (at_steel(near), at_steel(far))
    runs: list[tuple[str | None, ...]] = []
    slots: list[Slot] = []
    for mount in (near, far):
        if mount.middle:
            for leg in (0, 1):
                runs.append((*mount.inner[leg], None, mount.middle))
                slots.append(at_steel(mount, leg))
    ends = [(mount.middle,) if mount.middle else mount.inner[0] for mount in (near, far)]
    runs.append((*ends[0], None, line, None, *reversed(ends[1])))
    slots += [Slot(1.0) if mount.middle else at_steel(mount) for mount in (near, far)]
    return tuple(runs), tuple(slots)


def _winch_plans(
    asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook, _pulls: Pulls
) -> Iterator[Plan]:
    """One line to the stuck vehicle, or a line doubled through a block there and back to the pulling one."""
    pulling = facts.vehicles[asked.pulling]
    there = [one for one in mounts(facts.vehicles[asked.bogged], at_hand, book) if not one.middle]
    home = [one for one in mounts(pulling, at_hand, book) if not one.middle]
    for winch in (one for one in at_hand if one.role == "winch" and _on(one, pulling.tag)):
        _, stall_n = stall_of(winch.piece, Account(book, System.METRIC))
        for line in best(tuple(one for one in at_hand if _may_lie_on(one, pulling.tag)), "line", 1):
            for far in there:
                used = frozenset((winch.tag, line.tag, *far.used))
                run = (winch.tag, line.tag, None, *reversed(far.inner[0]))
                slots = (Slot(1.0, facts.pieces[far.inner[0][-1]]),)
                yield Plan((run,), slots, stall_n, min(line.limit_n, far.limit_n), used)
                yield from _doubled(winch, line, far, home, at_hand, facts.pieces, stall_n, book)


def _doubled(
    winch: Limited,
    line: Limited,
    far: Mount,
    home: list[Mount],
    at_hand: tuple[Limited, ...],
    pieces: Mapping[str, RigPiece],
    stall_n: float,
    book: Rulebook,
) -> Iterator[Plan]:
    """The block and all that holds it bear two parts of line and must keep more, by the pull at which it stalls."""
    usual = usual_margin(book, Method.WINCH, None)
    harder = max(_TWO_PARTS, hung_margin(book, Method.WINCH) / usual)
    for block in best(at_hand, "block", 1):
        for back in home:
            used = frozenset((winch.tag, line.tag, block.tag, *far.used, *back.used))
            if len(used) < 3 + len(far.used) + len(back.used):
                continue
            runs = (
                (winch.tag, line.tag, None, *reversed(back.inner[0])),
                (line.tag, block.tag, None, *reversed(far.inner[0])),
            )
            limit_n = min(line.limit_n, back.limit_n, block.limit_n / harder, far.limit_n / harder)
            slots = (Slot(1.0, pieces[back.inner[0][-1]]), Slot(harder, pieces[far.inner[0][-1]]))
            yield Plan(runs, slots, stall_n, limit_n, used)


def _on(one: Limited, vehicle: str) -> bool:
    return one.piece.fitted is not None and one.piece.fitted.vehicle == vehicle


def _may_lie_on(line: Limited, vehicle: str) -> bool:
    """A line that lies on another vehicle's drum stays there."""
    return line.piece.fitted is None or line.piece.fitted.vehicle == vehicle
