"""What takes long to make and is only copied or asked afterwards is made once a run of the tests, not once a worker.

The run has a folder, made before any worker begins and removed at the end. Who needs a thing first makes it there, the
others wait until it is whole. A run that was killed cannot remove its folder; the next run does.
"""

import os
import shutil
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

FOLDER = "REGISTER_TESTS_RUN"  # in the environment: the folder of this run
MADE = "register-tests-run-"
_PATIENCE_S = 600
_LOOK_AGAIN_S = 0.05


class NotMadeError(Exception):
    """A thing was not made; the reason, as the worker gave it who tried."""


def once(name: str, make: Callable[[Path], str]) -> str:
    """What `make` said when it made this thing in its folder, whichever worker called it; nobody makes it again.

    Raises whatever `make` raises, and NotMadeError with the same words in every worker that comes later.
    """
    place = Path(os.environ[FOLDER]) / name
    try:
        place.mkdir()
    except FileExistsError:
        return _made_elsewhere(place)
    write_whole(place / "maker", str(os.getpid()))
    try:
        said = make(place)
    except BaseException as reason:
        write_whole(place / "failed", str(reason) or repr(reason))
        raise
    write_whole(place / "ready", said)
    return said


def _made_elsewhere(place: Path) -> str:
    """Wait for another worker, as long as it lives."""
    until = time.monotonic() + _PATIENCE_S
    while time.monotonic() < until:
        alive = _maker_lives(place)  # asked first: it may be done and gone a moment later
        if (failed := place / "failed").exists():
            raise NotMadeError(failed.read_text(encoding="utf-8"))
        if (ready := place / "ready").exists():
            return ready.read_text(encoding="utf-8")
        if not alive:
            raise NotMadeError(f"The worker that began to make “{place.name}” ended before it was done.")
        time.sleep(_LOOK_AGAIN_S)
    raise NotMadeError(f"Another worker began to make “{place.name}” and was not done in {_PATIENCE_S} s.")


def _maker_lives(place: Path) -> bool:
    maker = place / "maker"
    return not maker.exists() or lives(int(maker.read_text(encoding="utf-8")))


def write_whole(file: Path, words: str) -> None:
    """Write so that nobody reads half of it, and nobody else reads it at all."""
    begun = file.with_suffix(".begun")
    begun.touch(mode=0o600)
    begun.write_text(words, encoding="utf-8")
    begun.rename(file)


def begin_run() -> None:
    """Make the folder of this run for all of its workers; nothing is in it yet."""
    folder = Path(tempfile.mkdtemp(prefix=f"{MADE}{os.getpid()}-"))
    folder.chmod(0o711)  # the own user of a server in it must get through
    os.environ[FOLDER] = str(folder)


def end_run() -> None:
    """Remove the folder of this run, where one was begun."""
    if (place := os.environ.pop(FOLDER, None)) is not None:
        shutil.rmtree(place, ignore_errors=True)


def killed_runs() -> Iterator[Path]:
    """The folders of runs whose process is no more."""
    for folder in Path(tempfile.gettempdir()).glob(f"{MADE}*"):
        if not lives(int(folder.name.removeprefix(MADE).split("-")[0])):
            yield folder


def lives(process: int) -> bool:
    """Whether a process of this machine has not ended; True where that cannot be asked."""
    if os.name == "nt":  # there a signal of 0 would end it
        return True
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True
