"""Whoever is killed loses nothing that was told as done. `python -m tests.faults.run kills 500` kills many more."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.faults.works import WORKS

HERE = Path(__file__).resolve().parents[2]


def test_kills_lose_nothing_that_was_told_as_done() -> None:
    """In a process of its own: a fork of one with Qt and threads in it is no clean child."""
    command = [sys.executable, "-m", "tests.faults.run", "kills", "6", "3"]
    done = subprocess.run(command, cwd=HERE, capture_output=True, text=True, check=False, timeout=120)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "inspect: 4 kills" in done.stdout


@pytest.mark.parametrize("lost", ["a told deed", "half a deed"])
def test_a_loss_would_be_found(small: Path, lost: str) -> None:
    """The check itself, on a folder where something is missing."""
    folder = small.parent
    with pytest.raises(AssertionError):
        if lost == "a told deed":
            WORKS["inspect"].holds(folder, ["deed 0"])
        else:
            data = bytearray(small.read_bytes())
            at = data.rindex(b'"bow_diameter"')
            data[at : at + 4] = b"xxxx"
            small.write_bytes(bytes(data))
            WORKS["inspect"].holds(folder, [])
