"""Which copies of the register a rotation lets go: of many of one month one is enough."""

import re
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from msgspec import Struct

STEM = "planned"  # what the names of copies by the plan begin with; no other file is ever looked at
_NAMED = re.compile(rf"^{STEM}-(\d{{4}}-\d{{2}}-\d{{2}})-([0-9a-f]{{12}})\.db$")


class PlannedCopy(Struct, frozen=True):
    """A copy that the plan made, by its name."""

    file: Path
    on: date


def planned_copies(folder: Path) -> tuple[PlannedCopy, ...]:
    """The copies in a folder that are named as the plan names them, the newest first."""
    found = [(one, _NAMED.match(one.name)) for one in folder.glob(f"{STEM}-*.db")] if folder.is_dir() else []
    copies = [PlannedCopy(file, day) for file, name in found if name and (day := _day(name[1])) and file.is_file()]
    return tuple(sorted(copies, key=lambda one: (one.on, one.file.stat().st_mtime_ns), reverse=True))


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def to_go(copies: Sequence[PlannedCopy], last: int, months: int) -> tuple[PlannedCopy, ...]:
    """Those that neither are among the last nor are the newest of one of so many months. copies: the newest first.

    The newest copy of all is never among them.
    """
    kept = set(copies[: max(last, 1)])
    newest_of: dict[tuple[int, int], PlannedCopy] = {}
    for one in copies:
        newest_of.setdefault((one.on.year, one.on.month), one)
    kept |= set(list(newest_of.values())[:months])
    return tuple(one for one in copies if one not in kept)
