"""The part of a page that reads what leaves the register: whole tables, row by row."""

from collections.abc import Iterator
from datetime import date

from msgspec import Struct
from sqlalchemy import select

from inspector.register.columns import METADATA
from inspector.register.exchange.json_lines import json_lines
from inspector.register.leaf import Leaf
from inspector.register.tables import document


class EntryLine(Struct, frozen=True):
    """An entry about a piece as stored. key: its id; body: JSON."""

    key: str
    item_id: str
    on: date
    body: str


class DocumentLine(Struct, frozen=True):
    """A kept document. about: the id or name of what it is about."""

    number: str
    kind: str
    on: date
    about: str


class ExchangePage(Leaf):
    """Rows for other programs."""

    def entries(self, table: str) -> Iterator[EntryLine]:
        """Every entry about any piece in a table of them ("inspection", "piece_use" …), by day."""
        of = METADATA.tables[table]
        rows = select(of.c.id, of.c.item_id, of.c.day, of.c.body).order_by(of.c.day, of.c.id)
        for key, item_id, on, body in self._connection.execute(rows):
            yield EntryLine(str(key), str(item_id), on, str(body))

    def documents(self) -> Iterator[DocumentLine]:
        """Every kept document, by day."""
        rows = select(document.c.id, document.c.kind, document.c.day, document.c.about)
        for number, kind, on, about in self._connection.execute(rows.order_by(document.c.day, document.c.id)):
            yield DocumentLine(str(number), str(kind), on, str(about))

    def json_lines(self) -> Iterator[bytes]:
        """Every row of every append-only table as a line of JSON; see `exchange/json_lines.py`."""
        return json_lines(self._connection)
