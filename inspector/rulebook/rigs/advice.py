"""What to change in a rig, each change tried by checking the rig that it makes."""

from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.rig import Method, Rig, RigFacts, RigPiece
from inspector.gear.rig_result import Change, RigOutcome, RigResult
from inspector.language import tr
from inspector.mechanics import bridle
from inspector.refused import Refused
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.check import checked
from inspector.rulebook.rigs.choice import best_candidate
from inspector.rulebook.rigs.forces import spacing_of
from inspector.rulebook.rigs.layout import lay_out
from inspector.rulebook.rigs.limits import Asked, sorted_out
from inspector.rulebook.rigs.links import PURPOSES, barred_why
from inspector.rulebook.rigs.saying import speed_within
from inspector.units import Dimension, Figure, System, show

_SLOWEST = 1 / 3.6


class Advised(Struct, frozen=True):
    """What every piece of advice is worked out from."""

    facts: RigFacts
    book: Rulebook
    program: str
    system: System
    before: RigResult

    def after(self, rig: Rig) -> RigResult:
        """The changed rig checked."""
        return checked(replace(self.facts, rig=rig), self.book, self.program, self.system).result


def check_rig(facts: RigFacts, book: Rulebook, program: str, system: System) -> RigResult:
    """A rig checked, with what is worth changing. facts.pieces may hold more than the rig: they are tried in it.

    Refused where the rig does not hold together or a needed fact is missing.
    """
    before = checked(facts, book, program, system).result
    advised = Advised(facts, book, program, system, before)
    found: list[Change] = []
    for advise in (_slower, _taut, _other_strap, _bridle, _soft, _winch):
        found += advise(advised)
    return replace(before, changes=tuple(found))


def _change(advised: Advised, key: str, says: str, rig: Rig) -> Change | None:
    """The change with what comes of it; None where the changed rig does not hold together."""
    try:
        after = advised.after(rig)
    except Refused:
        return None
    return Change(key, says, after.outcome, after.safety_factor, rig)


def _slower(advised: Advised) -> Iterator[Change]:
    """The speed that leaves every part its margin, in whole tenths of km/h or mph."""
    rig, greatest = advised.before.rig, advised.before.sensitivity.greatest_speed_m_per_s
    if rig.method is not Method.KINETIC or greatest is None or greatest < _SLOWEST:
        return
    speed = speed_within(greatest, advised.system)
    said = rig.conditions.speed
    now = said.si if said is not None else advised.book.setting("kinetic_speed_unsaid")
    if speed.si >= now * (1 - SAME_RATIO):
        return
    slower = replace(rig, conditions=replace(rig.conditions, speed=speed))
    says = tr("Go no faster than {speed} as the strap comes taut.", speed=speed.as_typed)
    found = _change(advised, "slower", says, slower)
    if found is not None:
        yield found


def _taut(advised: Advised) -> Iterator[Change]:
    """A tow-out with no slack in the line."""
    rig = advised.before.rig
    said = rig.conditions.slack
    if rig.method is not Method.TOW_OUT or rig.conditions.speed is not None or (said is not None and said.si <= 0):
        return
    taut = replace(rig, conditions=replace(rig.conditions, slack=Figure(0.0, "0 m", Dimension.LENGTH)))
    found = _change(advised, "taut", tr("Draw the line taut before the pull: slack makes it a snatch."), taut)
    if found is not None:
        yield found


def _other_strap(advised: Advised) -> Iterator[Change]:
    """Another strap of the kit, if the rig is better with it."""
    rig = advised.before.rig
    if rig.method is not Method.KINETIC:
        return
    inside = [tag for tag in rig.tags if _role(advised, tag) == "stretch"]
    if len(inside) != 1:
        return
    best: Change | None = None
    for piece in _spare(advised, "stretch"):
        says = tr("Take {other} instead of {strap}.", other=piece.tag, strap=inside[0])
        found = _change(advised, "strap", says, _with_instead(rig, inside[0], piece.tag))
        if found is not None and _better(
            found, best.outcome if best else advised.before.outcome, _factor(best, advised)
        ):
            best = found
    if best is not None:
        yield best


def _factor(best: Change | None, advised: Advised) -> float:
    factor = best.safety_factor if best else advised.before.safety_factor
    return factor or 0.0


def _better(found: Change, outcome: RigOutcome, factor: float) -> bool:
    gain = outcome.severity - found.outcome.severity
    return gain > 0 or (gain == 0 and (found.safety_factor or 0.0) > factor * (1 + 1e-9))


def _bridle(advised: Advised) -> Iterator[Change]:
    """The length of bridle that brings its legs closer together."""
    most_rad = advised.book.setting("bridle_angle_most")
    wide = [
        one.about[0] for one in advised.before.findings if one.key == "bridle" and one.outcome is not RigOutcome.SOUND
    ]
    layout = lay_out(advised.facts, advised.book)
    for tag in wide:
        spacing_m = spacing_of(layout, tag)
        if spacing_m is None:
            says = tr("Measure the distance between the two points, or the angle at {tag}.", tag=tag)
            yield Change("bridle", says, advised.before.outcome, advised.before.safety_factor)
            continue
        needed_m = bridle.bridle_needed_m(spacing_m, most_rad)
        says = tr(
            "Take a bridle of at least {length} instead of {tag}: its legs then open {angle} at most.",
            length=show(needed_m, Dimension.LENGTH, advised.system),
            tag=tag,
            angle=show(most_rad, Dimension.ANGLE, advised.system),
        )
        yield Change("bridle", says, advised.before.outcome, advised.before.safety_factor)


def _soft(advised: Advised) -> Iterator[Change]:
    """Soft instead of steel between two fibre parts: lighter to fly. The outcome and the distance stay as they are."""
    rig = advised.before.rig
    steel = [tag for tag in rig.tags if _role(advised, tag) == "shackle" and not _at_steel(advised, tag)]
    spare = _spare(advised, "soft")
    for tag, piece in zip(steel, spare, strict=False):
        says = tr(
            "{soft} instead of {steel} is lighter to fly; the line holds the same energy: stay as far away.",
            soft=piece.tag,
            steel=tag,
        )
        found = _change(advised, "soft", says, _with_instead(rig, tag, piece.tag))
        if found is not None and found.outcome.severity <= advised.before.outcome.severity:
            yield replace(found, outcome=advised.before.outcome)


def _at_steel(advised: Advised, tag: str) -> bool:
    """Whether the shackle's pin goes through a point, an insert or other bored steel."""
    pairs = [pair for run in advised.before.rig.runs for pair in pairwise(run) if tag in pair]
    near = {other for pair in pairs for other in pair} - {tag}
    return any(_role(advised, other) not in {"stretch", "strap", "bridle", "soft", "shackle"} for other in near)


def _winch(advised: Advised) -> Iterator[Change]:
    """A slow pull instead of a snatch, where the pulling vehicle has a winch."""
    rig = advised.before.rig
    if rig.method is not Method.KINETIC or not rig.pulling:
        return
    asked = Asked(Method.WINCH, rig.pulling, rig.bogged, rig.conditions)
    at_hand, _ = sorted_out(asked, advised.facts, advised.book)
    best = best_candidate(asked, advised.facts, at_hand, advised.book, advised.program, advised.system)
    if best is None:
        return
    wanted = replace(best.rig, name=rig.name, dampers=rig.dampers, trip=rig.trip)
    says = tr("Pull with {winch} instead of a run: the pull grows slowly and can be stopped.", winch=wanted.runs[0][0])
    found = _change(advised, "winch", says, wanted)
    if found is not None and found.outcome.severity < RigOutcome.UNSOUND.severity:
        yield found


def _spare(advised: Advised, role: str) -> list[RigPiece]:
    """Pieces of a role that are not in the rig and may serve this method that day."""
    purpose = PURPOSES[advised.before.rig.method]
    inside = set(advised.before.rig.tags)
    return [
        one
        for tag, one in sorted(advised.facts.pieces.items())
        if tag not in inside and advised.book.roles[one.kind].key == role and not barred_why(one, purpose)
    ]


def _role(advised: Advised, tag: str) -> str:
    piece = advised.facts.pieces.get(tag)
    return advised.book.roles[piece.kind].key if piece else ""


def _with_instead(rig: Rig, old: str, new: str) -> Rig:
    def put(tag: str) -> str:
        return new if tag == old else tag

    return replace(
        rig,
        runs=tuple(tuple(put(tag) for tag in run) for run in rig.runs),
        angles=tuple(replace(one, at=put(one.at)) for one in rig.angles),
        joints=tuple(one for one in rig.joints if old not in {one.one, one.other}),
    )
