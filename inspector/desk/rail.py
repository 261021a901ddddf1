"""The side of the window: its places by name, the one shown marked. It yields where the window is narrow."""

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QButtonGroup, QPushButton, QVBoxLayout, QWidget

from inspector.desk.icon import icon
from inspector.desk.look import GRID, Look
from inspector.desk.place import Go
from inspector.desk.places import PlaceEntry
from inspector.desk.plain import button
from inspector.language import tr

_AROUND_PX = 5 * GRID  # margin, mark, and what stands before and after icon and word
_ICON_PX = 18
_LEAST_WINDOW_PX = 1150


class Rail(QWidget):
    """go: a place was chosen."""

    go = Signal(object)

    def __init__(self, entries: tuple[PlaceEntry, ...], look: Look) -> None:
        super().__init__()
        self._look = look
        self.setObjectName("rail")
        self.setAccessibleName(tr("Places"))
        self._group = QButtonGroup(self)
        self.buttons = {one.key: self._button(one) for one in entries if one.name}
        layout = QVBoxLayout(self)
        layout.setContentsMargins(GRID, 0, 0, GRID)
        layout.setSpacing(0)
        for made in self.buttons.values():
            layout.addWidget(made)
        layout.addStretch(1)
        look.changed.connect(self._dress)  # as a look is laid over the window, at first too

    def mark(self, key: str) -> None:
        """Mark the place that is shown; none where it is not among them."""
        self._group.setExclusive(False)
        for one, made in self.buttons.items():
            made.setChecked(one == key)
            made.setAccessibleDescription(tr("shown now") if one == key else "")
        self._group.setExclusive(True)

    def yield_to(self, window_px: int) -> None:
        """Go where the window leaves no room; the menu has the same places."""
        self.setVisible(window_px >= self._look.px(_LEAST_WINDOW_PX))

    def _button(self, entry: PlaceEntry) -> QPushButton:
        made = button(entry.name, lambda: self.go.emit(Go(entry.key)), rank="place")
        made.setCheckable(True)
        made.setToolTip(entry.keys)
        self._group.addButton(made)
        return made

    def _dress(self) -> None:
        size = self._look.px(_ICON_PX)
        bold = QFontMetrics(self._look.font(bold=True))  # as the marked one is
        words = max(bold.horizontalAdvance(made.text()) for made in self.buttons.values())
        self.setFixedWidth(words + size + self._look.px(_AROUND_PX))
        for key, made in self.buttons.items():
            made.setIcon(icon(key, self._look, size))
            made.setIconSize(QSize(size, size))
