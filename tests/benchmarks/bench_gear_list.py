"""How long the gear list takes at 100,000 pieces: finding as one types, filters, orders, pages, and the window itself.

python tests/benchmarks/bench_gear_list.py [pieces]

The pieces of the sample are written into the tables again and again under other tags, makers, owners and places, with
loans, exposures and what was sold. Beside each time stands that of SQLite alone for the same rows in the same order,
asked through the bare driver; for the window, the longest time its own thread was not free.
"""

import os
import random
import sqlite3
import sys
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from inspector.duties.build_sample import build_sample
from inspector.duties.office import Office
from inspector.gear.custody import Hands, NewCustody
from inspector.gear.item import NewItem
from inspector.gear.lists import Due, Exposed, Held, Order, Owned, Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.register.book import open_book
from inspector.register.rows import from_body, new_id, to_body
from inspector.rulebook.load import Rulebook

EVENING = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)
PIECE_COUNT = 100_000
BAR_RATIO, BAR_MS = 2.0, 16.0
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


@dataclass(frozen=True)
class Measured:
    """Milliseconds: the median, the worst, and of SQLite alone where the same could be asked of it."""

    name: str
    median_ms: float
    worst_ms: float
    bare_ms: float | None = None
    count: int = 0


def office_on(place: Path, rules: Rulebook) -> Office:
    """An office on the register of a folder."""
    book = open_book(place / "register.db")
    return Office(book, rules, place / "documents", Person("nobody", "nobody", ""), lambda: EVENING, "bench")


def prepare(place: Path, rules: Rulebook, count: int = PIECE_COUNT) -> None:
    """A register of so many pieces, written straight into its tables."""
    office = office_on(place, rules)
    build_sample(office)
    office.book.close()
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
