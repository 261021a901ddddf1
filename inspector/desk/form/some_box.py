"""The field for any number of a list: each with a tick, the arrows move along it, the space bar ticks."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent
from PySide6.QtWidgets import QListWidget, QListWidgetItem

from inspector.desk.form.asked import SomeOf
from inspector.desk.form.boxes import Box
from inspector.desk.look import GRID, Look

_MOST_ROWS = 6
_STANDS_FOR = Qt.ItemDataRole.UserRole


class _Ticks(QListWidget):
    """moves: Return goes on."""

    moves = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return goes on to the next field."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.moves.emit(1)
        else:
            super().keyPressEvent(event)


class SomeBox(Box):
    """Ticks in a list that scrolls where it is long."""

    def __init__(self, asked: SomeOf, look: Look) -> None:
        self.ticks = _Ticks()
        self.ticks.setObjectName("some")
        self._rows = min(max(len(asked.choices), 1), _MOST_ROWS)
        super().__init__(asked, look, self.ticks)
        for words, stands_for in asked.choices:
            item = QListWidgetItem(words, self.ticks)
            item.setData(_STANDS_FOR, stands_for)
            item.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsUserCheckable)
        self.give("\n".join(asked.stands))
        if asked.choices:
            self.ticks.setCurrentRow(0)
        self.ticks.setTabKeyNavigation(False)
        self.ticks.itemChanged.connect(lambda _: self.changed.emit())
        self.ticks.moves.connect(self.moves)

    def value(self) -> object:
        """What the ticked ones stand for, one to a line."""
        return self.draft

    @property
    def draft(self) -> str:
        """What the ticked ones stand for, one to a line."""
        ticked = (one for one in self._items() if one.checkState() is Qt.CheckState.Checked)
        return "\n".join(str(one.data(_STANDS_FOR)) for one in ticked)

    def give(self, draft: str) -> None:
        """Tick those that are named, and no other."""
        named = set(draft.splitlines())
        for one in self._items():
            ticked = str(one.data(_STANDS_FOR)) in named
            one.setCheckState(Qt.CheckState.Checked if ticked else Qt.CheckState.Unchecked)

    def _items(self) -> list[QListWidgetItem]:
        return [self.ticks.item(row) for row in range(self.ticks.count())]

    def _resized(self) -> None:
        super()._resized()
        line = QFontMetrics(self._look.font()).lineSpacing() + self._look.px(GRID)
        self.ticks.setFixedHeight(line * self._rows + GRID)
