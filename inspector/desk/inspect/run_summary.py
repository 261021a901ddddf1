"""What came of a run of inspections: each piece with its outcome, and those that were left out."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.inspect.run_list import RunList
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import button, clear, column, hairline, said, scroll
from inspector.desk.record_parts import beside
from inspector.gear.judged import Judged
from inspector.language import tr, tr_n


class RunSummary(QWidget):
    """opened: a tag whose record is to be shown. again: go through those that were left out. done: the run is over."""

    opened = Signal(str)
    again = Signal()
    done = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._head = said("", Type.DISPLAY)
        self.again_button = button(tr("Inspect those left out"), self.again.emit)
        self.done_button = button(tr("Done"), self.done.emit, rank="first", name=tr("Done with the run"))
        self._lines = QWidget()
        self._inside = QVBoxLayout(self._lines)
        self._inside.setContentsMargins(0, GRID, 2 * GRID, GRID)
        self._inside.setSpacing(GRID)
        self._area: QScrollArea = scroll(self._lines, tr("What came of the run"))
        buttons = QHBoxLayout()
        buttons.setSpacing(GRID)
        buttons.addWidget(self.done_button)
        buttons.addWidget(self.again_button)
        buttons.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        layout.addWidget(self._head)
        layout.addWidget(self._area, 1)
        layout.addLayout(buttons)

    def show_run(self, run: RunList, written: tuple[str, ...]) -> None:
        """Tell it all. written: the pieces in whose forms something is written and not saved."""
        done, left = len(run.outcomes), run.left
        self._head.setText(
            tr_n("One of {all} pieces inspected", "{count} of {all} pieces inspected", done, all=len(run.tags))
        )
        self.again_button.setVisible(bool(left))
        clear(self._inside)
        for tag in (one for one in run.tags if one in run.outcomes):
            self._inside.addWidget(self._line(run.outcomes[tag]))
        if left:
            self._inside.addWidget(self._left_out(left, written))
        self._inside.addStretch(1)
        self.setAccessibleName(self._head.text())

    def focus_start(self) -> None:
        """The keys go to what ends the run."""
        self.done_button.setFocus()

    def _line(self, judged: Judged) -> QWidget:
        tag = judged.dossier.item.tag
        to_record = button(tag, lambda: self.opened.emit(tag), rank="tag", name=tr("Show {tag}", tag=tag))
        words = column([to_record, said(judged.explanation.headline)], 0)
        return column([hairline(), beside(Mark(judged.verdict.outcome, self._look, 24), words)])

    def _left_out(self, left: tuple[str, ...], written: tuple[str, ...]) -> QWidget:
        head = said(tr("Left out"), Type.HEAD)
        names = said(tr_n("One piece is not inspected: {tags}.", "{count} pieces are not inspected: {tags}.",
                     len(left), tags=", ".join(left)))  # fmt: skip
        begun = said(tr("Written and not saved: {tags}.", tags=", ".join(written)), bold=True)
        return column([hairline(), head, names, *([begun] if written else [])])
