"""The head of the check before a trip: the piece, large, with its mark and its use, and how far the check has come."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from inspector.desk.kit_result import marked
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import column, hairline, said, short
from inspector.drawings.marks import outcome_word
from inspector.duties.check_kit import tell_progress
from inspector.gear.kit_check import KitCheck, KitPiece
from inspector.gear.person import Person
from inspector.language import tr

_TOP = Qt.AlignmentFlag.AlignTop


def kit_head(
    kit: KitCheck, piece: KitPiece | None, member: Person, step: str, look: Look, buttons: Sequence[QPushButton]
) -> QWidget:
    """The head with a hairline below it. piece: None among all pieces; step: which question of it, in words, empty
    where its result stands below with the mark."""
    line = QWidget()
    layout = QHBoxLayout(line)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    layout.addWidget(_what(kit, piece, look if step else None), 3)
    layout.addWidget(_progress(kit, piece, member, step), 2, _TOP)
    for made in buttons:
        layout.addWidget(made, 0, _TOP)
    return column([line, hairline()])


def _what(kit: KitCheck, piece: KitPiece | None, look: Look | None) -> QWidget:
    """The piece, with a look also its mark and word and what it may be used for; else the trip."""
    if piece is None:
        return column([said(kit.trip.name, Type.DISPLAY), said(kit.trip.place, Type.HEAD, faint=True)], 0)
    kind = f"{piece.kind_name}, {piece.marked}" if piece.marked else piece.kind_name
    names = [short(piece.tag, Type.DISPLAY), said(kind, bold=True), *([said(piece.where)] if piece.where else [])]
    if look is None:
        return column(names, 0)
    use = tr("{outcome}: {use}", outcome=outcome_word(piece.outcome), use=piece.judged.explanation.use_line)
    return marked(piece, look, 48, *names, said(use), gap=0)


def _progress(kit: KitCheck, piece: KitPiece | None, member: Person, step: str) -> QWidget:
    """Which piece of how many, which question, how many are done, and who looks."""
    tags = [one.tag for one in kit.to_check]
    lines = []
    if piece and piece.tag in tags:
        at, count = tags.index(piece.tag) + 1, len(tags)
        which = tr("Piece or part {at} of {count}", at=at, count=count)
        lines.append(which if kit.part_count else tr("Piece {at} of {count}", at=at, count=count))
    lines += [step] if step else []
    lines.append(tell_progress(kit))
    lines.append(tr("{name} looks", name=member.name))
    return column([said(line, bold=not number) for number, line in enumerate(lines)], 0)
