"""The line that takes scanned tags while a count goes on: Return marks what stands in it, and it is empty again."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

from inspector.language import tr


class ScanLine(QLineEdit):
    """scanned: what was scanned or typed, one tag or several. down: go to the list."""

    scanned = Signal(str)
    down = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("search")  # as large as the line of the search
        self.setAccessibleName(tr("Scan a tag of the count"))
        self.setPlaceholderText(tr("Scan or type a tag, then Return"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return marks; the arrow down goes to the list."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._scan()
        elif event.key() == Qt.Key.Key_Down:
            self.down.emit()
        else:
            super().keyPressEvent(event)

    def begin(self, text: str) -> None:
        """Take over a letter that was typed elsewhere on the page."""
        self.setFocus()
        self.insert(text)

    def _scan(self) -> None:
        if text := self.text().strip():
            self.clear()
            self.scanned.emit(text)
