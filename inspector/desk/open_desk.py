"""The window that is open, and what takes its place: somebody else at the desk, another register, the first start."""

import gc
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from inspector.desk.look import Look
from inspector.desk.looking_after import begin_looking_after
from inspector.desk.place import Go
from inspector.desk.places import GEAR, NEEDS
from inspector.desk.qt_words import speak_of_qt
from inspector.desk.remember import keep_window, recall, recall_columns, recall_window
from inspector.desk.welcome import Doors, Welcome
from inspector.desk.window import DeskWindow
from inspector.duties.office import Office
from inspector.duties.sit_down import name_words
from inspector.language import tr


@dataclass(frozen=True, slots=True)
class Start:
    """How the program comes to a register. place: the folder or address to propose; font_files: the type."""

    doors: Doors
    place: str
    font_files: tuple[Path, ...]


class OpenDesk(QObject):
    """One window at a time. Where somebody else sits down or another register is opened, a new one takes its place."""

    def __init__(self, office: Office, look: Look, start: Start | None = None) -> None:
        super().__init__()
        self._office, self._look, self._start = office, look, start
        self.welcome: Welcome | None = None
        self.window = self._made(office)

    def show(self, tag: str = "") -> None:
        """Show the window as it was left on this machine. tag: the piece to show first."""
        recall_window(self.window, self.window.machine)
        self.window.show()
        if tag:
            self.window.pages.open_tag(tag)
        else:
            self.window.pages.go(Go(NEEDS))
        begin_looking_after(self.window, self._office)

    def close(self) -> None:
        """Let what is under way end, where the session ended without closing the window."""
        self.window.background.close()
        if self.welcome:
            self.welcome.background.close()

    def _made(self, office: Office) -> DeskWindow:
        window = DeskWindow(office, self._look)
        recall_columns(window.pages.table, office.machine)
        window.seated.connect(self._seat)
        window.another.connect(self._ask)
        window.closing.connect(lambda: keep_window(window, office.machine))
        return window

    def _seat(self, office: Office) -> None:
        before = self.window
        at = before.pages.place_shown or GEAR
        window = self._replace(office, Go(at))
        if office.officer.id == before.officer_id:
            window.notice.tell(tr("It holds from now on."), tr("The pages were read anew."))
        else:
            window.notice.tell(tr("{name} is at the desk.", name=office.officer.name), name_words(office))

    def _replace(self, office: Office, go: Go) -> DeskWindow:
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
            self.welcome = Welcome(self._start.doors, self._start.place, self._look)
            self.welcome.opened.connect(self._open)
        self.welcome.show()
        self.welcome.raise_()

    def _open(self, office: Office) -> None:
        if self.welcome:
            self.welcome.close()
            self.welcome.deleteLater()
            self.welcome = None
        begin_looking_after(self._replace(office, Go(NEEDS)), office)


def run_desk(office: Office, tag: str, start: Start) -> int:
    """Open the window and stay until it is closed. tag: the piece to show first. Returns the exit code."""
    _application()
    look = Look(start.font_files)
    recall(look, office.machine)
    desk = OpenDesk(office, look, start)
    desk.show(tag)
    code = QApplication.exec()
    desk.close()
    return code


def run_welcome(start: Start) -> int:
    """Ask which register is to be worked on, and then open the window on it. Returns the exit code."""
    app = _application()
    look = Look(start.font_files)
    welcome, desks = Welcome(start.doors, start.place, look), list[OpenDesk]()

    def sit_down(office: Office) -> None:
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
    app = QApplication.instance() or QApplication([])
    app.setApplicationName(tr("Recovery gear register"))
    if not isinstance(app, QApplication):
        raise TypeError("the program runs without windows")
    app.setStyle("Fusion")
    speak_of_qt(app)
    gc.freeze()  # what stands by now, the rulebook above all, stays: it is never looked through for rubbish
    return app
