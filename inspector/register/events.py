"""What happened to some pieces, out of several tables by one question: a question costs more than its rows."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import date
from functools import cache
from operator import attrgetter
from typing import Any, TypeVar

from msgspec import Struct
from sqlalchemy import CompoundSelect, Connection, Table, bindparam, literal_column, select, union_all

_AT_ONCE = 500
Key = TypeVar("Key")
_TURN = attrgetter("day", "id")


class Row(Struct, frozen=True, gc=False):
    """A row of such a table."""

    id: str
    day: date
    body: str


Rows = dict[str, list[Row]]  # by piece, in order of day and entry


def events(
    connection: Connection,
    of: tuple[Table, ...],
    keys: Sequence[str],
    until: date = date.max,
    ever: Table | None = None,
) -> list[Rows]:
    """For each of the tables in turn what happened to the pieces up to a day. ever: that of which later rows count."""
    found: list[Rows] = [defaultdict(list) for _ in of]
    for some in shares(keys):
        rows = connection.execute(_question(of, ever), {"keys": some, "until": until}).all()
        for at, item_id, key, day, body in rows:
            found[at][item_id].append(Row(key, day, body))
    for by_piece in found:
        for entries in by_piece.values():
            entries.sort(key=_TURN)
    return [dict(by_piece) for by_piece in found]


@cache
def _question(of: tuple[Table, ...], ever: Table | None) -> CompoundSelect[Any]:
    """Made once for the tables, since making it takes longer than asking it.

    It asks for no order: a database sorts all tables' rows in one, bodies and all, where each piece's few are in turn
    already but for those of one day.
    """
    each = []
    for at, table in enumerate(of):
        rows = select(literal_column(str(at)).label("at"), table.c.item_id, table.c.id, table.c.day, table.c.body)
        rows = rows.where(table.c.item_id.in_(bindparam("keys", expanding=True)))
        each.append(rows if table is ever else rows.where(table.c.day <= bindparam("until")))
    return union_all(*each)


def shares(keys: Sequence[Key]) -> Iterator[Sequence[Key]]:
    """The keys in shares that every database takes in one question."""
    return (keys[at : at + _AT_ONCE] for at in range(0, len(keys), _AT_ONCE))
