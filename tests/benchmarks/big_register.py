"""A register of any size for the benchmarks: the pieces of the sample, booked in and inspected anew, many times over.

Each piece of the sample is booked in and inspected once by the duties themselves, so its verdicts and words are what
the judge says. Then those rows are written again under other ids and tags, straight into the tables. Every row's digest
and every ledger line are worked out for the copy, so `verify` proves such a register as any other. Not like life: all
copies of a piece have the same life on the same days, and nothing but bookings and inspections happened to them.
"""

import hashlib
import json
import re
from collections.abc import Callable, Iterator
from datetime import datetime, time
from typing import Any

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection, Date, Double, Integer, String, Table, Text, func, select

from inspector.duties.book_in import book_in
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Verdict
from inspector.refused import Refused
from inspector.register.canonical import canonical
from inspector.register.chains import hash_of
from inspector.register.ledger import head
from inspector.register.rows import from_body
from inspector.register.tables import inspection, item, ledger, standing, verdict

Row = dict[str, Any]
Rows = dict[Table, list[Row]]  # in the order in which they may be written
_KEPT = 28  # signs of an id that stay; the others tell the copy
_WIRE = {String: "text", Text: "text", Date: "date", Integer: "int4", Double: "float8"}
_TABLES = (item, inspection, verdict, standing, ledger)


class Cut(Struct, frozen=True):
    """A text cut where ids and tags stand, to be put together again for each copy."""

    parts: tuple[str, ...]
    ids: frozenset[int]  # which of the parts are ids; the other odd ones are tags

    def copied(self, number: int) -> str:
        """The text of one copy."""
        made = list(self.parts)
        for at in range(1, len(made), 2):
            made[at] = made[at][:_KEPT] + f"{number:08x}" if at in self.ids else f"{made[at]}-{number}"
        return "".join(made)


class CutRow(Struct, frozen=True):
    """A row of one table with those of its columns cut that differ from copy to copy."""

    table: Table
    same: Row
    cut: dict[str, Cut]
    canonical: Cut  # all of the row, as its digest is taken of it

    def copied(self, number: int) -> Row:
        """The row of one copy."""
        return self.same | {name: one.copied(number) for name, one in self.cut.items()}

    def digest(self, number: int) -> str:
        """The digest of the row of one copy, as `canonical.digest` takes it."""
        return hashlib.sha256(self.canonical.copied(number).encode()).hexdigest()


class CutLine(Struct, frozen=True):
    """A ledger line: its facts, and the rows that it wrote."""

    same: Row
    facts: Cut
    rows: tuple[CutRow, ...]


class Pattern(Struct, frozen=True):
    """What is written for one copy."""

    lines: tuple[CutLine, ...]
    standing: tuple[CutRow, ...]

    @property
    def inspection_count(self) -> int:
        """How many inspections a copy has."""
        return sum(row.table is inspection for line in self.lines for row in line.rows)


def live_again(office: Office) -> int:
    """Book every piece of the sample in once more and inspect it as it was; how many inspections were logged."""
    done = 0
    with office.book.reading() as page:
        pieces = page.every_item()
        lives = [page.dossier(one, office.kind(one.facts.kind), office.today).inspections for one in pieces]
    for piece, looks in zip(pieces, lives, strict=True):
        tag = f"{piece.tag}-x"
        facts = replace(piece.facts, tag=tag, visiting_for="", visiting_until=None)
        try:
            book_in(office.at(_evening(office, piece.booked_on)), facts)
        except Refused:  # a piece that came along for one trip, or whose vehicle was sold
            continue
        for look in looks:
            try:
                record_inspection(office.at(_evening(office, look.on)), tag, replace(look.facts, note=""))
                done += 1
            except Refused:
                break
    return done


def _evening(office: Office, day: Any) -> datetime:
    return datetime.combine(day, time(19), office.now.tzinfo)


def pattern_of(office: Office) -> Pattern:
    """The rows of the pieces that were booked in and inspected anew, cut for copying."""
    with office.book.own_connection(write=False) as connection:
        wanted = {str(row["id"]): row for row in _rows(connection, item) if str(row["tag"]).endswith("-x")}
        mine = {str(one["id"]): (table, one) for table in (inspection, verdict) for one in _rows(connection, table)
                if one["item_id"] in wanted}  # fmt: skip
        mine |= {key: (item, row) for key, row in wanted.items()}
        cut = _cutter({str(row["tag"]) for row in wanted.values()}, set(mine))
        lines = [made for row in _rows(connection, ledger) if (made := _line(row, mine, cut))]
        booked = {one.same["id"] for line in lines for one in line.rows if one.table is item}
        lines = [line for line in lines if all(one.same.get("item_id", one.same["id"]) in booked for one in line.rows)]
        stands = [row for row in _rows(connection, standing) if row["item_id"] in booked]
    return Pattern(tuple(lines), tuple(_cut_row(standing, row, cut) for row in stands))


def _rows(connection: Connection, table: Table) -> list[Row]:
    return [dict(row) for row in connection.execute(select(table).order_by(*table.primary_key)).mappings()]


def _cutter(tags: set[str], ids: set[str]) -> Callable[[str], Cut]:
    named = "|".join(re.escape(one) for one in sorted(tags, key=len, reverse=True))
    low = "|".join(re.escape(one.casefold()) for one in sorted(tags, key=len, reverse=True))
    found = re.compile(rf"([0-9a-f]{{8}}-[0-9a-f]{{4}}-[0-9a-f]{{4}}-[0-9a-f]{{4}}-[0-9a-f]{{12}}|{named}|{low})")

    def cut(text: str) -> Cut:
        parts = found.split(text)
        for at in range(1, len(parts), 2):
            if len(parts[at]) == 36 and parts[at] not in ids:  # somebody's id, which stays
                parts[at - 1 : at + 2] = [parts[at - 1] + parts[at] + parts[at + 1]]
                return _joined(parts, ids)
        return Cut(tuple(parts), frozenset(at for at in range(1, len(parts), 2) if parts[at] in ids))

    return cut


def _joined(parts: list[str], ids: set[str]) -> Cut:
    """Without the ids that stay the same in every copy."""
    made = [parts[0]]
    for at in range(1, len(parts), 2):
        if len(parts[at]) == 36 and parts[at] not in ids:
            made[-1] += parts[at] + parts[at + 1]
        else:
            made += parts[at : at + 2]
    return Cut(tuple(made), frozenset(at for at in range(1, len(made), 2) if made[at] in ids))


def _cut_row(table: Table, row: Row, cut: Callable[[str], Cut]) -> CutRow:
    cuts = {name: one for name, value in row.items() if isinstance(value, str) and len((one := cut(value)).parts) > 1}
    return CutRow(table, row, cuts, cut(canonical(row)))


def _line(row: Row, mine: dict[str, tuple[Table, Row]], cut: Callable[[str], Cut]) -> CutLine | None:
    body = json.loads(row["body"])
    rows = [mine[key] for _, key, _ in body["rows"] if key in mine]
    if row["deed"] not in {"book in", "inspect", "copy"} or len(rows) != len(body["rows"]):
        return None
    return CutLine(row, cut(canonical(body["facts"])), tuple(_cut_row(table, one, cut) for table, one in rows))


def copies(connection: Connection, pattern: Pattern, count: int) -> Iterator[Rows]:
    """The rows of copies up to so many in all, one at a time, their lines going on from the ledger's last one."""
    place, own = head(connection)
    number = int(connection.execute(select(func.coalesce(func.max(ledger.c.number), 0))).scalar_one())
    for copy in range(copies_there(connection, pattern) + 1, count + 1):
        made: Rows = {table: [] for table in _TABLES}
        made[standing] = [one.copied(copy) for one in pattern.standing]
        for line in pattern.lines:
            rows = [(one.table, one.copied(copy)) for one in line.rows]
            for table, row in rows:
                made[table].append(row)
            place, number = place + 1, number + 1
            named = [
                [one.table.name, row["id"], one.digest(copy)] for one, (_, row) in zip(line.rows, rows, strict=True)
            ]
            made[ledger].append(written := _written(line, copy, named, (place, number, own)))
            own = written["hash"]
        yield made


def _written(line: CutLine, copy: int, named: list[list[str]], after: tuple[int, int, str]) -> Row:
    place, number, before = after
    body = f'{{"facts":{line.facts.copied(copy)},"rows":{canonical(named)}}}'
    row = line.same | {"id": place, "number": number, "before": before, "body": body}
    return row | {"hash": hash_of(row)}


def copies_there(connection: Connection, pattern: Pattern) -> int:
    """How many copies were written before."""
    tag = f"{pattern.standing[0].same['tag']}-%"
    return int(connection.execute(select(func.count()).select_from(item).where(item.c.tag.like(tag))).scalar_one())


def write_into(connection: Connection, pattern: Pattern, count: int, told: Callable[[int], object]) -> None:
    """Write copies up to so many in all: by COPY where the database has it, else row by row; each ten are kept."""
    driver, there = connection.connection.driver_connection, copies_there(connection, pattern)
    for number, made in enumerate(copies(connection, pattern, count), there + 1):
        if not connection.in_transaction():
            connection.begin()  # a copy goes past what would begin it by itself
        for table, rows in made.items():
            if connection.dialect.name == "postgresql":
                _copy(driver, table, rows)
            elif rows:
                connection.execute(table.insert(), rows)
        if number % 10 == 0 or number == count:
            connection.commit()
            told(number)


def _copy(driver: Any, table: Table, rows: list[Row]) -> None:
    names = list(table.c.keys())
    said = ", ".join(f'"{name}"' for name in names)
    order = f"COPY {table.name} ({said}) FROM STDIN (FORMAT BINARY)"
    with driver.cursor() as cursor, cursor.copy(order) as into:
        into.set_types([_WIRE[type(column.type)] for column in table.c])
        for row in rows:
            into.write_row([row[name] for name in names])


def check(pattern: Pattern) -> None:
    """What stands of each piece must be what its last verdict says, or the register would be found false."""
    last = {row.same["item_id"]: row.same for line in pattern.lines for row in line.rows if row.table is verdict}
    for one in pattern.standing:
        said = from_body(last[one.same["item_id"]]["body"], Verdict)
        due = None if said.outcome is Outcome.RETIRE else said.next_due
        if (one.same["verdict_id"], one.same["next_due"]) != (last[one.same["item_id"]]["id"], due):
            raise RuntimeError(f"{one.same['tag']} was judged by another deed since")
