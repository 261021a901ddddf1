"""The words of a rig: its outcomes, its loose ends, its methods, its forces as they print."""

import math

from msgspec.structs import replace

from inspector.drawings.marks import outcome_mark
from inspector.drawings.shapes import Drawing
from inspector.gear.outcome import Outcome
from inspector.gear.rig import GROUND, LooseEnd, Method
from inspector.gear.rig_result import LinkUse, RigOutcome
from inspector.language import tr
from inspector.units import Dimension, System, show

_HAIR = 1e-6  # of a per cent: a share this close to a printed figure is that figure
_MOST_SHOWN = 10.0  # a greater share tells nothing more
_GEOMETRY = {
    RigOutcome.SOUND: Outcome.FIT,
    RigOutcome.CAUTION: Outcome.DERATE,
    RigOutcome.UNSOUND: Outcome.HOLD,
    RigOutcome.NEVER: Outcome.RETIRE,
}


def rig_word(outcome: RigOutcome) -> str:
    """The word that stands beside the mark."""
    words = {
        RigOutcome.SOUND: tr("Sound"),
        RigOutcome.CAUTION: tr("Caution"),
        RigOutcome.UNSOUND: tr("Unsound"),
        RigOutcome.NEVER: tr("Never"),
    }
    return words[outcome]


def rig_meaning(outcome: RigOutcome) -> str:
    """What the outcome means for the people at the rig."""
    meanings = {
        RigOutcome.SOUND: tr("nothing that is known speaks against this rig"),
        RigOutcome.CAUTION: tr("only with what is said here in mind"),
        RigOutcome.UNSOUND: tr("do not pull as it is rigged, or as long as something is not known"),
        RigOutcome.NEVER: tr("a joint that no strength makes right: do not pull"),
    }
    return meanings[outcome]


def rig_mark(outcome: RigOutcome, size_mm: float) -> Drawing:
    """The mark of an outcome, in the house's geometry with the rig's own words."""
    word = rig_word(outcome)
    says = tr("{word}: {means}", word=word, means=rig_meaning(outcome))
    return replace(outcome_mark(_GEOMETRY[outcome], size_mm), title=word, describes=says)


def method_words(method: Method) -> str:
    """How it is pulled."""
    words = {
        Method.KINETIC: tr("kinetic pull, by a strap that stretches"),
        Method.TOW_OUT: tr("steady pull by another vehicle"),
        Method.WINCH: tr("winch"),
    }
    return words[method]


def part_name(tag: str) -> str:
    """A part's tag; of a loose end what it is, and on which vehicle."""
    what, at, body = tag.partition("@")
    if not at or what not in set(LooseEnd):
        return tag
    name = _loose_words()[LooseEnd(what)]
    return name if body in {"", GROUND} else tr("{what} of {vehicle}", what=name, vehicle=body)


def link_name(link: LinkUse) -> str:
    """Tag and kind; of a loose end, whose name says its kind, only that."""
    name = part_name(link.tag)
    if "@" in link.tag and name != link.tag:
        return name[:1].upper() + name[1:]
    return tr("{tag} · {kind}", tag=name, kind=link.kind_name)


def _loose_words() -> dict[LooseEnd, str]:
    return {
        LooseEnd.TREE: tr("tree"),
        LooseEnd.GROUND_ANCHOR: tr("ground anchor"),
        LooseEnd.TOWING_EYE: tr("towing eye"),
        LooseEnd.TIE_DOWN: tr("tie-down point"),
        LooseEnd.CHAIN_PLATE: tr("safety-chain plate"),
    }


def force_text(force_n: float | None, system: System) -> str:
    """A force, or that nobody knows it."""
    return tr("not known") if force_n is None else show(force_n, Dimension.FORCE, system)


def bears_text(link: LinkUse, system: System) -> str:
    """What comes on a part; of like legs on each."""
    force = force_text(link.force_n, system)
    return force if link.legs <= 1 else tr("{force} on each of {count} legs", force=force, count=link.legs)


def stands_text(link: LinkUse, system: System) -> str:
    """What a part stands; of one whose strength does not enter, why not."""
    return unrated_text(link) if link.passes_on else force_text(link.capacity_n, system)


def unrated_text(link: LinkUse) -> str:
    """Of a part that has no strength to compare: a winch makes the pull, a tree or a stake is judged on the spot."""
    return tr("makes the pull itself") if link.kind == "winch" else tr("not reckoned: look at it")


def used_text(link: LinkUse) -> str:
    """The share of what a part may bear that is used."""
    if link.passes_on:
        return "–"
    share = link.use_ratio
    if share is None:
        return tr("not known")
    if _MOST_SHOWN < share < math.inf:
        return tr("over {share}", share=show(_MOST_SHOWN, Dimension.RATIO))
    return tr("no strength left") if math.isinf(share) else show(_rounded_up(share), Dimension.RATIO)


def _rounded_up(share_ratio: float) -> float:
    """To whole per cent, never milder in print than it is."""
    return math.ceil(share_ratio * 100 - _HAIR) / 100
