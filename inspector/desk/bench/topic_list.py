"""The topics of the bench, to go along with the arrows."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListWidget

from inspector.desk.keys import search_text
from inspector.gear.bench import BenchTopic
from inspector.language import tr


class TopicList(QListWidget):
    """chosen: a topic's place in the list. onward: Return, on to its dials. typed: a letter for the search."""

    chosen = Signal(int)
    onward = Signal()
    typed = Signal(str)

    def __init__(self, topics: tuple[BenchTopic, ...]) -> None:
        super().__init__()
        self.setAccessibleName(tr("What is shown"))
        self.setWordWrap(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for topic in topics:
            self.addItem(topic.title)
        self.currentRowChanged.connect(self.chosen)

    def fit(self) -> None:
        """As high as its lines, so that it never scrolls by itself."""
        high = sum(self.sizeHintForRow(row) for row in range(self.count()))
        self.setFixedHeight(high + 2 * self.frameWidth())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Letters belong to the search, Return goes on."""
        if text := search_text(event):
            self.typed.emit(text)
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.onward.emit()
        else:
            super().keyPressEvent(event)
