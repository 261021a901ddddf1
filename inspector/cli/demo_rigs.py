"""The part of the officer's evening that looks at rigs: the next trip's pairs, one that holds, one that never may."""

from itertools import groupby

import click
from msgspec.structs import replace

from inspector.cli import say
from inspector.drawings.rig_words import rig_word
from inspector.duties import look_up, work_rigs
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_rig_sheet import print_rig_sheet
from inspector.gear.rig import Method
from inspector.gear.rig_result import PairLine, RigOutcome, RigResult
from inspector.gear.verdict import Fact
from inspector.language import tr, within
from inspector.units import Dimension, System, read, show

_PULLING, _BOGGED, _SPEED = "V-04", "V-02", "6 km/h"
_AT_THE_BALL = "RG-06"


def look_at_rigs(office: Office) -> list[Paper]:
    """Tell which vehicles of the next trip the kit brings out, propose a rig, refuse one; returns the rig's sheet."""
    planned = look_up.trip(office, "next")
    say.heading(tr("4  Rigs for “{trip}”", trip=planned.name))
    _pairs(work_rigs.pair_trip(office, "next").lines, office.system)
    papers = _proposed(office)
    _refused(work_rigs.work_kept_rig(office, _AT_THE_BALL))
    return papers


def _pairs(lines: tuple[PairLine, ...], system: System) -> None:
    """For each vehicle that may be stuck, who brings it out, the best first."""
    for bogged, listed in groupby(sorted(lines, key=lambda one: one.bogged), key=lambda one: one.bogged):
        by_word = groupby(sorted(listed, key=_severity), key=_word)
        said = [f"{word}: {', '.join(_who(one, system) for one in each)}" for word, each in by_word]
        say.paragraph(tr("{tag} is stuck.", tag=bogged) + " " + "; ".join(said) + ".", "  ", "      ")


def _severity(line: PairLine) -> int:
    return len(RigOutcome) if line.outcome is None else line.outcome.severity


def _word(line: PairLine) -> str:
    return tr("None") if line.outcome is None else rig_word(line.outcome)


def _who(line: PairLine, system: System) -> str:
    """ "V-04 by strap up to 7 km/h"."""
    way = tr("by winch") if line.method == Method.WINCH.value else tr("by strap")
    told = f"{line.pulling} {way}"
    if line.up_to_m_per_s is None:
        return told
    return tr("{told} up to {speed}", told=told, speed=show(line.up_to_m_per_s, Dimension.SPEED, system))


def _proposed(office: Office) -> list[Paper]:
    """The best rig of the kit at a speed that somebody sets, and its printed account."""
    usual = work_rigs.conditions_of(look_up.trip(office, "next"))
    asked = replace(usual, speed=read(_SPEED, Dimension.SPEED, field=tr("speed")))
    found = work_rigs.propose_rig(office, "next", Method.KINETIC, _PULLING, _BOGGED, asked).result
    if found is None:
        return []
    _outcome(found, tr("{name}, at {speed}", name=found.rig.name, speed=_SPEED))
    say.facts(_figures(found, office.system), "    ")
    return [print_rig_sheet(office, found)]


def _outcome(found: RigResult, title: str) -> None:
    click.echo()
    say.paragraph(title, "  ", "      ")
    say.paragraph(" – ".join(found.rig.runs[0]), "    ", "      ")
    say.paragraph(f"{rig_word(found.outcome).upper()}  {found.headline}", "    ", "      ")


def _figures(found: RigResult, system: System) -> list[Fact]:
    facts = [Fact(tr("Greatest pull in the line"), show(found.load.pull_n, Dimension.FORCE, system))]
    if (link := found.link(found.weakest)) and found.safety_factor is not None:
        told = tr("{tag}, {kind}: stands {times} times what it bears, must keep {margin}")
        times, margin = f"{found.safety_factor:.2f}", f"{link.margin_factor:.3g}"
        kind = within(link.kind_name)
        facts.append(Fact(tr("Weakest link"), told.format(tag=link.tag, kind=kind, times=times, margin=margin)))
    stand_off = show(found.stand_off_m, Dimension.LENGTH, system)
    return [*facts, Fact(tr("Stand off"), f"{stand_off}, {found.stand_off_rule}")]


def _refused(found: RigResult) -> None:
    """A rig that no strength makes right, with the sum that shows why."""
    _outcome(found, found.rig.name)
    for joint in found.joints:
        if joint.outcome is RigOutcome.NEVER:
            say.paragraph(" ".join(joint.sums), "    ")
