"""What every table of the window has in common whose rows are gone through by keys."""

from PySide6.QtCore import QAbstractItemModel, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QTableView

from inspector.desk.keys import search_text
from inspector.desk.look import Look


class RowTable(QTableView):
    """typed: a letter that belongs to the search, or to a line that is scanned into.

    A table says what Return does (`enter`), which keys are its own (`takes`) and how wide its columns are (`spread`);
    it calls `spread` once when it is made.
    """

    typed = Signal(str)

    def __init__(self, model: QAbstractItemModel, name: str, look: Look, *, wraps: bool) -> None:
        super().__init__()
        self._look = look
        self.setModel(model)
        self.setAccessibleName(name)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setWordWrap(wraps)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        if wraps:
            self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
            self.horizontalHeader().setSectionsClickable(False)
        self.verticalHeader().hide()
        self.horizontalHeader().setHighlightSections(False)

    def enter(self, row: int) -> None:
        """Return was pressed on a row."""

    def takes(self, event: QKeyEvent) -> bool:
        """Whether the key is one of the table's own; then it is done with."""
        return False

    def spread(self) -> None:
        """Give the columns their room."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return does what the table is for; letters go to the search; the rest moves the bar."""
        if self.takes(event):
            return
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.enter(self.currentIndex().row())
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width, other columns."""
        super().resizeEvent(event)
        self.spread()
