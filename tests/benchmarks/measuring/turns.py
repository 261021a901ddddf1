"""Works in processes of their own, taking turns, so that whatever else the machine does weighs on all of them."""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path
from statistics import median
from typing import Any

from msgspec import Struct

from tests.benchmarks.measuring.table import Bar, Row

_HERE = Path(__file__).resolve().parents[3]
_CHILD = "tests.benchmarks.measuring.child"
_PATIENCE_S = 3600


class Seen(Struct, frozen=True):
    """What a process told. wall_s: seconds from its start to each mark; work_s: of processor time; more: what else."""

    wall_s: dict[str, float]
    work_s: dict[str, float]
    more: dict[str, Any]


def in_turns(works: Sequence[tuple[str, Path]], runs: int, warm: bool = True) -> list[list[Seen]]:
    """Each work with its folder so many times, one after the other in every round.

    warm: a round before them that does not count; it compiles what is imported and brings files into memory.
    """
    if warm:
        for name, folder in works:
            once(name, folder)
    found: list[list[Seen]] = [[] for _ in works]
    for _ in range(runs):
        for of_work, (name, folder) in zip(found, works, strict=True):
            of_work.append(once(name, folder))
    return found


def once(name: str, folder: Path) -> Seen:
    """One work in a new process. Raises RuntimeError with what it said where it ended in another way."""
    with tempfile.TemporaryDirectory() as aside:
        told, said = Path(aside) / "told", Path(aside) / "said"
        command = [sys.executable, "-m", _CHILD, name, str(folder.resolve()), str(told)]
        with said.open("wb") as errors:
            began = time.monotonic()
            places: dict[str, Any] = {"cwd": _HERE, "env": _environment(folder.resolve())}
            subprocess.run(
                command, stdout=subprocess.DEVNULL, stderr=errors, check=False, timeout=_PATIENCE_S, **places
            )
        if not told.exists():
            raise RuntimeError(f"{name} told nothing: {said.read_text('utf-8', 'replace')[-2000:]}")
        found = json.loads(told.read_text("utf-8"))
    marks = found["marks"].items()
    return Seen({k: at - began for k, (at, _) in marks}, {k: work for k, (_, work) in marks}, found["seen"])


def _environment(folder: Path) -> dict[str, str]:
    """That of this process, but with the machine's settings beside the register.

    Byte code is there as in any installation; where none may be written beside the source, it lies by the registers.
    """
    beside = folder / "beside"
    kept = {key: text for key, text in os.environ.items() if key not in ("PYTHONDONTWRITEBYTECODE", "PYTHONPATH")}
    own = {f"XDG_{name}_HOME": str(beside / name) for name in ("CONFIG", "DATA", "STATE")}
    own |= {"LANGUAGE": "en", "TZ": "UTC"}
    if os.environ.get("PYTHONDONTWRITEBYTECODE"):
        own["PYTHONPYCACHEPREFIX"] = str(folder.parent / "bytecode")
    return {"QT_QPA_PLATFORM": "offscreen"} | kept | own


def middle(found: Sequence[Seen], name: str, *, since: str = "", work: bool = False) -> float:
    """The median seconds to a mark, from the start or since another mark. work: of processor time, not by the clock."""
    marks = [one.work_s if work else one.wall_s for one in found]
    return median(one[name] - (one[since] if since else 0) for one in marks)


def row_of(
    name: str, seen: tuple[list[Seen], list[Seen], str], beside: str, bar: Bar, note: str = "", since: str = ""
) -> Row:
    """What a work took up to a mark beside a bare one, by the clock. seen: of the work, of the bare one; the mark.

    since: another mark of both, from which it is counted.
    """
    ours, bare, mark = seen
    by_clock, of_work = (
        [middle(each, mark, since=since, work=work) for each in (ours, bare)] for work in (False, True)
    )
    told = f"of processor time {of_work[0]:.3f} s against {of_work[1]:.3f} s"
    return Row(
        what=name,
        unit="s",
        figure=by_clock[0],
        baseline=by_clock[1],
        beside=beside,
        bar=bar,
        work_ratio=of_work[0] / of_work[1],
        runs=len(ours),
        note=f"{told}; {note}" if note else told,
    )
