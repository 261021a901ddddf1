"""Keeps what a form holds as a draft: a second after the last key, in the worker, one write at a time.

A form makes one keeper, calls `look` when it opens, `touch` at every change, `flush` when it is hidden, `hold` before
it saves, `resume` where saving was refused, and `forget` when what was typed is thrown away.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress

from PySide6.QtCore import QObject, QTimer, Signal

from inspector.desk.alive import while_alive
from inspector.desk.background import Background
from inspector.duties.keep_draft import Draft, forget, keep, kept
from inspector.duties.office import Office
from inspector.refused import Refused

_AFTER_MS = 1000

Values = Mapping[str, object]


class DraftKeeper(QObject):
    """found: the draft that was there when `look` was called. refused: a draft could not be kept, told once."""

    found = Signal(object)
    refused = Signal(object)

    def __init__(
        self, office: Office, key: str, background: Background, values: Callable[[], Values | None], parent: QObject
    ) -> None:
        """values: what the form holds, as JSON can hold it; None while nothing is written in it."""
        super().__init__(parent)
        self._office, self.key, self._background, self._values = office, key, background, values
        self._timer = QTimer(self, singleShot=True, interval=_AFTER_MS)
        self._timer.timeout.connect(self._keep)
        self._is_busy = self._is_held = self._again = self._told = False
        self._then: Callable[[], object] | None = None

    def look(self) -> None:
        """Ask for the draft that is there; `found` tells of it."""
        self._background.run(kept, self._office, self.key, done=while_alive(self, self._looked), failed=lambda _: None)

    def touch(self) -> None:
        """Something changed."""
        if not self._is_held:
            self._timer.start()

    def flush(self) -> None:
        """Keep what waits to be kept here and now: the window may be closing, and no worker outlives it."""
        if not self._timer.isActive():
            return
        self._timer.stop()
        with suppress(Refused, RuntimeError):  # nobody is there to be told; or the fields are torn down already
            if (values := self._values()) is None:
                forget(self._office, self.key)
            else:
                keep(self._office, self.key, values)

    def hold(self, then: Callable[[], object]) -> None:
        """Keep nothing more, and go on once no write is under way."""
        self._timer.stop()
        self._is_held = True
        if self._is_busy:
            self._then = then
        else:
            then()

    def resume(self) -> None:
        """Keep again what changes, and what stands there now."""
        self._is_held = False
        self.touch()

    def forget(self, then: Callable[[], object]) -> None:
        """Throw the draft away, then go on."""
        self.hold(lambda: self._forget(then))

    def _forget(self, then: Callable[[], object]) -> None:
        self._background.run(forget, self._office, self.key, done=lambda _: then(), failed=lambda _: then())

    def _looked(self, draft: Draft | None) -> None:
        if draft:
            self.found.emit(draft)

    def _keep(self) -> None:
        if self._is_busy:
            self._again = True
            return
        values = self._values()
        self._is_busy = True
        done, failed = while_alive(self, self._done), while_alive(self, self._failed)
        if values is None:
            self._background.run(forget, self._office, self.key, done=done, failed=failed)
        else:
            self._background.run(keep, self._office, self.key, values, done=done, failed=failed)

    def _done(self, _: None) -> None:
        self._is_busy = False
        again, self._again = self._again, False
        then, self._then = self._then, None
        if then:
            then()
        elif again:
            self.touch()

    def _failed(self, refusal: Refused) -> None:
        if not self._told:
            self._told = True  # once: a full disk is not told at every key
            self.refused.emit(refusal)
        self._done(None)
