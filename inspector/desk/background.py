"""The only door to a worker thread: a deed goes in, its result comes back in the window's own thread."""

from collections.abc import Callable
from contextlib import suppress
from functools import partial
from itertools import count
from time import monotonic
from typing import TYPE_CHECKING, Any, ParamSpec, TypeVar

from msgspec import Struct
from msgspec.structs import replace
from PySide6.QtCore import QObject, QRunnable, Qt, QThreadPool, QTimer, Signal, Slot

from inspector.desk.tidying import Tidying
from inspector.language import tr
from inspector.refused import Refused

if TYPE_CHECKING:
    from inspector.duties.office import Office, Told

Given = ParamSpec("Given")
Result = TypeVar("Result")
_PAUSE_S = 0.05


class _Ended(Struct, frozen=True):
    """How a deed ended: its number, and what to call with what."""

    number: int
    call: Callable[[Any], object]
    value: object


class _Job(QRunnable):
    """One deed. It touches nothing of Qt but the signal that reports its end."""

    def __init__(self, deed: Callable[[], _Ended], report: Callable[[_Ended], None]) -> None:
        super().__init__()
        self._deed, self._report = deed, report

    def run(self) -> None:
        """Do the deed; called by the pool in a thread of its own."""
        ended = self._deed()
        with suppress(RuntimeError):  # the window was torn down meanwhile: nobody waits for the result any more
            self._report(ended)


class Progress(QObject):
    """How far long work has come. moved: how many of how many, in the window's thread.

    `told` is given to the deed, which calls it from its worker; once stopped, the deed ends at its next step.
    """

    moved = Signal(int, int)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._is_stopped = False
        self._told_at = 0.0

    def stop(self) -> None:
        """End the work at its next step."""
        self._is_stopped = True

    def told(self, done: int, total: int) -> None:
        """Called by the deed after each step. Not each is shown: a thousand in a second would hold the window up."""
        if self._is_stopped:
            raise Refused(tr("work"), tr("It was stopped before it was done."), tr("Begin it again."))
        now = monotonic()
        if now - self._told_at >= _PAUSE_S or done == total:
            self._told_at = now
            with suppress(RuntimeError):  # the window was torn down meanwhile
                self.moved.emit(done, total)


class Background(QObject):
    """Runs deeds. busy_changed: what is going on, in words; empty when nothing is.

    long_begun: the progress of a deed that can be stopped, begun now; long_ended: that it ended, however it did.
    """

    busy_changed = Signal(str)
    long_begun = Signal(object)
    long_ended = Signal()
    _ended = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(2)  # a search need not wait for a print
        self._numbers = count()
        self._going: dict[int, str] = {}
        self._next: list[Callable[[], object]] = []
        self._closed = False
        self._tidying = Tidying(self, lambda: self.is_idle)
        self._ended.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    def progress(self) -> Progress:
        """The progress of one deed that takes long; closing stops it."""
        return Progress(self)

    def run(
        self,
        deed: Callable[..., Result],
        *given: object,
        done: Callable[[Result], object],
        failed: Callable[[Refused], object],
        says: str = "",
    ) -> None:
        """Do `deed(*given)` in a worker. done gets its result, failed its refusal; both in the window's thread.

        says: what is going on, for the status bar; empty for a deed too short to tell. Once closed, it does nothing.
        """
        if self._closed:
            return
        number = next(self._numbers)
        self._going[number] = says
        self._pool.start(_Job(lambda: _attempt(number, deed, given, done, failed), self._ended.emit))
        self._tell()

    def run_long(
        self,
        deed: Callable[..., Result],
        office: "Office",
        *given: object,
        done: Callable[[Result], object],
        failed: Callable[[Refused], object],
        says: str,
    ) -> None:
        """Do `deed(office, *given)` in a worker; it calls office.told after each step and can be stopped there."""
        progress = self.progress()
        given = (replace(office, told=progress.told), *given)
        self._run_long(progress, deed, given, done=done, failed=failed, says=says)

    def run_told(
        self,
        deed: "Callable[[Told], Result]",
        *,
        done: Callable[[Result], object],
        failed: Callable[[Refused], object],
        says: str,
    ) -> None:
        """Do `deed(told)` in a worker, where there is no office yet; it calls told after each step."""
        progress = self.progress()
        self._run_long(progress, deed, (progress.told,), done=done, failed=failed, says=says)

    def _run_long(
        self,
        progress: Progress,
        deed: Callable[..., Result],
        given: tuple[object, ...],
        *,
        done: Callable[[Result], object],
        failed: Callable[[Refused], object],
        says: str,
    ) -> None:
        def ended(call: Callable[[Any], object], value: object) -> None:
            progress.deleteLater()
            self.long_ended.emit()
            call(value)

        self.long_begun.emit(progress)
        self.run(deed, *given, done=partial(ended, done), failed=partial(ended, failed), says=says)

    def when_idle(self, call: Callable[[], object]) -> None:
        """Call this in the window's thread as soon as nothing is under way, one after the other."""
        self._next.append(call)
        QTimer.singleShot(0, self, self._go_on)

    def _go_on(self) -> None:
        if self._next and self.is_idle and not self._closed:
            self._next.pop(0)()
            QTimer.singleShot(0, self, self._go_on)

    @property
    def is_idle(self) -> bool:
        """Whether nothing is under way and every result has been delivered."""
        return not self._going

    def close(self) -> None:
        """Let running deeds end, drop the waiting ones, deliver nothing more. No thread is left afterwards."""
        self._closed = True
        self._pool.clear()
        for one in self.findChildren(Progress):
            one.stop()
        self._pool.waitForDone()
        self._tidying.end()
        self._going.clear()

    @Slot(object)
    def _deliver(self, ended: _Ended) -> None:
        """What the result puts into the window is shown in its next turn; until then the work is not over."""
        if self._closed:
            return
        QTimer.singleShot(0, self, partial(self._end, ended.number))
        ended.call(ended.value)

    def _end(self, number: int) -> None:
        if self._going.pop(number, None) is not None and not self._closed:
            self._tell()
            self._go_on()

    def _tell(self) -> None:
        self.busy_changed.emit(next((says for says in self._going.values() if says), ""))


def _attempt(
    number: int,
    deed: Callable[..., object],
    given: tuple[object, ...],
    done: Callable[[Any], object],
    failed: Callable[[Refused], object],
) -> _Ended:
    """The deed with whatever comes of it. Nothing escapes: a worker has nobody above it to catch."""
    try:
        from inspector.duties.disturbed import undisturbed  # with what it needs, which a window waits for no longer

        return _Ended(number, done, undisturbed(deed, *given))
    except Refused as refusal:
        return _Ended(number, failed, refusal)
    except Exception:
        import logging

        logging.getLogger(__name__).exception("a deed failed in a way nobody foresaw")
        return _Ended(number, failed, unforeseen())


def unforeseen() -> Refused:
    """The gentle message for a failure of the program's own."""
    why = tr("Something went wrong that the program did not foresee. Nothing was half done.")
    return Refused(tr("program"), why, tr("What you typed still stands. Do it again; if it stays, note what you did."))
