"""Windows on one register stay in step: what another one wrote is seen here a few seconds later."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from inspector.desk.background import Background
from inspector.refused import Refused

if TYPE_CHECKING:
    from inspector.duties.in_step import Stand
    from inspector.duties.office import Office

_PAUSE_MS = 3000


class InStep(QObject):
    """changed: somebody else wrote into the register."""

    changed = Signal()

    def __init__(self, office: "Office", background: Background, parent: QObject) -> None:
        super().__init__(parent)
        self._office, self._background = office, background
        self._stand: Stand | None = None
        self._pause = QTimer(self, interval=_PAUSE_MS)
        self._pause.timeout.connect(self.look)
        self._pause.start()

    def look(self) -> None:
        """Look how far the ledger is, unless something is under way: that may be a deed of this window."""
        if not self._background.is_idle:
            return
        self._background.run(_looked, self._office, self._stand, done=self._told, failed=self._wait)

    def end(self) -> None:
        """Look no more."""
        self._pause.stop()

    def _told(self, now: "Stand") -> None:
        self._stand = now
        if now.others:
            self.changed.emit()

    def _wait(self, _: Refused) -> None:
        """A register that is being written to is looked at the next time."""


def _looked(office: "Office", stand: "Stand | None") -> "Stand":
    """How far the ledger is now."""
    from inspector.duties.in_step import begun, gone_on

    return begun(office) if stand is None else gone_on(office, stand)
