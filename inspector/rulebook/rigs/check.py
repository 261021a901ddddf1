"""A rig checked: load, what each part bears, what decides, what flies; without advice on what to change."""

from msgspec import Struct

from inspector.gear.rig import Footing, Method, RigFacts
from inspector.gear.rig_result import (
    LinkUse,
    RigFinding,
    RigOutcome,
    RigResult,
    Sensitivity,
)
from inspector.language import tr
from inspector.mechanics.ground import SCALES, Ground
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.findings import findings
from inspector.rulebook.rigs.flying import flying, stand_off_of
from inspector.rulebook.rigs.joints import joint_uses
from inspector.rulebook.rigs.layout import lay_out
from inspector.rulebook.rigs.links import links
from inspector.rulebook.rigs.loads import Loaded, Run, load_of
from inspector.rulebook.rigs.resistance import footing_word
from inspector.rulebook.rigs.shapes import check_shape
from inspector.rulebook.wording import cautions
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension, System, show

_FASTEST = 20 / 3.6  # the curve is drawn to this at least
_POINTS = 11
_DEPTHS = (
    *(Footing.HARD_WET_SAND, Footing.SOFT_DRY_SAND, Footing.SHALLOW_MUD, Footing.BOG),
    *(Footing.WHEEL_DEEP_MUD, Footing.SILL_DEEP_MUD, Footing.CAB_DEEP_MUD),
)


class Checked(Struct, frozen=True):
    """The result and what stands behind it, for advice."""

    result: RigResult
    loaded: Loaded


def checked(facts: RigFacts, book: Rulebook, program: str, system: System) -> Checked:
    """The rig checked by the rulebook. Refused where it does not hold together or a needed fact is missing."""
    layout = lay_out(facts, book)
    check_shape(layout)
    loaded = load_of(layout, system)
    parts, joined = links(layout, loaded, system), joint_uses(layout, loaded, system)
    found = findings(layout, loaded, parts, joined, system)
    distance_m, rule = stand_off_of(layout)
    outcome = max((one.outcome for one in found), key=lambda one: one.severity)
    weakest = _weakest(parts)
    result = RigResult(
        rig=facts.rig,
        on=facts.on,
        outcome=outcome,
        headline=_headline(outcome, found, weakest, system),
        load=loaded.load,
        links=parts,
        joints=joined,
        findings=found,
        weakest=weakest.tag if weakest else "",
        safety_factor=weakest.safety_factor if weakest and _all_known(parts) else None,
        flying=flying(layout, loaded, system),
        stand_off_m=distance_m,
        stand_off_rule=rule,
        changes=(),
        sensitivity=_sensitivity(facts, parts, loaded),
        cautions=(*cautions(book), *_cautions()),
        rulebook=book.hash,
        program=program,
    )
    return Checked(result, loaded)


def _weakest(parts: tuple[LinkUse, ...]) -> LinkUse | None:
    """The part with the least strength over what it bears, on one basis; a part nobody knows comes first."""
    counted = [one for one in parts if not one.passes_on]
    unknown = next((one for one in counted if one.capacity_n is None), None)
    return unknown or min(counted, key=lambda one: one.safety_factor or 0.0, default=None)


def _all_known(parts: tuple[LinkUse, ...]) -> bool:
    return all(one.capacity_n is not None for one in parts if not one.passes_on)


def _headline(outcome: RigOutcome, found: tuple[RigFinding, ...], weakest: LinkUse | None, system: System) -> str:
    first = found[0].says
    if outcome is RigOutcome.NEVER:
        return tr("Never pull like this. {why}", why=first)
    if outcome is RigOutcome.UNSOUND:
        return tr("Not as it is. {why}", why=first)
    least = tr("No part's strength is known.")
    if weakest is not None and weakest.capacity_n is not None:
        least = tr(
            "The weakest part is {tag}: it may bear {force} and stands {capacity}.",
            tag=weakest.tag,
            force=show(weakest.force_n, Dimension.FORCE, system),
            capacity=show(weakest.capacity_n, Dimension.FORCE, system),
        )
    if outcome is RigOutcome.CAUTION:
        return tr("With care: {why} {least}", why=first, least=least)
    return tr("Sound for this pull. {least}", least=least)


def _sensitivity(facts: RigFacts, parts: tuple[LinkUse, ...], loaded: Loaded) -> Sensitivity:
    run = loaded.run
    if run is None:
        return Sensitivity(depths=_depths(facts, loaded, None))
    fastest = max(_FASTEST, 2 * run.speed_m_per_s)
    speeds = tuple(fastest * step / (_POINTS - 1) for step in range(_POINTS))
    greatest, limits_at = _greatest_speed(run, parts, loaded)
    return Sensitivity(
        speeds=tuple((speed, run.peak_n(speed)) for speed in speeds),
        depths=_depths(facts, loaded, run),
        greatest_speed_m_per_s=greatest,
        limits_at=limits_at,
    )


def _greatest_speed(run: Run, parts: tuple[LinkUse, ...], loaded: Loaded) -> tuple[float | None, str]:
    """The speed at which the first part has used up what it may bear; none where its strength is unknown."""
    limits = []
    for one in parts:
        if one.passes_on:
            continue
        if one.capacity_n is None:
            return None, one.tag
        share = one.force_n / loaded.load.pull_n * one.margin_factor
        limits.append((one.capacity_n / share, one.tag))
    if not limits:
        return None, ""
    limit_n, tag = min(limits)
    speed = run.greatest_speed(limit_n)
    return (speed if speed > 0 else None), tag


def _depths(facts: RigFacts, loaded: Loaded, run: Run | None) -> tuple[tuple[str, str, float, float | None], ...]:
    """By depth, what moving the vehicle on the level asks for, and the pull that is then likely."""
    found: list[tuple[str, str, float, float | None]] = []
    for footing in _DEPTHS:
        ratio = max(figures[Ground(footing.value)] for figures in SCALES.values() if Ground(footing.value) in figures)
        needed_n = ratio * loaded.bogged_kg * STANDARD_GRAVITY_M_PER_S2
        kinetic = run is not None and facts.rig.method is Method.KINETIC
        likely = run.likely_n(needed_n, loaded.bogged_kg) if run is not None and kinetic else None
        found.append((footing.value, footing_word(footing), needed_n, likely))
    return tuple(found)


def _cautions() -> tuple[str, ...]:
    return (
        tr("Nobody stands in line with a loaded line, in it or over it; the drivers stay in their seats."),
        tr("Nothing here certifies a rig or a vehicle."),
    )
