"""Statements are put into SQL once a process, not once a register: tests open thousands of registers, a program one.

What is kept is the text of a statement and how its figures go in and out; no row and no answer. It is found by the
statement's own key. That names the register's dialect object too, which for SQLite differs in nothing but its identity.
"""

from collections.abc import Hashable, Iterator, MutableMapping
from typing import Any

from sqlalchemy import Connection, Engine, event
from sqlalchemy.dialects.sqlite.pysqlite import SQLiteDialect_pysqlite
from sqlalchemy.util import LRUCache

_ROOM = 4000  # the program has some thousand, with the forms each takes


class _Statements(MutableMapping[Any, Any]):
    """Compiled statements by their keys, whichever SQLite engine made them; those of a server keep to their engine."""

    def __init__(self) -> None:
        self._kept: LRUCache[Hashable, Any] = LRUCache(_ROOM)

    def __getitem__(self, key: Any) -> Any:
        return self._kept[_any_sqlite(key)]

    def __setitem__(self, key: Any, compiled: Any) -> None:
        self._kept[_any_sqlite(key)] = compiled

    def __delitem__(self, key: Any) -> None:
        del self._kept[_any_sqlite(key)]

    def __iter__(self) -> Iterator[Any]:
        return iter(self._kept)

    def __len__(self) -> int:
        return len(self._kept)


def _any_sqlite(key: Any) -> Any:
    dialect, *rest = key
    return (SQLiteDialect_pysqlite, *rest) if type(dialect) is SQLiteDialect_pysqlite else key


KEPT = _Statements()


def share() -> None:
    """From now on every connection of this process looks for its statements among those of all."""
    event.listen(Engine, "engine_connect", _look_there)


def _look_there(connection: Connection) -> None:
    connection.execution_options(compiled_cache=KEPT)
