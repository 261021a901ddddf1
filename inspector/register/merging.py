"""What another copy of this register holds that this one does not: found by the hashes of lines, taken over whole."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection, Table, func, insert, select

from inspector.gear.lists import Verified
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.accounts import rows_named
from inspector.register.chains import GENESIS
from inspector.register.columns import METADATA
from inspector.register.naming import name_all
from inspector.register.tables import APPEND_ONLY, club_setting, document, ledger
from inspector.register.year_tables import attachment_data

_AT_ONCE = 400
_FILES_AT_ONCE = 4  # each may have some megabytes


class Line(Struct, frozen=True):
    """A ledger line of one of two copies. rows: table and id of what it wrote."""

    columns: Mapping[str, Any]
    rows: tuple[tuple[str, str], ...]

    @property
    def hash(self) -> str:
        """Its hash."""
        return str(self.columns["hash"])

    @property
    def deed(self) -> str:
        """What was done."""
        return str(self.columns["deed"])

    @property
    def origin(self) -> str:
        """The copy that wrote it."""
        return str(self.columns["origin"])


class Other:
    """Another copy of a register, opened to read from. `verified` says that its history is whole."""

    def __init__(self, connection: Connection, verified: Verified) -> None:
        self.connection = connection
        self.verified = verified

    @property
    def origin(self) -> str:
        """Its name."""
        found = select(club_setting.c.value).where(club_setting.c.key == "origin")
        return str(self.connection.execute(found).scalar_one_or_none() or "")


def lines_missing(own: Connection, other: Connection) -> tuple[Line, ...]:
    """The lines of the other copy that are not here, in its order. Empty where it holds nothing new."""
    here = set(own.execute(select(ledger.c.hash)).scalars())
    return tuple(line for line in every_line(other) if line.hash not in here)


def every_line(connection: Connection) -> Iterator[Line]:
    """The lines of a ledger in its order."""
    for row in connection.execute(select(ledger).order_by(ledger.c.id)).mappings():
        yield Line(dict(row), tuple((table, key) for table, key, _ in rows_named(row)))


def check_related(own: Connection, other: Connection, origin: str, missing: Sequence[Line]) -> None:
    """Refuse a copy of another register, and one that goes by the name of this one.

    origin: of this copy. Lines of one name on two machines would number their documents alike.
    """
    if _first(own) != _first(other):
        why = tr("It is not a copy of this register: the two begin with different lines.")
        raise Refused(tr("copy"), why, tr("Choose a copy that was taken from this register."))
    here = {str(before): str(by) for before, by in own.execute(select(ledger.c.before, ledger.c.origin))}
    known = set(own.execute(select(ledger.c.hash)).scalars()) | {GENESIS}
    for line in missing:
        before = str(line.columns["before"])
        if line.origin == origin or (before in known and here.get(before) == line.origin):
            raise _same_name(line.origin)


def _same_name(origin: str) -> Refused:
    why = tr(
        "Both write under the name {origin}: somebody copied the file by hand, and both copies were worked on.",
        origin=origin,
    )
    what = tr("Type into this register what was entered there. Next time take a field copy, which gets its own name.")
    return Refused(tr("copy"), why, what)


def _first(connection: Connection) -> str:
    found = select(ledger.c.hash).where(ledger.c.before == GENESIS)
    return str(connection.execute(found).scalar_one_or_none() or "")


def take_lines(own: Connection, other: Connection, missing: Sequence[Line]) -> int:
    """Write the lines and every row they name into this register; how many rows were new here."""
    place = int(own.execute(select(func.coalesce(func.max(ledger.c.id), 0))).scalar_one())
    wanted: dict[str, list[str]] = {}
    for line in missing:
        for table, key in line.rows:
            wanted.setdefault(table, []).append(key)
    followed = [table for table in METADATA.sorted_tables if table in APPEND_ONLY]
    here = set(own.execute(select(document.c.id)).scalars())
    count = sum(_take_rows(own, other, table, wanted.get(table.name, ())) for table in followed)
    name_all(own, [number for number in dict.fromkeys(wanted.get(document.name, ())) if number not in here])
    rows = [dict(line.columns) | {"id": place + step} for step, line in enumerate(missing, 1)]
    for at in range(0, len(rows), _AT_ONCE):
        own.execute(insert(ledger), rows[at : at + _AT_ONCE])
    return count


def _take_rows(own: Connection, other: Connection, table: Table, wanted: Sequence[str]) -> int:
    """Rows of one table. Bytes and rulebooks stand under their sums, so both copies may have the same."""
    count, keys = 0, list(dict.fromkeys(wanted))
    step = _FILES_AT_ONCE if table is attachment_data else _AT_ONCE
    for at in range(0, len(keys), step):
        some = keys[at : at + step]
        here = set(own.execute(select(table.c.id).where(table.c.id.in_(some))).scalars())
        new = [key for key in some if key not in here]
        rows = [dict(row) for row in other.execute(select(table).where(table.c.id.in_(new))).mappings()]
        if rows:
            own.execute(insert(table), rows)
        count += len(rows)
    return count


def twice(connection: Connection, table: Table, column: str) -> list[str]:
    """What stands more than once in a column, whatever its capitals."""
    named = Counter(str(one).casefold() for one in connection.execute(select(table.c[column])).scalars())
    return [name for name, count in named.items() if count > 1]
