"""Works without a window, each from the start of its process: a command, judging, and what grows with a register."""

import gc
import os
import time
from collections.abc import Callable
from typing import Any

from tests.benchmarks.measuring.child import marks
from tests.benchmarks.measuring.child.program import LISTED, started

ROW_COUNT = 50  # of a list's first page
_AT_ONCE = 50  # dossiers read together
WHILE_S, MOST_TIMES = 1.0, 9  # that a short work is repeated


def look_after(folder: str) -> None:
    """Settle what time has changed, and let the day's proof count as made: it is made at the first start of a day."""
    app = started()
    from pathlib import Path

    from inspector.duties.judge_anew import judge_anew
    from inspector.duties.look_after import _LOOKED
    from inspector.duties.sit_down import seat

    office = seat(app.open_office(Path(folder)), "")
    judge_anew(office)
    office.machine.put(_LOOKED, f"{office.book.origin} {office.today.isoformat()}")
    office.book.close()
    marks.end("done")


def list_command(folder: str) -> None:
    """`inspector list`, to its last line."""
    marks.seen["code"] = started().main(["--register", folder, "list"])
    marks.end("done")


def bare_list(folder: str) -> None:
    """The same rows read and printed, after importing what a register is read by."""
    import sqlite3

    import sqlalchemy

    marks.seen["sqlalchemy"] = sqlalchemy.__version__
    with sqlite3.connect(os.path.join(folder, "register.db")) as connection:  # noqa: PTH118
        for row in connection.execute(LISTED):
            print("  ".join(str(cell).ljust(16) for cell in row))
    marks.end("done")


# --- judging ---


def _office(folder: str, day: int = 0) -> Any:
    """The office of a command on the register, so many days after the registers' evening."""
    from datetime import timedelta
    from pathlib import Path

    from inspector import SELDOM
    from inspector.duties.sit_down import seat
    from inspector.rulebook.load import packaged
    from tests.benchmarks.registers import office_on

    gc.set_threshold(SELDOM)  # as `main` does before any command: else this process tidies as no command ever does
    office = office_on(Path(folder), packaged())
    return seat(office.at(office.now + timedelta(days=day)))


def judge_all(folder: str) -> None:
    """Every piece that is not retired read, judged and worded; nothing is kept of it."""
    from collections import Counter

    office = _office(folder)
    from inspector.duties.judging import judged

    found: Counter[str] = Counter()
    began = time.process_time()
    with office.book.reading() as page:
        items = page.not_retired()
        for at in range(0, len(items), _AT_ONCE):
            some = [(one, office.kind(one.facts.kind)) for one in items[at : at + _AT_ONCE]]
            found.update(judged(office, one).verdict.outcome.value for one in page.dossiers(some, office.today))
    marks.seen["each_s"] = time.process_time() - began
    marks.seen["outcomes"] = dict(found)
    marks.end("done")


def bare_read(folder: str) -> None:
    """The rows that judging all reads, by the bare driver, into tuples."""
    import sqlite3

    with sqlite3.connect(os.path.join(folder, "register.db")) as connection:  # noqa: PTH118
        read = {one: connection.execute(f"SELECT * FROM {one}").fetchall() for one in _READ}
    marks.seen["rows"] = {name: len(rows) for name, rows in read.items() if rows}
    marks.end("done")


_READ = (
    "item", "inspection", "piece_use", "exposure", "opinion", "strike", "fitting", "custody", "whereabouts", "repair",
    "item_change", "quarantine", "release", "piece_call", "person", "person_change",
)  # fmt: skip

# --- a new day, and how work grows ---


def pass_some_days(folder: str) -> None:
    """Let the verdict of every fiftieth piece hold no longer than today, and all others longer; nobody times this."""
    _pass_days(folder, 50)


def pass_all_days(folder: str) -> None:
    """The same of every piece that is not retired."""
    _pass_days(folder, 1)


def _pass_days(folder: str, each: int) -> None:
    import sqlite3

    with sqlite3.connect(os.path.join(folder, "register.db")) as connection:  # noqa: PTH118
        connection.execute("UPDATE standing SET holds_until = '2027-11-25' WHERE holds_until IS NOT NULL")
        due = connection.execute(
            "WITH one AS (SELECT item_id, row_number() OVER (ORDER BY tag) - 1 AS place FROM standing)"
            " UPDATE standing SET holds_until = '2026-11-26' WHERE outcome != 'retire'"
            " AND item_id IN (SELECT item_id FROM one WHERE place % ? = 0)",
            (each,),
        )
        marks.seen["due"] = due.rowcount
    connection.close()
    marks.end("done")


def new_day(folder: str) -> None:
    """Judge what must be judged on the day after the registers' evening."""
    office = _office(folder, 1)
    marks.mark("open")
    from inspector.duties.judge_anew import judge_anew

    marks.seen["judged"] = len(judge_anew(office))
    marks.mark("done")
    office.book.close()  # as a command does at its end: else the next one finds the file's log of changes unfinished
    marks.end("done")


def list_all(folder: str) -> None:
    """The whole list in its usual order, and its first page."""
    office = _office(folder)
    from inspector.duties.gear_list import answers, rows_of
    from inspector.gear.lists import Wanted

    def ask() -> int:
        tags = answers(office, Wanted()).tags
        rows_of(office, tags[:ROW_COUNT])
        return len(tags)

    _repeated(ask)


def due_list(folder: str) -> None:
    """All that falls due."""
    office = _office(folder)
    from inspector.duties.what_falls_due import what_falls_due

    _repeated(lambda: len(what_falls_due(office)))


def verify(folder: str) -> None:
    """The whole proof."""
    office = _office(folder)
    from inspector.duties.verify_book import verify_book

    def prove() -> int:
        found = verify_book(office)
        if found.faults:
            raise RuntimeError(f"the register that is measured is not whole: {found.faults[0]}")
        return found.row_count

    _repeated(prove)


def _repeated(work: Callable[[], int]) -> None:
    """A work that may take milliseconds: again and again for a while; the median of its processor seconds is told."""
    from statistics import median

    taken: list[float] = []
    while not taken or (sum(taken) < WHILE_S and len(taken) < MOST_TIMES):
        began = time.process_time()
        marks.seen["count"] = work()
        taken.append(time.process_time() - began)
    marks.seen["each_s"] = median(taken)
    marks.end("done")


WORKS: dict[str, Callable[[str], None]] = {
    work.__name__: work
    for work in (
        look_after, list_command, bare_list, judge_all, bare_read, pass_some_days, pass_all_days, new_day,
        list_all, due_list, verify,
    )
}  # fmt: skip
