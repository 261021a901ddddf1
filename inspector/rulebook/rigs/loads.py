"""The greatest pull that a method can put into the line, with every assumption told."""

import math

from msgspec import Struct

from inspector.gear.kind import Basis
from inspector.gear.rig import Method, RigPiece
from inspector.gear.rig_result import Load
from inspector.language import tr
from inspector.mechanics import drum, snatch_peaks, tackle
from inspector.refused import Refused
from inspector.rulebook.rigs import resistance, stretching
from inspector.rulebook.rigs.forces import Shares, shares
from inspector.rulebook.rigs.layout import Layout, Part
from inspector.rulebook.rigs.saying import Account
from inspector.rulebook.rigs.stretching import Stretcher
from inspector.units import Dimension, System


class Run(Struct, frozen=True):
    """A pull by another vehicle: what stretches, the drive in newtons, its mass in kg and its speed in m/s."""

    straps: tuple[Stretcher, ...]
    drive_n: float
    mass_kg: float
    speed_m_per_s: float

    def peak_n(self, speed_m_per_s: float | None = None) -> float:
        """The bound of the pull, at another speed if one is given."""
        speed = self.speed_m_per_s if speed_m_per_s is None else speed_m_per_s
        return stretching.peak_n(stretching.curves(self.straps), self.drive_n, self.mass_kg, speed)

    def greatest_speed(self, limit_n: float) -> float:
        """The speed in m/s at which the bound reaches a limit."""
        return stretching.greatest_speed(stretching.curves(self.straps), limit_n, self.drive_n, self.mass_kg)

    def likely_n(self, needed_n: float, bogged_kg: float, speed_m_per_s: float | None = None) -> float:
        """The peak with the bogged vehicle giving way: at or below the bound."""
        speed = self.speed_m_per_s if speed_m_per_s is None else speed_m_per_s
        found_n = snatch_peaks.snatch_peak_n(
            self.drive_n, needed_n, stretching.stiffness_n_per_m(self.straps), self.mass_kg, bogged_kg, speed
        )
        return min(found_n, self.peak_n(speed))


class Loaded(Struct, frozen=True):
    """The load, the shares of it that each part bears, and the run it comes from; a winch has none."""

    load: Load
    shares: Shares
    run: Run | None = None
    bogged_kg: float = 0.0


def load_of(layout: Layout, system: System) -> Loaded:
    """The load of the rig's method."""
    if layout.facts.rig.method is Method.WINCH:
        return _winched(layout, Account(layout.book, system))
    return _pulled(layout, Account(layout.book, system))


# --- another vehicle pulls ---


def _pulled(layout: Layout, account: Account) -> Loaded:
    rig, vehicles = layout.facts.rig, layout.facts.vehicles
    if not rig.pulling:
        why = tr("Nobody said which vehicle pulls.")
        raise Refused(tr("pulling"), why, tr("Write its tag, or choose the method winch."))
    bogged = vehicles[rig.bogged]
    parts = _stretching_parts(layout)
    found = shares(layout, parts[0].tag)
    parts = tuple(part for part in parts if math.isclose(found.part[part.tag], 1.0))
    bogged_kg = resistance.mass_of(bogged, account)
    run = _run(layout, parts, account)
    _tell_wet(layout, account)
    _tell_angles(found, account)
    pull_n = run.peak_n()
    if pull_n <= 0:
        raise Refused(tr("speed"), tr("With no speed and no drive nothing pulls."), tr("Write either as it will be."))
    needed_n = resistance.needed_n(rig, bogged, bogged_kg, account)
    account.assume(
        tr("Stuck vehicle"), tr("holds like an anchor"), tr("the most that the line can be made to bear"), "house_law"
    )
    _tell_peak(run, pull_n, account)
    load = Load(
        pull_n=pull_n,
        at=tuple(part.tag for part in parts),
        likely_n=None if needed_n is None else run.likely_n(needed_n, bogged_kg),
        needed_n=needed_n,
        offered_n=pull_n * found.on_body(layout, rig.bogged),
        energy_j=stretching.energy_j(run.straps, run.drive_n, run.mass_kg, run.speed_m_per_s),
        steps=tuple(account.steps),
        assumptions=tuple(account.assumptions),
        scales=resistance.by_scale(rig.conditions, bogged_kg),
    )
    return Loaded(load, found, run, bogged_kg)


def _stretching_parts(layout: Layout) -> tuple[Part, ...]:
    """What gives the line its stretch: kinetic straps if there are any, else whatever else is long."""
    kinetic = layout.of_role("stretch")
    if kinetic and layout.facts.rig.method is Method.KINETIC:
        return kinetic
    found = layout.of_role("stretch", "strap", "line")
    if not found:
        why = tr("No strap, rope or line is in the rig.")
        raise Refused(tr("runs"), why, tr("Put the strap between the two vehicles."))
    return found


def run_of(layout: Layout, account: Account) -> Run:
    """The pull by another vehicle through all that stretches in the layout."""
    return _run(layout, tuple(layout.parts.values()), account)


def _run(layout: Layout, parts: tuple[Part, ...], account: Account) -> Run:
    pulling = layout.facts.vehicles[layout.facts.rig.pulling]
    straps = stretching.stretchers(layout, parts)
    for part, strap in zip(parts, straps, strict=True):
        assert part.text is not None
        account.setting(tr("Stretch of {tag} at break", tag=part.tag), part.text.stretch_least)
        if strap.guessed:
            why = tr("nobody knows it: as strong, so as stiff, as any that may be used here")
            account.assume(tr("Strength of {tag}", tag=part.tag), account.force(strap.breaking_n), why, "house_law")
    mass_kg = resistance.mass_of(pulling, account)
    drive = resistance.drive_n(pulling, mass_kg, layout.facts.rig.conditions, account)
    return Run(straps, drive, mass_kg, _speed(layout, account))


def _speed(layout: Layout, account: Account) -> float:
    """The speed as the line comes taut: as said, else the rulebook's or what the slack allows, whichever is more.

    Slack in a line that hardly stretches counts whatever speed was said; in a kinetic strap it is a part of the run-up.
    """
    conditions, what = layout.facts.rig.conditions, tr("Speed as the line comes taut")
    for figure, name in ((conditions.speed, tr("speed")), (conditions.slack, tr("slack"))):
        if figure is not None and figure.si < 0:
            raise Refused(name, tr("It cannot be below 0."), tr("Write it as it will be."))
    kinetic = layout.facts.rig.method is Method.KINETIC
    if conditions.speed is not None:
        speed = account.said(what, conditions.speed)
        return speed if kinetic or conditions.slack is None else max(speed, _slack_speed(layout, account))
    speed = account.setting(what, "kinetic_speed_unsaid") if kinetic else 0.0
    return speed if kinetic and conditions.slack is None else max(speed, _slack_speed(layout, account))


def _slack_speed(layout: Layout, account: Account) -> float:
    """The speed that the slack allows, as said or as the rulebook has it where nobody said any."""
    said = layout.facts.rig.conditions.slack
    slack_m = account.setting(tr("Slack"), "tow_out_slack_unsaid") if said is None else account.said(tr("Slack"), said)
    if slack_m <= 0:
        return 0.0
    acceleration = account.setting(tr("Taking up the slack"), "pull_away_acceleration")
    return snatch_peaks.slack_speed_m_per_s(acceleration, slack_m)


def _tell_peak(run: Run, pull_n: float, account: Account) -> None:
    account.step(
        tr(
            "The pull of the wheels is {drive}; at {speed} the line takes the run of {mass} and bears up to {pull}.",
            drive=account.force(run.drive_n),
            speed=account.show(run.speed_m_per_s, Dimension.SPEED),
            mass=account.show(run.mass_kg, Dimension.MASS),
            pull=account.force(pull_n),
        )
    )


def _tell_wet(layout: Layout, account: Account) -> None:
    """Whether nylon is reckoned with wet."""
    wet, what = layout.facts.rig.conditions.wet, tr("Nylon")
    if not any(part.text is not None and part.text.fibre == "nylon" for part in layout.parts.values()):
        return
    why = tr("nobody said that it is dry") if wet is None else tr("as it was said")
    account.assume(what, tr("dry") if wet is False else tr("wet, weaker"), why, "wet_nylon")


def _tell_angles(found: Shares, account: Account) -> None:
    for tag, angle_rad in found.assumed.items():
        account.assume(
            tr("Angle at {tag}", tag=tag),
            account.show(angle_rad, Dimension.ANGLE),
            tr("nobody measured it: the angle that loads most is taken"),
            "house_law",
        )


# --- a winch pulls ---


def _winched(layout: Layout, account: Account) -> Loaded:
    rig = layout.facts.rig
    winch, line = _winch_and_line(layout)
    found = shares(layout, line.tag)
    bogged = layout.facts.vehicles[rig.bogged]
    bogged_kg = resistance.mass_of(bogged, account)
    assert winch.piece is not None
    rated_n, stall_n = stall_of(winch.piece, account)
    _tell_wet(layout, account)
    _tell_angles(found, account)
    needed_n = resistance.needed_n(rig, bogged, bogged_kg, account)
    gain = found.on_body(layout, rig.bogged)
    offered_n = _offered(layout, winch, rated_n, gain, account)
    account.step(tr("The line bears up to {stall}, the pull at which the winch stalls.", stall=account.force(stall_n)))
    load = Load(
        pull_n=stall_n,
        at=(line.tag,),
        likely_n=None,
        needed_n=needed_n,
        offered_n=offered_n,
        energy_j=_stored_j(layout, found, stall_n),
        steps=tuple(account.steps),
        assumptions=tuple(account.assumptions),
        scales=resistance.by_scale(rig.conditions, bogged_kg),
    )
    return Loaded(load, found, None, bogged_kg)


def _stored_j(layout: Layout, found: Shares, stall_n: float) -> float:
    """What the line stores, and every strap that lengthens it, each at what it bears."""
    parts = layout.of_role("line", "strap", "stretch")
    return sum(
        stretching.energy_at_j((one,), stall_n * found.part[one.tag]) for one in stretching.stretchers(layout, parts)
    )


def _winch_and_line(layout: Layout) -> tuple[Part, Part]:
    winches = layout.of_role("winch")
    if len(winches) > 1:
        why = tr("Two winches pull on one rig; nobody knows how they share it.")
        raise Refused(tr("runs"), why, tr("Fix the line to a point at one of them, and pull with the other."))
    for winch in winches:
        for tag in layout.near(winch.tag):
            if layout.parts[tag].role == "line":
                return winch, layout.parts[tag]
    why = tr("No winch with its line is in the rig.")
    raise Refused(tr("runs"), why, tr("Begin a run with the winch, then its line."))


def stall_of(winch: RigPiece, account: Account) -> tuple[float, float]:
    """The line pull on a winch's plate and the pull at which it stalls, in newtons."""
    item = winch.judged.dossier.item
    if item.rating.basis is not Basis.LINE_PULL or item.rating.figure is None:
        why = tr("Nobody wrote down what {tag} pulls.", tag=winch.tag)
        raise Refused(tr("rating"), why, tr("Book it in with the line pull of its plate."))
    rated_n = item.rating.figure.si
    if rated_n <= 0:
        why = tr("{tag} pulls nothing by its plate.", tag=winch.tag)
        raise Refused(tr("rating"), why, tr("Book it in with the line pull of its plate."))
    stall = item.size("stall_pull")
    if stall is not None:
        return rated_n, max(account.recorded(tr("Pull at which {tag} stalls", tag=winch.tag), stall), rated_n)
    factor = account.setting(tr("Stall of {tag} over its line pull", tag=winch.tag), "winch_stall_factor")
    return rated_n, rated_n * factor


def _offered(layout: Layout, winch: Part, rated_n: float, gain: float, account: Account) -> float:
    """What the winch brings to the stuck vehicle: its pull on this layer, times the parts of line, less the sheaves."""
    layers = layout.facts.rig.conditions.layers
    if layers is not None and layers < 1:
        raise Refused(tr("layers"), tr("There is at least one layer on the drum."), tr("Count the layers left."))
    if layers is None:
        pull_n = drum.full_drum_pull_n(rated_n)
        why = tr("nobody counted them: hardly any line is out")
        account.assume(tr("Layers on the drum of {tag}", tag=winch.tag), tr("full"), why, "army_full_drum")
    else:
        pull_n = drum.layer_pull_n(rated_n, layers)
        account.assume(
            tr("Layers on the drum of {tag}", tag=winch.tag), str(layers), tr("as it was said"), "winch_layers_trade"
        )
    sheaves = len(layout.of_role("block"))
    offered_n = pull_n * gain / (1 + tackle.SHEAVE_LOSS_RATIO * sheaves)
    account.step(
        tr(
            "On this layer the winch pulls {pull}; {parts} parts of line over {sheaves} sheaves bring {offered}.",
            pull=account.force(pull_n),
            parts=account.show(gain, Dimension.FACTOR),
            sheaves=sheaves,
            offered=account.force(offered_n),
        )
    )
    return offered_n
