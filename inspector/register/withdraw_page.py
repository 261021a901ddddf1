"""The part of a page that tells whether more was written down of a piece since it was booked in."""

import json
from collections.abc import Collection, Sequence

from sqlalchemy import Column, Table, select

from inspector.register import tables, year_tables
from inspector.register.events import shares
from inspector.register.leaf import Leaf
from inspector.register.naming import texts

_OF_PIECES = (
    *(tables.inspection, tables.piece_use, tables.exposure, tables.opinion, tables.strike, tables.destruction),
    *(tables.fitting, tables.custody, year_tables.whereabouts, year_tables.repair, year_tables.item_change),
    *(year_tables.quarantine, year_tables.release, year_tables.piece_call),
)
_BY_TAG = (
    *(tables.trip, tables.trip_change, tables.rig, tables.debrief, year_tables.stock_entry),
    *(year_tables.incident, year_tables.incident_entry),
)


class WithdrawPage(Leaf):
    """What was written down of pieces beside their booking and their verdicts."""

    def later_rows(self, keys: Sequence[str], own: Collection[str]) -> dict[str, str]:
        """By the id of each piece of which more was written down, the table of the first such row that is found.

        own: ids of rows that came with the booking.
        """
        found: dict[str, str] = {}
        for some in shares(keys):
            for table in _OF_PIECES:
                self._note(found, table, table.c.item_id, some, own)
            for table in (year_tables.attachment, tables.document):
                self._note(found, table, table.c.about, some, own)
        return found

    def _note(
        self, found: dict[str, str], table: Table, column: Column[str], keys: Sequence[str], own: Collection[str]
    ) -> None:
        """The pieces that this column of rows beside one's own names."""
        for row, key in self._connection.execute(select(table.c.id, column).where(column.in_(keys))):
            if row not in own:
                found.setdefault(str(key), table.name)

    def tags_named(self, tags: Collection[str]) -> dict[str, str]:
        """By each of these tags that a trip, a rig, a count or a report of an incident names, the table that does."""
        wanted, found = frozenset(tags), dict[str, str]()
        for table in _BY_TAG:
            for body in self._connection.execute(select(table.c.body)).scalars():
                for text in texts(json.loads(str(body))):
                    if text in wanted:
                        found.setdefault(text, table.name)
        return found

    def every_document(self, kind: str) -> tuple[tuple[str, str], ...]:
        """Number and body of every document of a kind, the newest first."""
        table = tables.document
        rows = (
            select(table.c.id, table.c.body).where(table.c.kind == kind).order_by(table.c.day.desc(), table.c.id.desc())
        )
        return tuple((str(number), str(body)) for number, body in self._connection.execute(rows))
