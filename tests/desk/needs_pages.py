"""The two pages of what waits, each by itself with what a window gives it, and what leaves them."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.background import Background
from inspector.desk.look import Look
from inspector.desk.needs.due_page import DuePage
from inspector.desk.needs.needs_page import NeedsPage
from inspector.desk.notice import Notice
from inspector.duties.office import Office


class Stand(QWidget):
    """A window with one page and the strip above it. left: every signal that the page gave, with what it said."""

    def __init__(self, office: Office, look: Look, make: Callable[..., QWidget]) -> None:
        super().__init__()
        self.background, self.notice = Background(self), Notice()
        self.page = make(office, self.background, self.notice, look)
        self.left: list[tuple[str, object]] = []
        layout = QVBoxLayout(self)
        layout.addWidget(self.notice)
        layout.addWidget(self.page, 1)
        self.resize(1280, 720)
        for name in ("opened", "go", "notice", "notices", "typed"):
            signal = getattr(self.page, name, None)
            if signal is not None:
                signal.connect(lambda said, name=name: self.left.append((name, said)))


Open = Callable[[Office], Stand]


@pytest.fixture
def needs_on(qtbot: QtBot, look: Look) -> Iterator[Open]:
    """Opens the first page on an office and waits until it is read."""
    with_page = _opener(qtbot, look, NeedsPage)
    yield with_page


@pytest.fixture
def due_on(qtbot: QtBot, look: Look) -> Iterator[Open]:
    """Opens the calendar on an office and waits until it is read."""
    with_page = _opener(qtbot, look, DuePage)
    yield with_page


def _opener(qtbot: QtBot, look: Look, make: type[NeedsPage] | type[DuePage]) -> Open:
    def opened(office: Office) -> Stand:
        stand = Stand(office, look, make)
        look.dress(stand)
        qtbot.addWidget(stand, before_close_func=_end)
        stand.show()
        stand.activateWindow()
        qtbot.waitUntil(stand.isActiveWindow)
        assert isinstance(stand.page, NeedsPage | DuePage)
        stand.page.begin()
        settle(qtbot, stand)
        return stand

    return opened


def _end(stand: QWidget) -> None:
    if isinstance(stand, Stand):
        stand.background.close()


def settle(qtbot: QtBot, stand: Stand) -> None:
    """Until nothing is under way, all is shown, and the keys have their place."""
    qtbot.waitUntil(lambda: stand.background.is_idle)
    assert isinstance(stand.page, NeedsPage | DuePage)
    if (page := stand.page).is_whole or (page.needs if isinstance(page, NeedsPage) else page.sheet):
        qtbot.waitUntil(lambda: page.is_whole)
    qtbot.wait(20)


def named(widget: QWidget, name: str) -> QPushButton:
    """The visible button with this accessible name."""
    return next(one for one in widget.findChildren(QPushButton) if one.isVisible() and one.accessibleName() == name)
