"""Strength in newtons on one basis: characteristic minimum breaking strength, no design factor inside."""

from datetime import date

from msgspec.structs import replace

from inspector.gear.capacity import Capacity, CapacityStep, SteelStrength
from inspector.gear.kind import Basis
from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.mechanics import fibre, rating
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown
from inspector.rulebook.steel_strengths import strengths_of
from inspector.rulebook.strength_wall import strength_wall
from inspector.rulebook.words import named_quantity
from inspector.units import Dimension

_STEPS = "capacity steps"
_UNKNOWN = "losses nobody knows"


def as_marked(case: Case) -> Capacity:
    """The strength the marking stands for, before anything was taken from it."""
    if _is_rated(case) and case.dossier.item.rating.stated_on == "memory":
        return Capacity(None, None, why_unknown=tr("Its rating is only remembered, not written on it."))
    return as_said(case)


def _is_rated(case: Case) -> bool:
    marked = case.dossier.item.rating
    return marked.figure is not None and marked.basis is not Basis.UNRATED


def as_said(case: Case) -> Capacity:
    """What the rating stands for, wherever it was read."""
    marked = case.dossier.item.rating
    if marked.figure is None or marked.basis is Basis.UNRATED:
        return Capacity(None, None, why_unknown=tr("It carries no rating."))
    if marked.basis is Basis.MBS:
        return Capacity(marked.figure.si, marked.figure.si)
    if marked.basis is Basis.WLL and marked.design_factor is not None:
        ultimate = rating.ultimate_n(marked.figure.si, marked.design_factor)
        return Capacity(ultimate, ultimate, design_factor=marked.design_factor)
    return Capacity(None, None, why_unknown=tr("Its marking does not tell the load at which it fails."))


def note_loss(case: Case, cause: str, loss_ratio: float, source: str) -> None:
    """Take a loss off the strength; losses of different groups multiply, a modelling choice without a source."""
    steps = _steps(case)
    marked = as_marked(case).as_marked_n
    if marked is None:
        return
    before = steps[-1].after_n if steps else marked
    after = fibre.strength_left_n(before, loss_ratio)
    steps.append(CapacityStep(cause, loss_ratio, after, source, named_quantity(cause)))


def note_unknown_loss(case: Case, why: str) -> None:
    """A loss that applies and that nobody knows: what is left is not known either."""
    _unknown(case).append(why)


def _steps(case: Case) -> list[CapacityStep]:
    return case.once(_STEPS, lambda _: [])


def _unknown(case: Case) -> list[str]:
    return case.once(_UNKNOWN, lambda _: [])


def capacity(case: Case) -> Capacity:
    """The strength with every loss noted so far, and what steel has lost."""
    bare, found = as_marked(case), strengths_of(case)
    if found.strengths or found.left_out:
        bare = replace(bare, strengths=found.strengths, left_out=found.left_out)
    if found.strengths:
        bare = _with_wall(case, _from_sizes(case, bare, found.why_unknown))
    noted = tuple(_steps(case))
    before_n = noted[-1].after_n if noted else bare.begins_n
    if before_n is None:
        return bare
    if _unknown(case):
        return replace(bare, now_n=None, why_unknown=_unknown(case)[0], steps=noted)
    if any(one.left_ratio is None for one in bare.counted):
        return replace(bare, now_n=None, why_unknown=found.why_unknown)
    steps = (*noted, *_steel_step(bare, before_n))
    return replace(bare, now_n=steps[-1].after_n if steps else before_n, steps=steps)


def changes_on(case: Case) -> date | None:
    """The day on which time alone takes the next step of a steel piece's strength."""
    wall = strength_wall(case) if strengths_of(case).strengths else None
    return wall.on if wall and wall.now_m is not None else None


def _from_sizes(case: Case, bare: Capacity, why_unknown: str) -> Capacity:
    """Where no marking tells a failure load but the kind need not tell one: what the sizes give in the weakest steel.

    Never more than a rating that is only remembered, and nothing where a way to give way is known by its share alone.
    """
    may = {Basis.TOWED_MASS, Basis.UNRATED} & set(case.dossier.kind.rated_by)
    known = [one.sound_n for one in bare.counted if one.sound_n is not None]
    if bare.as_marked_n is not None or not may or not known or len(known) < len(bare.counted):
        return bare
    said_n = as_said(case).as_marked_n
    return replace(bare, as_new_n=min([*known, *([] if said_n is None else [said_n])]), why_unknown=why_unknown)


def _with_wall(case: Case, bare: Capacity) -> Capacity:
    wall = strength_wall(case)
    if wall is None or wall.now_m is None:
        return bare
    return replace(bare, wall_m=wall.now_m, wall_on=wall.on, estimated=wall.estimated)


def _steel_step(bare: Capacity, before_n: float) -> tuple[CapacityStep, ...]:
    """What steel has lost of a marking: the share of the way that lost most, since shares do not ask for the grade.

    Of a strength reckoned from sizes: down to that of the way which gives first now.
    """
    worst, first = min(bare.counted, key=_share_left, default=None), bare.governing
    if worst is None or first is None:
        return ()
    left_ratio = _share_left(worst)
    if first.now_n is not None and bare.as_new_n == min(one.sound_n or 0.0 for one in bare.counted):
        worst, left_ratio = first, first.now_n / bare.as_new_n
    if left_ratio >= 1:
        return ()
    name = tr("Steel lost ({part})", part=worst.part)
    cause = f"steel_loss.{worst.mode}"
    return (CapacityStep(cause, 1 - left_ratio, before_n * left_ratio, worst.source, name),)


def _share_left(one: SteelStrength) -> float:
    return 1.0 if one.left_ratio is None else one.left_ratio


def strength_left(case: Case) -> Quantity:
    """What is left of the marked strength as a ratio; judged after all derating rules."""
    if set(case.dossier.kind.rated_by) == {Basis.UNRATED}:
        return NOT_APPLICABLE
    found = capacity(case)
    left = found.left_ratio
    if left is None:
        return unknown(found.why_unknown)
    return number(left, Dimension.RATIO, tr("strength now against the marking"), Known.ESTIMATED)
