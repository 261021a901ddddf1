"""A page that is made part by part, so that events are answered in between: made in one go it would hold them up."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.look import GRID

Step = tuple[QVBoxLayout, Callable[[], Sequence[QWidget]]]


class Growing(QWidget):
    """grown: every part stands there."""

    grown = Signal()

    def __init__(self, gap: int = 2 * GRID) -> None:
        super().__init__()
        self.setObjectName("page")
        self.is_grown = False
        self.column = empty_column(gap)
        self.column.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
        self.setLayout(self.column)

    def grow(self, steps: Sequence[Step]) -> None:
        """Make one part after the other, each in a turn of the event loop."""
        if not steps:
            self.is_grown = True
            self.grown.emit()
            return
        (into, make), *rest = steps
        for one in make():
            into.insertWidget(into.count() - 1, one)
        QTimer.singleShot(0, self, lambda: self.grow(rest))


def empty_column(gap: int) -> QVBoxLayout:
    """A column that parts are put into, above the room that is left."""
    made = QVBoxLayout()
    made.setContentsMargins(0, 0, 0, 0)
    made.setSpacing(gap)
    made.addStretch(1)
    return made
