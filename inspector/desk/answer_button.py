"""A large answer to press: its key, its word, and beside it what the word means here. It wraps and is never cut off."""

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QPushButton, QSizePolicy

from inspector.desk.look import GRID, Look, Type
from inspector.drawings.shapes import Ink

_LEAST_PX = 64
_LEAST_LARGE_PX = 48  # large text makes an answer high by itself
_WORD_PX = 150
_KEY_PX = 28
_WRAPS = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_LEFT_TO_THE_PAGE = {
    Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down,
}  # fmt: skip


class AnswerButton(QPushButton):
    """An answer. It paints its own text: a button of the toolkit neither wraps nor sets two sizes of type.

    is_bare: its key and word alone, where what it means stands above.
    """

    picked = Signal()

    def __init__(self, key: str, word: str, means: str, look: Look, about: str) -> None:
        super().__init__()
        self._key, self._word, self._means, self._look = key, word, means, look
        self.is_bare = False
        self.setCheckable(True)
        self.setProperty("rank", "answer")
        self.setAccessibleName(f"{about}: {word}")
        self.setAccessibleDescription(means)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.clicked.connect(lambda _checked: self.picked.emit())
        look.changed.connect(self.updateGeometry)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space picks it; Return and the arrows belong to the page."""
        if event.key() in _LEFT_TO_THE_PAGE:
            event.ignore()
        else:
            super().keyPressEvent(event)

    def hasHeightForWidth(self) -> bool:
        """A narrow answer is a high one."""
        return True

    def make_bare(self, is_bare: bool) -> None:
        """Leave out what it means, or say it again."""
        self.is_bare = is_bare
        self.updateGeometry()
        self.update()

    def heightForWidth(self, width: int) -> int:
        """Room for all of its words."""
        return self._least if self.is_bare else self.full_height(width)

    def full_height(self, width: int) -> int:
        """Room for its word and what it means."""
        room = QRect(0, 0, max(width - self._means_left - self._look.px(GRID), 1), 10_000)
        high = QFontMetrics(self._look.font()).boundingRect(room, _WRAPS, self._means).height()
        return max(self._least, high + self._look.px(GRID))

    def sizeHint(self) -> QSize:
        """As wide as it gets."""
        if self.is_bare:
            return QSize(self._bare_px, self._least)
        wide = self._means_left + self._look.px(320)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """The word, and a few words of the meaning to a line."""
        if self.is_bare:
            return QSize(self._bare_px, self._least)
        wide = self._means_left + self._look.px(120)
        return QSize(wide, self._least)

    @property
    def _least(self) -> int:
        """No lower than a finger needs."""
        return self._look.px(_LEAST_LARGE_PX) if self._look.is_large else _LEAST_PX

    @property
    def _bare_px(self) -> int:
        """Room for the key and the word in one line."""
        word = QFontMetrics(self._look.font(Type.HEAD, bold=True)).horizontalAdvance(self._word)
        return self._look.px(GRID + _KEY_PX + GRID) + word

    @property
    def _means_left(self) -> int:
        """Where the meaning begins."""
        return self._look.px(GRID + _KEY_PX + _WORD_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The frame by the style sheet, the words by hand."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setPen(self._look.colour(Ink.PAPER if self.isChecked() else Ink.INK))
        high, left = self.height(), self._look.px(GRID)
        painter.setFont(self._look.font())
        painter.drawText(QRect(left, 0, self._look.px(_KEY_PX), high), _WRAPS, self._key)
        painter.setFont(self._look.font(Type.HEAD, bold=True))
        word = self._bare_px if self.is_bare else self._look.px(_WORD_PX)
        painter.drawText(QRect(left + self._look.px(_KEY_PX), 0, word, high), _WRAPS, self._word)
        if not self.is_bare:
            painter.setFont(self._look.font())
            right = self.width() - self._means_left - self._look.px(GRID)
            painter.drawText(QRect(self._means_left, 0, right, high), _WRAPS, self._means)
        painter.end()
