"""A register of a million inspections: making it, and how long list, search, record, judging and verify take in it.

python tests/benchmarks/bench_big.py ADDRESS_OR_FOLDER [inspections]

ADDRESS is that of a PostgreSQL database, for a login that may copy into it; FOLDER a folder. What is missing of so many
inspections is made first; with 0 what is there is measured as it is. How it is made, and what of it is unlike life,
stands in big_register.py. Beside each question stands how long the database took for its slowest statement.
"""

import statistics
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from msgspec import Struct

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from sqlalchemy import event, text

from inspector.duties.build_sample import build_sample
from inspector.duties.gear_list import answers, rows_of
from inspector.duties.judge_anew import judge_anew
from inspector.duties.judging import judged
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.record_use import record_use
from inspector.duties.sit_down import seat
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.duties.what_falls_due import what_falls_due
from inspector.gear.lists import Due, Order, Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.use import NewUse
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks import big_register
from tests.benchmarks.registers import EVENING, office_on

INSPECTION_COUNT = 1_000_000
_ROWS = 50  # that a window shows


class Measured(Struct, frozen=True):
    """Milliseconds: the median and the worst of all, and the slowest statement of the median's kind."""

    name: str
    median_ms: float
    worst_ms: float
    statement_ms: float
    statement: str
    count: int


def office_at(place: str, rules: Rulebook) -> Office:
    """An office on the register at an address or in a folder."""
    if "://" not in place:
        return office_on(Path(place), rules)
    return Office(open_book(place), rules, Path("documents"), Person("nobody", "nobody", ""), lambda: EVENING, "bench")


def make(place: str, rules: Rulebook, inspections: int) -> None:
    """Make the register, or go on making it: the sample, and as many copies as so many inspections take."""
    office = office_at(place, rules)
    if not people(office):
        build_sample(office)
        big_register.live_again(seat(office))
    pattern = big_register.pattern_of(office)
    big_register.check(pattern)
    count = -(-inspections // pattern.inspection_count)
    began = time.monotonic()

    def told(done: int) -> None:
        print(f"\r{done} of {count} copies, {time.monotonic() - began:,.0f} s", end="", flush=True)

    with office.book.own_connection(write=True) as connection:
        big_register.write_into(connection, pattern, count, told)
    print()
    office.book.close()


def measure(place: str, rules: Rulebook, repeats: int = 5) -> list[Measured]:
    """Each question so many times."""
    office = seat(office_at(place, rules))
    tag = next(one for one in answers(office, Wanted("SH-01-x-")).tags if not one.endswith("-x"))
    asked: dict[str, Callable[[], int]] = {
        "judge what time has changed": lambda: _none(judge_anew(office)),
        "list: all, by tag, first page": lambda: _page(office, Wanted(order=Order.TAG)),
        "list: all, by the day due, first page": lambda: _page(office, Wanted()),
        "list: on hold, the worst first": lambda: _page(office, Wanted(outcome=Outcome.HOLD, order=Order.WORST)),
        "list: overdue": lambda: _page(office, Wanted(due=Due.OVERDUE)),
        "find as one types: one letter": lambda: _page(office, Wanted("s")),
        "find as one types: a tag": lambda: _page(office, Wanted(tag.lower())),
        "find as one types: nothing there": lambda: _page(office, Wanted("zzzz")),
        "open one": lambda: len(open_item(office, tag).dossier.inspections) + len(history_of(office, tag)),
        "judge one, nothing kept": lambda: len(judged(office, open_item(office, tag).dossier).verdict.findings),
        "log a pull: judge and keep": lambda: _none(record_use(office, tag, NewUse(office.today, 1))),
        "due list": lambda: len(what_falls_due(office)),
    }
    made = [_asked(office, name, question, repeats) for name, question in asked.items()]
    office.book.close()
    return made


def _none(_: object) -> int:
    return 1


def _page(office: Office, wanted: Wanted) -> int:
    found = answers(office, wanted)
    rows_of(office, found.tags[:_ROWS])
    return len(found.tags)


def _asked(office: Office, name: str, question: Callable[[], int], repeats: int) -> Measured:
    times, statements, count = [], [("", 0.0)], 0
    for _ in range(repeats):
        with _listening(office) as heard:
            began = time.perf_counter()
            count = question()
            times.append(time.perf_counter() - began)
        statements += heard
        if times[-1] > 20:
            break  # one look is enough
    said, taken = max(statements, key=lambda one: one[1])
    return Measured(name, statistics.median(times) * 1e3, max(times) * 1e3, taken * 1e3, said, count)


@contextmanager
def _listening(office: Office) -> Iterator[list[tuple[str, float]]]:
    """What is sent to the database, and how long each answer took."""
    heard: list[tuple[str, float]] = []
    engine, began = office.book._engine, [0.0]

    def before(*_: object) -> None:
        began[0] = time.perf_counter()

    def after(_c: object, _d: object, statement: str, *_: object) -> None:
        heard.append((statement, time.perf_counter() - began[0]))

    event.listen(engine, "before_cursor_execute", before)
    event.listen(engine, "after_cursor_execute", after)
    yield heard
    event.remove(engine, "before_cursor_execute", before)
    event.remove(engine, "after_cursor_execute", after)


def sizes(place: str, rules: Rulebook) -> list[tuple[str, int, float]]:
    """Rows and megabytes of each table of a server, indexes and all, the largest first."""
    office = office_at(place, rules)
    with office.book.own_connection(write=False) as connection:
        found = connection.execute(text(
            "SELECT c.relname, c.reltuples::bigint, pg_total_relation_size(c.oid) / 1e6 FROM pg_class c"
            " WHERE c.relkind = 'r' AND c.relnamespace = current_schema()::regnamespace ORDER BY 3 DESC"
        )).all()  # fmt: skip
    office.book.close()
    return [(str(name), int(rows), float(size)) for name, rows, size in found if rows > 0]


def main(place: str, inspections: int) -> None:
    """Make what is missing of the register, and print how long what takes."""
    rules = packaged()
    if inspections:
        make(place, rules, inspections)
    for one in measure(place, rules):
        print(
            f"{one.name:40} {one.median_ms:10,.1f} ms  worst {one.worst_ms:10,.1f}"
            f"  slowest statement {one.statement_ms:10,.1f}  {one.count:,}"
        )
    began = time.monotonic()
    office = office_at(place, rules)
    found = verify_book(office)
    office.book.close()
    print(f"verify: {found.line_count:,} lines, {found.row_count:,} rows, {len(found.faults)} faults in "
          f"{time.monotonic() - began:,.0f} s")  # fmt: skip
    if "://" in place:
        for name, rows, size in sizes(place, rules)[:12]:
            print(f"{name:20} {rows:12,} rows {size:10,.0f} MB")


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else INSPECTION_COUNT)
