"""The parts of a rig's account in the window: its outcome, what decides, its parts, its joints, the pull."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtWidgets import QWidget

from inspector.desk.columns import Columns
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark, Picture
from inspector.desk.plain import Fold, button, column, facts, hairline, said
from inspector.desk.record_parts import beside, section
from inspector.desk.rig_table import outcome_cell, table
from inspector.drawings.rig_joints import has_picture, joint_picture
from inspector.drawings.rig_turns import turn_picture, turns
from inspector.drawings.rig_words import (
    bears_text,
    force_text,
    link_name,
    method_words,
    part_name,
    rig_meaning,
    rig_word,
    stands_text,
    used_text,
)
from inspector.drawings.shapes import Drawing
from inspector.gear.rig_result import Change, JointUse, LinkUse, RigFinding, RigOutcome, RigResult
from inspector.language import show_day, tr
from inspector.units import Dimension, System, show

_MARK_PX = 64


def head_part(result: RigResult, look: Look, system: System) -> QWidget:
    """The mark with its word, the headline, what it means, and the figures that count most."""
    words = [
        said(rig_word(result.outcome), Type.DISPLAY),
        said(result.headline, Type.HEAD),
        said(rig_meaning(result.outcome)[:1].upper() + rig_meaning(result.outcome)[1:] + "."),
    ]
    link = result.link(result.weakest)
    weakest = link_name(link) if link else part_name(result.weakest) or tr("not known")
    known = [
        (tr("Rig"), result.rig.name),
        (tr("Method"), method_words(result.rig.method)),
        (tr("Judged for"), show_day(result.on)),
        (tr("Greatest pull"), force_text(result.load.pull_n, system)),
        (tr("Weakest part"), weakest),
        (tr("Strength over pull there"), factor_text(result.safety_factor)),
        (tr("Stay away"), show(result.stand_off_m, Dimension.LENGTH, system)),
        (tr("Laid over the line"), ", ".join(result.rig.dampers) or tr("nothing")),
    ]
    return column([beside(Mark(result.outcome, look, _MARK_PX), column(words, GRID // 2)), facts(known)], 2 * GRID)


def factor_text(value: float | None) -> str:
    """A factor, or that nobody knows it."""
    return tr("not known") if value is None else show(value, Dimension.FACTOR)


def changes_part(changes: Sequence[Change], look: Look, take: Callable[[Change], object]) -> list[QWidget]:
    """What to change; a change that makes a rig can be taken."""
    if not changes:
        return []
    rows: list[list[QWidget]] = []
    for one in changes:
        takes = button(tr("Take it"), partial(take, one), name=tr("Take it: {change}", change=one.says))
        last: QWidget = takes if one.rig else said(tr("by hand"), faint=True)
        rows.append([said(one.says), outcome_cell(one.outcome, look), said(factor_text(one.safety_factor)), last])
    heads = (tr("Change"), tr("Outcome then"), tr("Strength over pull then"), "")
    return [section(tr("What to change"), table(heads, rows, (5, 2, 2, 2)))]


def decides_part(findings: Sequence[RigFinding], look: Look) -> list[QWidget]:
    """What speaks against it, the severest first."""
    found = sorted(
        (one for one in findings if one.outcome is not RigOutcome.SOUND), key=lambda one: -one.outcome.severity
    )
    return [section(tr("What decides"), _findings(found, look))] if found else []


def passes_part(findings: Sequence[RigFinding], look: Look) -> list[QWidget]:
    """What was looked at and is in order, folded away."""
    found = [one for one in findings if one.outcome is RigOutcome.SOUND]
    title = tr("Looked at and in order ({count})", count=len(found))
    return [column([hairline(), Fold(title, lambda: _findings(found, look))])] if found else []


def _findings(found: Sequence[RigFinding], look: Look) -> QWidget:
    rows = [[outcome_cell(one.outcome, look), said(one.says), said(one.source, Type.SMALL, faint=True)]
            for one in found]  # fmt: skip
    return table((tr("Outcome"), tr("What was found"), tr("Where the rule comes from")), rows, (2, 5, 4))


def links_part(result: RigResult, look: Look, system: System) -> QWidget:
    """Every part: what it bears, stands, must keep and keeps, and how much of that is used."""
    how = tr("Bears: the greatest pull on it. Stands: the least pull that breaks it on that day. Must keep: how many "
             "times what it bears it must stand. Used: share of what it may bear; 100 % is the limit.")  # fmt: skip
    heads = (tr("Part"), tr("Bears"), tr("Stands"), tr("Must keep"), tr("Keeps"), tr("Used"), tr("Outcome"))
    rows = [_link(one, result, look, system) for one in result.links]
    return section(tr("The parts"), said(how, Type.SMALL, faint=True), table(heads, rows, (6, 3, 3, 2, 2, 2, 3)))


def _link(one: LinkUse, result: RigResult, look: Look, system: System) -> list[QWidget]:
    aside = [tr("weakest part")] if one.tag == result.weakest else []
    aside += [tr("on {vehicle}", vehicle=one.side)] if one.side else []
    aside += one.taken_off
    where = "; ".join(aside)
    told = " ".join(filter(None, (f"{where[:1].upper()}{where[1:]}." if where else "", one.why)))
    name = column([said(link_name(one), bold=True), *_small(told)], 0)
    must = "–" if one.passes_on else tr("{factor} times", factor=show(one.margin_factor, Dimension.FACTOR))
    keeps = "–" if one.safety_factor is None else show(one.safety_factor, Dimension.FACTOR)
    figures = (bears_text(one, system), stands_text(one, system), must, keeps)
    return [name, *(said(text) for text in figures), said(used_text(one), bold=True), outcome_cell(one.outcome, look)]


def _small(text: str) -> list[QWidget]:
    return [said(text, Type.SMALL, faint=True)] if text else []


def joints_part(result: RigResult, look: Look, system: System) -> list[QWidget]:
    """Every joint by its number in the picture, then the sections of those that have one."""
    if not result.joints:
        return []
    heads = (tr("No."), tr("Joint"), tr("Passes through"), tr("Outcome"), tr("What is said of it"))
    rows = [_joint(number, one, look, system) for number, one in enumerate(result.joints, 1)]
    made = [section(tr("The joints"), table(heads, rows, (1, 5, 3, 3, 7)))]
    return [*made, *_sections(result, look, system)]


def _joint(number: int, one: JointUse, look: Look, system: System) -> list[QWidget]:
    between = tr("{one} to {other}", one=part_name(one.one), other=part_name(one.other))
    sums = [said(text, Type.SMALL) for text in one.sums]
    return [
        said(str(number), bold=True),
        column([said(between, bold=True), said(one.name)], 0),
        said(force_text(one.force_n, system)),
        outcome_cell(one.outcome, look),
        column([said(one.says), *sums, *_small(one.source)], GRID // 2),
    ]


def _sections(result: RigResult, look: Look, system: System) -> list[QWidget]:
    """The joints cut open, those alike once, the worst first; then where three lines meet."""
    found: dict[object, tuple[str, Drawing]] = {}
    drawn = [(number, one) for number, one in enumerate(result.joints, 1) if has_picture(one)]
    for number, one in sorted(drawn, key=lambda pair: -pair[1].outcome.severity):
        drawing = joint_picture(one, system)
        title = tr("Joint {number}: {title}", number=number, title=drawing.title)
        found.setdefault(drawing.shapes, (title, drawing))
    meet = [turn_picture(result, tag, system) for tag in turns(result)]
    return pictures([*found.values(), *((drawing.title, drawing) for drawing in meet)], look)


def pictures(shown: Sequence[tuple[str, Drawing]], look: Look) -> list[QWidget]:
    """Two beside one another where there is room."""
    made = [column([said(title, bold=True), Picture(drawing, look)], GRID // 2) for title, drawing in shown]
    pairs = [Columns(column(made[at : at + 1]), column(made[at + 1 : at + 2]), look, (1, 1), 640)
             for at in range(0, len(made), 2)]  # fmt: skip
    return [column(pairs, 2 * GRID)] if pairs else []
