"""The part of a page that knows of other copies of the register, and takes over what they hold."""

from collections.abc import Iterable, Sequence

from msgspec import Struct
from sqlalchemy import Table, not_, select

from inspector.gear.item import Item
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import ledger, merging, tables, year_tables
from inspector.register.chains import heads_named
from inspector.register.current import IS_WITHDRAWN, TAG, select_items
from inspector.register.events import shares
from inspector.register.leaf import Leaf
from inspector.register.merging import Line, Other

_NAMED = (
    (tables.vehicle, "tag"),
    (tables.trip, "ref"),
    (tables.rig, "ref"),
    (year_tables.incident, "ref"),
    (year_tables.stock_take, "ref"),
    (year_tables.recall, "ref"),
)
_OWNERS = ("item", "vehicle", "trip", "person", "stock_take")


class Touch(Struct, frozen=True):
    """A row that a line wrote about something. owner: the table and the id of what it is about.

    said: the row's body; of a verdict its outcome.
    """

    line: str
    table: str
    owner: tuple[str, str]
    said: str


class MergePage(Leaf):
    """Field copies, and lines of other copies."""

    def brought(self, other: Other) -> tuple[Line, ...]:
        """The lines of another copy that are new here; refused where it is of another register."""
        missing = merging.lines_missing(self._connection, other.connection)
        merging.check_related(self._connection, other.connection, self._origin, missing)
        return missing

    def unknown_to(self, other: Other) -> tuple[Line, ...]:
        """The lines of this copy that the other one does not have."""
        return merging.lines_missing(other.connection, self._connection)

    def take_over(self, other: Other, missing: Sequence[Line]) -> int:
        """Keep the lines and the rows they name; how many rows were new here. The deed's own line follows ours."""
        self._after = ledger.tip(self._connection)
        return merging.take_lines(self._connection, other.connection, missing)

    def ends(self, missing: Sequence[Line]) -> tuple[str, ...]:
        """The heads of chains that these lines, taken over, leave open."""
        followed = {str(line.columns["before"]) for line in missing}
        named = {head for line in missing for head in heads_named(str(line.columns["body"]))}
        return tuple(line.hash for line in missing if line.hash not in followed | named)

    def touches(self, lines: Iterable[Line]) -> tuple[Touch, ...]:
        """What these lines wrote about pieces, vehicles, trips, people and counts, in their order."""
        wrote = [(line.hash, table, key) for line in lines for table, key in line.rows]
        found: dict[tuple[str, str], tuple[tuple[str, str], str]] = {}
        for table in tables.APPEND_ONLY:
            if owner := _owner_of(table):
                keys = [key for _, name, key in wrote if name == table.name]
                found |= self._said(table, owner, keys)
        return tuple(Touch(line, table, *found[(table, key)]) for line, table, key in wrote if (table, key) in found)

    def _said(
        self, table: Table, owner: tuple[str, str], keys: Sequence[str]
    ) -> dict[tuple[str, str], tuple[tuple[str, str], str]]:
        name, column = owner
        said = table.c.outcome if table is tables.verdict else table.c.body
        found = {}
        for some in shares(keys):
            rows = select(table.c.id, table.c[column], said).where(table.c.id.in_(some))
            for key, about, text in self._connection.execute(rows):
                found[(table.name, str(key))] = ((name, str(about)), str(text))
        return found

    def same_tags(self) -> tuple[tuple[str, str], ...]:
        """Ids of two pieces each that go by one tag now, the one that was booked in first before the other.

        One that was withdrawn has no tag any more that another could share.
        """
        first: dict[str, str] = {}
        found = []
        every = select(tables.item.c.id, TAG).where(not_(IS_WITHDRAWN)).order_by(tables.item.c.id)
        for key, tag in self._connection.execute(every):
            earlier = first.setdefault(str(tag).casefold(), str(key))
            if earlier != key:
                found.append((earlier, str(key)))
        return tuple(found)

    def items_with(self, keys: Iterable[str]) -> tuple[Item, ...]:
        """The pieces with these ids, by tag."""
        return tuple(
            item
            for some in shares(sorted(set(keys)))
            for item in select_items(self._connection, tables.item.c.id.in_(some))
        )

    def check_names_apart(self) -> None:
        """Refuse to bring together what is called by a reference that cannot be changed any more."""
        for table, column in _NAMED:
            if names := merging.twice(self._connection, table, column):
                why = tr("Both copies gave a name for good to another thing each: {names}.", names=", ".join(names))
                what = tr("Nothing was taken over. Type in here what was entered there.")
                raise Refused(tr("copy"), why, what)

    def origins(self, rows: Iterable[tuple[str, str]]) -> dict[tuple[str, str], str]:
        """The copy that wrote each of these rows, by table and id."""
        wanted = set(rows)
        found: dict[tuple[str, str], str] = {}
        for line in merging.every_line(self._connection):
            for row in line.rows:
                if row in wanted:
                    found.setdefault(row, line.origin)
        return found


def _owner_of(table: Table) -> tuple[str, str] | None:
    """What a row of a table is about: the table of it, and the column with its id; None for papers and texts."""
    if table.name in _OWNERS:
        return table.name, "id"
    return next(((name, f"{name}_id") for name in _OWNERS if f"{name}_id" in table.c), None)
