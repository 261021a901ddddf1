"""Tables of a rig sheet: its parts, its joints, what was looked at."""

from collections.abc import Sequence

from inspector.drawings.rig_words import bears_text, force_text, link_name, part_name, stands_text, used_text
from inspector.drawings.shapes import Ink
from inspector.gear.rig_result import JointUse, LinkUse, RigFinding, RigResult
from inspector.language import tr
from inspector.paper.blocks import Block, stack, words
from inspector.paper.columns import line, names, under, widths
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, SMALL
from inspector.paper.rig_outcome import outcome_words
from inspector.paper.rig_pictures import sections
from inspector.units import Dimension, System, show

_PARTS = (0.29, 0.14, 0.15, 0.11, 0.08, 0.09, 0.14)
_JOINTS = (0.05, 0.31, 0.14, 0.14, 0.36)
_FINDINGS = (0.14, 0.46, 0.40)
_STRONG = BODY.in_bold()
_ASIDE = SMALL.in_ink(Ink.INK)


def findings(title: str, found: Sequence[RigFinding], width_pt: float) -> list[Block]:
    """A heading and a line for each; nothing where there is none."""
    if not found:
        return []
    said = (tr("Outcome"), tr("What was found"), tr("Where the rule comes from"))
    named = names(_FINDINGS, said, width_pt)
    return [heading(title, width_pt), *under(named, [_finding(one, width_pt) for one in found])]


def _finding(one: RigFinding, width_pt: float) -> Block:
    mark_pt, says_pt, source_pt = widths(_FINDINGS, width_pt)
    untold = [part_name(tag) for tag in one.about if part_name(tag) not in one.says]
    about = tr("About: {parts}", parts=", ".join(untold)) if untold else ""
    says = stack([words(one.says, says_pt, BODY), words(about, says_pt, SMALL)])
    return line(_FINDINGS, [outcome_words(one.outcome, mark_pt), says, words(one.source, source_pt, _ASIDE)], width_pt)


def parts(result: RigResult, width_pt: float, system: System) -> list[Block]:
    """Every part: what it bears, stands and must keep, how much of that is used."""
    said = (tr("Part"), tr("Bears"), tr("Stands"), tr("Must keep"), tr("Keeps"), tr("Used"), tr("Outcome"))
    how = tr(
        "Bears: the greatest pull on it. Stands: the least pull that breaks it on that day. Must keep: how many times "
        "what it bears it must stand; keeps: how many times it does. Used: share of what it may bear; 100 % is "
        "the limit."
    )
    title = [heading(tr("The parts"), width_pt), words(how, width_pt, SMALL).kept()]
    lines = [_part(link, result, width_pt, system) for link in result.links]
    return [*title, *under(names(_PARTS, said, width_pt), lines)]


def _part(link: LinkUse, result: RigResult, width_pt: float, system: System) -> Block:
    wide = widths(_PARTS, width_pt)
    name = [words(link_name(link), wide[0], _STRONG)]
    if link.tag == result.weakest:
        name.append(words(tr("weakest part"), wide[0], _STRONG))
    factor = link.safety_factor
    values = (
        bears_text(link, system),
        stands_text(link, system),
        "–" if link.passes_on else tr("{factor} times", factor=show(link.margin_factor, Dimension.FACTOR)),
        "–" if factor is None else show(factor, Dimension.FACTOR),
    )
    cells = [words(text, width, BODY) for text, width in zip(values, wide[1:5], strict=True)]
    used = [words(used_text(link), wide[5], _STRONG), outcome_words(link.outcome, wide[6])]
    return line(_PARTS, [stack(name), *cells, *used], width_pt, words(_aside(link, system), width_pt, SMALL))


def _aside(link: LinkUse, system: System) -> str:
    """Where it hangs, what was taken off its strength, and why its strength is as it is."""
    said = []
    if link.side:
        said.append(tr("on {vehicle}", vehicle=link.side))
    if link.length_m is not None:
        said.append(tr("{length} long", length=show(link.length_m, Dimension.LENGTH, system)))
    if link.taken_off:
        said.append(tr("taken off: {losses}", losses=", ".join(link.taken_off)))
    where = "; ".join(said)
    return " ".join(text for text in (where[:1].upper() + where[1:] + "." if where else "", link.why) if text)


def joints(result: RigResult, width_pt: float, system: System) -> list[Block]:
    """Every joint by its number in the picture, then the sections of those that have one."""
    if not result.joints:
        return []
    said = (tr("No."), tr("Joint"), tr("Passes through"), tr("Outcome"), tr("What is said of it"))
    lines = [_joint(number, one, width_pt, system) for number, one in enumerate(result.joints, 1)]
    named = names(_JOINTS, said, width_pt)
    return [heading(tr("The joints"), width_pt), *under(named, lines), *sections(result, width_pt, system)]


def _joint(number: int, one: JointUse, width_pt: float, system: System) -> Block:
    number_pt, name_pt, force_pt, mark_pt, says_pt = widths(_JOINTS, width_pt)
    between = tr("{one} to {other}", one=part_name(one.one), other=part_name(one.other))
    name = stack([words(between, name_pt, _STRONG), words(one.name, name_pt, BODY)])
    says = [words(one.says, says_pt, BODY), *(words(text, says_pt, _ASIDE) for text in one.sums)]
    says.append(words(one.source, says_pt, SMALL))
    force = stack([words(force_text(one.force_n, system), force_pt, BODY), *_planes(one, force_pt)])
    cells = [words(str(number), number_pt, _STRONG), name, force, outcome_words(one.outcome, mark_pt), stack(says)]
    return line(_JOINTS, cells, width_pt)


def _planes(one: JointUse, width_pt: float) -> list[Block]:
    """How many sections of a pin share the pull."""
    if not one.planes:
        return []
    said = tr("on one section") if one.planes == 1 else tr("on {count} sections", count=one.planes)
    return [words(said, width_pt, SMALL)]
