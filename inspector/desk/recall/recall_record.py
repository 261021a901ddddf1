"""The parts of a recall's record: what it says, its pieces, who was written to, what came back."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import column, facts, said, short
from inspector.desk.record_parts import beside, section
from inspector.desk.rig_table import table
from inspector.desk.tag_lines import tag_button
from inspector.drawings.marks import outcome_word
from inspector.duties.tell_recall import CalledTold, LetterTold, RecallTold
from inspector.language import show_day, tr

Opens = Callable[[str], object]
_MARK_PX = 20


def head(told: RecallTold) -> QWidget:
    """What it is called, and whether it is open; of a withdrawn one who withdrew it and why."""
    state = tr("The recall is closed.") if told.is_closed else tr("The recall is open.")
    said_so = said(told.withdrawn, bold=True) if told.withdrawn else said(state, faint=True)
    lines = [said(tr("Recall {ref}", ref=told.ref), Type.DISPLAY), said_so]
    if told.untold:
        names = ", ".join(told.untold)
        lines.append(said(tr("Not told yet that it was withdrawn: {names}", names=names), bold=True))
    return column(lines, 0)


def what_part(told: RecallTold) -> QWidget:
    """What is wrong, what the notice asks for, and which pieces it means."""
    parts = [section(tr("What is wrong"), said(told.reason))]
    if told.remedy:
        parts.append(section(tr("What the notice asks for"), said(told.remedy)))
    known = facts((one.label, one.text) for one in told.facts if one.text)
    return column([*parts, section(tr("What it says"), known)], 2 * GRID)


def pieces_part(told: RecallTold, look: Look, opens: Opens) -> QWidget:
    """Each piece: how it matches, where it is, how it stands, and what would settle it."""
    title = tr("The pieces ({count})", count=len(told.pieces))
    if not told.pieces:
        return section(title, said(tr("No piece of the register is meant so far.")))
    heads = (tr("Tag"), tr("Piece"), tr("How it matches"), tr("Where it is"), tr("Verdict"), tr("What would settle it"))
    rows = [_piece(one, look, opens) for one in told.pieces]
    return section(title, table(heads, rows, (2, 3, 5, 4, 3, 4)))


def _piece(one: CalledTold, look: Look, opens: Opens) -> list[QWidget]:
    kind = column([said(one.kind_name), said(one.marks, Type.SMALL, faint=True)], 0)
    match = column([said(one.sure_name, bold=True), said(one.why, Type.SMALL)], 0)
    verdict = beside(Mark(one.outcome, look, _MARK_PX), said(outcome_word(one.outcome)))
    settles = said(one.open_why) if one.open_why else said(one.state, bold=True)
    return [tag_button(one.tag, opens), kind, match, said(one.place), verdict, settles]


def letters_part(told: RecallTold) -> list[QWidget]:
    """Who was written to, and what came back."""
    if not told.letters:
        return [section(tr("Letters and answers"), said(tr("Nobody was written to yet.")))]
    rows: list[list[QWidget]] = []
    for one in told.letters:
        due = _due_words(one)
        back = column(
            [*([said(one.answers)] if one.answers else []), *([said(due, bold=one.is_late)] if due else [])], 0
        )
        rows.append([said(one.name, bold=True), said(one.letters), said(one.tags), back])
    heads = (tr("Name"), tr("Letters"), tr("Pieces"), tr("Answer"))
    return [section(tr("Letters and answers"), table(heads, rows, (4, 4, 3, 7)))]


def _due_words(one: LetterTold) -> str:
    if one.due is None:
        return ""
    if one.is_late:
        return tr("no answer, a reminder is overdue since {day}", day=show_day(one.due))
    return tr("no answer, remind on {day}", day=show_day(one.due))


def added_part(told: RecallTold) -> list[QWidget]:
    """All that was added since, in its order."""
    if not told.added:
        return []
    rows: list[list[QWidget]] = [[short(day, faint=True), said(what, bold=True), said(text)]
                                 for day, what, text in told.added]  # fmt: skip
    return [section(tr("What was said and done since"), table((tr("Day"), tr("What"), ""), rows, (2, 4, 12)))]
