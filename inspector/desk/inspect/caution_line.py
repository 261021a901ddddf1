"""A caution below a field: what is out of the ordinary, and the tick by which somebody says that he looked again."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import said
from inspector.duties.plausible import DAY, Caution
from inspector.language import tr

_STEPS = {Qt.Key.Key_Return: 1, Qt.Key.Key_Enter: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}


class AgainBox(QPushButton):
    """The tick, set and taken away by Space. moves: go so many stops on."""

    moves = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "grade")
        self.setCheckable(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return and the arrows go on as from a field."""
        if step := _STEPS.get(Qt.Key(event.key())):
            self.moves.emit(step)
        else:
            super().keyPressEvent(event)


class CautionLine(QWidget):
    """Hidden while there is nothing to say. changed: ticked or not any more."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.caution: Caution | None = None
        self.text = said("", Type.SMALL, bold=True)
        self.again = AgainBox()
        self.again.toggled.connect(self._tell_tick)
        self.again.toggled.connect(self.changed)
        layout, row = QVBoxLayout(self), QHBoxLayout()
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID // 2)
        row.addWidget(self.again)
        row.addStretch(1)
        layout.addWidget(self.text)
        layout.addLayout(row)
        self.hide()

    @property
    def confirmed(self) -> Caution | None:
        """The caution, where somebody said that he looked again."""
        return self.caution if self.again.isChecked() else None

    @property
    def is_open(self) -> bool:
        """Whether it still waits for a second look."""
        return self.caution is not None and not self.again.isChecked()

    def tell(self, caution: Caution | None) -> None:
        """Say a caution, or nothing. A tick holds for what it was set at, and for nothing typed since."""
        if caution != self.caution:
            self.caution = caution
            self.again.blockSignals(True)
            self.again.setChecked(False)
            self.again.blockSignals(False)
        self.setVisible(caution is not None)
        if caution:
            self.text.setText(tr("Caution: {why}", why=caution.why))
            self._tell_tick()
            self.again.setAccessibleDescription(caution.why)

    def _tell_tick(self) -> None:
        """What the tick says, with a sign where it is set."""
        if self.caution is None:
            return
        is_day = self.caution.measure == DAY
        says = tr("I looked again: the day is right") if is_day else tr("I read it again: it is so")
        self.again.setText(f"✓  {says}" if self.again.isChecked() else says)
        self.again.setAccessibleName(tr("{field}: {tick}", field=self.caution.name, tick=says))
