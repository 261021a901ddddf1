"""Rubbish is collected in the window's own thread alone.

Python collects it in whichever thread happens to make something. Where a worker does, it takes parts of the window
apart while the window itself may be doing so: each waits for the other for ever, or the program dies.
"""

import gc
from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer

_DUE = (700, 10, 10)  # Python's own measure: new objects, and how often the younger ones were looked through
_PAUSE_MS = 100
_TURNS = 10  # a second
_holders = 0


class Tidying(QObject):
    """While one of them is at work Python collects nothing by itself, and this thread does, a little at a time.

    is_idle: whether no work is under way. Only after a second without any is all looked through, which may take a tenth
    of a second; what was just made, only where work takes longer than a second. So nobody who types waits for it.
    """

    def __init__(self, parent: QObject, is_idle: Callable[[], bool]) -> None:
        super().__init__(parent)
        self._is_over = False
        _hold(1)
        self._pause = QTimer(self, interval=_PAUSE_MS)
        self._is_idle, self._calm, self._busy = is_idle, 0, 0
        self._pause.timeout.connect(self._tidy)
        self._pause.start()

    def _tidy(self) -> None:
        idle = self._is_idle()
        self._calm, self._busy = (self._calm + 1, 0) if idle else (0, self._busy + 1)
        if max(self._calm, self._busy) >= _TURNS:
            collect_some(whole=idle)

    def end(self) -> None:
        """Nobody works in another thread any more: Python may collect by itself again."""
        if not self._is_over:
            self._is_over = True
            self._pause.stop()
            _hold(-min(_holders, 1))


def collect_some(*, whole: bool) -> None:
    """What was made last; whole: the oldest generation that is due by Python's own measure, and those younger."""
    due = [count > limit for count, limit in zip(gc.get_count(), _DUE, strict=True)]
    for generation in (2, 1, 0) if whole else (0,):
        if due[generation]:
            gc.collect(generation)
            return


def holders() -> int:
    """How many are at work now."""
    return _holders


def _hold(count: int) -> None:
    global _holders  # noqa: PLW0603 - a process has one collector
    _holders += count
    if _holders:
        gc.disable()
    else:
        gc.enable()


def forget_holders() -> None:
    """Let Python collect by itself again, whoever still holds it; for the end of a session and of a test."""
    _hold(-_holders)
