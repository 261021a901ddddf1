"""Fields that say below themselves what is wrong with what was typed; nothing typed is ever taken away."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit

from inspector.desk.look import Type
from inspector.desk.plain import said
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read

_STEPS = {Qt.Key.Key_Return: 1, Qt.Key.Key_Enter: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}


def fault_label() -> QLabel:
    """Where a fault is said; hidden while there is none."""
    label = said("", Type.SMALL, bold=True)
    label.hide()
    return label


def tell_fault(label: QLabel, refusal: Refused | None) -> None:
    """Say a refusal, or nothing."""
    label.setText(f"{refusal.why} {refusal.what_to_do}" if refusal else "")
    label.setVisible(refusal is not None)


class FaultField(QLineEdit):
    """A line with its fault below it. moves: go so many fields on. example: nobody must take it for typed."""

    moves = Signal(int)

    def __init__(self, name: str, example: str = "") -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setPlaceholderText(example)
        self.fault = fault_label()

    @property
    def is_faulty(self) -> bool:
        """Whether what stands here cannot be read."""
        return not self.fault.isHidden()

    def tell(self, refusal: Refused | None) -> None:
        """Say what is wrong, or nothing."""
        tell_fault(self.fault, refusal)
        self.setAccessibleDescription(self.fault.text())
        self.setProperty("fault", "true" if refusal else "false")
        self.style().polish(self)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return and the arrows go on to the next place."""
        if step := _STEPS.get(Qt.Key(event.key())):
            self.moves.emit(step)
        else:
            super().keyPressEvent(event)


class FigureField(FaultField):
    """A figure with its unit, or nothing. entered: Return was pressed. The arrows go along the fields."""

    entered = Signal()

    def __init__(self, name: str, dimension: Dimension, example: str, decimal: str) -> None:
        super().__init__(name, example)
        self._name, self._dimension, self._decimal = name, dimension, decimal
        self._given: Figure | None = None
        self.editingFinished.connect(self.look_over)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return asks for what the form is for."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.look_over()
            self.entered.emit()
        else:
            super().keyPressEvent(event)

    def give(self, figure: Figure | None) -> None:
        """Let a figure stand here as it was typed once; it is not read again while nobody changes it."""
        self._given = figure
        self.setText(figure.as_typed if figure else "")
        self.tell(None)

    def figure(self) -> Figure | None:
        """What stands here; refused where it cannot be read."""
        text = self.text().strip()
        if self._given and text == self._given.as_typed:
            return self._given
        return read(text, self._dimension, field=self._name, decimal=self._decimal) if text else None

    def look_over(self) -> None:
        """Say at once what cannot be read."""
        try:
            self.figure()
        except Refused as refusal:
            self.tell(refusal)
        else:
            self.tell(None)
