"""Lines that begin with a tag: pressing it opens the piece."""

from collections.abc import Callable, Iterable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QWidget

from inspector.desk.look import Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import bare_grid, button, column, said
from inspector.drawings.marks import outcome_word
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.language import tr

_MARK_PX = 20
Open = Callable[[str], object]
Line = tuple[Outcome | None, str, Sequence[QWidget]]  # the mark, the tag, what is said of the piece


def tag_button(tag: str, opens: Open) -> QPushButton:
    """The tag, to be pressed."""
    return button(tag, lambda: opens(tag), rank="tag", name=tr("Open {tag}", tag=tag))


def tag_lines(lines: Iterable[Line], look: Look, opens: Open) -> QWidget:
    """Mark, tag and words, the tags below one another."""
    made, grid = bare_grid(2)
    middle = Qt.AlignmentFlag.AlignVCenter
    for row, (outcome, tag, words) in enumerate(lines):
        if outcome:
            grid.addWidget(Mark(outcome, look, _MARK_PX), row, 0, middle)
        grid.addWidget(tag_button(tag, opens), row, 1, middle)
        grid.addWidget(column(words, 0), row, 2, middle)
    return made


def judged_line(one: Judged, text: str, place: str = "") -> Line:
    """A piece with the word of its outcome, its kind and what is to be said of it."""
    item, outcome = one.dossier.item, one.verdict.outcome
    head = " · ".join(filter(None, (place, one.dossier.kind.name, outcome_word(outcome))))
    return outcome, item.tag, (said(head, bold=True), said(text, Type.SMALL, faint=True))
