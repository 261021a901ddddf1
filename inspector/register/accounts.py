"""What the ledger's lines say of rows: the digest of each row they wrote, the checksum of each that may change.

It is noted aside while the ledger is read, and asked for while the tables are.
"""

import json
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from inspector.register.aside import as_key, as_text, marks
from inspector.register.events import shares

_TABLES = (
    "CREATE TABLE named (name, key, digest, line, place, met, PRIMARY KEY (name, key, digest)) WITHOUT ROWID",
    "CREATE TABLE kept (place INTEGER PRIMARY KEY, name, key, own, line, UNIQUE (name, key))",
)
_NAME = "INSERT INTO named VALUES (?, ?, ?, ?, ?, 0) ON CONFLICT DO UPDATE SET line = excluded.line"
_KEEP = (
    "INSERT INTO kept (name, key, own, line) VALUES (?, ?, ?, ?)"
    " ON CONFLICT DO UPDATE SET own = excluded.own, line = excluded.line"
)
_ASKED = "SELECT key, digest, line FROM named WHERE NOT met AND name = ? AND key IN ({})"
_MET = "UPDATE named SET met = 1 WHERE name = ? AND key IN ({})"
_GONE = "SELECT name, key, max(line) FROM named WHERE NOT met GROUP BY name, key ORDER BY min(place)"
_COUNTED = "SELECT count(*) FROM (SELECT DISTINCT name, key FROM named)"
_FIRST_LINES = "SELECT key, min(line) FROM named WHERE name = ? AND key IN ({}) GROUP BY key"
_PLACES = "SELECT key, min(place) FROM named WHERE name = ? AND key IN ({}) GROUP BY key"
_KEPT = "SELECT key, own, line FROM kept WHERE name = ? ORDER BY place"
Key = tuple[str, str]  # table and id of a row


class Accounts:
    """What all lines say together. noted: where it is put aside."""

    def __init__(self, noted: sqlite3.Connection) -> None:
        self._noted = noted
        self._place = 0
        for one in _TABLES:
            noted.execute(one)

    def take(self, lines: Sequence[Mapping[Any, Any]]) -> None:
        """Note what the next lines say. Bytes and rulebooks are named by every copy that kept them, and kept once."""
        said = [(int(line["id"]), _said(line)) for line in lines]
        named = [(*map(as_key, one), at) for at, what in said for one in _named(what)]
        self._noted.executemany(_NAME, ((*one, place) for place, one in enumerate(named, self._place)))
        self._place += len(named)
        self._noted.executemany(_KEEP, ((*map(as_key, one), at) for at, what in said for one in _kept(what)))

    def meet(self, name: str, keys: Sequence[str]) -> dict[str, dict[str, int]]:
        """The digests of rows that are there, and the last line that names each; of those no line names, none."""
        found: dict[str, dict[str, int]] = {}
        for key, own, line in self._asked(_ASKED, name, keys):
            found.setdefault(as_text(key), {})[as_text(own)] = int(line)
        self._asked(_MET, name, keys)
        return found

    def gone(self) -> Iterator[tuple[str, str, int]]:
        """Table and id of each row that was not met, and the last line that names it, in the order of the ledger."""
        return ((as_text(name), as_text(key), int(line)) for name, key, line in self._noted.execute(_GONE))

    @property
    def row_count(self) -> int:
        """How many rows the lines name."""
        return int(self._noted.execute(_COUNTED).fetchone()[0])

    def first_lines(self, name: str, keys: Sequence[str]) -> dict[str, int]:
        """The first line that names each of some rows."""
        return {as_text(key): int(line) for key, line in self._asked(_FIRST_LINES, name, keys)}

    def places(self, name: str, keys: Sequence[str]) -> dict[str, int]:
        """The places of some rows among all that were entered."""
        return {as_text(key): int(place) for key, place in self._asked(_PLACES, name, keys)}

    def _asked(self, question: str, name: str, keys: Sequence[str]) -> list[tuple[Any, ...]]:
        found: list[tuple[Any, ...]] = []
        for some in shares([as_key(key) for key in keys]):
            found += self._noted.execute(question.format(marks(some)), (as_key(name), *some))
        return found

    def kept(self, name: str) -> Iterator[tuple[str, str, int]]:
        """Key of each row of a table that may change, its checksum, "" once taken out, and the last line about it."""
        found = self._noted.execute(_KEPT, (as_key(name),))
        return ((as_text(key), as_text(own), int(line)) for key, own, line in found)


def rows_named(line: Mapping[Any, Any]) -> list[tuple[str, str, str]]:
    """Table, id and digest of each row that a line names; none where it cannot be read."""
    return _named(_said(line))


def rows_kept(line: Mapping[Any, Any]) -> list[tuple[str, str, str]]:
    """Table, key and checksum of each row that may change of which a line tells, as far as it can be read."""
    return list(_kept(_said(line)))


def _said(line: Mapping[Any, Any]) -> Any:
    try:
        return json.loads(line["body"])
    except (ValueError, TypeError):
        return None  # a body that cannot be read is told by its line's hash


def _named(said: Any) -> list[tuple[str, str, str]]:
    try:
        return [(str(table), str(key), str(own)) for table, key, own in said["rows"]]
    except (ValueError, KeyError, TypeError):
        return []


def _kept(said: Any) -> Iterator[tuple[str, str, str]]:
    try:
        for table, key, own in said.get("kept", ()):
            yield str(table), str(key), str(own)
    except (ValueError, TypeError, AttributeError):
        return
