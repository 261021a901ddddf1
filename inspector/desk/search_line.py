"""The search line on top of the window."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

from inspector.language import tr


class SearchLine(QLineEdit):
    """Scan or type a tag, or any word. down: go to the rows. entered: open what is written here."""

    down = Signal()
    entered = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("search")
        self.setAccessibleName(tr("Find a piece"))
        self.setPlaceholderText(tr("Scan or type a tag, or any word of the piece"))
        self.returnPressed.connect(self._enter)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The down arrow goes to the rows."""
        if event.key() == Qt.Key.Key_Down:
            self.down.emit()
        else:
            super().keyPressEvent(event)

    def begin(self, text: str) -> None:
        """Take over a letter that was typed elsewhere."""
        self.setFocus()
        self.setText(text)
        self.textEdited.emit(text)

    def take_keys(self) -> None:
        """Let the next letters replace what is written."""
        self.setFocus()
        self.selectAll()

    def _enter(self) -> None:
        if tag := self.text().strip():
            self.entered.emit(tag)
