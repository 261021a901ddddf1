"""How a measure was taken: the way, and for a thickness gauge the face it stood on and its block."""

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from inspector.desk.choice import Choice
from inspector.desk.inspect.typed_reading import How, is_gauge, methods_for, must_say_method
from inspector.desk.look import GRID
from inspector.desk.plain import short
from inspector.gear.inspection import Method, Surface
from inspector.gear.kind import Measure
from inspector.language import tr

LABEL_PX = 20 * GRID


class HowBox(QWidget):
    """chosen: something else was chosen."""

    chosen = Signal()

    def __init__(self, measure: Measure) -> None:
        super().__init__()
        self.method = Choice(tr("{measure}, how taken", measure=measure.name), _methods(measure))
        self.surface = Choice(tr("{measure}, face", measure=measure.name), _surfaces())
        self.block = Choice(tr("{measure}, gauge tried on its block", measure=measure.name), _blocks())
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.setColumnMinimumWidth(0, LABEL_PX)
        grid.setColumnStretch(1, 1)
        self._of_gauge: list[QWidget] = []
        self._add(grid, tr("Taken with"), self.method)
        self._of_gauge += [*self._add(grid, tr("Face"), self.surface), *self._add(grid, tr("Block"), self.block)]
        if len(methods_for(measure)) == 1:
            self.hide()  # never shown from here: without a parent yet, it would be a window of its own
        self._turn()

    @property
    def how(self) -> How:
        """How it was taken, as chosen."""
        return How(self.method.value, self.surface.value, self.block.value)

    def _add(self, grid: QGridLayout, text: str, choice: Choice[Any]) -> tuple[QLabel, QWidget]:
        row, label = grid.rowCount(), short(text, faint=True)
        grid.addWidget(label, row, 0)
        grid.addWidget(choice.box, row, 1)
        choice.box.currentIndexChanged.connect(self._turn)
        return label, choice.box

    def _turn(self) -> None:
        for part in self._of_gauge:
            part.setVisible(is_gauge(self.method.value))
        self.chosen.emit()


def _methods(measure: Measure) -> list[tuple[str, Method | None]]:
    words: dict[Method, str] = {
        Method.ULTRASONIC_BARE: tr("thickness gauge on bare metal"),
        Method.ULTRASONIC_PAINT: tr("thickness gauge through paint"),
        Method.CALLIPER: tr("calliper"),
        Method.TAPE: tr("tape"),
        Method.COUNTED: tr("counted"),
    }
    unsaid: list[tuple[str, Method | None]] = [(tr("choose how"), None)] if must_say_method(measure) else []
    return [*unsaid, *((words[one], one) for one in methods_for(measure))]


def _surfaces() -> list[tuple[str, Surface]]:
    return [
        (tr("not stated"), Surface.NOT_STATED),
        (tr("dressed to bright metal"), Surface.DRESSED),
        (tr("rough"), Surface.ROUGH),
    ]


def _blocks() -> list[tuple[str, bool | None]]:
    return [
        (tr("not stated"), None),
        (tr("gauge tried on its block that day"), True),
        (tr("gauge not tried on its block"), False),
    ]
