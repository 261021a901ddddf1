"""The bare page: one transaction's connection, and every row it adds noted for its ledger line."""

from collections.abc import Sequence
from datetime import date
from typing import Any

from sqlalchemy import Connection, Table, insert, select

from inspector.gear.item import Item
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import ledger
from inspector.register.canonical import digest
from inspector.register.field_setting import COPY_OF, FOLLOWS
from inspector.register.rows import new_id, to_body
from inspector.register.tables import club_setting


class Leaf:
    """What the parts of a page share."""

    def __init__(self, connection: Connection, origin: str, *, keeps: bool) -> None:
        self._connection = connection
        self._origin = origin
        self._keeps = keeps
        self._wrote: list[ledger.Wrote] = []
        self._after: ledger.Tip | None = None  # what its line follows, where lines of another copy came in between
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

    def setting(self, key: str, otherwise: str = "") -> str:
        """A club setting as text."""
        table = club_setting
        found = self._connection.execute(select(table.c.value).where(table.c.key == key)).scalar_one_or_none()
        return str(found) if found is not None else otherwise

    def is_copy(self) -> bool:
        """Whether this is a field copy of another register."""
        return bool(self.setting(COPY_OF))

    def own_ref(self, ref: str) -> str:
        """A reference as this copy of the register gives it: in a field copy it ends with the copy's own name."""
        ending = f"-{self._origin}"
        return f"{ref}{ending}" if ref and self.is_copy() and not ref.endswith(ending) else ref

    def check_at_home(self, key: str) -> None:
        """Refuse to settle something for the club in a field copy."""
        if key not in FOLLOWS and self.is_copy():
            why = tr("This is a field copy: what holds for the whole club is settled in the register at home.")
            raise Refused(tr("setting"), why, tr("Do it there, before or after the copy is brought back."))
