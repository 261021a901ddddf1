"""Tables on the page of a rig: columns by shares, words that wrap, hairlines between, the mark with its word."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import bare_grid, hairline, said, short
from inspector.drawings.rig_words import rig_word
from inspector.gear.rig_result import RigOutcome

_MARK_PX = 20
_TOP = Qt.AlignmentFlag.AlignTop


def table(heads: Sequence[str], rows: Sequence[Sequence[QWidget]], shares: Sequence[int]) -> QWidget:
    """The lines below their heads."""
    made, grid = bare_grid()
    for column, (head, share) in enumerate(zip(heads, shares, strict=True)):
        grid.setColumnStretch(column, share)
        grid.addWidget(said(head, Type.SMALL, faint=True), 0, column)
    for number, row in enumerate(rows):
        grid.addWidget(hairline(), 2 * number + 1, 0, 1, len(heads))
        for column, cell in enumerate(row):
            grid.addWidget(cell, 2 * number + 2, column, _TOP)
    return made


def outcome_cell(outcome: RigOutcome, look: Look) -> QWidget:
    """The small mark with its word."""
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(GRID)
    layout.addWidget(Mark(outcome, look, _MARK_PX))
    layout.addWidget(short(rig_word(outcome), bold=True), 1)
    return made
