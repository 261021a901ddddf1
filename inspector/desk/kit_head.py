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
    kit: KitCheck, piece: KitPiece | None, member: Person, step: str, look: Look, buttons: Sequence[QPushButton],
    *, is_low: bool = False,
) -> QWidget:  # fmt: skip
    """The head with a hairline below it. piece: None among all pieces; step: which question of it, in words, empty
    where its result stands below with the mark. is_low: there is little room; only what tells where one is."""
    line = QWidget()
    layout = QHBoxLayout(line)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    if is_low and piece and step:
        layout.addWidget(_briefly(piece, look), 3)
        layout.addWidget(_lines([*_which(kit, piece), step]), 2, _TOP)
    else:
        layout.addWidget(_what(kit, piece, look if step else None), 3)
        layout.addWidget(_lines([*_which(kit, piece), *_progress(kit, member, step)]), 2, _TOP)
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


def _briefly(piece: KitPiece, look: Look) -> QWidget:
    """The piece in two lines, with its mark and word."""
    head = f"{piece.tag}  ·  {outcome_word(piece.outcome)}"
    what = f"{piece.kind_name}. {piece.where}" if piece.where else piece.kind_name
    return marked(piece, look, 32, short(head, Type.HEAD, bold=True), said(what), gap=0)


def _which(kit: KitCheck, piece: KitPiece | None) -> list[str]:
    """Which piece of how many."""
    tags = [one.tag for one in kit.to_check]
    if piece is None or piece.tag not in tags:
        return []
    at, count = tags.index(piece.tag) + 1, len(tags)
    which = tr("Piece or part {at} of {count}", at=at, count=count)
    return [which if kit.part_count else tr("Piece {at} of {count}", at=at, count=count)]


def _progress(kit: KitCheck, member: Person, step: str) -> list[str]:
    """Which question, how many are done, and who looks."""
    return [*([step] if step else []), tell_progress(kit), tr("{name} looks", name=member.name)]


def _lines(lines: Sequence[str]) -> QWidget:
    return column([said(line, bold=not number) for number, line in enumerate(lines)], 0)
