"""Parts side by side that go into further lines where the width does not hold them, as words do."""

from collections.abc import Iterable

from PySide6.QtCore import QMargins, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QSizePolicy, QWidget

from inspector.desk.look import GRID


class Flow(QLayout):
    """Each part as wide as it wants to be; what is left of a line goes to the parts that can use it."""

    def __init__(self, parent: QWidget | None = None, gap: int = GRID) -> None:
        super().__init__(parent) if parent else super().__init__()
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self._heights: dict[int, int] = {}  # by width, while no part changes
        self.setContentsMargins(QMargins())

    def addItem(self, item: QLayoutItem) -> None:
        """Called by addWidget."""
        self._items.append(item)
        self.invalidate()

    def count(self) -> int:
        """How many parts there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """A part; None where there is none, which is how Qt finds the end."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """A part, taken out."""
        if not 0 <= index < len(self._items):
            return None
        self.invalidate()
        return self._items.pop(index)

    def expandingDirections(self) -> Qt.Orientation:
        """As wide as may be, so that it need not go into further lines."""
        return Qt.Orientation.Horizontal

    def hasHeightForWidth(self) -> bool:
        """The narrower, the higher."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all lines."""
        if width not in self._heights:
            self._heights[width] = self._laid(QRect(0, 0, width, 0), move=False)
        return self._heights[width]

    def invalidate(self) -> None:
        """A part changed, or what it wants."""
        self._heights.clear()
        super().invalidate()

    def setGeometry(self, rect: QRect) -> None:
        """Lay the parts out."""
        super().setGeometry(rect)
        self._laid(rect, move=True)

    def sizeHint(self) -> QSize:
        """All in one line."""
        shown = self._shown()
        width = sum(one.sizeHint().width() for one in shown) + self._gap * max(len(shown) - 1, 0)
        return QSize(width, max((one.sizeHint().height() for one in shown), default=0))

    def minimumSize(self) -> QSize:
        """Each in a line of its own."""
        shown = self._shown()
        width = max((one.minimumSize().width() for one in shown), default=0)
        return QSize(width, max((one.minimumSize().height() for one in shown), default=0))

    def _shown(self) -> list[QLayoutItem]:
        return [one for one in self._items if not one.isEmpty()]

    def _laid(self, rect: QRect, *, move: bool) -> int:
        """The height that the lines take; move: put the parts there."""
        top = rect.top()
        for line in self._lines(rect.width()):
            widths = self._widths(line, rect.width())
            heights = [_height(one, width) for one, width in zip(line, widths, strict=True)]
            height, left = max(heights), rect.left()
            for one, width, own in zip(line, widths, heights, strict=True):
                if move:
                    one.setGeometry(QRect(left, top + (height - own) // 2, width, own))
                left += width + self._gap
            top += height + self._gap
        return max(top - self._gap - rect.top(), 0)

    def _lines(self, width: int) -> list[list[QLayoutItem]]:
        lines: list[list[QLayoutItem]] = []
        left = 0
        for one in self._shown():
            wants = one.sizeHint().width()
            if not lines or left + wants > width:
                lines.append([])
                left = 0
            lines[-1].append(one)
            left += wants + self._gap
        return lines

    def _widths(self, line: list[QLayoutItem], width: int) -> list[int]:
        wants = [min(one.sizeHint().width(), width) for one in line]
        grow = [number for number, one in enumerate(line) if one.expandingDirections() & Qt.Orientation.Horizontal]
        left = width - sum(wants) - self._gap * (len(line) - 1)
        for number in grow:
            wants[number] += max(left, 0) // len(grow)
        return wants


def _height(item: QLayoutItem, width: int) -> int:
    return item.heightForWidth(width) if item.hasHeightForWidth() else item.sizeHint().height()


def flowing(parts: Iterable[QWidget], gap: int = GRID, *, wide: Iterable[QWidget] = ()) -> QWidget:
    """A widget of such parts. wide: those among them that take what is left of their line."""
    made = QWidget()
    layout = Flow(made, gap)
    for part in parts:
        layout.addWidget(part)
    for part in wide:
        part.setSizePolicy(QSizePolicy.Policy.Expanding, part.sizePolicy().verticalPolicy())
    policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    policy.setHeightForWidth(True)
    made.setSizePolicy(policy)
    return made
