"""What is made once a run: by one worker, whole before another takes it, and missed aloud where it failed."""

import os
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from tests import once
from tests.once import NotMadeError


@pytest.fixture(autouse=True)
def run(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """The folder of a run of its own."""
    monkeypatch.setenv(once.FOLDER, str(tmp_path))
    return tmp_path


def test_of_many_who_ask_one_makes_it_and_all_are_given_the_whole() -> None:
    made, given = [], []

    def make(place: Path) -> str:
        made.append(place)
        (place / "file").write_text("half", encoding="utf-8")
        waiting.wait(0.2)
        (place / "file").write_text("whole", encoding="utf-8")
        return str(place / "file")

    waiting = threading.Event()
    asking = [
        threading.Thread(target=lambda: given.append(Path(once.once("thing", make)).read_text(encoding="utf-8")))
        for _ in range(5)
    ]
    for one in asking:
        one.start()
    for one in asking:
        one.join()
    assert len(made) == 1 and given == ["whole"] * 5


def test_things_of_two_names_are_two() -> None:
    assert [once.once(name, lambda place: place.name) for name in ("one", "two", "one")] == ["one", "two", "one"]


def test_where_it_failed_everybody_is_told_why_and_nobody_tries_again() -> None:
    def fail(_: Path) -> str:
        raise OSError("the disk is full")

    with pytest.raises(OSError, match="the disk is full"):
        once.once("thing", fail)
    with pytest.raises(NotMadeError, match="the disk is full"):
        once.once("thing", lambda _: "made")


def test_nobody_waits_for_a_worker_that_has_ended(run: Path) -> None:
    ended = subprocess.run([sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, check=True)
    (run / "thing").mkdir()
    (run / "thing" / "maker").write_text(str(int(ended.stdout)), encoding="utf-8")
    with pytest.raises(NotMadeError, match="ended before it was done"):
        once.once("thing", lambda _: "made")


def test_who_waits_too_long_is_told_for_what(run: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(once, "_PATIENCE_S", 0.1)
    (run / "thing").mkdir()
    (run / "thing" / "maker").write_text(str(os.getpid()), encoding="utf-8")
    with pytest.raises(NotMadeError, match="“thing” and was not done"):
        once.once("thing", lambda _: "made")
