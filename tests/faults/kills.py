"""A child is killed at a random moment, and what it left is looked at.

The child is a fork of this process, so it begins at once; it tells each deed through a pipe after the deed has ended,
and whether a transaction is open in memory that both share. A kill inside one is counted, and so is one that left
pages in the write-ahead file which no commit ended.
"""

import mmap
import os
import random
import select
import shutil
import signal
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from msgspec import Struct
from sqlalchemy import Engine, event

from tests.faults.works import WORKS, Work

_IDLE, _OPEN, _COMMITS = 0, 1, 2
_INTO_COMMIT_S = 0.003
_WAL_HEADER, _FRAME_HEADER = 32, 24


class Kill(Struct, frozen=True):
    """One kill. state: of the child's transaction; loose: pages that no commit ended; deeds: how many were told."""

    work: str
    state: int
    loose: int
    deeds: int
    ended: bool


def kill(name: str, small: Path, folder: Path, dice: random.Random) -> Kill:
    """Let a child work in a fresh folder, kill it, and hold what is left against what it told, or fail."""
    work = WORKS[name]
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    work.prepare(folder, small)
    state = mmap.mmap(-1, 1)
    pid, pipe = _begin(work, folder, state)
    told = _killed(pid, pipe, _moment(dice, state, work.longest_s))
    loose = _loose_pages(folder / f"{work.file}-wal") if work.file else 0
    faults = [one for one in told if one.startswith("FAULT")]
    assert not faults, faults
    work.holds(folder, [one for one in told if one != "ready"])
    return Kill(name, state[0], loose, len(told) - 1, "END" in told)


def _begin(work: Work, folder: Path, state: mmap.mmap) -> tuple[int, int]:
    reads, writes = os.pipe()
    pid = os.fork()
    if pid:
        os.close(writes)
        return pid, reads
    try:  # the child; it never comes back from here
        os.close(reads)
        _watch(state)
        os.write(writes, b"ready\n")
        work.do(folder, lambda text: _tell(writes, text))
        time.sleep(60)  # a work that ends waits to be killed
    except BaseException:
        _tell(writes, "FAULT " + traceback.format_exc().replace("\n", " | "))
    os._exit(0)


def _tell(pipe: int, text: str) -> None:
    os.write(pipe, f"{text}\n".encode())


def _watch(state: mmap.mmap) -> None:
    def set_to(value: int) -> Callable[..., None]:
        def heard(*_: object) -> None:
            state[0] = value

        return heard

    event.listen(Engine, "begin", set_to(_OPEN))
    event.listen(Engine, "commit", set_to(_COMMITS))
    event.listen(Engine, "rollback", set_to(_IDLE))
    event.listen(Engine, "checkin", set_to(_IDLE))


def _moment(dice: random.Random, state: mmap.mmap, longest_s: float) -> Callable[[], None]:
    """When to kill: at any moment, or, every other time, within three milliseconds of the next commit's beginning."""
    after_s, in_commit, into_it_s = dice.uniform(0, longest_s), dice.random() < 0.5, dice.uniform(0, _INTO_COMMIT_S)

    def wait() -> None:
        time.sleep(after_s)
        last = time.monotonic() + longest_s
        while in_commit and state[0] != _COMMITS and time.monotonic() < last:
            time.sleep(0)
        time.sleep(into_it_s if in_commit else 0)

    return wait


def _killed(pid: int, pipe: int, moment: Callable[[], None]) -> list[str]:
    """Wait until the child works, then for the moment; kill it, and read what it told but a line that was cut off."""
    heard = os.read(pipe, 6) if select.select([pipe], [], [], 30)[0] else b""
    moment()
    os.kill(pid, signal.SIGKILL)
    os.waitpid(pid, 0)
    while more := os.read(pipe, 1 << 16):
        heard += more
    os.close(pipe)
    return heard.decode().split("\n")[:-1]


def _loose_pages(wal: Path) -> int:
    """How many pages of the write-ahead file follow its last commit."""
    data = wal.read_bytes() if wal.exists() else b""
    if len(data) < _WAL_HEADER:
        return 0
    page, salt, loose = int.from_bytes(data[8:12], "big"), data[16:24], 0
    for at in range(_WAL_HEADER, len(data), page + _FRAME_HEADER):
        frame = data[at : at + _FRAME_HEADER]
        if frame[8:16] != salt:
            break
        loose = 0 if int.from_bytes(frame[4:8], "big") else loose + 1
    return loose


def run(small: Path, folder: Path, count: int, seed: int) -> Iterator[Kill]:
    """So many kills: of three two while inspecting, the others at each other work in turn."""
    dice = random.Random(seed)
    others = [name for name in WORKS if name != "inspect"]
    for number in range(count):
        name = others[number // 3 % len(others)] if number % 3 == 2 else "inspect"
        yield kill(name, small, folder, dice)


def table(kills: list[Kill]) -> list[str]:
    """Counts, a line for each work."""
    lines = []
    for name, number in Counter(one.work for one in kills).items():
        of = [one for one in kills if one.work == name]
        lines.append(
            f"{name}: {number} kills, {sum(one.deeds for one in of)} deeds told, "
            f"{sum(one.state != _IDLE for one in of)} killed inside a transaction, "
            f"{sum(one.state == _COMMITS for one in of)} of them in its commit, "
            f"{sum(one.loose > 0 for one in of)} left pages that no commit ended"
        )
    return lines
