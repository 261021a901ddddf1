"""The parts of an incident's record: what happened, what is kept and where, what was said, the rig's sum, the files."""

from collections.abc import Callable, Iterable
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from inspector.desk.incident.opened_incident import OpenedIncident
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark, Picture
from inspector.desk.plain import button, column, facts, row, said, short
from inspector.desk.record_parts import beside, section
from inspector.desk.rig_parts import decides_part, head_part
from inspector.desk.rig_table import table
from inspector.desk.tag_lines import tag_button
from inspector.drawings.rig_chain import rig_chain
from inspector.drawings.scene_plan import scene_plan
from inspector.duties.recall import Kin
from inspector.duties.tell_incident import IncidentTold, PieceTold
from inspector.language import tr
from inspector.units import System

Opens = Callable[[str], object]
Does = Callable[[], object]
_MARK_PX = 20
_WIDE_PX = 890
_DEED_PX = 320


def head(told: IncidentTold) -> QWidget:
    """What it was, and whether it is open."""
    state = tr("closed") if told.is_closed else tr("open")
    words = tr("{gravity} {ref}", gravity=told.gravity, ref=told.ref)
    return column([said(words, Type.DISPLAY), said(tr("The report is {state}.", state=state), faint=True)], 0)


def what_part(told: IncidentTold) -> QWidget:
    """What happened, in the words of whoever reported it, and the facts around it."""
    known = facts((one.label, one.text) for one in told.facts if one.text)
    return column([section(tr("What happened"), said(told.what)), known], 2 * GRID)


def may_not_part(told: IncidentTold) -> list[QWidget]:
    """What may not be done, as long as anything is kept; of a near miss what holds."""
    if not (told.kept or told.kept_vehicles or told.is_near_miss):
        return [section(tr("What is kept"), said(tr("Nothing is kept as evidence any more.")))]
    title = tr("What holds") if told.is_near_miss else tr("Leave it as it was found")
    return [section(title, *(said(one) for one in told.may_not))]


def pieces_part(told: IncidentTold, look: Look, opens: Opens) -> QWidget:
    """Each piece: its verdict that day, who had it, where it is now, and whether it is kept."""
    heads = (tr("Tag"), tr("Piece"), tr("Verdict that day"), tr("Had it that day"), tr("Where it is now"), tr("State"))
    rows = [_piece(one, look, opens) for one in told.pieces]
    if not rows:
        return section(tr("The pieces"), said(tr("No piece was named.")))
    return section(tr("The pieces"), _level(table(heads, rows, (2, 3, 2, 3, 4, 4))))


def _piece(one: PieceTold, look: Look, opens: Opens) -> list[QWidget]:
    verdict = beside(Mark(one.outcome, look, _MARK_PX), said(one.verdict))
    words = (one.held_by or tr("nobody"), one.now or "–", one.state)
    return [tag_button(one.tag, opens), said(one.kind_name), verdict, *(said(text) for text in words)]


def _level(made: QWidget) -> QWidget:
    """A table whose tags are pressed: words stand level with them."""
    grid = made.layout()
    if isinstance(grid, QGridLayout):
        for number in range(grid.count()):
            if item := grid.itemAt(number):
                item.setAlignment(Qt.AlignmentFlag.AlignVCenter)
    return made


def vehicles_part(told: IncidentTold) -> list[QWidget]:
    """Each vehicle and whether it is kept."""
    if not told.vehicles:
        return []
    rows: list[list[QWidget]] = [[short(tag, bold=True), said(name), said(kept)] for tag, name, kept in told.vehicles]
    return [section(tr("Vehicles"), table((tr("Tag"), tr("Vehicle"), tr("State")), rows, (2, 5, 11)))]


def added_part(told: IncidentTold) -> list[QWidget]:
    """Statements, hand-overs, releases, the close."""
    if not told.added:
        return []
    rows: list[list[QWidget]] = [[said(day, faint=True), said(what, bold=True), said(text)]
                                 for day, what, text in told.added]  # fmt: skip
    return [section(tr("What was said and done since"), table((tr("Day"), tr("What"), ""), rows, (2, 4, 12)))]


def kin_part(kin: Iterable[Kin], opens: Opens, doubt: Opens, call_in: Does) -> list[QWidget]:
    """Others that may be of one batch with what broke, each to be doubted, all to be called in."""
    rows: list[list[QWidget]] = []
    for one in kin:
        marked = f"{one.maker_mark} {one.serial}".strip()
        doubts = button(tr("Doubt it"), partial(doubt, one.tag), name=tr("Doubt {tag}", tag=one.tag))
        rows.append([tag_button(one.tag, opens), said(one.kind_name), said(marked),
                     said(tr("like {tag}: {why}", tag=one.like, why=one.why)), doubts])  # fmt: skip
    if not rows:
        return []
    says = said(tr("They may be of one batch with what broke. It is a list to look at, no verdict. A doubt holds a "
                   "piece until a competent person has inspected it."))  # fmt: skip
    heads = (tr("Tag"), tr("Piece"), tr("Marked"), tr("Why"), "")
    letters = button(tr("Call them in by letter"), call_in)
    return [section(tr("Look at these as well"), says, _level(table(heads, rows, (2, 3, 3, 6, 2))), row([letters]))]


def rig_part(told: IncidentTold, look: Look, system: System) -> list[QWidget]:
    """The rig's sum on the facts of that day."""
    title = tr("The rig as it stood that day")
    if told.result is None:
        return [section(title, said(tr("There is no sum: {why}", why=told.why_no_result)))]
    chain = rig_chain(told.result, told.rig_vehicles, system)
    says = said(tr("This is the sum on what was known that day. It does not tell why it happened."), faint=True)
    return [
        section(title, says, head_part(told.result, look, system), Picture(chain, look, _WIDE_PX)),
        *decides_part(told.result.findings, look),
    ]


def sketch_part(told: IncidentTold, look: Look, system: System) -> list[QWidget]:
    """The distances that were measured, to one scale."""
    if not told.distances:
        return []
    plan = scene_plan(told.distances, system)
    return [section(plan.title, Picture(plan, look, _WIDE_PX))]


def deeds_part(deeds: Iterable[tuple[str, Does, str]], look: Look) -> QWidget:
    """What can be done, one below the other, and below why the rest cannot. deeds: name, what it does, why not."""
    every = tuple(deeds)
    made = column(button(name, does) for name, does, why_not in every if not why_not)
    made.setMaximumWidth(look.px(_DEED_PX))
    lines = [said(tr("{deed}: {why}", deed=name, why=why_not), Type.SMALL, faint=True)
             for name, _, why_not in every if why_not]  # fmt: skip
    return section(tr("What can be done"), made, *lines)


def all_parts(
    opened: OpenedIncident, files: QWidget, look: Look, system: System, opens: Opens, doubt: Opens, call_in: Does
) -> list[QWidget]:
    """What stands below the head, in the order in which it is read. files: the photos and papers."""
    told = opened.told
    return [
        pieces_part(told, look, opens),
        *vehicles_part(told),
        *added_part(told),
        *kin_part(opened.kin, opens, doubt, call_in),
        files,
        *sketch_part(told, look, system),
        *rig_part(told, look, system),
    ]
