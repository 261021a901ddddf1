"""What came of it: one piece after its check, and the whole kit at the end."""

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import button, column, hairline, said
from inspector.drawings.marks import outcome_word
from inspector.duties.check_kit import tell_checked, tell_piece
from inspector.gear.kit_check import KitCheck, KitPiece
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr, tr_n

_TOP = Qt.AlignmentFlag.AlignTop


def marked(piece: KitPiece, look: Look, mark_px: int, *texts: QWidget, gap: int = GRID // 2) -> QWidget:
    """Texts beside the mark of the piece's outcome."""
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    layout.addWidget(Mark(piece.outcome, look, mark_px), 0, _TOP)
    layout.addWidget(column(texts, gap), 1)
    return made


def result_part(piece: KitPiece, look: Look) -> QWidget:
    """At once after a piece: its outcome, what becomes of it, who looked, and what to do with it now."""
    texts: list[QWidget] = [said(outcome_word(piece.outcome), Type.DISPLAY), said(tell_piece(piece), Type.HEAD)]
    if not piece.goes and piece.part_of:
        leave = tr("Hook onto nothing of it. Tell the trip leader now, and the equipment officer.")
        texts.append(said(leave, bold=True))
    elif not piece.goes:
        aside = tr("Put it aside, away from the kit. Tell the trip leader now, and the equipment officer.")
        texts.append(said(aside, bold=True))
    if piece.outcome is Outcome.RETIRE and piece.made:
        texts.append(said(tr("Was an answer a slip? Tell the equipment officer: two competent persons can strike it.")))
    texts += [said(line, faint=True) for line in _checks(piece)]
    texts += [said(tr("Open: {question}", question=one.asks)) for one in (piece.open if piece.made else ())]
    return marked(piece, look, 64, *texts)


def _checks(piece: KitPiece) -> list[str]:
    lines = []
    for one in piece.made:
        line = tr("Checked by {who} on {day}", who=one.by, day=show_day(one.on))
        line += tr(", on sheet {number}", number=one.sheet) if one.sheet else ""
        lines.append(f"{line}. {one.seen.note}" if one.seen.note else f"{line}.")
    return lines


def summary_part(found: KitCheck, begun: Mapping[str, str], look: Look, turn_to: Callable[[str], object]) -> QWidget:
    """The kit as it stands: what is not checked, what stays and why, what goes.

    begun: how far the check of a piece has come that is not kept yet, by tag. turn_to: go to the piece with a tag.
    """
    parts: list[QWidget] = [
        *_section(tr("Not checked"), [_to_do(one, begun.get(one.tag, ""), turn_to) for one in found.unchecked]),
        *_section(tr("Stay in the shed"), [_line(one, look) for one in found.staying]),
        *_section(tr("On the vehicles and not to be used"), [_line(one, look) for one in found.barred]),
        *_section(tr("Go"), [_line(one, look) for one in found.going]),
    ]
    if not found.pieces:
        parts = [hairline(), said(tr("The kit of this trip is empty."), Type.HEAD)]
    cautions = found.pieces[0].judged.explanation.cautions if found.pieces else ()
    # the head has a line below it already
    return column([*parts[1:], hairline(), *(said(one, Type.SMALL, faint=True) for one in cautions)])


def _section(title: str, lines: Sequence[QWidget]) -> list[QWidget]:
    if not lines:
        return []
    return [hairline(), said(f"{title} ({len(lines)})", Type.HEAD), *lines]


def _to_do(piece: KitPiece, begun: str, turn_to: Callable[[str], object]) -> QWidget:
    """A piece to look at yet, as a button that goes there."""
    told = begun or tell_piece(piece)
    name = f"{piece.tag}   {piece.kind_name}"
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    go = button(name, lambda: turn_to(piece.tag), rank="answer", name=tr("Check {tag}", tag=piece.tag))
    layout.addWidget(go, 1)
    layout.addWidget(said(told), 2)
    return made


def _line(piece: KitPiece, look: Look) -> QWidget:
    name = said(f"{piece.tag}   {piece.kind_name} · {outcome_word(piece.outcome)}", bold=True)
    told = " · ".join(filter(None, (piece.where, tell_piece(piece), tell_checked(piece))))
    return marked(piece, look, 24, name, said(told))


def all_looked_at(kit: KitCheck) -> str:
    """What is told once nothing is left to look at."""
    told = tr("Every piece was looked at. {staying} stay in the shed.", staying=len(kit.staying))
    if not kit.barred:
        return told
    barred = tr_n("One part on a vehicle must not be used.", "{count} parts on the vehicles must not be used.",
                  len(kit.barred))  # fmt: skip
    return f"{told} {barred}"
