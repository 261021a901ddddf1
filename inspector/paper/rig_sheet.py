"""The rig sheet: one rig as it was checked, all of it, for a trainer to show and an inquiry to read."""

from collections.abc import Sequence

from inspector.drawings.rig_cell import link_says
from inspector.drawings.rig_words import (
    bears_text,
    force_text,
    link_name,
    method_words,
    part_name,
    rig_mark,
    rig_meaning,
    rig_word,
)
from inspector.drawings.shapes import Ink
from inspector.gear.papers import RigSheet
from inspector.gear.rig_result import RigFinding, RigOutcome, RigResult
from inspector.gear.trip import Vehicle
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, picture, row, stack, words
from inspector.paper.common import cautions, facts
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, PageSize
from inspector.paper.printed import Printed
from inspector.paper.rig_danger import changes, what_flies, where_to_stand
from inspector.paper.rig_load import load
from inspector.paper.rig_pictures import chain, is_long, sensitivity
from inspector.paper.rig_tables import findings, joints, parts
from inspector.units import Dimension, System, show

_MARK_MM = 20.0


def rig_sheet(sheet: RigSheet, page: PageSize, system: System = System.METRIC) -> Printed:
    """The sheet as a PDF; system: the units of its figures."""
    width, result = page.column_pt, sheet.result
    blocks = (
        _hero(sheet, width),
        facts(_facts(sheet, system), width, 4).below(2 * GRID),
        cautions(_cautions(sheet), width).below(2 * GRID),
        *_picture_and_reasons(sheet, width, system),
        *parts(result, width, system),
        *joints(result, width, system),
        *load(result.load, width, system),
        *sensitivity(result, width, system),
        *findings(tr("Looked at and in order"), _silent(result), width),
    )
    return Document(sheet.imprint, f"{result.rig.name}, {show_day(result.on)}", blocks).printed(page)


def _picture_and_reasons(sheet: RigSheet, width_pt: float, system: System) -> list[Block]:
    """The picture first where it is one row; a higher one begins on the next page, after what still fits on this."""
    result, shown = sheet.result, chain(sheet, width_pt, system)
    reasons = [
        *findings(tr("What decides"), _speaking(result, system), width_pt),
        *where_to_stand(result, width_pt, system),
        *changes(result, width_pt),
    ]
    first = [*reasons, *shown] if is_long(sheet) else [*shown, *reasons]
    return [*first, *what_flies(result, width_pt, system)]


def _hero(sheet: RigSheet, width_pt: float) -> Block:
    """The mark with its word, the rig, and what it means in one sentence."""
    result = sheet.result
    start = _MARK_MM * MM + 4 * GRID
    text_pt = width_pt - start
    barred = result.outcome in {RigOutcome.UNSOUND, RigOutcome.NEVER}
    said = tr("{word} – {means}", word=rig_word(result.outcome), means=rig_meaning(result.outcome))
    texts = [
        words(said, text_pt, HEAD.in_ink(Ink.MARK if barred else Ink.INK)),
        words(result.headline, text_pt, BODY.in_bold()).below(GRID / 2),
        words(" ".join(text for text in (_trip(sheet), result.rig.note) if text), text_pt, BODY),
    ]
    name = words(result.rig.name, text_pt, DISPLAY)
    return row((0, picture(rig_mark(result.outcome, _MARK_MM))), (start, stack([name, *texts])))


def _facts(sheet: RigSheet, system: System) -> list[Fact]:
    result, rig = sheet.result, sheet.result.rig
    return [
        Fact(tr("Judged for"), show_day(result.on)),
        Fact(tr("Method"), method_words(rig.method)),
        Fact(tr("Stuck"), _vehicle(rig.bogged, sheet.vehicles)),
        Fact(tr("Who pulls"), _vehicle(rig.pulling, sheet.vehicles) if rig.pulling else tr("its own winch")),
        Fact(tr("Greatest pull in the line"), force_text(result.load.pull_n, system)),
        Fact(tr("Weakest part"), _weakest(result, system)),
        Fact(tr("Strength over pull there"), _factor(result.safety_factor)),
        Fact(tr("Stay away"), show(result.stand_off_m, Dimension.LENGTH, system)),
    ]


def _trip(sheet: RigSheet) -> str:
    return tr("For the trip “{name}”.", name=sheet.trip) if sheet.trip else ""


def _vehicle(tag: str, vehicles: Sequence[Vehicle]) -> str:
    known = next((one for one in vehicles if one.tag == tag), None)
    if known is None:
        return tag
    mass = known.mass.as_typed if known.mass else tr("mass on the day not known")
    return tr("{tag} · {name}, {mass} (GVM {gvm})", tag=tag, name=known.name, mass=mass, gvm=known.gvm.as_typed)


def _weakest(result: RigResult, system: System) -> str:
    link = result.link(result.weakest)
    if link is None:
        return part_name(result.weakest) or tr("not known")
    return tr("{part}, bears {force}", part=link_name(link), force=bears_text(link, system))


def _factor(value: float | None) -> str:
    return tr("not known") if value is None else show(value, Dimension.FACTOR)


def _cautions(sheet: RigSheet) -> list[str]:
    """Those of the document and of the rig, each once."""
    return list(dict.fromkeys((*sheet.imprint.cautions, *sheet.result.cautions)))


def _speaking(result: RigResult, system: System) -> list[RigFinding]:
    """What speaks against it, the severest first; joints and parts too that no finding tells of."""
    found = [one for one in result.findings if one.outcome is not RigOutcome.SOUND]
    others = [*_of_joints(result), *_of_parts(result, system)]
    found += [one for one in others if one.outcome is not RigOutcome.SOUND and not _is_told(one, found)]
    return sorted(found, key=lambda one: -one.outcome.severity)


def _is_told(one: RigFinding, found: Sequence[RigFinding]) -> bool:
    """Whether a finding as severe speaks of the same parts."""
    return any(set(one.about) <= set(other.about) and other.outcome.severity >= one.outcome.severity for other in found)


def _of_joints(result: RigResult) -> list[RigFinding]:
    return [RigFinding(one.how, one.outcome, one.says, one.source, (one.one, one.other)) for one in result.joints]


def _of_parts(result: RigResult, system: System) -> list[RigFinding]:
    return [
        RigFinding("", link.outcome, " ".join((link_says(link, system) + ".", link.why)), "–", (link.tag,))
        for link in result.links
    ]


def _silent(result: RigResult) -> list[RigFinding]:
    return [one for one in result.findings if one.outcome is RigOutcome.SOUND]
