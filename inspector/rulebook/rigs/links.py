"""Each part of a rig on one basis: what it bears, its breaking strength on the day, what it must keep, what is used.

A working load limit enters through its factor, so that a shackle and a strap are compared by the load at which they
fail. Wet nylon, and a strap choked on itself, lose strength; nothing here ever lowers the load.
"""

from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.rig import LooseEnd, Method, RigPiece
from inspector.gear.rig_result import LinkUse, RigOutcome
from inspector.language import tr
from inspector.mechanics import coupling, fibre
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rig_texts import Role
from inspector.rulebook.rigs.layout import Layout, Part
from inspector.rulebook.rigs.loads import Loaded
from inspector.rulebook.rigs.pin_lever import lever_left_ratio
from inspector.rulebook.words import purpose_word
from inspector.units import Dimension, System, show

PURPOSES = {Method.KINETIC: Purpose.KINETIC, Method.TOW_OUT: Purpose.STATIC, Method.WINCH: Purpose.STATIC}


def links(layout: Layout, loaded: Loaded, system: System) -> tuple[LinkUse, ...]:
    """Every part of the rig, in the order of its runs."""
    return tuple(_link(layout, loaded, part, system) for part in layout.parts.values())


def _link(layout: Layout, loaded: Loaded, part: Part, system: System) -> LinkUse:
    force_n = loaded.load.pull_n * loaded.shares.part[part.tag]
    margin = _margin(layout, loaded, part, force_n)
    capacity_n, taken, why = _strength(layout, part, system)
    passes_on = part.role in {"winch", LooseEnd.TREE.value, LooseEnd.GROUND_ANCHOR.value}
    outcome, why = _outcome(layout, part, (force_n, margin, capacity_n), why, system)
    return LinkUse(
        tag=part.tag,
        kind_name=part.name,
        role=part.role,
        force_n=force_n,
        capacity_n=capacity_n,
        margin_factor=margin,
        why=why,
        outcome=outcome,
        side=part.body,
        legs=loaded.shares.legs[part.tag],
        passes_on=passes_on,
        taken_off=taken,
        kind=part.piece.kind if part.piece else part.role,
        length_m=_length_m(part),
    )


def _length_m(part: Part) -> float | None:
    """Of a line, as it was booked in."""
    is_line = part.text is not None and part.text.per_metre
    length = part.piece.judged.dossier.item.size("length") if part.piece and is_line else None
    return length.si if length else None


def _margin(layout: Layout, loaded: Loaded, part: Part, force_n: float) -> float:
    """What the part must keep over what it bears, by method; a block and all that holds it keep more."""
    usual = usual_margin(layout.book, layout.facts.rig.method, part.text)
    if part.tag not in loaded.shares.hung or force_n <= 0:
        return usual
    return max(usual, hung_margin(layout.book, layout.facts.rig.method) * loaded.load.pull_n / force_n)


def usual_margin(book: Rulebook, method: Method, text: Role | None) -> float:
    """What a part of this role must keep over what it bears."""
    return book.setting(margin_key(method, text))


def margin_key(method: Method, text: Role | None) -> str:
    """The setting that tells what a part of this role must keep."""
    if method is Method.WINCH:
        return "margin_winch_line"
    fibre_like = text is not None and (text.margin == "fibre" or bool(text.fibre))
    return f"margin_{method.value}_{'fibre' if fibre_like else 'steel'}"


def hung_margin(book: Rulebook, method: Method) -> float:
    """What a block and all that holds it must keep over the line's own pull; by a winch only."""
    return book.setting("margin_winch_block") if method is Method.WINCH else 0.0


def _strength(layout: Layout, part: Part, system: System) -> tuple[float | None, tuple[str, ...], str]:
    """Newtons at which it fails in this rig, what was taken off in words, and why it is unknown."""
    if part.piece is None:
        return _loose_strength(layout, part, system)
    strength_n, why, only = own_strength(part.piece, part.role)
    if strength_n is None:
        return None, (), why
    taken = [only] if only else []
    bent = pin_left_ratio(layout, part)
    if bent < 1:
        strength_n *= bent
        taken.append(tr("a longer lever in this receiver: {left} left", left=show(bent, Dimension.RATIO, system)))
    wet = wet_loss(part.text, layout.facts.rig.conditions.wet)
    if wet > 0:
        strength_n = fibre.strength_left_n(strength_n, wet)
        taken.append(tr("wet nylon: {loss} less", loss=show(wet, Dimension.RATIO, system)))
    for other in layout.near(part.tag):
        joint = layout.between(part.tag, other).joint
        if joint is not None and joint.left_ratio < 1:
            strength_n *= joint.left_ratio
            taken.append(tr("{joint}: {left} left", joint=joint.name, left=joint.left))
    return strength_n, tuple(taken), ""


def pin_left_ratio(layout: Layout, part: Part) -> float:
    """What the receiver and the block on either side of a hitch pin leave of its strength; 1 for any other part."""
    if part.role != "pin" or part.piece is None:
        return 1.0
    near = [layout.parts[tag] for tag in layout.near(part.tag)]
    tube, insert = (next((one.piece for one in near if one.role == role), None) for role in ("receiver", "insert"))
    return lever_left_ratio(part.piece, tube, insert, layout.book)


def own_strength(piece: RigPiece, role: str) -> tuple[float | None, str, str]:
    """The strength of a dry piece in newtons, why it is unknown, and what it leaves out.

    Of a tow bar its bolts are known in newtons; what its tube bears along the vehicle only its maker can tell.
    """
    capacity = piece.judged.verdict.capacity
    if role == "winch":
        return None, "", ""
    if capacity.now_n is not None:
        return capacity.now_n, "", ""
    why = capacity.why_unknown or tr("Nobody knows its strength.")
    known = [one.now_n for one in capacity.counted if one.now_n is not None]
    if role != "bar" or not known or any(one.left_ratio is None for one in capacity.counted):
        return None, why, ""
    return min(known), "", tr("its bolts only; what its tube bears only the maker can tell")


def _loose_strength(layout: Layout, part: Part, system: System) -> tuple[float | None, tuple[str, ...], str]:
    if part.role != LooseEnd.TOWING_EYE.value:
        return None, (), tr("Nobody knows what it holds.")
    vehicle = layout.facts.vehicles[part.body]
    least_n = coupling.towing_eye_n(vehicle.gvm.si)
    said = tr("the least that the law asks of it, half the laden weight: {least}")
    return least_n, (said.format(least=show(least_n, Dimension.FORCE, system)),), ""


def wet_loss(text: Role | None, wet: bool | None) -> float:
    """Share of its strength that a part of this role loses wet; unless somebody said dry, it is wet."""
    if text is None or not text.fibre or wet is False:
        return 0.0
    return fibre.wet_loss_ratio(fibre.Fibre(text.fibre))


def _outcome(
    layout: Layout, part: Part, sums: tuple[float, float, float | None], why: str, system: System
) -> tuple[RigOutcome, str]:
    """How the part comes out, and why in one sentence."""
    force_n, margin, capacity_n = sums
    if part.piece is not None:
        barred = barred_why(part.piece, PURPOSES[layout.facts.rig.method])
        if barred:
            return RigOutcome.UNSOUND, barred
    if part.role in {LooseEnd.TREE.value, LooseEnd.GROUND_ANCHOR.value}:
        return RigOutcome.CAUTION, tr("Nobody knows what it holds; try it with a slow pull, nobody in line.")
    if part.role == "winch" and layout.facts.rig.method is not Method.WINCH:
        return RigOutcome.UNSOUND, tr("Nobody knows what its brake holds: no vehicle pulls on a winch.")
    if part.role == "winch":
        return RigOutcome.SOUND, tr("It stalls at this pull; its mount was inspected.")
    if capacity_n is None:
        return RigOutcome.UNSOUND, why
    if force_n * margin > capacity_n * (1 + SAME_RATIO):
        return RigOutcome.UNSOUND, _too_weak(force_n, margin, capacity_n, system)
    if part.role == "bar" and part.piece is not None and part.piece.judged.verdict.capacity.now_n is None:
        return RigOutcome.CAUTION, tr("Its bolts hold this pull; what its tube bears only the maker can tell.")
    said = tr("It stands {times} times what it bears and must keep {margin} times.")
    return RigOutcome.SOUND, said.format(times=f"{capacity_n / force_n:.2f}", margin=f"{margin:.3g}")


def _too_weak(force_n: float, margin: float, capacity_n: float, system: System) -> str:
    force, capacity = show(force_n, Dimension.FORCE, system), show(capacity_n, Dimension.FORCE, system)
    if force_n > capacity_n:
        return tr("It may bear {force} and fails at {capacity}.", force=force, capacity=capacity)
    return tr(
        "It may bear {force} and fails at {capacity}; it must keep {margin} times the pull.",
        force=force,
        capacity=capacity,
        margin=f"{margin:.3g}",
    )


def barred_why(piece: RigPiece, purpose: Purpose) -> str:
    """Why a piece may not serve this pull on that day: barred, held, retired, or kept for other work; else empty."""
    kind = piece.judged.dossier.kind
    bar = next((one.why for one in kind.barred if one.purpose is purpose), "")
    if bar:
        return bar
    verdict = piece.judged.verdict
    if verdict.outcome is Outcome.RETIRE:
        return tr("It is retired: {why}", why=_first_reason(piece))
    found = next((one.outcome for one in verdict.by_purpose if one.purpose is purpose), None)
    if found is None:
        return tr("It is not kept for a {purpose}.", purpose=purpose_word(purpose))
    return tr("It is on hold: {why}", why=_first_reason(piece)) if found is Outcome.HOLD else ""


def _first_reason(piece: RigPiece) -> str:
    explained = piece.judged.explanation
    return explained.reasons[0].sentence if explained.reasons else explained.headline
