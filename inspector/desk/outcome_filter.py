"""The four outcomes as a row of choices, each with its mark, its word and how many pieces stand there."""

from collections.abc import Mapping

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QButtonGroup, QPushButton, QWidget

from inspector.desk.flow import Flow
from inspector.desk.look import GRID, Look
from inspector.desk.pen import mark_icon
from inspector.drawings.marks import outcome_word
from inspector.gear.outcome import Outcome
from inspector.language import tr

_SHOWN = (None, Outcome.FIT, Outcome.DERATE, Outcome.HOLD, Outcome.RETIRE)
_MARK_PX = 18


class OutcomeFilter(QWidget):
    """chosen: the outcome to show, or None for all."""

    chosen = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._group = QButtonGroup(self)
        self.buttons: dict[Outcome | None, QPushButton] = {}
        layout = Flow(self, GRID // 2)
        for outcome in _SHOWN:
            layout.addWidget(self._button(outcome))
        self.buttons[None].setChecked(True)
        look.changed.connect(self._dress)
        self._dress()
        self.count({})

    @property
    def outcome(self) -> Outcome | None:
        """The outcome chosen."""
        return next(outcome for outcome, made in self.buttons.items() if made.isChecked())

    def reset(self) -> None:
        """Show all again."""
        self.buttons[None].setChecked(True)
        self.chosen.emit(None)

    def count(self, counts: Mapping[Outcome | None, int]) -> None:
        """Say how many pieces stand where."""
        for outcome, made in self.buttons.items():
            word = outcome_word(outcome) if outcome else tr("All")
            made.setText(f" {word}  {counts[outcome]}" if outcome in counts else f" {word}")
            made.setAccessibleName(tr("Show: {word}", word=made.text().strip()))

    def _button(self, outcome: Outcome | None) -> QPushButton:
        made = QPushButton()
        made.setCheckable(True)
        made.setProperty("rank", "filter")
        made.clicked.connect(lambda: self.chosen.emit(outcome))
        self._group.addButton(made)
        self.buttons[outcome] = made
        return made

    def _dress(self) -> None:
        size = self._look.px(_MARK_PX)
        for outcome, made in self.buttons.items():
            if outcome:
                made.setIcon(mark_icon(outcome, self._look, size))
                made.setIconSize(QSize(size, size))
