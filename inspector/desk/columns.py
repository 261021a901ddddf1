"""Two columns that become one where the page is narrow."""

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

from inspector.desk.look import GRID, Look

_NARROW_PX = 900


class Columns(QWidget):
    """A wide column and a margin beside it; below a width, the margin goes underneath."""

    def __init__(
        self, wide: QWidget, margin: QWidget, look: Look, shares: tuple[int, int] = (3, 2), narrow_px: int = _NARROW_PX
    ) -> None:
        super().__init__()
        self._look, self._narrow_px = look, narrow_px
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(4 * GRID)
        self._box.addWidget(wide, shares[0])
        self._box.addWidget(margin, shares[1])
        look.changed.connect(self._turn)

    @property
    def is_narrow(self) -> bool:
        """Whether the margin stands underneath."""
        return self._box.direction() is QBoxLayout.Direction.TopToBottom

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Choose by the width there is."""
        super().resizeEvent(event)
        self._turn()

    def _turn(self) -> None:
        down, across = QBoxLayout.Direction.TopToBottom, QBoxLayout.Direction.LeftToRight
        self._box.setDirection(down if self.width() < self._look.px(self._narrow_px) else across)
