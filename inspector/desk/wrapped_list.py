"""A list whose lines wrap at its width and are as high as their words."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QListView, QListWidget, QStyledItemDelegate, QStyleOptionViewItem

from inspector.desk.gear_model import Index
from inspector.desk.look import GRID, Look

_FAR_PX = 100_000
_BESIDE_PX = 3 * GRID  # what the style sheet leaves free on both sides of the words


class _Lines(QStyledItemDelegate):
    """Measures lines by the width there is; the style's own reckoning forgets what it leaves free beside them."""

    def __init__(self, look: Look, view: QListWidget) -> None:
        super().__init__(view)
        self._look, self._view = look, view

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As high as the words need."""
        wide = max(self._view.viewport().width(), 1)
        room = QRect(0, 0, max(wide - self._look.px(_BESIDE_PX), 1), _FAR_PX)
        flags = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft)
        high = QFontMetrics(self._look.font()).boundingRect(room, flags, str(index.data() or "")).height()
        return QSize(wide, high + self._look.px(2 * GRID))


class WrappedList(QListWidget):
    """The list. name: what a screen reader calls it."""

    def __init__(self, name: str, look: Look) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setWordWrap(True)
        self.setItemDelegate(_Lines(look, self))
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self.scheduleDelayedItemsLayout)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width needs other heights."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()
