"""The bare page: one transaction's connection, and every row it adds noted for its ledger line."""

from collections.abc import Callable, Hashable, Sequence
from datetime import date, datetime
from functools import cache
from typing import Any, TypeVar

from sqlalchemy import Column, Connection, Select, Table, Update, bindparam, insert, select, update

from inspector.gear.item import Item
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import ledger
from inspector.register.canonical import digest
from inspector.register.clock import CLOCK_DEED, check_clock
from inspector.register.events import shares
from inspector.register.field_setting import COPY_OF, FOLLOWS
from inspector.register.kept import checksum, is_followed
from inspector.register.rows import new_id, to_body
from inspector.register.tables import club_setting

_SETTING = select(club_setting.c.value).where(club_setting.c.key == bindparam("sought"))

Made = TypeVar("Made")
Known = dict[tuple[Callable[..., Any], tuple[Hashable, ...]], Any]  # by what was asked, and of what


class Leaf:
    """What the parts of a page share."""

    def __init__(
        self, connection: Connection, origin: str, *, keeps: bool, minds_clock: bool = False, known: Known | None = None
    ) -> None:
        self._connection = connection
        self._known = known  # what was read of this moment already, where nothing can be written in it
        self._origin = origin
        self._keeps = keeps
        self._minds_clock = minds_clock
        self._wrote: list[ledger.Wrote] = []
        self._kept: dict[tuple[str, str], str] = {}  # checksums of rows that may change, as they are now
        self._after: ledger.Tip | None = None  # what its line follows, where lines of another copy came in between
        self.entered: set[str] = set()  # the hashes of its lines in the ledger
        self.newest = ""  # the hash of the last of them

    def _once(self, read: Callable[..., Made], *given: Hashable) -> Made:
        """What `read` finds on this connection; where all is of one moment it is asked but once."""
        if self._known is None:
            return read(self._connection, *given)
        if (read, given) not in self._known:
            self._known[read, given] = read(self._connection, *given)
        found: Made = self._known[read, given]
        return found

    def _mind_clock(self, deed: str, at: datetime) -> None:
        """Refuse a deed where the clock was set back behind the last one, unless it says that the clock is right."""
        if self._minds_clock and deed != CLOCK_DEED:
            check_clock(self._connection, self._origin, at)

    def _add(self, table: Table, row: dict[str, Any]) -> None:
        self._add_all(table, [row])

    def _add_all(self, table: Table, rows: Sequence[dict[str, Any]]) -> None:
        """Many rows of one table at once."""
        if rows:
            self._connection.execute(insert(table), rows)
        self._wrote += [ledger.Wrote(table.name, str(row["id"]), digest(row)) for row in rows]

    def _put_row(self, table: Table, row: dict[str, Any]) -> None:
        """Write a row that may change, or change it, and note its checksum. Its first column is its key."""
        self._put_rows(table, [row])

    def _put_rows(self, table: Table, rows: Sequence[dict[str, Any]]) -> None:
        """Many such rows at once. One that stands is changed in its place: a member's login may not take one out."""
        if not rows:
            return
        column = table.c[next(iter(rows[0]))]
        keys = [str(row[column.name]) for row in rows]
        asked, changed = _in_place(column)
        stand = {key for some in shares(keys) for key in self._connection.execute(asked, {"keys": some}).scalars()}
        if old := [{"own_key": key, **row} for key, row in zip(keys, rows, strict=True) if key in stand]:
            self._connection.execute(changed, old)
        if new := [row for key, row in zip(keys, rows, strict=True) if key not in stand]:
            self._connection.execute(insert(table), new)
        for key, row in zip(keys, rows, strict=True):
            if is_followed(table.name, key):
                self._kept[table.name, key] = checksum(table.name, row)

    def _take_rows(self, table: Table, keys: Sequence[str]) -> None:
        """Take such rows out."""
        column = next(iter(table.primary_key.columns))
        for some in shares(keys):
            self._connection.execute(table.delete().where(column.in_(some)))
        self._kept |= {(table.name, key): "" for key in keys if is_followed(table.name, key)}

    def _add_event(self, table: Table, item: Item, on: date, facts: object) -> str:
        return self._add_dated(table, "item_id", item.id, on, facts)

    def _add_dated(self, table: Table, column: str, owner: str, on: date, facts: object) -> str:
        """A row of what happened to a piece, a vehicle or a trip; its id."""
        key = new_id()
        self._add(table, {"id": key, column: owner, "day": on, "body": to_body(facts)})
        return key

    def setting(self, key: str, otherwise: str = "") -> str:
        """A club setting as text."""
        found = self._connection.execute(_SETTING, {"sought": key}).scalar_one_or_none()
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


@cache
def _in_place(column: Column[Any]) -> tuple[Select[Any], Update]:
    """Which of some keys stand, and the change of a row by its key; made once, since making one takes longer."""
    return (
        select(column).where(column.in_(bindparam("keys", expanding=True))),
        update(column.table).where(column == bindparam("own_key")),
    )
