"""What decides whether a rig is sound: joints, parts, strap against vehicles, bridle, damper, speed, anchor."""

from collections.abc import Iterator

from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method
from inspector.gear.rig_result import JointUse, LinkUse, RigFinding, RigOutcome
from inspector.language import tr, within
from inspector.mechanics import fibre, ground
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.rigs.fits import fits
from inspector.rulebook.rigs.flying import longest_of, stand_off_of
from inspector.rulebook.rigs.forces import bridle_angle
from inspector.rulebook.rigs.layout import Layout
from inspector.rulebook.rigs.links import PURPOSES, barred_why, margin_key
from inspector.rulebook.rigs.loads import Loaded
from inspector.rulebook.rigs.resistance import FIRM
from inspector.rulebook.rigs.strap_band import TOO_STRONG, TOO_WEAK, band_words, strap_band, strap_fit
from inspector.units import Dimension, System, show


def findings(
    layout: Layout, loaded: Loaded, links: tuple[LinkUse, ...], joints: tuple[JointUse, ...], system: System
) -> tuple[RigFinding, ...]:
    """All that was looked at, the worst first; what passes stands last."""
    found = [
        *_absent(layout),
        *_joints(layout, joints),
        *_parts(layout, links),
        *_band(layout, system),
        *_in_line(layout),
        *_bars(layout),
        *fits(layout, system),
        *_bridles(layout, loaded, system),
        *_dampers(layout),
        *_speed(layout, loaded, system),
        *_moves(layout, loaded, system),
        *_anchor(layout, loaded, system),
        *_distance(layout, system),
        *_overloaded(layout),
    ]
    return tuple(sorted(found, key=lambda one: -one.outcome.severity))


def _joints(layout: Layout, joints: tuple[JointUse, ...]) -> Iterator[RigFinding]:
    for one in joints:
        if one.outcome is not RigOutcome.SOUND:
            says = tr("{name}, {one} and {other}: {why}", name=one.name, one=one.one, other=one.other, why=one.says)
            yield RigFinding(f"joint.{one.how or 'unknown'}", one.outcome, says, one.source, (one.one, one.other))
    sound = [one for one in joints if one.outcome is RigOutcome.SOUND]
    if sound:
        says = tr("{count} joints hold by the way they are made.", count=len(sound))
        yield RigFinding("joints", RigOutcome.SOUND, says, layout.book.source_text("common_practice"))


def _absent(layout: Layout) -> Iterator[RigFinding]:
    """What is not to be had, or must stay as it was found: no strength makes up for that."""
    for tag in (*layout.parts, *_pair(layout)):
        if why := layout.facts.absent.get(tag):
            says = tr("{tag}: {why}", tag=tag, why=why)
            yield RigFinding("absent", RigOutcome.UNSOUND, says, layout.book.source_text("house_law"), (tag,))


def _parts(layout: Layout, links: tuple[LinkUse, ...]) -> Iterator[RigFinding]:
    for one in sorted(links, key=lambda link: -(link.use_ratio or 0.0)):
        says = tr("{tag}, {kind}: {why}", tag=one.tag, kind=within(one.kind_name), why=one.why)
        yield RigFinding("part", one.outcome, says, _margin_source(layout, one), (one.tag,))


def _margin_source(layout: Layout, one: LinkUse) -> str:
    """Where what the part must keep comes from; of a part that is held, barred or unknown the house's own law."""
    book, method = layout.book, layout.facts.rig.method
    piece = layout.parts[one.tag].piece
    if one.capacity_n is None or (piece is not None and barred_why(piece, PURPOSES[method])):
        return book.source_text("house_law")
    return book.source_text(book.setting_texts[margin_key(method, layout.parts[one.tag].text)].source)


def _band(layout: Layout, system: System) -> Iterator[RigFinding]:
    """Strap against vehicles: its strength now not too low, its marking, which tells its stiffness, not too high."""
    vehicles = sorted(layout.facts.vehicles[tag].gvm.si for tag in _pair(layout))
    if layout.facts.rig.method is not Method.KINETIC or len(vehicles) < 2:
        return
    book, source = layout.book, layout.book.source_text("strap_standard_s8")
    lighter_kg, heavier_kg = vehicles
    band = band_words(strap_band(book, lighter_kg), system)
    for part in layout.of_role("stretch"):
        capacity = part.piece.judged.verdict.capacity if part.piece else None
        about = (part.tag,)
        if capacity is None or capacity.now_n is None or capacity.begins_n is None:
            says = tr("Nobody knows what {tag} stands; the lighter vehicle asks for {band}.", tag=part.tag, band=band)
            yield RigFinding("band.unknown", RigOutcome.UNSOUND, says, source, about)
            continue
        now, marked = (show(force_n, Dimension.FORCE, system) for force_n in (capacity.now_n, capacity.begins_n))
        if strap_fit(book, lighter_kg, capacity.now_n) == TOO_WEAK:
            says = tr(
                "{tag} stands {now}; the lighter vehicle asks for {band}: too weak.", tag=part.tag, now=now, band=band
            )
            yield RigFinding("band.weak", RigOutcome.UNSOUND, says, source, about)
        elif strap_fit(book, lighter_kg, capacity.begins_n) == TOO_STRONG:
            says = tr(
                "{tag} is marked {marked}; the lighter vehicle asks for {band}: it stretches little and jerks hard.",
                tag=part.tag,
                marked=marked,
                band=band,
            )
            yield RigFinding("band.strong", RigOutcome.CAUTION, says, source, about)
        else:
            says = tr("{tag} suits the lighter vehicle, which asks for {band}.", tag=part.tag, band=band)
            yield RigFinding("band", RigOutcome.SOUND, says, source, about)
        if fibre.strap_band_ratio(capacity.now_n, heavier_kg) < book.setting("strap_band_low") * (1 - SAME_RATIO):
            says = tr("{tag} is below twice the heavier vehicle's laden weight.", tag=part.tag)
            yield RigFinding("band.heavier", RigOutcome.CAUTION, says, source, about)


def _pair(layout: Layout) -> tuple[str, ...]:
    rig = layout.facts.rig
    return tuple(tag for tag in (rig.bogged, rig.pulling) if tag)


def _in_line(layout: Layout) -> Iterator[RigFinding]:
    straps = layout.of_role("stretch")
    if len(straps) > 1:
        says = tr("Straps in a row: what joins them flies both ways if one lets go, and the whole line with it.")
        source = layout.book.source_text("common_practice")
        yield RigFinding("in_line", RigOutcome.CAUTION, says, source, tuple(part.tag for part in straps))


def _bars(layout: Layout) -> Iterator[RigFinding]:
    """A receiver that nobody knows a tow bar behind: the bar bears the pull as well, and unknown is never fit."""
    for part in layout.of_role("receiver"):
        if not any(layout.parts[tag].role == "bar" for tag in layout.near(part.tag)):
            says = tr(
                "Nobody wrote down which tow bar carries {tag}: what that bar bears is not known. Book the bar in and "
                "fit it to the vehicle at that end, or pull from a recovery point.",
                tag=part.tag,
            )
            yield RigFinding("bar", RigOutcome.UNSOUND, says, layout.book.source_text("house_law"), (part.tag,))


def _bridles(layout: Layout, loaded: Loaded, system: System) -> Iterator[RigFinding]:
    most_rad, source = layout.book.setting("bridle_angle_most"), layout.book.source_text("bridle_advice")
    for part in layout.of_role("bridle"):
        if len(layout.near(part.tag)) < 3:
            continue
        angle_rad = bridle_angle(layout, loaded.shares, part.tag)
        angle, most = (show(one, Dimension.ANGLE, system) for one in (angle_rad, most_rad))
        wide = angle_rad > most_rad * (1 + SAME_RATIO)
        outcome = RigOutcome.CAUTION if wide else RigOutcome.SOUND
        says = tr("The legs of {tag} open {angle}; advice is {most} at most.", tag=part.tag, angle=angle, most=most)
        yield RigFinding("bridle", outcome, says, source, (part.tag,))


def _dampers(layout: Layout) -> Iterator[RigFinding]:
    source, named = layout.book.source_text("strap_standard_s9"), layout.facts.rig.dampers
    if not named:
        yield RigFinding("damper", RigOutcome.CAUTION, tr("No damper lies over the line."), source)
    for tag in named:
        piece = layout.facts.pieces.get(tag)
        fit = piece is not None and piece.judged.verdict.outcome in {Outcome.FIT, Outcome.DERATE}
        if piece is not None and piece.kind == "damper" and fit:
            says = tr("{tag} lies over the line; it slows a flying end and makes no failed part safe.", tag=tag)
            yield RigFinding("damper", RigOutcome.SOUND, says, source, (tag,))
        else:
            yield RigFinding("damper", RigOutcome.CAUTION, tr("{tag} is no fit damper.", tag=tag), source, (tag,))


def _speed(layout: Layout, loaded: Loaded, system: System) -> Iterator[RigFinding]:
    if loaded.run is None or layout.facts.rig.method is not Method.KINETIC:
        return
    most = layout.book.setting("kinetic_speed_unsaid")
    if loaded.run.speed_m_per_s > most * (1 + SAME_RATIO):
        speed, advised = (show(one, Dimension.SPEED, system) for one in (loaded.run.speed_m_per_s, most))
        says = tr("{speed} is faster than advised ({advised}).", speed=speed, advised=advised)
        yield RigFinding("speed", RigOutcome.CAUTION, says, layout.book.source_text("trail_speed"))


def _moves(layout: Layout, loaded: Loaded, system: System) -> Iterator[RigFinding]:
    load, source = loaded.load, layout.book.source_text("army_recovery_steps")
    if load.needed_n is None:
        says = tr("Nobody said what the vehicle stands in: whether it will move is not known.")
        yield RigFinding("moves", RigOutcome.CAUTION, says, source)
        return
    needed, offered = (show(one, Dimension.FORCE, system) for one in (load.needed_n, load.offered_n))
    if load.moves:
        says = tr("It needs {needed} to move; up to {offered} comes to it.", needed=needed, offered=offered)
        yield RigFinding("moves", RigOutcome.SOUND, says, source)
    else:
        says = tr(
            "It needs {needed} to move and at most {offered} comes to it: dig first, or use more parts of line.",
            needed=needed,
            offered=offered,
        )
        yield RigFinding("moves", RigOutcome.CAUTION, says, source)


def _anchor(layout: Layout, loaded: Loaded, system: System) -> Iterator[RigFinding]:
    """Whether the vehicle that holds the winch's other end stays where it is."""
    rig = layout.facts.rig
    if rig.method is not Method.WINCH or not rig.pulling:
        return
    vehicle = layout.facts.vehicles[rig.pulling]
    holds_n = ground.anchor_value_n((vehicle.mass or vehicle.gvm).si)
    bears_n = loaded.load.pull_n * loaded.shares.on_body(layout, rig.pulling)
    holds, bears = (show(one, Dimension.FORCE, system) for one in (holds_n, bears_n))
    outcome = RigOutcome.CAUTION
    if bears_n > holds_n:
        says = tr("{tag}, all brakes on, holds {holds} on firm ground and may bear {bears}: it slides before that.")
    elif vehicle.mass is None:  # the lighter it stands there, the less it holds
        says = tr("Nobody weighed {tag}: whether it holds {bears} is not known.")
    elif rig.conditions.pulling_on not in FIRM:
        says = tr("{tag} would hold {holds} on firm ground; whether it holds {bears} where it stands is not known.")
    else:
        outcome, says = RigOutcome.SOUND, tr("{tag}, all brakes on, holds {holds} on firm ground and may bear {bears}.")
    said = says.format(tag=rig.pulling, holds=holds, bears=bears)
    yield RigFinding("anchor", outcome, said, layout.book.source_text("anchor_value_own"), (rig.pulling,))


def _overloaded(layout: Layout) -> Iterator[RigFinding]:
    """A vehicle that weighs more than its plate allows; the sums take what it weighs."""
    for vehicle in (layout.facts.vehicles[tag] for tag in _pair(layout)):
        if vehicle.mass is not None and vehicle.is_overloaded:
            says = tr(
                "{tag} is overloaded: it weighs {mass}, its GVM is {gvm}. Take load off first.",
                tag=vehicle.tag,
                mass=vehicle.mass.as_typed,
                gvm=vehicle.gvm.as_typed,
            )
            source = layout.book.source_text("house_law")
            yield RigFinding("overloaded", RigOutcome.CAUTION, says, source, (vehicle.tag,))


def _distance(layout: Layout, system: System) -> Iterator[RigFinding]:
    """A chosen rule that lets people stand nearer than another one asks for."""
    (chosen_m, rule), longest_m = stand_off_of(layout), longest_of(layout)
    if chosen_m < longest_m * (1 - SAME_RATIO):
        chosen, longest = (show(one, Dimension.LENGTH, system) for one in (chosen_m, longest_m))
        says = tr("{rule} asks for {chosen}; the longest of all rules asks for {longest}.")
        said = says.format(rule=f"{rule[:1].upper()}{rule[1:]}", chosen=chosen, longest=longest)
        yield RigFinding("distance", RigOutcome.CAUTION, said, layout.book.source_text("house_law"))
