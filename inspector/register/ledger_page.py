"""The part of a page that reads the ledger back, line by line."""

import json
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime
from typing import Any

from sqlalchemy import RowMapping, func, select

from inspector.gear.item import Item
from inspector.gear.ledger_line import WrittenLine
from inspector.register.clock import last_moment
from inspector.register.events import shares
from inspector.register.exchange_page import ExchangePage
from inspector.register.ledger import head, moved_to, since
from inspector.register.streams import few_at_a_time
from inspector.register.tables import APPEND_ONLY, item, ledger, verdict
from inspector.register.year_tables import item_change

_OF_ITEMS = tuple(table for table in APPEND_ONLY if "item_id" in table.c)


class LedgerPage(ExchangePage):
    """The ledger's lines, and which of them speak of a piece."""

    def ledger_lines(self) -> Iterator[WrittenLine]:
        """Every line, the newest first. A line that cannot be read comes without facts and rows; `verify` tells why."""
        for row in self._connection.execute(few_at_a_time(ledger).order_by(ledger.c.id.desc())).mappings():
            yield _line(row)

    def line_number(self) -> int:
        """The number of the last line; 0 for an empty ledger."""
        return head(self._connection)[0]

    def moved_to(self) -> str:
        """Where the register went; empty where it is still here."""
        return moved_to(self._connection)

    def last_moment(self) -> datetime | None:
        """When this copy's last deed was entered; None for an empty ledger."""
        return last_moment(self._connection, self._origin)

    def lines_since(self, number: int) -> tuple[tuple[int, str], ...]:
        """Number and hash of every line after one, the oldest first."""
        return since(self._connection, number)

    def lines_of(self, deeds: Sequence[str]) -> Iterator[WrittenLine]:
        """Every line of these deeds, the newest first."""
        found = select(ledger).where(ledger.c.deed.in_(deeds)).order_by(ledger.c.id.desc())
        for row in self._connection.execute(found).mappings():
            yield _line(row)

    def lines_with(self, hashes: Iterable[str]) -> dict[str, WrittenLine]:
        """The lines with these hashes, by hash."""
        found = {}
        for some in shares(sorted(set(hashes))):
            for row in self._connection.execute(select(ledger).where(ledger.c.hash.in_(some))).mappings():
                found[str(row["hash"])] = _line(row)
        return found

    def has_line_of(self, deed: str) -> bool:
        """Whether any line tells of this deed."""
        found = select(ledger.c.id).where(ledger.c.deed == deed).limit(1)
        return self._connection.execute(found).first() is not None

    def last_line(self, deeds: Sequence[str], elsewhere: Sequence[str] = ()) -> WrittenLine | None:
        """The newest line of any of these deeds; None for none. elsewhere: copies whose lines do not count."""
        return next((line for line in self.lines_of(deeds) if line.origin not in elsewhere), None)

    def lines_after(self, number: int) -> int:
        """How many lines were written after this one."""
        found = select(func.count()).select_from(ledger).where(ledger.c.id > number)
        return int(self._connection.execute(found).scalar_one())

    def rows_of_line(self, place: int) -> tuple[tuple[str, str], ...]:
        """Table and id of every row that a line names."""
        row = self._connection.execute(select(ledger).where(ledger.c.id == place)).mappings().first()
        return _line(row).rows if row else ()

    def pieces_of_rows(self, keys: Sequence[str]) -> dict[str, str]:
        """The pieces that these rows are about, by the rows' ids; a row about no piece is left out."""
        found: dict[str, str] = {}
        for some in shares(keys):
            pieces = self._connection.execute(select(item.c.id).where(item.c.id.in_(some)))
            found |= {str(key): str(key) for key in pieces.scalars()}
            for table in _OF_ITEMS:
                rows = self._connection.execute(select(table.c.id, table.c.item_id).where(table.c.id.in_(some)))
                found |= {str(key): str(piece) for key, piece in rows}
        return found

    def pieces_of_verdicts(self) -> dict[str, str]:
        """The piece of every verdict, by the verdict's id."""
        rows = self._connection.execute(select(verdict.c.id, verdict.c.item_id))
        return {str(key): str(piece) for key, piece in rows}

    def tags_after(self, day: date) -> tuple[str, ...]:
        """The tags of pieces of which anything is entered for a later day."""
        found: set[str] = set()
        for table in _OF_ITEMS:
            pieces = select(item.c.tag).join(table, table.c.item_id == item.c.id)
            found |= set(map(str, self._connection.execute(pieces.where(table.c.day > day)).scalars()))
        return tuple(sorted(found))

    def row_ids_of(self, piece: Item) -> frozenset[str]:
        """The ids of every row that was written of a piece."""
        found = {piece.id}
        for table in _OF_ITEMS:
            found |= set(self._connection.execute(select(table.c.id).where(table.c.item_id == piece.id)).scalars())
        return frozenset(found)

    def tags_of(self, piece: Item) -> frozenset[str]:
        """Every tag that a piece has or had."""
        booked = select(item.c.tag).where(item.c.id == piece.id)
        later = select(item_change.c.tag).where(item_change.c.item_id == piece.id)
        return frozenset(str(tag) for one in (booked, later) for tag in self._connection.execute(one).scalars())


def _line(row: RowMapping) -> WrittenLine:
    facts, rows = _body(str(row["body"]))
    number, own, by, deed = int(row["id"]), str(row["hash"]), str(row["by"]), str(row["deed"])
    return WrittenLine(number, own, _moment(str(row["at"])), by, deed, facts, rows, str(row["origin"]))


def _moment(text: str) -> datetime | None:
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None


def _body(text: str) -> tuple[dict[str, Any], tuple[tuple[str, str], ...]]:
    try:
        body = json.loads(text)
        return dict(body["facts"]), tuple((str(table), str(key)) for table, key, _ in body["rows"])
    except (ValueError, KeyError, TypeError):
        return {}, ()
