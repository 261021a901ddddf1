"""The bare page: one transaction's connection, and every row it adds noted for its ledger line."""

from collections.abc import Sequence
from datetime import date
from typing import Any

from sqlalchemy import Connection, Table, insert

from inspector.gear.item import Item
from inspector.register import ledger
from inspector.register.canonical import digest
from inspector.register.rows import new_id, to_body


class Leaf:
    """What the parts of a page share."""

    def __init__(self, connection: Connection, origin: str, *, keeps: bool) -> None:
        self._connection = connection
        self._origin = origin
        self._keeps = keeps
        self._wrote: list[ledger.Wrote] = []
        self.entered: set[str] = set()  # the hashes of its lines in the ledger

    def _add(self, table: Table, row: dict[str, Any]) -> None:
        self._add_all(table, [row])

    def _add_all(self, table: Table, rows: Sequence[dict[str, Any]]) -> None:
        """Many rows of one table at once."""
        if rows:
            self._connection.execute(insert(table), rows)
        self._wrote += [ledger.Wrote(table.name, str(row["id"]), digest(row)) for row in rows]

    def _add_event(self, table: Table, item: Item, on: date, facts: object) -> str:
        return self._add_dated(table, "item_id", item.id, on, facts)

    def _add_dated(self, table: Table, column: str, owner: str, on: date, facts: object) -> str:
        """A row of what happened to a piece, a vehicle or a trip; its id."""
        key = new_id()
        self._add(table, {"id": key, column: owner, "day": on, "body": to_body(facts)})
        return key
