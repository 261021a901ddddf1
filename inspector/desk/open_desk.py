"""The window that is open, and what takes its place: somebody else at the desk, another register, the first start."""

import gc
from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from inspector.desk.doors import Opening, Start
from inspector.desk.fetching import fetch_first_page, fetch_list, fetch_the_rest
from inspector.desk.look import Look
from inspector.desk.looking_after import begin_looking_after
from inspector.desk.place import Go
from inspector.desk.places import GEAR, NEEDS
from inspector.desk.qt_words import speak_of_qt
from inspector.desk.remember import keep_window, recall, recall_columns, recall_window
from inspector.desk.window import DeskWindow
from inspector.language import tr

if TYPE_CHECKING:
    from inspector.desk.welcome import Welcome
    from inspector.duties.machine_settings import MachineSettings
    from inspector.duties.office import Office, Told

_AT_LATEST_MS = 500  # a window that is not painted, on a screen that is locked say, opens its register all the same


class OpenDesk(QObject):
    """One window at a time. Where somebody else sits down or another register is opened, a new one takes its place."""

    def __init__(self, office: "Office | None", look: Look, start: Start | None = None) -> None:
        super().__init__()
        self._office, self._look, self._start = office, look, start
        self.fault: Exception | None = None
        self._is_opening = False
        self.welcome: Welcome | None = None
        self.window = self._made(office)

    def show(self, tag: str = "") -> None:
        """Show the window as it was left on this machine. tag: the piece to show first."""
        if self._office:
            recall_window(self.window, self._office.machine)
            self.window.show()
            self._begin(self._office, tag, lambda: self.window.pages.go(Go(NEEDS)))

    def open(self, opening: Opening, machine: "MachineSettings", tag: str = "") -> None:
        """Show the window at once, and open its register once it was seen; `fault`: why that could not be done."""
        recall_window(self.window, machine)
        self.window.closing.connect(partial(keep_window, self.window, machine))
        self.window.rail.mark(NEEDS)
        begin = partial(self._open_register, opening, tag)
        self.window.painted.connect(begin)
        at_latest = QTimer(self.window, singleShot=True, interval=_AT_LATEST_MS)
        at_latest.timeout.connect(begin)
        at_latest.start()
        self.window.show()

    def close(self) -> None:
        """Let what is under way end, where the session ended without closing the window."""
        self.window.background.close()
        if self.welcome:
            self.welcome.background.close()

    def _open_register(self, opening: Opening, tag: str) -> None:
        if self._is_opening:
            return
        self._is_opening = True
        self.window.background.run_told(
            partial(_opened, opening), done=partial(self._sit_down, tag), failed=self._give_up,
            says=tr("Opening the register…"),
        )  # fmt: skip

    def _sit_down(self, tag: str, found: "Office | Exception") -> None:
        if isinstance(found, Exception):
            self._give_up(found)
            return
        self._office = found
        self.window.sit_down(found)
        recall_columns(self.window.pages.table, found.machine)
        self._begin(found, tag, lambda: self.window.background.when_idle(self._fetch_first_page))

    def _give_up(self, fault: Exception) -> None:
        """The window has nothing to show; whoever started it is told why."""
        self.fault = fault
        self.window.close_for_good()

    def _begin(self, office: "Office", tag: str, show_first_page: Callable[[], object]) -> None:
        """The list comes first, then the first page; what the program does by itself waits for both."""
        background = self.window.background
        if tag:
            self.window.open_tag(tag)
        else:
            show_first_page()
        background.when_idle(partial(begin_looking_after, self.window, office))
        background.when_idle(partial(fetch_the_rest, background))

    def _fetch_first_page(self) -> None:
        notice = self.window.notice
        self.window.background.run(fetch_first_page, done=lambda _: self._show_first_page(), failed=notice.refuse)

    def _show_first_page(self) -> None:
        """Nobody is taken away from where he went meanwhile."""
        if self.window.is_waiting:
            self.window.pages.go(Go(NEEDS))

    def _made(self, office: "Office | None") -> DeskWindow:
        window = DeskWindow(office, self._look)
        if office:
            recall_columns(window.pages.table, office.machine)
            window.closing.connect(partial(keep_window, window, office.machine))
        window.seated.connect(self._seat)
        window.another.connect(self._ask)
        return window

    def _seat(self, office: "Office") -> None:
        before = self.window
        at = before.pages.place_shown or GEAR
        window = self._replace(office, Go(at))
        from inspector.duties.sit_down import name_words

        if office.officer.id == before.officer_id:
            window.notice.tell(tr("It holds from now on."), tr("The pages were read anew."))
        else:
            window.notice.tell(tr("{name} is at the desk.", name=office.officer.name), name_words(office))

    def _replace(self, office: "Office", go: Go) -> DeskWindow:
        before = self.window
        self.window = window = self._made(office)
        window.setGeometry(before.geometry())
        window.setWindowState(before.windowState())
        window.show()
        window.pages.go(go)
        before.close_for_good()
        before.deleteLater()
        return window

    def _ask(self) -> None:
        """Which other register is to be worked on."""
        if self._start is None:
            return
        if self.welcome is None:
            from inspector.desk.welcome import Welcome

            self.welcome = Welcome(self._start.doors, self._start.place, self._look)
            self.welcome.opened.connect(self._open)
        self.welcome.show()
        self.welcome.raise_()

    def _open(self, office: "Office") -> None:
        if self.welcome:
            self.welcome.close()
            self.welcome.deleteLater()
            self.welcome = None
        begin_looking_after(self._replace(office, Go(NEEDS)), office)


def run_desk(opening: Opening, tag: str, start: Start) -> int:
    """Open the window, then the register, and stay until the window is closed. tag: the piece to show first.

    Returns the exit code. Raises what kept the register from being opened.
    """
    _application()
    look = Look(start.font_files)
    recall(look, start.machine)
    desk = OpenDesk(None, look, start)
    desk.open(opening, start.machine, tag)
    code = QApplication.exec()
    desk.close()
    if desk.fault:
        raise desk.fault
    return code


def run_welcome(start: Start) -> int:
    """Ask which register is to be worked on, and then open the window on it. Returns the exit code."""
    from inspector.desk.welcome import Welcome

    app = _application()
    look = Look(start.font_files)
    welcome, desks = Welcome(start.doors, start.place, look), list[OpenDesk]()

    def sit_down(office: "Office") -> None:
        recall(look, office.machine)
        desks.append(OpenDesk(office, look, start))
        desks[0].show()
        welcome.close()

    welcome.opened.connect(sit_down)
    welcome.show()
    code = app.exec()
    for one in desks:
        one.close()
    return code


def _application() -> QApplication:
    app = QApplication.instance() or QApplication(["inspector", "-style", "Fusion"])
    app.setApplicationName(tr("Recovery gear register"))
    if not isinstance(app, QApplication):
        raise TypeError("the program runs without windows")
    speak_of_qt(app)
    gc.freeze()  # what stands by now, the rulebook above all, stays: it is never looked through for rubbish
    return app


def _opened(opening: Opening, told: "Told") -> "Office | Exception":
    """The office, or whatever went wrong, handed on as it is; with it come the modules of the list."""
    try:
        office = opening(told)
        fetch_list()
    except Exception as fault:
        return fault
    gc.freeze()  # the database's modules and the list's stay as well
    return office
