"""The best rig of a kit for two vehicles and a method, and why each piece of the kit was left out.

Best, in this order: no forbidden joint, all pieces fit, the greatest least margin, the fewest joints. A winch rig that
moves the vehicle with all its margins goes before one that does not, where somebody said what it stands in.
"""

from collections.abc import Sequence

from msgspec.structs import replace

from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method, RigFacts, RigPiece
from inspector.gear.rig_result import LeftOut, Proposed, RigOutcome, RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr, within
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.advice import check_rig
from inspector.rulebook.rigs.choice import best_candidate
from inspector.rulebook.rigs.fits import goes_with, pin_passes
from inspector.rulebook.rigs.limits import Asked, Limited, sorted_out
from inspector.rulebook.rigs.mounts import Mount, mounts
from inspector.units import Dimension, System, show


def rank(result: RigResult) -> tuple[bool, bool, float, int]:
    """The order of rigs, the best one least: forbidden joint, a piece unfit or not known, least margin, joints."""
    unfit = any(one.key in {"band.weak", "fit", "bar"} for one in result.findings)
    unfit = unfit or any(one.outcome is RigOutcome.UNSOUND and not _is_only_weak(one.use_ratio) for one in result.links)
    margin = result.least_margin
    never = any(one.outcome is RigOutcome.NEVER for one in result.joints)
    return never, unfit, -(margin if margin is not None else 0.0), len(result.joints)


def _is_only_weak(use_ratio: float | None) -> bool:
    return use_ratio is not None and use_ratio > 1


def propose(asked: Asked, facts: RigFacts, book: Rulebook, program: str, system: System) -> Proposed:
    """The best rig. facts.rig is not read; facts.pieces holds the kit and what sits on the two vehicles."""
    at_hand, unable = sorted_out(asked, facts, book)
    best = best_candidate(asked, facts, at_hand, book, program, system)
    lacks = () if best else missing(asked, facts, at_hand, book)
    if best is None:
        left = tuple(LeftOut(tag, why) for tag, why in sorted(unable.items()))
        return Proposed(asked.method.value, asked.pulling, asked.bogged, None, left, lacks)
    rig = replace(best.rig, name=_name(asked), dampers=_dampers(facts))
    result = check_rig(replace(facts, rig=rig), book, program, system)
    left = _left_out(asked, facts, result, at_hand, unable, book, system)
    return Proposed(asked.method.value, asked.pulling, asked.bogged, result, left)


def _name(asked: Asked) -> str:
    names = {Method.KINETIC: tr("Kinetic pull"), Method.TOW_OUT: tr("Tow-out"), Method.WINCH: tr("Winch pull")}
    return tr(
        "{method}: {pulling} pulls {bogged}", method=names[asked.method], pulling=asked.pulling, bogged=asked.bogged
    )


def _dampers(facts: RigFacts) -> tuple[str, ...]:
    """The first fit damper of the kit."""
    fit = [one.tag for one in facts.pieces.values() if one.kind == "damper" and _is_fit(one.judged.verdict.outcome)]
    return tuple(sorted(fit)[:1])


def _is_fit(outcome: Outcome) -> bool:
    return outcome in {Outcome.FIT, Outcome.DERATE}


def missing(asked: Asked, facts: RigFacts, at_hand: tuple[Limited, ...], book: Rulebook) -> tuple[str, ...]:
    """What the kit lacks for any rig of the method."""
    roles = [one.role for one in at_hand]
    lacks = []
    line = {Method.KINETIC: "stretch", Method.TOW_OUT: "strap", Method.WINCH: "line"}[asked.method]
    words = {
        "stretch": tr("a fit kinetic strap or rope that suits the lighter vehicle"),
        "strap": tr("a fit static strap"),
        "line": tr("a fit winch line"),
    }
    if line not in roles:
        lacks.append(words[line])
    if asked.method is Method.WINCH and "winch" not in roles:
        lacks.append(tr("a fit winch on {vehicle}", vehicle=asked.pulling))
    wanted = 1 if asked.method is Method.WINCH else 2
    if roles.count("shackle") + roles.count("soft") < wanted:
        lacks.append(tr("{count} fit shackles", count=wanted))
    for tag in (asked.bogged, asked.pulling):
        if asked.method is Method.WINCH and tag == asked.pulling:
            continue
        ways = mounts(facts.vehicles[tag], at_hand, book)
        if not ways:
            lacks.append(tr("a fit recovery point, or a receiver with pin and insert, on {vehicle}", vehicle=tag))
        elif not _joinable(ways, facts, at_hand):
            lacks.append(tr("a fit shackle whose pin goes through a point or an insert on {vehicle}", vehicle=tag))
    return tuple(lacks) or (tr("pieces enough for both ends at once"),)


def _joinable(ways: Sequence[Mount], facts: RigFacts, at_hand: tuple[Limited, ...]) -> bool:
    """Whether some connector of the kit goes through what a vehicle offers."""
    bored = [facts.pieces[leg[-1]] for way in ways for leg in way.inner]
    return any(
        one.role == "soft" or (one.role == "shackle" and any(pin_passes(one.piece, other) for other in bored))
        for one in at_hand
    )


def _left_out(
    asked: Asked,
    facts: RigFacts,
    result: RigResult,
    at_hand: tuple[Limited, ...],
    unable: dict[str, str],
    book: Rulebook,
    system: System,
) -> tuple[LeftOut, ...]:
    """Why each piece that is not in the rig was left out."""
    used = {one.tag for one in result.links} | set(result.rig.dampers)
    found = {tag: why for tag, why in unable.items() if tag not in used}
    vehicles = [facts.vehicles[tag] for tag in (asked.bogged, asked.pulling)]
    for one in at_hand:
        if one.tag not in used:
            found[one.tag] = _misfit(one, facts, result, book) or _why_not(one, result, vehicles, system)
    for tag, piece in facts.pieces.items():
        if tag not in used and tag not in found and piece.fitted is None:
            found[tag] = _no_place(piece, result)
    return tuple(LeftOut(tag, why) for tag, why in sorted(found.items()))


def _no_place(piece: RigPiece, result: RigResult) -> str:
    if piece.kind != "damper":
        return tr("A {kind} has no place in this rig.", kind=within(piece.judged.dossier.kind.name))
    if not _is_fit(piece.judged.verdict.outcome):
        return tr("It is on hold or retired.")
    return tr("{other} lies over the line.", other=", ".join(result.rig.dampers))


def _misfit(one: Limited, facts: RigFacts, result: RigResult, book: Rulebook) -> str:
    """Why it does not go together with the rig, where that keeps it out; empty where it does."""

    def inside(*roles: str) -> list[RigPiece]:
        return [facts.pieces[link.tag] for link in result.links if link.role in roles and link.tag in facts.pieces]

    bored, tubes = inside("point", "insert"), inside("receiver")
    if one.role == "shackle" and bored and not any(pin_passes(one.piece, other) for other in bored):
        return tr("Its pin does not go through {others}.", others=", ".join(other.tag for other in bored))
    if one.role == "pin" and tubes and not any(pin_passes(one.piece, tube) for tube in tubes):
        return tr("It does not go through {others}.", others=", ".join(tube.tag for tube in tubes))
    if one.role == "insert" and tubes and not any(goes_with(one.piece, tube, book) for tube in tubes):
        return tr("Its block does not fill {others}.", others=", ".join(tube.tag for tube in tubes))
    return ""


def _why_not(one: Limited, result: RigResult, vehicles: list[Vehicle], system: System) -> str:
    """Why a piece that could serve does not: another serves better, or nothing asks for it."""
    chosen = [link for link in result.links if link.role == one.role]
    stands = show(one.strength_n, Dimension.FORCE, system) if one.role != "winch" else ""
    if one.role in {"bridle", "block", "pin", "insert", "receiver", "bar"} and not chosen:
        return tr("A rig without it keeps more margin, or has fewer joints.")
    if one.role == "stretch" and chosen:
        return tr("With {other} the rig keeps a greater margin.", other=chosen[0].tag)
    if chosen:
        others = ", ".join(link.tag for link in chosen)
        return tr("It stands {stands}; {others} do as well or better.", stands=stands, others=others)
    return tr("It is not needed: other pieces keep as much margin.")
