"""The evidence list of an incident: what happened, what is kept, how it stood, who held it, and hand-over lines."""

from collections.abc import Sequence

from inspector.drawings.rig_words import force_text, link_name, part_name, rig_word
from inspector.drawings.scene_plan import scene_plan
from inspector.drawings.shapes import Ink
from inspector.gear.evidence_list import EvidenceList
from inspector.gear.papers import RigSheet
from inspector.gear.rig_result import Assumption, RigResult
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, picture, stack, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import cautions, facts, heading, listed
from inspector.paper.document import Document
from inspector.paper.evidence_tables import hand_overs, pieces
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, SMALL, PageSize
from inspector.paper.printed import Printed
from inspector.paper.rig_pictures import chain
from inspector.units import Dimension, System, show

_ASSUMED = (0.30, 0.22, 0.48)
_VEHICLES = (0.12, 0.34, 0.54)
_TOLD = (0.14, 0.24, 0.62)
_FILES = (0.36, 0.64)


def evidence_list(found: EvidenceList, page: PageSize, system: System = System.METRIC) -> Printed:
    """The list as a PDF; system: the units of its figures."""
    width = page.column_pt
    blocks = (
        *_head(found, width),
        cautions((*found.may_not, *_cautions(found)), width).below(2 * GRID),
        *pieces(found.pieces, width),
        *_vehicles(found, width),
        *_sketch(found, width, system),
        *_sum(found, width, system),
        *_told(found, width),
        *_files(found, width),
        *hand_overs(found.pieces, width),
        words(tr("Ledger head when this was prepared: {head}", head=found.head), width, SMALL).below(2 * GRID),
    )
    return Document(found.imprint, f"{found.gravity}, {found.ref}", blocks).printed(page)


def _head(found: EvidenceList, width_pt: float) -> list[Block]:
    return [
        words(f"{found.gravity} {found.ref}", width_pt, DISPLAY),
        facts(found.facts, width_pt, 3).below(GRID),
        words(tr("What happened"), width_pt, HEAD).below(2 * GRID).kept(),
        *(words(text, width_pt, BODY).below(GRID / 2) for text in found.what.splitlines() if text.strip()),
    ]


def _cautions(found: EvidenceList) -> list[str]:
    """Those of the document and of the rig, each once."""
    return list(dict.fromkeys((*found.imprint.cautions, *(found.result.cautions if found.result else ()))))


def _vehicles(found: EvidenceList, width_pt: float) -> list[Block]:
    if not found.vehicles:
        return []
    head = names(_VEHICLES, (tr("Tag"), tr("Vehicle"), tr("State")), width_pt)
    return [heading(tr("Vehicles"), width_pt), head, *(_line(_VEHICLES, row, width_pt) for row in found.vehicles)]


def _line(shares: tuple[float, ...], texts: Sequence[str], width_pt: float) -> Block:
    """A line of a table, its first cell in bold."""
    types = [BODY.in_bold(), *[BODY] * (len(shares) - 1)]
    cells = [words(text, wide, type_) for text, wide, type_ in zip(texts, widths(shares, width_pt), types, strict=True)]
    return line(shares, cells, width_pt)


def _sketch(found: EvidenceList, width_pt: float, system: System) -> list[Block]:
    if not found.distances:
        return [
            heading(tr("Sketch"), width_pt),
            words(tr("Nobody wrote down a distance."), width_pt, BODY),
        ]
    plan = scene_plan(found.distances, system)
    return [heading(plan.title, width_pt), picture(plan)]


def _sum(found: EvidenceList, width_pt: float, system: System) -> list[Block]:
    """The rig as rigged and its sum as it stood, in short."""
    result = found.result
    if result is None:
        why = tr("The rig's sum could not be made: {why}", why=found.why_no_result)
        return [heading(tr("The rig's sum as it stood"), width_pt), words(why, width_pt, BODY)]
    sheet = RigSheet(found.imprint, result, found.rig_vehicles)
    judged = tr("On the facts of {day}, by the rulebook {name}.", day=show_day(result.on), name=result.rulebook[:12])
    return [
        *chain(sheet, width_pt, system),
        heading(tr("The rig's sum as it stood"), width_pt),
        stack([words(result.headline, width_pt, BODY.in_bold()), words(judged, width_pt, SMALL)]).kept(),
        facts(_figures(result, system), width_pt, 3).below(GRID),
        words(tr("How the load was reckoned"), width_pt, BODY.in_bold()).below(GRID).kept(),
        *(listed(step, width_pt) for step in result.load.steps),
        *_assumed(result.load.assumptions, width_pt),
    ]


def _figures(result: RigResult, system: System) -> list[Fact]:
    link = result.link(result.weakest)
    weakest = link_name(link) if link else part_name(result.weakest) or tr("not known")
    return [
        Fact(tr("Outcome of the sum"), rig_word(result.outcome)),
        Fact(tr("Greatest pull in the line"), force_text(result.load.pull_n, system)),
        Fact(tr("Weakest part"), weakest),
        Fact(tr("It bears"), force_text(link.force_n, system) if link else tr("not known")),
        Fact(tr("It stands"), force_text(link.capacity_n, system) if link else tr("not known")),
        Fact(tr("Strength over pull there"), _factor(result.safety_factor)),
        Fact(tr("Least of strength over what it must keep"), _factor(result.least_margin)),
        Fact(tr("Energy stored in the line"), show(result.load.energy_j, Dimension.ENERGY, system)),
        Fact(tr("Stay away"), show(result.stand_off_m, Dimension.LENGTH, system)),
    ]


def _factor(value: float | None) -> str:
    return tr("not known") if value is None else show(value, Dimension.FACTOR)


def _assumed(given: Sequence[Assumption], width_pt: float) -> list[Block]:
    if not given:
        return []
    head = names(_ASSUMED, (tr("Taken for granted"), tr("Value"), tr("Why")), width_pt).below(GRID)
    return [head, *(_line(_ASSUMED, (one.what, one.value, one.why), width_pt) for one in given)]


def _told(found: EvidenceList, width_pt: float) -> list[Block]:
    if not found.told:
        return []
    title = heading(tr("What was said and done since"), width_pt)
    return [title, *(_line(_TOLD, row, width_pt) for row in found.told)]


def _files(found: EvidenceList, width_pt: float) -> list[Block]:
    if not found.files:
        return []
    title = [heading(tr("Papers and pictures"), width_pt), names(_FILES, (tr("File"), "sha256"), width_pt)]
    ink = SMALL.in_ink(Ink.INK)
    wide = widths(_FILES, width_pt)
    rows = [[words(name, wide[0], BODY), words(sha256, wide[1], ink)] for name, sha256 in found.files]
    return [*title, *(line(_FILES, cells, width_pt) for cells in rows)]
