"""How long the gear list takes at 100,000 pieces: finding as one types, filters, orders, pages, and the window itself.

python tests/benchmarks/bench_gear_list.py [pieces]

The pieces of the sample are written into the tables again and again under other tags, makers, owners and places, with
loans, exposures and what was sold. Beside each time stands that of SQLite alone for the same rows in the same order,
asked through the bare driver; for the window, how long each turn of its own thread's loop took, and how much of that it
worked itself: it also waits for the worker and for other work on the machine.
"""

import os
import random
import sqlite3
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date, timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QApplication

from inspector.desk.background import Background
from inspector.desk.gear_table import GearTable
from inspector.desk.look import Look
from inspector.duties.gear_list import answers, choices, rows_of
from inspector.duties.office import Office
from inspector.gear.custody import Hands, NewCustody
from inspector.gear.item import NewItem
from inspector.gear.lists import Due, Exposed, Held, Order, Owned, Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.register.rows import from_body, new_id, to_body
from inspector.rulebook.load import Rulebook, packaged
from tests.benchmarks.registers import office_on, sample_in

PIECE_COUNT = 100_000
BAR_RATIO, BAR_MS = 2.0, 16.0
_NOTHING_MS = 0.05  # a turn of the loop in which nothing happened
_OWNERS = ("club", "club", "club", "Nell Hobbery", "Ada Officer", "Ruben Tolle", "Iris Quade")
_MAKERS = ("", "Halden", "Orrin & Vale", "Tessler", "Brackwater", "Umbra")
_SAY = ("outcome", "headline", "holds_until", "unloosened", "basis", "rated", "inspected_on", "exposed", "vehicle")
_WANTED = {
    "all, by the day due": Wanted(),
    "all, by tag": Wanted(order=Order.TAG),
    "all, the worst first": Wanted(order=Order.WORST),
    "all, by kind": Wanted(order=Order.KIND),
    "all, by place": Wanted(order=Order.PLACE),
    "one letter": Wanted("s"),
    "a word in many": Wanted("shackle"),
    "a word in few": Wanted("brackwater hook-77"),
    "nothing found": Wanted("zzzz"),
    "on hold": Wanted(outcome=Outcome.HOLD),
    "on loan": Wanted(held=Held.ON_LOAN),
    "in store": Wanted(held=Held.IN_STORE),
    "overdue, the club's, salt": Wanted(owned=Owned.CLUB, due=Due.OVERDUE, exposed=Exposed.SALT),
}


class Measured(Struct, frozen=True):
    """Milliseconds: the median, the worst, and of SQLite alone where the same could be asked of it.

    own_ms: the most that the thread itself worked in one turn, without waiting for other work on the machine.
    """

    name: str
    median_ms: float
    worst_ms: float
    bare_ms: float | None = None
    count: int = 0
    own_ms: float = 0.0


def prepare(place: Path, count: int = PIECE_COUNT) -> None:
    """So many pieces in place of the sample's, written straight into the tables of its register."""
    with sqlite3.connect(place / "register.db") as connection:
        _multiply(connection, count)
    connection.close()


def _multiply(connection: sqlite3.Connection, count: int) -> None:
    chance = random.Random(7)
    found = connection.execute("SELECT * FROM standing JOIN item ON item.id = item_id")
    names = [one[0] for one in found.description]
    seeds = [dict(zip(names, row, strict=True)) for row in found.fetchall()]
    for number in range(count - len(seeds)):
        _twin(connection, seeds[number % len(seeds)], number, chance)
    connection.execute("ANALYZE")


def _twin(connection: sqlite3.Connection, seed: dict[str, object], number: int, chance: random.Random) -> None:
    """The piece once more under another tag."""
    key, facts = new_id(), from_body(str(seed["body"]), NewItem)
    facts = replace(
        facts, tag=f"{facts.tag}/{number:06}", owner=chance.choice(_OWNERS), maker_mark=chance.choice(_MAKERS),
        serial=f"{chance.randrange(10**7):07}", place=f"Shed {chance.randrange(9)}, hook-{chance.randrange(999)}",
    )  # fmt: skip
    due = date(2026, 6, 1) + timedelta(days=chance.randrange(700))
    row = (key, facts.tag, facts.kind, "2024-01-01", to_body(facts))
    connection.execute("INSERT INTO item (id, tag, kind, booked_on, body) VALUES (?, ?, ?, ?, ?)", row)
    stands = {name: seed[name] for name in _SAY}
    stands |= {"item_id": key, "verdict_id": seed["verdict_id"], "tag": facts.tag, "kind": facts.kind}
    stands |= {name: getattr(facts, name) for name in ("owner", "maker_mark", "serial", "place")}
    stands["next_due"] = None if chance.random() < 0.1 else due.isoformat()
    words = (facts.tag, facts.kind.replace("_", " "), facts.maker_mark, facts.serial, facts.owner, facts.place)
    stands["search"] = " ".join((*words, facts.note)).casefold()
    signs = ", ".join("?" * len(stands))
    connection.execute(f"INSERT INTO standing ({', '.join(stands)}) VALUES ({signs})", tuple(stands.values()))
    _life(connection, key, chance)


def _life(connection: sqlite3.Connection, key: str, chance: random.Random) -> None:
    """One in five was lent, and half of those are out; one in thirty has left."""
    day = date(2026, 1, 1) + timedelta(days=chance.randrange(300))
    if chance.random() < 0.2:
        _event(connection, "custody", key, day, NewCustody(day, Hands.LENT, "somebody"))
        if chance.random() < 0.5:
            back = day + timedelta(days=9)
            _event(connection, "custody", key, back, NewCustody(back, Hands.RETURNED, "somebody"))
    if chance.random() < 0.1:
        where = chance.choice((Where.SOLD, Where.MISSING, Where.IN_STORE))
        _event(connection, "whereabouts", key, day, NewWhereabouts(day, where, "Shed 1"))


def _event(connection: sqlite3.Connection, table: str, key: str, day: date, facts: object) -> None:
    row = (new_id(), key, day.isoformat(), to_body(facts))
    connection.execute(f"INSERT INTO {table} (id, item_id, day, body) VALUES (?, ?, ?, ?)", row)


def measure(place: Path, rules: Rulebook, repeats: int = 7) -> list[Measured]:
    """Each question, the pages and the choices, on a register that is open."""
    office = office_on(place, rules)
    with sqlite3.connect(place / "register.db") as bare:
        rows = [_question(office, bare, name, wanted, repeats) for name, wanted in _WANTED.items()]
    bare.close()
    tags = answers(office, Wanted()).tags
    middle = len(tags) // 2
    rows.append(_timed("64 rows of one page", lambda: rows_of(office, tags[middle : middle + 64]), repeats))
    rows.append(_timed("kinds and owners to choose from", lambda: choices(office), repeats))
    office.book.close()
    return rows


def _question(office: Office, bare: sqlite3.Connection, name: str, wanted: Wanted, repeats: int) -> Measured:
    """A question beside SQLite's own search for the same words, which leaves nothing out and counts nothing. The two
    take turns, so that other work on the machine weighs on both."""
    words = wanted.search.casefold().split()
    where = " AND ".join("search LIKE ?" for _ in words) or "1"
    sql = f"SELECT tag FROM standing WHERE {where} ORDER BY next_due IS NULL, next_due, tag"
    given = [f"%{word}%" for word in words]
    taken: list[float] = []
    alone: list[float] = []
    for _ in range(repeats):
        with _clock(taken):
            found = answers(office, wanted)
        with _clock(alone):
            bare.execute(sql, given).fetchall()
    is_same = wanted == Wanted(wanted.search)
    bare_ms = statistics.median(alone) if is_same else None
    return Measured(name, statistics.median(taken), max(taken), bare_ms, len(found.tags))


def _timed(name: str, work: Callable[[], object], repeats: int) -> Measured:
    taken: list[float] = []
    for _ in range(repeats):
        with _clock(taken):
            work()
    return Measured(name, statistics.median(taken), max(taken))


def measure_window(place: Path, rules: Rulebook, quiet_s: float = 0.1) -> list[Measured]:
    """How long the window's own thread was not free while somebody types, scrolls, sorts, chooses all, reads again.

    quiet_s: how long nothing must be under way before the next deed.
    """
    app = QApplication.instance() or QApplication([])
    office, background = office_on(place, rules), Background()
    look = Look()
    table = GearTable(office, background, look)
    look.dress(table)
    table.resize(1280, 640)
    table.show()
    table.refresh()
    _settle(app, table, background, [], [], quiet_s)
    bar = table.view.verticalScrollBar()
    steps: dict[str, list[Callable[[], object]]] = {
        "typing a word, a letter at a time": [lambda n=n: table.search("shackle"[:n]) for n in range(1, 8)],  # type: ignore[misc]
        "all again": [lambda: table.search("")],
        "scrolling through it": [lambda n=n: bar.setValue(bar.maximum() * n // 40) for n in range(41)],  # type: ignore[misc]
        "another order": [lambda: table.order.choose(Order.TAG)],
        "choosing every piece": [table.view.selectAll],
        "reading again with all chosen": [table.refresh],
        "an outcome": [table.filter.buttons[Outcome.HOLD].click],
    }
    rows = []
    for name, deeds in steps.items():
        blocked: list[float] = []
        own: list[float] = []
        for deed in deeds:
            with _clock(blocked), _clock(own, time.thread_time):
                deed()
            _settle(app, table, background, blocked, own, quiet_s)
        count = table.model.rowCount()
        rows.append(Measured(name, statistics.median(blocked), max(blocked), count=count, own_ms=max(own)))
    background.close()
    table.close()
    office.book.close()
    return rows


@contextmanager
def _clock(into: list[float], clock: Callable[[], float] = time.perf_counter) -> Iterator[None]:
    began = clock()
    yield
    into.append((clock() - began) * 1000)


def _settle(
    app: QCoreApplication,
    table: GearTable,
    background: Background,
    blocked: list[float],
    own: list[float],
    quiet_s: float,
) -> None:
    """Let the window work until nothing is under way; each turn that did something is noted."""
    quiet_since = time.perf_counter()
    while time.perf_counter() - quiet_since < quiet_s:
        with _clock(blocked), _clock(own, time.thread_time):
            app.processEvents()
        if not background.is_idle or table._pause.isActive():
            quiet_since = time.perf_counter()
        if blocked[-1] < _NOTHING_MS:
            blocked.pop()
            own.pop()
            time.sleep(0.001)


def main(count: int = PIECE_COUNT) -> int:
    """Print the figures; 0 when the bars are kept."""
    rules = packaged()
    with tempfile.TemporaryDirectory() as folder:
        sample_in(Path(folder), rules)
        prepare(Path(folder), count)
        asked, window = measure(Path(folder), rules), measure_window(Path(folder), rules)
    print(f"{count} pieces; in the worker:")
    for one in asked:
        bare = f"{one.bare_ms:7.1f} ms SQLite alone, {one.median_ms / one.bare_ms:.1f} x" if one.bare_ms else ""
        print(f"{one.name:<40}{one.median_ms:7.1f} ms (worst {one.worst_ms:.1f}) {one.count:>7} rows  {bare}")
    print("in the window's own thread, each turn of its loop:")
    for one in window:
        waited = f"(worst {one.worst_ms:.1f}, of it own work {one.own_ms:.1f})"
        print(f"{one.name:<40}{one.median_ms:7.2f} ms {waited} {one.count:>7} rows")
    typed = max(one.median_ms / one.bare_ms for one in asked if one.bare_ms)
    middle = max(one.median_ms for one in window)
    met = typed <= BAR_RATIO and middle <= BAR_MS
    kept = "kept" if met else "not kept"
    print(f"bars: {BAR_RATIO} x SQLite alone ({typed:.1f}), a median of {BAR_MS} ms a turn ({middle:.2f}): {kept}")
    return 0 if met else 1


if __name__ == "__main__":
    sys.exit(main(*(int(one) for one in sys.argv[1:2])))
