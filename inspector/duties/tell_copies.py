"""Tell which copies of the register there are beside it, and by what plan they are made."""

import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from msgspec import Struct

from inspector.duties.back_up import usual_folder
from inspector.duties.copy_by_plan import CopyPlan, copy_plan
from inspector.duties.office import Office
from inspector.language import tr, tr_n

_NAMED = re.compile(r"-(\d{4}-\d{2}-\d{2})-[0-9a-f]{12}\.db$")


class CopyFile(Struct, frozen=True):
    """A copy that lies beside the register, whoever made it."""

    name: str
    on: date
    size_bytes: int


class CopiesTold(Struct, frozen=True):
    """The plan, and the copies in the usual folder, the newest first."""

    plan: CopyPlan
    files: tuple[CopyFile, ...]


def copies_told(office: Office) -> CopiesTold:
    """What lies there now."""
    found = sorted(_files(usual_folder(office)), key=lambda one: (one.on, one.name), reverse=True)
    return CopiesTold(copy_plan(office), tuple(found))


def _files(folder: Path) -> Iterator[CopyFile]:
    for file in folder.glob("*.db") if folder.is_dir() else ():
        if named := _NAMED.search(file.name):
            yield CopyFile(file.name, date.fromisoformat(named[1]), file.stat().st_size)


def plan_words(plan: CopyPlan) -> str:
    """The plan in a sentence."""
    if not plan.days:
        return tr("No copy is made by itself: make one by hand after every evening's work.")
    every = tr_n(
        "A copy is made by itself every day, as the window opens, and checked by opening it.",
        "A copy is made by itself every {count} days, as the window opens, and checked by opening it.",
        plan.days,
    )
    kept = tr_n("The last one is kept.", "The last {count} are kept.", plan.last)
    months = tr_n("One is kept for a month.", "Of each of the last {count} months one is kept.", plan.months)
    return " ".join((every, kept, months) if plan.months else (every, kept))
