"""The part of a page that keeps and reads who has what, the rigs, and the debriefs."""

from collections.abc import Iterable
from datetime import date

from msgspec import Struct
from sqlalchemy import RowMapping, bindparam, func, select

from inspector.gear.custody import Custody, Hands, NewCustody
from inspector.gear.debrief import Debrief, NewDebrief
from inspector.gear.item import Item
from inspector.gear.rig import KeptRig, Rig
from inspector.register import tables
from inspector.register.current import COLUMNS, TAG, item_of, tags_now
from inspector.register.leaf import Leaf
from inspector.register.rows import from_body, new_id, to_body

_LAST_ENTRY = (
    select(tables.custody.c.id, tables.custody.c.body)
    .where(tables.custody.c.item_id == bindparam("piece"))
    .order_by(tables.custody.c.id.desc())
    .limit(1)
)


class Out(Struct, frozen=True):
    """A piece that is out, with the entry that says so."""

    item: Item
    lent: Custody


class HandsPage(Leaf):
    """Custody, rigs and debriefs."""

    # --- what is written ---

    def add_custody(self, item: Item, facts: NewCustody) -> Custody:
        """Keep that a piece was lent or came back."""
        return Custody(self._add_event(tables.custody, item, facts.on, facts), item.id, facts)

    def add_rig(self, ref: str, on: date, rig: Rig) -> KeptRig:
        """Keep a rig; its reference must be free."""
        made = KeptRig(new_id(), ref, on, rig)
        self._add(tables.rig, {"id": made.id, "ref": ref, "trip": rig.trip, "day": on, "body": to_body(rig)})
        return made

    def add_debrief(self, facts: NewDebrief) -> Debrief:
        """Keep a debrief."""
        made = Debrief(new_id(), facts)
        self._add(tables.debrief, {"id": made.id, "trip": facts.trip, "day": facts.on, "body": to_body(facts)})
        return made

    # --- what is read ---

    def out(self) -> tuple[Out, ...]:
        """Every piece that is out, by tag; one that was made unusable is not out any more."""
        item, custody, gone = tables.item, tables.custody, tables.destruction
        last = select(func.max(custody.c.id)).group_by(custody.c.item_id)
        entry = (custody.c.id.label("entry"), custody.c.body.label("entry_body"))
        found = select(*COLUMNS, *entry).join(custody, custody.c.item_id == item.c.id)
        found = found.where(custody.c.id.in_(last), item.c.id.not_in(select(gone.c.item_id)))
        return tuple(_outs(self._connection.execute(found.order_by(TAG)).mappings()))

    def out_entry(self, item: Item) -> Custody | None:
        """The entry by which this piece is out, or None where it is not."""
        return self._last_entry(item, Hands.LENT)

    def loan_not_returned(self, item: Item) -> NewCustody | None:
        """The entry by which its last loan ended as not returned, or None."""
        last = self._last_entry(item, Hands.NOT_RETURNED)
        return last.facts if last else None

    def _last_entry(self, item: Item, what: Hands) -> Custody | None:
        """Its last entry where that says this, or None."""
        row = self._connection.execute(_LAST_ENTRY, {"piece": item.id}).first()
        last = Custody(str(row[0]), item.id, from_body(str(row[1]), NewCustody)) if row else None
        return last if last and last.facts.what is what else None

    def rigs(self) -> tuple[KeptRig, ...]:
        """Every kept rig, by reference; its parts by the tags of today."""
        tags = tags_now(self._connection)
        rows = self._connection.execute(select(tables.rig).order_by(tables.rig.c.ref)).mappings()
        return tuple(
            KeptRig(str(row["id"]), str(row["ref"]), row["day"], from_body(str(row["body"]), Rig).called(tags))
            for row in rows
        )

    def debriefs(self, trip: str) -> tuple[Debrief, ...]:
        """Every debrief of a trip, as they were kept."""
        table = tables.debrief
        found = select(table.c.id, table.c.body).where(table.c.trip == trip).order_by(table.c.id)
        rows = self._connection.execute(found)
        return tuple(Debrief(str(key), from_body(str(body), NewDebrief)) for key, body in rows)


def _outs(rows: Iterable[RowMapping]) -> Iterable[Out]:
    for row in rows:
        facts = from_body(str(row["entry_body"]), NewCustody)
        if facts.what is Hands.LENT:
            item = item_of(row)
            yield Out(item, Custody(str(row["entry"]), item.id, facts))
