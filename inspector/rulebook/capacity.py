"""Strength in newtons on one basis: characteristic minimum breaking strength, no design factor inside."""

from inspector.gear.kind import Basis
from inspector.gear.verdict import Capacity, CapacityStep, Known
from inspector.language import tr
from inspector.mechanics import fibre, rating
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown
from inspector.units import Dimension

_STEPS = "capacity steps"


def as_marked(case: Case) -> Capacity:
    """The strength the marking stands for, before anything was taken from it."""
    marked = case.dossier.item.rating
    if marked.figure is None or marked.basis is Basis.UNRATED:
        return Capacity(None, None, why_unknown=tr("It carries no rating."))
    if marked.stated_on == "memory":
        return Capacity(None, None, why_unknown=tr("Its rating is only remembered, not written on it."))
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
    steps.append(CapacityStep(cause, loss_ratio, fibre.strength_left_n(before, loss_ratio), source))


def _steps(case: Case) -> list[CapacityStep]:
    return case.once(_STEPS, lambda _: [])


def capacity(case: Case) -> Capacity:
    """The strength with every loss noted so far."""
    marked = as_marked(case)
    steps = tuple(_steps(case))
    now = steps[-1].after_n if steps else marked.now_n
    return Capacity(marked.as_marked_n, now, steps, marked.why_unknown, marked.design_factor)


def strength_left(case: Case) -> Quantity:
    """What is left of the marked strength as a ratio; judged after all derating rules."""
    if set(case.dossier.kind.rated_by) == {Basis.UNRATED}:
        return NOT_APPLICABLE
    left = capacity(case).left_ratio
    if left is None:
        return unknown(capacity(case).why_unknown)
    return number(left, Dimension.RATIO, tr("strength now against the marking"), Known.ESTIMATED)
