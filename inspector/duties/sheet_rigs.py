"""The rigs that a trip plans, as lines of its sheet: reckoned for its last day, the worst first."""

from collections.abc import Collection

from msgspec.structs import replace

from inspector.drawings.rig_words import link_name, method_words, used_text
from inspector.duties.before_use import goes
from inspector.duties.keep_rigs import rigs
from inspector.duties.office import Office
from inspector.duties.trip_readiness import Ready
from inspector.duties.work_rigs import work_rig
from inspector.gear.papers import RigLine
from inspector.gear.rig import KeptRig, Method, Rig
from inspector.gear.rig_result import RigOutcome, RigResult
from inspector.gear.trip import Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, show


def planned_rigs(office: Office, ready: Ready, vehicle: str = "") -> tuple[RigLine, ...]:
    """Every kept rig that names the trip, or joins two of its vehicles out of pieces that go; the worst first.

    vehicle: only those that pull or bring out this one.
    """
    planned, along = ready.trip, _along(ready)
    wanted = [one for one in rigs(office) if _is_planned(one.rig, planned, along)]
    wanted = [one for one in wanted if not vehicle or vehicle in {one.rig.pulling, one.rig.bogged}]
    lines = [_line(office, one, planned, along) for one in wanted]
    return tuple(sorted(lines, key=lambda one: (-one.outcome.severity, one.ref)))


def _along(ready: Ready) -> set[str]:
    """The tags of what goes: of the kit and of the parts on the vehicles."""
    parts = (part.judged for one in ready.vehicles for part in one.parts)
    tags = {one.dossier.item.tag for one in (*ready.going, *(one for one in parts if goes(one)))}
    return tags - set(ready.barred)


def _is_planned(rig: Rig, planned: Trip, along: Collection[str]) -> bool:
    if rig.trip == planned.ref:
        return True
    joins = {rig.pulling, rig.bogged}
    return len(joins) > 1 and joins <= set(planned.vehicles) and not _left_behind(rig, along)


def _left_behind(rig: Rig, along: Collection[str]) -> list[str]:
    """The pieces of a rig that do not go; a loose end is none."""
    return [tag for tag in dict.fromkeys((*rig.tags, *rig.dampers)) if "@" not in tag and tag not in along]


def _line(office: Office, kept: KeptRig, planned: Trip, along: Collection[str]) -> RigLine:
    rig = replace(kept.rig, trip=planned.ref)
    try:
        found = work_rig(office, rig)
    except Refused as refusal:
        why = tr("It cannot be reckoned: {why}", why=refusal.why)
        return _lacking(kept, RigOutcome.UNSOUND, why)
    line = replace(
        _lacking(kept, found.outcome, found.headline),
        weakest=_weakest(found),
        speed=_speed(office, rig),
        stand_off=show(found.stand_off_m, Dimension.LENGTH, office.system),
    )
    if missing := [*_absent_vehicles(rig, planned), *_left_behind(rig, along)]:
        why = tr("Not along, or not fit to go: {tags}.", tags=", ".join(missing))
        worse = max(found.outcome, RigOutcome.UNSOUND, key=lambda one: one.severity)
        return replace(line, outcome=worse, says=f"{why} {found.headline}" if worse is found.outcome else why)
    return line


def _absent_vehicles(rig: Rig, planned: Trip) -> list[str]:
    return [tag for tag in (rig.pulling, rig.bogged) if tag and tag not in planned.vehicles]


def _lacking(kept: KeptRig, outcome: RigOutcome, says: str) -> RigLine:
    """A rig's line without what only the sums tell."""
    rig = kept.rig
    pulls = tr("{pulling} pulls {bogged}", pulling=rig.pulling, bogged=rig.bogged)
    pulls = pulls if rig.pulling else tr("{bogged} pulls itself", bogged=rig.bogged)
    return RigLine(kept.ref, rig.name, outcome, method_words(rig.method), pulls, "", "", "", says)


def _weakest(found: RigResult) -> str:
    """The part with the least strength over the pull, and how much of what it may bear is used."""
    unknown = [one.tag for one in found.links if one.capacity_n is None and not one.passes_on]
    if unknown:
        return tr("not known, since nobody knows the strength of {tags}", tags=", ".join(unknown))
    link = found.link(found.weakest)
    if link is None:
        return tr("not known")
    return tr("{part}, {used} of what it may bear is used", part=link_name(link), used=used_text(link))


def _speed(office: Office, rig: Rig) -> str:
    """The speed that it was checked with, as a limit; empty where the method has none."""
    said = rig.conditions.speed
    if said is not None and rig.method is not Method.WINCH:
        return tr("at most {speed} as the line comes taut", speed=said.as_typed)
    if rig.method is Method.TOW_OUT:
        return tr("no run-up: take up all slack before pulling")
    if rig.method is Method.WINCH:
        return ""
    speed = show(office.rules.setting("kinetic_speed_unsaid"), Dimension.SPEED, office.system)
    return tr("nobody said one, so it is reckoned with {speed}: go no faster", speed=speed)
