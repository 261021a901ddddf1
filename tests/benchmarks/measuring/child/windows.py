"""The program's window and a bare one, from the start of their process to their first paint and their first rows."""

import os
from collections.abc import Callable
from types import ModuleType
from typing import Any

from tests.benchmarks.measuring.child.marks import end, mark, marks, seen
from tests.benchmarks.measuring.child.program import LISTED, AfterImport, started

ROW_COUNT = 50  # that the bare window reads
_GO_AGAIN_MS = 2


def _watch_windows(painted: Callable[[Any], None]) -> None:
    """Call painted(window) in the first turn of the loop after a main window was painted for the first time."""

    def watch(widgets: ModuleType) -> None:
        from PySide6.QtCore import QEvent, QObject, QTimer

        class Filter(QObject):
            def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
                if event.type() is QEvent.Type.Paint:
                    widgets.QApplication.instance().removeEventFilter(self)
                    seen["window"] = type(self.parent()).__name__
                    QTimer.singleShot(0, lambda: painted(self.parent()))
                return False

        class Watched(widgets.QMainWindow):  # type: ignore[name-defined, misc]
            def showEvent(self, event: Any) -> None:  # noqa: N802
                super().showEvent(event)
                widgets.QApplication.instance().installEventFilter(Filter(self))

        widgets.QMainWindow = Watched  # type: ignore[attr-defined]

    AfterImport("PySide6.QtWidgets", watch)


def window(folder: str) -> None:
    """The program's window: its first paint; then the list is gone to, until its first rows are there."""
    has_rows: list[bool] = []

    def painted(shown: Any) -> None:
        mark("painted")
        go_to_list(shown)
        if has_rows:
            end("usable")

    def go_to_list(shown: Any) -> None:
        from PySide6.QtCore import QTimer

        if (pages := getattr(shown, "pages", None)) is None:
            QTimer.singleShot(_GO_AGAIN_MS, lambda: go_to_list(shown))
            return
        from inspector.desk.place import Go
        from inspector.desk.places import GEAR

        pages.go(Go(GEAR))

    def watch(module: ModuleType) -> None:
        from PySide6.QtCore import QTimer

        show = module.GearModel.show_list

        def show_list(self: Any, tags: Any, pages: Any, *more: Any) -> None:
            show(self, tags, pages, *more)
            if tags and pages:
                QTimer.singleShot(0, turned)

        def turned() -> None:
            has_rows.append(True)
            if "painted" in marks:
                end("usable")

        module.GearModel.show_list = show_list

    _watch_windows(painted)
    AfterImport("inspector.desk.gear_model", watch)
    started().main(["--register", folder, "window"])
    raise RuntimeError("the window closed by itself")


def bare_window(folder: str) -> None:
    """A bare window with an empty table: its first paint; then some rows are read by the bare driver."""
    import sqlite3

    def painted(_: Any) -> None:
        mark("painted")
        with sqlite3.connect(os.path.join(folder, "register.db")) as connection:  # noqa: PTH118
            connection.execute(f"{LISTED} LIMIT {ROW_COUNT}").fetchall()
        QTimer.singleShot(0, lambda: end("usable"))

    _watch_windows(painted)
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication, QMainWindow, QTableWidget

    app, made = QApplication([]), QMainWindow()
    made.setCentralWidget(QTableWidget(0, 7))
    made.resize(1280, 720)
    made.show()
    app.exec()


WORKS: dict[str, Callable[[str], None]] = {"window": window, "bare_window": bare_window}
