"""Parts side by side, as many as a line holds, the others in lines below."""

from PySide6.QtCore import QMargins, QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QSizePolicy, QWidget

from inspector.desk.look import GRID


class _FlowLayout(QLayout):
    """Left to right, then down; each part in the size it asks for."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.setContentsMargins(QMargins())
        self.setSpacing(GRID)

    def addItem(self, item: QLayoutItem) -> None:
        """Called by Qt for each part."""
        self._items.append(item)

    def count(self) -> int:
        """How many parts there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """The part at a place; None beyond the last one, as Qt asks."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """The part at a place, let go of."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """It asks for no more than it needs."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """A narrow place asks for more lines."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all lines."""
        return self._placed(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, place: QRect) -> None:
        """Put every part into its place."""
        super().setGeometry(place)
        self._placed(place, move=True)

    def sizeHint(self) -> QSize:
        """All in one line."""
        sizes = [one.sizeHint() for one in self._items if not one.isEmpty()]
        wide = sum(one.width() for one in sizes) + self.spacing() * max(len(sizes) - 1, 0)
        return QSize(wide, max((one.height() for one in sizes), default=0))

    def minimumSize(self) -> QSize:
        """The largest part."""
        size = QSize()
        for one in self._items:
            size = size.expandedTo(one.minimumSize())
        return size

    def _placed(self, place: QRect, *, move: bool) -> int:
        """The height that the parts take; move: whether to put them there."""
        x, y, line = place.x(), place.y(), 0
        for one in self._items:
            if one.isEmpty():
                continue
            size = one.sizeHint()
            if x > place.x() and x + size.width() > place.x() + place.width():
                x, y, line = place.x(), y + line + self.spacing(), 0
            if move:
                one.setGeometry(QRect(QPoint(x, y), size))
            x, line = x + size.width() + self.spacing(), max(line, size.height())
        return y + line - place.y()


def flow(parts: list[QWidget]) -> QWidget:
    """The parts in a widget that is as high as their lines."""
    made = QWidget()
    layout = _FlowLayout(made)
    for one in parts:
        layout.addWidget(one)
    policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    policy.setHeightForWidth(True)
    made.setSizePolicy(policy)
    return made
