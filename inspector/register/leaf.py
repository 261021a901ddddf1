"""The bare page: one transaction's connection, and every row it adds noted for its ledger line."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Table, insert

from inspector.gear.item import Item
from inspector.register import ledger
from inspector.register.canonical import digest
from inspector.register.clock import CLOCK_DEED, check_clock
from inspector.register.kept import checksum, is_followed
from inspector.register.rows import new_id, to_body


class Leaf:
    """What the parts of a page share."""

    def __init__(self, connection: Connection, origin: str, *, keeps: bool, minds_clock: bool = False) -> None:
        self._connection = connection
        self._origin = origin
        self._keeps = keeps
        self._minds_clock = minds_clock
        self._wrote: list[ledger.Wrote] = []
        self._kept: dict[tuple[str, str], str] = {}  # checksums of rows that may change, as they are now
        self.entered: set[str] = set()  # the hashes of its lines in the ledger

    def _mind_clock(self, deed: str, at: datetime) -> None:
        """Refuse a deed where the clock was set back behind the last one, unless it says that the clock is right."""
        if self._minds_clock and deed != CLOCK_DEED:
            check_clock(self._connection, self._origin, at)

    def _add(self, table: Table, row: dict[str, Any]) -> None:
        self._connection.execute(insert(table), row)
        self._wrote.append(ledger.Wrote(table.name, str(row["id"]), digest(row)))

    def _put_row(self, table: Table, row: dict[str, Any]) -> None:
        """Write a row that may change, and note its checksum. Its first column is its key."""
        self._connection.execute(insert(table), row)
        if is_followed(table.name):
            self._kept[table.name, str(next(iter(row.values())))] = checksum(table.name, row)

    def _take_row(self, table: Table, key: str) -> None:
        """Take such a row out."""
        column = next(iter(table.primary_key.columns))
        self._connection.execute(table.delete().where(column == key))
        if is_followed(table.name):
            self._kept[table.name, key] = ""

    def _add_event(self, table: Table, item: Item, on: date, facts: object) -> str:
        return self._add_dated(table, "item_id", item.id, on, facts)

    def _add_dated(self, table: Table, column: str, owner: str, on: date, facts: object) -> str:
        """A row of what happened to a piece, a vehicle or a trip; its id."""
        key = new_id()
        self._add(table, {"id": key, column: owner, "day": on, "body": to_body(facts)})
        return key
