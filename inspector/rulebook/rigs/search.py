"""Every rig worth drawing from the pieces at hand, with the least margin each would have: sums only, nothing checked.

What a line bears does not depend on the connectors, so the strongest connectors go where most is borne: no other
choice of them has a greater least margin.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from inspector.gear.rig import Method, Rig, RigFacts
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.layout import Layout, Part
from inspector.rulebook.rigs.limits import Asked, Limited
from inspector.rulebook.rigs.links import hung_margin, usual_margin
from inspector.rulebook.rigs.loads import run_of, stall_of
from inspector.rulebook.rigs.mounts import Mount, mounts
from inspector.rulebook.rigs.saying import Account
from inspector.units import System

_TWO_PARTS = 2.0


@dataclass(frozen=True, slots=True)
class Candidate:
    """A rig that could be drawn. margin: the least of what its parts may bear over what they bear; joint_count."""

    rig: Rig
    margin: float
    joint_count: int


@dataclass(frozen=True, slots=True)
class Slot:
    """A place for a connector: what it bears of the line's pull, and whether its neighbour is bored or cut steel."""

    share: float
    at_steel: bool


@dataclass(frozen=True, slots=True)
class Plan:
    """A rig without its connectors. runs: with None where a connector goes, in the order of slots.

    pull_n: in the line; limit_n: the pull at which the first of the planned pieces has used up what it may bear.
    """

    runs: tuple[tuple[str | None, ...], ...]
    slots: tuple[Slot, ...]
    pull_n: float
    limit_n: float
    used: frozenset[str]


def candidates(asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook) -> Iterator[Candidate]:
    """Every rig of the method that the pieces at hand make."""
    connectors = sorted(
        (one for one in at_hand if one.role in {"shackle", "soft"}), key=lambda one: (-one.limit_n, one.tag)
    )
    for plan in _plans(asked, facts, at_hand, book):
        free = [one for one in connectors if one.tag not in plan.used]
        if len(free) >= len(plan.slots):
            yield _filled(plan, free, asked)


def _filled(plan: Plan, free: list[Limited], asked: Asked) -> Candidate:
    """The strongest connectors where most is borne; then shackles at bored steel, as long as that costs no margin."""
    order = sorted(range(len(plan.slots)), key=lambda at: -plan.slots[at].share)
    chosen = dict(zip(order, free, strict=False))
    limit_n = min([plan.limit_n, *(chosen[at].limit_n / plan.slots[at].share for at in order)])
    spare = [one for one in free[len(order) :] if one.role == "shackle"]
    for at in order:
        slot = plan.slots[at]
        if slot.at_steel and chosen[at].role == "soft":
            _swap(chosen, at, plan, spare, limit_n)
    tags = iter([chosen[at].tag for at in range(len(plan.slots))])
    runs = tuple(tuple(tag if tag is not None else next(tags) for tag in run) for run in plan.runs)
    margin = limit_n / plan.pull_n if plan.pull_n > 0 else math.inf
    return Candidate(_rig(asked, runs), margin, len({frozenset(pair) for run in runs for pair in pairwise(run)}))


def _swap(chosen: dict[int, Limited], at: int, plan: Plan, spare: list[Limited], limit_n: float) -> None:
    """Put a shackle in a soft shackle's place: from another slot where fibre may lie, or from those left over."""
    need_n = limit_n * plan.slots[at].share * (1 - 1e-12)
    for other, one in chosen.items():
        fits = not plan.slots[other].at_steel and one.role == "shackle" and one.limit_n >= need_n
        if fits and chosen[at].limit_n >= limit_n * plan.slots[other].share * (1 - 1e-12):
            chosen[at], chosen[other] = one, chosen[at]
            return
    found = next((one for one in spare if one.limit_n >= need_n), None)
    if found is not None:
        spare.remove(found)
        chosen[at] = found


def _rig(asked: Asked, runs: tuple[tuple[str, ...], ...]) -> Rig:
    return Rig("", asked.method, asked.bogged, asked.pulling, runs, asked.conditions)


def _plans(asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook) -> Iterator[Plan]:
    if asked.method is Method.WINCH:
        yield from _winch_plans(asked, facts, at_hand, book)
    else:
        yield from _pull_plans(asked, facts, at_hand, book)


def _pull_plans(asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook) -> Iterator[Plan]:
    role = "stretch" if asked.method is Method.KINETIC else "strap"
    bogged_mounts = mounts(facts.vehicles[asked.bogged], at_hand, book)
    pulling_mounts = mounts(facts.vehicles[asked.pulling], at_hand, book)
    for strap in (one for one in at_hand if one.role == role):
        pull_n = run_of(_alone(facts, book, strap, asked), Account(book, System.METRIC)).peak_n()
        for near in bogged_mounts:
            for far in pulling_mounts:
                used = frozenset((*near.used, *far.used, strap.tag))
                if len(used) < len(near.used) + len(far.used) + 1:
                    continue
                runs, slots = _joined(near, strap.tag, far)
                yield Plan(runs, slots, pull_n, min(near.limit_n, far.limit_n, strap.limit_n), used)


def _alone(facts: RigFacts, book: Rulebook, strap: Limited, asked: Asked) -> Layout:
    """The strap by itself, for the sum of its pull."""
    part = Part(strap.tag, strap.role, book.roles[strap.piece.kind], strap.piece)
    only = RigFacts(_rig(asked, ()), facts.on, facts.pieces, facts.vehicles)
    return Layout(only, book, {strap.tag: part}, ())


def _joined(near: Mount, line: str, far: Mount) -> tuple[tuple[tuple[str | None, ...], ...], tuple[Slot, ...]]:
    """The runs from one vehicle to the other through the line."""
    if not near.middle and not far.middle:
        run = (*near.inner[0], None, line, None, *reversed(far.inner[0]))
        return (run,), (Slot(near.slot_shares[0], True), Slot(far.slot_shares[0], True))
    runs: list[tuple[str | None, ...]] = []
    slots: list[Slot] = []
    for mount in (near, far):
        if mount.middle:
            for leg in (0, 1):
                runs.append((*mount.inner[leg], None, mount.middle))
                slots.append(Slot(mount.slot_shares[leg], True))
    ends = [(mount.middle,) if mount.middle else mount.inner[0] for mount in (near, far)]
    runs.append((*ends[0], None, line, None, *reversed(ends[1])))
    slots += [Slot(1.0, not mount.middle) for mount in (near, far)]
    return tuple(runs), tuple(slots)


def _winch_plans(asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook) -> Iterator[Plan]:
    """One line to the stuck vehicle, or a line doubled through a block there and back to the pulling one."""
    pulling = facts.vehicles[asked.pulling]
    there = [one for one in mounts(facts.vehicles[asked.bogged], at_hand, book) if not one.middle]
    home = [one for one in mounts(pulling, at_hand, book) if not one.middle]
    for winch in (one for one in at_hand if one.role == "winch" and _on(one, pulling.tag)):
        _, stall_n = stall_of(winch.piece, Account(book, System.METRIC))
        for line in (one for one in at_hand if one.role == "line" and _may_lie_on(one, pulling.tag)):
            for far in there:
                used = frozenset((winch.tag, line.tag, *far.used))
                run = (winch.tag, line.tag, None, *reversed(far.inner[0]))
                yield Plan((run,), (Slot(1.0, True),), stall_n, min(line.limit_n, far.limit_n), used)
                yield from _doubled(winch, line, far, home, at_hand, stall_n, book)


def _doubled(
    winch: Limited,
    line: Limited,
    far: Mount,
    home: list[Mount],
    at_hand: tuple[Limited, ...],
    stall_n: float,
    book: Rulebook,
) -> Iterator[Plan]:
    """The block and all that holds it bear two parts of line and must keep more, by the pull at which it stalls."""
    usual = usual_margin(book, Method.WINCH, None)
    harder = max(_TWO_PARTS, hung_margin(book, Method.WINCH) / usual)
    for block in (one for one in at_hand if one.role == "block"):
        for back in home:
            used = frozenset((winch.tag, line.tag, block.tag, *far.used, *back.used))
            if len(used) < 3 + len(far.used) + len(back.used):
                continue
            runs = (
                (winch.tag, line.tag, None, *reversed(back.inner[0])),
                (line.tag, block.tag, None, *reversed(far.inner[0])),
            )
            limit_n = min(line.limit_n, back.limit_n, block.limit_n / harder, far.limit_n / harder)
            yield Plan(runs, (Slot(1.0, True), Slot(harder, True)), stall_n, limit_n, used)


def _on(one: Limited, vehicle: str) -> bool:
    return one.piece.fitted is not None and one.piece.fitted.vehicle == vehicle


def _may_lie_on(line: Limited, vehicle: str) -> bool:
    """A line that lies on another vehicle's drum stays there."""
    return line.piece.fitted is None or line.piece.fitted.vehicle == vehicle
