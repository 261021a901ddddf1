"""What a work in a process of its own tells: for each mark its moment, and the processor seconds by then.

The moment is on the clock that all processes of a machine share.
"""

import json
import os
import sys
import time

marks: dict[str, tuple[float, float]] = {}
seen: dict[str, object] = {}


def mark(name: str) -> None:
    """Note that something has come about."""
    marks.setdefault(name, (time.monotonic(), time.process_time()))


def end(name: str) -> None:
    """Note the last mark, tell all, and end at once: what the process does afterwards is nobody's concern."""
    mark(name)
    seen["peak_bytes"] = _peak_bytes()
    with open(sys.argv[3], "w", encoding="utf-8") as told:  # noqa: PTH123
        json.dump({"marks": marks, "seen": seen}, told)
    sys.stdout.flush()
    os._exit(0)


def _peak_bytes() -> int:
    """The most memory this process held; 0 where the system does not tell."""
    try:
        with open("/proc/self/status", encoding="utf-8") as lines:  # noqa: PTH123
            return next(int(line.split()[1]) * 1024 for line in lines if line.startswith("VmHWM"))
    except (OSError, StopIteration):
        return 0
