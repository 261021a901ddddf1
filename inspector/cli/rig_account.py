"""A rig's account for a terminal: what holds, what each part bears, what flies, what to change."""

from collections.abc import Sequence
from itertools import groupby

import click

from inspector.cli import say
from inspector.drawings.rig_words import rig_meaning, rig_word, used_text
from inspector.gear.packing import Packed
from inspector.gear.rig_result import (
    Assumption,
    Change,
    JointUse,
    LinkUse,
    PairLine,
    Proposed,
    RigOutcome,
    RigResult,
)
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.units import Dimension, System, show, show_bound


def result(found: RigResult, system: System) -> None:
    """Print the account of a checked rig."""
    say.heading(found.rig.name or tr("Rig"))
    say.paragraph(f"{rig_word(found.outcome).upper()}  {found.headline}", "  ", "    ")
    say.paragraph(_sentence(rig_meaning(found.outcome)), "    ")
    for run in found.rig.runs:
        say.paragraph(" – ".join(run), "  ", "      ")
    _parts(found.links, found.weakest, system)
    _joints(found.joints, system)
    _findings(found)
    _load(found, system)
    _danger(found, system)
    _changes(found.changes)
    _assumptions(found.load.assumptions)
    click.echo()
    say.paragraph(tr("Checked for {day}.", day=show_day(found.on)))
    for caution in found.cautions:
        say.paragraph(caution)


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."


def _parts(links: Sequence[LinkUse], weakest: str, system: System) -> None:
    click.echo()
    head = (tr("Part"), tr("Bears"), tr("Stands"), tr("Must keep"), tr("Used"), "")
    rows = [_part(one, system, is_weakest=one.tag == weakest) for one in links]
    say.table(head, rows)


def _part(one: LinkUse, system: System, *, is_weakest: bool) -> tuple[str, ...]:
    legs = tr("{count} legs, each ", count=one.legs) if one.legs > 1 else ""
    stands = tr("itself") if one.passes_on else tr("not known")
    if one.capacity_n is not None:
        stands = show(one.capacity_n, Dimension.FORCE, system)
    said = "; ".join(filter(None, (tr("WEAKEST") if is_weakest else "", one.kind_name, *one.taken_off)))
    bears = legs + show(one.force_n, Dimension.FORCE, system)
    return one.tag, bears, stands, f"× {one.margin_factor:.3g}", used_text(one), said


def _joints(joints: Sequence[JointUse], system: System) -> None:
    told = [one for one in joints if one.outcome is not RigOutcome.SOUND or one.sums]
    if not told:
        return
    click.echo("\n  " + tr("Joints:"))
    for one in told:
        bears = show(one.force_n, Dimension.FORCE, system)
        word = "" if one.outcome is RigOutcome.SOUND else f"{rig_word(one.outcome).upper()}  "
        say.paragraph(f"{word}{one.one} – {one.other}: {one.name}, {bears}. {one.says}", "    · ", "      ")
        for line in one.sums:
            say.paragraph(line, "        ")


def _findings(found: RigResult) -> None:
    click.echo("\n  " + tr("Looked at, the worst first:"))
    for one in found.findings:
        say.paragraph(f"{rig_word(one.outcome)}: {one.says} [{one.source}]", "    · ", "      ")


def _load(found: RigResult, system: System) -> None:
    load = found.load
    click.echo("\n  " + tr("The pull:"))
    for step in load.steps:
        say.paragraph(step, "    · ", "      ")
    facts = [Fact(tr("Greatest pull in the line"), show(load.pull_n, Dimension.FORCE, system))]
    if load.likely_n is not None:
        facts.append(Fact(tr("With the stuck vehicle giving way"), show(load.likely_n, Dimension.FORCE, system)))
    if found.safety_factor is not None:
        facts.append(Fact(tr("Least strength over pull"), f"{found.safety_factor:.2f} ({found.weakest})"))
    greatest = found.sensitivity.greatest_speed_m_per_s
    if greatest is not None:
        speed = show_bound(greatest, Dimension.SPEED, system, least=False)
        facts.append(
            Fact(tr("Speed at which the first part has no margin left"), f"{speed} ({found.sensitivity.limits_at})")
        )
    facts += [
        Fact(tr("Needed by {scale}", scale=scale), show(needed_n, Dimension.FORCE, system))
        for scale, needed_n in load.scales
    ]
    say.facts(facts, "    ")


def _danger(found: RigResult, system: System) -> None:
    click.echo("\n  " + tr("If a part lets go, all the energy of the line taken as motion:"))
    energy = show(found.load.energy_j, Dimension.ENERGY, system)
    distance = show(found.stand_off_m, Dimension.LENGTH, system)
    say.facts(
        [Fact(tr("Energy in the line"), energy), Fact(tr("Stand off"), f"{distance}, {found.stand_off_rule}")], "    "
    )
    for one in found.flying:
        say.paragraph(one.says, "    · ", "      ")


def _changes(changes: Sequence[Change]) -> None:
    if changes:
        click.echo("\n  " + tr("Worth changing:"))
    for one in changes:
        factor = (
            ""
            if one.safety_factor is None
            else tr(", least strength over pull {factor}", factor=f"{one.safety_factor:.2f}")
        )
        say.paragraph(f"{one.says} → {rig_word(one.outcome)}{factor}", "    · ", "      ")


def _assumptions(assumptions: Sequence[Assumption]) -> None:
    click.echo("\n  " + tr("Taken for granted:"))
    for one in assumptions:
        say.paragraph(f"{one.what}: {one.value} ({one.why}) [{one.source}]", "    · ", "      ")


def proposed(found: Proposed, system: System) -> None:
    """Print the best rig, or what is lacking, and why each piece was left out."""
    if found.result is None:
        said = tr("No rig: for {pulling} to pull {bogged} the kit lacks")
        say.paragraph(said.format(pulling=found.pulling, bogged=found.bogged) + " " + "; ".join(found.missing) + ".")
    else:
        result(found.result, system)
    if found.left_out:
        click.echo("\n  " + tr("Left out:"))
    for why, listed in groupby(sorted(found.left_out, key=lambda one: (one.why, one.tag)), key=lambda one: one.why):
        say.paragraph(f"{', '.join(one.tag for one in listed)}: {why}", "    · ", "      ")


def pair_lines(lines: Sequence[PairLine], system: System) -> None:
    """Print which vehicles can bring out which."""
    methods = {"kinetic": tr("strap"), "winch": tr("winch"), "tow_out": tr("tow-out")}
    rows = []
    for one in lines:
        word = tr("none") if one.outcome is None else rig_word(one.outcome)
        if one.up_to_m_per_s is not None:
            word = tr("{word} to {speed}", word=word, speed=show(one.up_to_m_per_s, Dimension.SPEED, system))
        rows.append((one.pulling, one.bogged, methods[one.method], word, one.says))
    say.table((tr("Pulls"), tr("Is stuck"), tr("By"), tr("Rig"), tr("Why")), rows)


def packed(found: Packed) -> None:
    """Print a proposed kit, what the store lacks and what stays."""
    say.table((tr("Take"), tr("What"), tr("For")), [(one.tag, one.kind_name, one.need) for one in found.takes])
    if found.lacks:
        click.echo("\n" + tr("Lacking:"))
    for one in found.lacks:
        say.paragraph(one, "  · ", "    ")
    click.echo("\n" + tr("Stays:"))
    for why, listed in groupby(sorted(found.stays, key=lambda one: (one[1], one[0])), key=lambda one: one[1]):
        say.paragraph(f"{', '.join(tag for tag, _ in listed)}: {why}", "  · ", "    ")
