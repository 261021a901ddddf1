"""The door to the worker: results come back in the window's thread, and no thread is left behind."""

import gc
import logging
import threading
from pathlib import Path
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from inspector.desk.background import Background
from inspector.refused import Refused

_TASKS = Path("/proc/self/task")


def thread_count() -> int:
    """How many threads the system runs for this process."""
    return sum(1 for _ in _TASKS.iterdir())


def _refuse() -> None:
    raise Refused("tag", "It is taken.", "Choose another.")


def _break() -> None:
    raise ZeroDivisionError("nobody foresaw this")


def _never(value: object) -> None:
    raise AssertionError(f"called with {value}")


def test_a_deed_runs_elsewhere_and_its_result_arrives_here(qtbot: QtBot) -> None:
    """The deed has a thread of its own; `done` has the window's."""
    background = Background()
    seen: list[Any] = []
    here = threading.get_ident()
    background.run(threading.get_ident, done=lambda worker: seen.append((worker, threading.get_ident())), failed=_never)
    qtbot.waitUntil(lambda: bool(seen))
    background.close()
    worker, delivered = seen[0]
    assert worker != here
    assert delivered == here


def test_a_refusal_is_handed_to_failed(qtbot: QtBot) -> None:
    """A Refused arrives whole."""
    background = Background()
    seen: list[Any] = []
    background.run(_refuse, done=_never, failed=seen.append)
    qtbot.waitUntil(lambda: bool(seen))
    background.close()
    assert seen[0].what_to_do == "Choose another."


def test_an_unforeseen_failure_is_logged_and_told_gently(qtbot: QtBot, caplog: pytest.LogCaptureFixture) -> None:
    """The officer gets a sentence, the log gets the trace."""
    background = Background()
    seen: list[Any] = []
    with caplog.at_level(logging.ERROR, logger="inspector.desk.background"):
        background.run(_break, done=_never, failed=seen.append)
        qtbot.waitUntil(lambda: bool(seen))
    background.close()
    assert "ZeroDivisionError" in caplog.text
    assert isinstance(seen[0], Refused)
    assert "ZeroDivisionError" not in str(seen[0])


def test_what_is_going_on_is_told_and_then_no_more(qtbot: QtBot) -> None:
    """The words of a long deed show while it lasts."""
    background = Background()
    told: list[Any] = []
    background.busy_changed.connect(told.append)
    background.run(lambda: None, done=lambda _nothing: None, failed=_never, says="Printing…")
    qtbot.waitUntil(lambda: background.is_idle)
    background.close()
    assert told == ["Printing…", ""]


def test_nothing_is_delivered_after_closing(qtbot: QtBot) -> None:
    """A window that is closed gets no late answers, and closing waits for the deed to end."""
    background, ended = Background(), threading.Event()
    hold = threading.Event()

    def deed() -> None:
        hold.wait(5)
        ended.set()

    background.run(deed, done=_never, failed=_never)
    hold.set()
    background.close()
    assert ended.is_set()
    qtbot.wait(20)  # an answer under way would arrive now
    assert background.is_idle


@pytest.mark.skipif(not _TASKS.is_dir(), reason="counts threads as Linux lists them")
def test_no_thread_is_left_after_closing(qtbot: QtBot) -> None:
    """The pool's threads end with it."""
    before = thread_count()
    background = Background()
    seen: list[Any] = []
    background.run(threading.get_ident, done=seen.append, failed=_never)
    qtbot.waitUntil(lambda: bool(seen))
    assert thread_count() > before
    background.close()
    qtbot.waitUntil(lambda: thread_count() == before)


class _Knot:
    """Rubbish that only a collector finds."""

    def __init__(self) -> None:
        self.me = self


def test_no_worker_ever_collects_rubbish_and_the_window_does(qtbot: QtBot) -> None:
    """Parts of the window that a worker takes apart stop both for ever."""
    before = gc.isenabled()
    background = Background()
    threads: list[int] = []
    watch = threading.get_ident()

    def noted(phase: str, _info: dict[str, int]) -> None:
        if phase == "start":
            threads.append(threading.get_ident())

    def littering() -> bool:
        for _ in range(20_000):
            _Knot()
        return gc.isenabled()

    gc.callbacks.append(noted)
    enabled: list[bool] = []
    try:
        background.run(littering, done=enabled.append, failed=_never)
        qtbot.waitUntil(lambda: bool(enabled) and bool(threads))
    finally:
        gc.callbacks.remove(noted)
        background.close()

    assert enabled == [False]
    assert set(threads) == {watch}
    assert gc.isenabled() is before


def test_two_windows_share_the_collector_and_the_last_one_gives_it_back(qtbot: QtBot) -> None:
    """Where somebody else sits down, two windows are open for a moment."""
    one, other = Background(), Background()
    one.close()
    assert not gc.isenabled()
    one.close()  # a second time changes nothing
    assert not gc.isenabled()
    other.close()
    assert gc.isenabled()


def test_what_is_asked_after_the_end_is_not_done(qtbot: QtBot) -> None:
    background, did = Background(), list[str]()
    background.close()
    background.run(did.append, "late", done=lambda _: None, failed=lambda _: None)
    qtbot.wait(20)
    assert did == [] and background.is_idle
