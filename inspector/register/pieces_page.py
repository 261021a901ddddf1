"""The part of a page that keeps pieces and what is said of them, one or many at once."""

from collections.abc import Collection, Sequence
from datetime import date
from typing import Any

from msgspec.structs import asdict
from sqlalchemy import ColumnElement, Connection, bindparam, or_, select

from inspector.gear.item import Item, NewItem
from inspector.gear.lists import Listing
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Explanation, Verdict
from inspector.gear.whereabouts import Where
from inspector.register import lists, tables
from inspector.register.current import borrowed, item_called, tags_now, tags_of, withdrawn
from inspector.register.events import shares
from inspector.register.leaf import Leaf
from inspector.register.rows import from_body, new_id, to_body

Said = tuple[Verdict, Explanation, Listing]


class PiecesPage(Leaf):
    """Pieces, their verdicts, and what stands of them in the lists."""

    def add_item(self, facts: NewItem, on: date) -> Item:
        """Keep a piece; its tag must be free."""
        return self.add_items([facts], on)[0]

    def add_items(self, every: Sequence[NewItem], on: date) -> tuple[Item, ...]:
        """Keep pieces, in their order; their tags must be free."""
        items = tuple(Item(new_id(), on, facts) for facts in every)
        rows = [
            {"id": one.id, "tag": one.tag, "kind": one.facts.kind, "booked_on": on, "body": to_body(one.facts)}
            for one in items
        ]
        self._add_all(tables.item, rows)
        return items

    def add_verdict(self, verdict: Verdict, words: Explanation, listing: Listing) -> None:
        """Keep a verdict with its words, and let the lists show it."""
        self.add_verdicts([(verdict, words, listing)])

    def add_verdicts(self, said: Sequence[Said]) -> None:
        """Keep verdicts of different pieces with their words, and let the lists show them."""
        rows: list[dict[str, Any]] = [
            {
                "id": new_id(),
                "item_id": verdict.item_id,
                "day": verdict.on,
                "outcome": verdict.outcome.value,
                "rulebook_id": verdict.rulebook,
                "body": to_body(verdict),
                "words": to_body(words),
            }
            for verdict, words, _ in said
        ]
        self._add_all(tables.verdict, rows)
        self._stand([(str(row["id"]), *one) for row, one in zip(rows, said, strict=True)])

    def _stand(self, said: Sequence[tuple[str, *Said]]) -> None:
        """What the lists show; of what was withdrawn nothing stands any more."""
        withdrawn = self.withdrawn([verdict.item_id for _, verdict, _, _ in said])
        self.drop_standing(tuple(withdrawn))
        self._put_rows(tables.standing, [_stands(*one) for one in said if one[1].item_id not in withdrawn])

    def drop_standing(self, keys: Sequence[str]) -> None:
        """Let the lists show nothing of these pieces."""
        self._take_rows(tables.standing, keys)

    # --- what is read ---

    def is_taken(self, tag: str) -> bool:
        """Whether a piece that was not withdrawn has or had this tag, in any case."""
        found = item_called(self._connection, tag)
        return found is not None and not self.withdrawn([found.id])

    def keys(self) -> tuple[str, ...]:
        """The ids of all pieces that stand in the lists, by tag."""
        return self._standing_keys()

    def keys_to_tell(self, until: date, without_wall: Collection[str]) -> tuple[str, ...]:
        """The ids of those pieces, by tag, of which a list of what falls due up to that day may have anything to say.

        No verdict names a day before the two that stand in the lists; of what is in use only a wall, at a place never
        read, waits without a day. without_wall: the kinds that have none.
        """
        table = tables.standing
        held = table.c.outcome.in_([Outcome.HOLD.value, Outcome.RETIRE.value])
        asks = or_(held, table.c.next_due <= until, table.c.holds_until <= until, table.c.kind.not_in(without_wall))
        elsewhere = (lists.put(Where.MISSING, Where.STOLEN), lists.lent(), borrowed())
        return self._standing_keys(or_(asks, *(table.c.item_id.in_(some) for some in elsewhere)))

    def _standing_keys(self, *wanted: ColumnElement[bool]) -> tuple[str, ...]:
        table = tables.standing
        return tuple(self._connection.execute(select(table.c.item_id).where(*wanted).order_by(table.c.tag)).scalars())

    def withdrawn(self, keys: Sequence[str]) -> frozenset[str]:
        """The ids of those of these pieces that were withdrawn."""
        return withdrawn(self._connection, keys)

    def tags_ever(self, item: Item) -> tuple[str, ...]:
        """Every tag a piece has or had, the first one first."""
        return self.tags_ever_of([item])[item.id]

    def tags_ever_of(self, items: Sequence[Item]) -> dict[str, tuple[str, ...]]:
        """Every tag that each of these pieces has or had, by its id."""
        keys = [one.id for one in items]
        return {key: tags for some in shares(keys) for key, tags in tags_of(self._connection, some).items()}

    def tags_now(self) -> dict[str, str]:
        """By each tag that a piece had before, the one it has now."""
        return tags_now(self._connection)

    def latest_verdict(self, item_id: str) -> tuple[Verdict, Explanation]:
        """The stored verdict and its words, as they were said; of a piece that was withdrawn its last one."""
        return self._once(_latest_verdict, item_id)


_SAID = select(tables.verdict.c.body, tables.verdict.c.words)
_SAID_NOW = _SAID.join(tables.standing, tables.standing.c.verdict_id == tables.verdict.c.id).where(
    tables.standing.c.item_id == bindparam("piece")
)
_SAID_LAST = _SAID.where(tables.verdict.c.item_id == bindparam("piece")).order_by(tables.verdict.c.id.desc()).limit(1)


def _latest_verdict(connection: Connection, item_id: str) -> tuple[Verdict, Explanation]:
    asked = {"piece": item_id}
    row = connection.execute(_SAID_NOW, asked).first() or connection.execute(_SAID_LAST, asked).one()
    return from_body(str(row[0]), Verdict), from_body(str(row[1]), Explanation)


def _stands(verdict_id: str, verdict: Verdict, words: Explanation, listing: Listing) -> dict[str, Any]:
    return {
        "item_id": verdict.item_id,
        "verdict_id": verdict_id,
        "outcome": verdict.outcome.value,
        "headline": words.headline,
        "next_due": None if verdict.outcome is Outcome.RETIRE else verdict.next_due,
        "holds_until": verdict.holds_until,
        "unloosened": verdict.unloosened.outcome.value if verdict.unloosened else None,
        **asdict(listing),
        "search": listing.search.casefold(),
    }
