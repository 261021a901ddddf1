"""What of the window stands there at once: the search line on top, places at the side, room for a page, the foot.

It knows nothing of a register; what it is made of is all that the first sight of the window waits for.
"""

from PySide6.QtCore import QEvent, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMainWindow, QStackedLayout, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.places import places
from inspector.desk.plain import column, said
from inspector.desk.rail import Rail
from inspector.desk.search_line import SearchLine
from inspector.desk.status import Status
from inspector.language import tr

_USUAL_SIZE = (1280, 720)
_LEAST_SIZE = (960, 600)


class Frame(QMainWindow):
    """painted: it was seen for the first time.

    notice: what speaks to the officer. middle: room for the pages; until there are any it says what is waited for.
    """

    painted = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.notice, self.search, self.status = Notice(), SearchLine(), Status()
        self.entries = places()
        self.rail = Rail(self.entries, look)
        self.middle = QStackedLayout()
        self._is_painted = False
        self._lay_out()
        look.changed.connect(self._make_room)

    def event(self, event: QEvent) -> bool:
        """Tell of the first paint, once it is over."""
        if event.type() is QEvent.Type.Paint and not self._is_painted:
            self._is_painted = True
            QTimer.singleShot(0, self, self.painted.emit)
        return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The side yields to a narrow window."""
        super().resizeEvent(event)
        self._make_room()

    def _make_room(self) -> None:
        self.rail.yield_to(self.width())

    def _lay_out(self) -> None:
        self.setWindowTitle(tr("Recovery gear register"))
        self.setMinimumSize(*_LEAST_SIZE)
        self.resize(*_USUAL_SIZE)
        page = QWidget()
        page.setObjectName("page")
        head = QHBoxLayout()
        head.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        head.addWidget(self.search)
        strip = QHBoxLayout()
        strip.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        strip.addWidget(self.notice)
        self.middle.addWidget(_waiting())
        middle = QHBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.rail)
        middle.addLayout(self.middle, 1)
        layout = QVBoxLayout(page)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addLayout(head)
        layout.addLayout(strip)
        layout.addLayout(middle, 1)
        self.setCentralWidget(page)
        self.setStatusBar(self.status)


def _waiting() -> QWidget:
    page = QWidget()
    page.setObjectName("page")
    inside = column([said(tr("Opening the register…"), faint=True)])
    layout = QVBoxLayout(page)
    layout.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
    layout.addWidget(inside)
    return page
