"""A rig typed by hand: its tags in the order in which they are joined, one run a line."""

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPlainTextEdit, QVBoxLayout, QWidget

from inspector.desk.fault_field import FaultField, fault_label, tell_fault
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import said
from inspector.gear.rig import Rig
from inspector.language import tr
from inspector.refused import Refused

_BETWEEN = re.compile(r"[\s,;>→–—]+|(?<=\s)-(?=\s)")
_LINES = 4


class RunsBox(QWidget):
    """entered: Ctrl and Return, or Return behind what is laid over the line. changed: something else stands here."""

    entered = Signal()
    changed = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.runs = _RunsEdit()
        self.fault = fault_label()
        self.over = FaultField(tr("Laid over the line"), tr("laid over the line: a damper's tag"))
        how = tr(
            "Tags in the order in which they are joined, the stuck vehicle's end first; one run a line. An end that no "
            "register holds: tree@ground, tie_down@V-05. Ctrl and Return check it."
        )
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID // 2)
        for part in (said(how, Type.SMALL, faint=True), self.runs, self.fault, self.over, self.over.fault):
            layout.addWidget(part)
        self.runs.entered.connect(self.entered)
        self.over.moves.connect(lambda step: self.entered.emit() if step > 0 else self.runs.setFocus())
        self.runs.textChanged.connect(self.changed)
        self.over.textEdited.connect(self.changed)
        look.changed.connect(self._resize)
        self._resize()

    @property
    def typed(self) -> tuple[tuple[str, ...], ...]:
        """The runs; empty lines are none."""
        lines = (self._tags(line) for line in self.runs.toPlainText().splitlines())
        return tuple(line for line in lines if line)

    @property
    def dampers(self) -> tuple[str, ...]:
        """What is laid over the line."""
        return self._tags(self.over.text())

    def show_rig(self, rig: Rig | None) -> None:
        """Let the runs of a rig stand here."""
        self.refuse(None)
        self.runs.setPlainText("\n".join(" ".join(run) for run in rig.runs) if rig else "")
        self.over.setText(" ".join(rig.dampers) if rig else "")

    def show_runs(self, runs: tuple[tuple[str, ...], ...]) -> None:
        """Let other runs stand here; what is laid over the line stays."""
        self.refuse(None)
        self.runs.setPlainText("\n".join(" ".join(run) for run in runs))

    def take_over(self, old: "RunsBox") -> None:
        """Let stand here what stands in another box."""
        self.runs.setPlainText(old.runs.toPlainText())
        self.over.setText(old.over.text())

    def refuse(self, refusal: Refused | None) -> QWidget | None:
        """Say what is wrong with what is typed here, or nothing; the field that it is said at."""
        of_dampers = refusal is not None and refusal.field == tr("dampers")
        self.over.tell(refusal if of_dampers else None)
        mine = refusal if refusal and not of_dampers else None
        tell_fault(self.fault, mine)
        self.runs.setAccessibleDescription(self.fault.text())
        return (self.over if of_dampers else self.runs) if refusal else None

    def _tags(self, text: str) -> tuple[str, ...]:
        return tuple(tag for tag in _BETWEEN.split(f" {text} ") if tag)

    def _resize(self) -> None:
        self.runs.setFixedHeight(self._look.px(_LINES * 22 + 16))


class _RunsEdit(QPlainTextEdit):
    """A few lines; Tab leaves it, Escape belongs to the page, Ctrl and Return check it."""

    entered = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setTabChangesFocus(True)
        self.setAccessibleName(tr("Runs of the rig, tag by tag"))
        self.setPlaceholderText(tr("for example RP-03 SH-09 KR-02 SH-01 RP-10"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return begins another run."""
        if event.key() == Qt.Key.Key_Escape:
            event.ignore()
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and event.modifiers() & _CTRL:
            self.entered.emit()
        else:
            super().keyPressEvent(event)


_CTRL = Qt.KeyboardModifier.ControlModifier
