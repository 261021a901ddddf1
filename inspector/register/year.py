"""The part of a page that keeps and reads the officer's year: whereabouts, repairs, incidents, counts, papers."""

from collections.abc import Iterable
from functools import cache
from typing import Any

from sqlalchemy import Select, Table, bindparam, not_, select

from inspector.gear.attachment import Attachment, NewAttachment
from inspector.gear.evidence import NewQuarantine, NewRelease, Quarantine, Release
from inspector.gear.incident import Incident, IncidentEntry, NewIncident, NewIncidentEntry
from inspector.gear.item import Item, NewItem
from inspector.gear.item_change import ItemChange, NewItemChange
from inspector.gear.person import Contact, NewPersonChange
from inspector.gear.repair import NewRepair, Repair
from inspector.gear.stock_take import NewStockEntry, NewStockTake, StockEntry, StockTake
from inspector.gear.whereabouts import NewWhereabouts, Whereabouts, WhereaboutsEntry
from inspector.register import places, tables, year_tables
from inspector.register.current import IS_WITHDRAWN, booked, select_items
from inspector.register.events import events
from inspector.register.leaf import Leaf
from inspector.register.rows import Shape, from_body, new_id, to_body


class YearPage(Leaf):
    """Whereabouts, repairs, changed bookings, incidents, counts, attachments, contacts."""

    # --- what is written ---

    def add_whereabouts(self, item: Item, facts: NewWhereabouts) -> WhereaboutsEntry:
        """Keep where a piece is."""
        return WhereaboutsEntry(self._add_event(year_tables.whereabouts, item, facts.on, facts), item.id, facts)

    def add_repair(self, item: Item, facts: NewRepair) -> Repair:
        """Keep what was done to a piece."""
        return Repair(self._add_event(year_tables.repair, item, facts.on, facts), item.id, facts)

    def add_item_change(self, item: Item, facts: NewItemChange) -> ItemChange:
        """Keep a piece's facts from a day on. A new tag must be free."""
        key = new_id()
        row = {"id": key, "item_id": item.id, "day": facts.on, "tag": facts.item.tag, "body": to_body(facts)}
        self._add(year_tables.item_change, row)
        return ItemChange(key, item.id, facts)

    def add_incident(self, ref: str, facts: NewIncident) -> Incident:
        """Keep a report; its reference must be free."""
        made = Incident(new_id(), ref, facts)
        self._add(year_tables.incident, {"id": made.id, "ref": ref, "day": facts.on, "body": to_body(facts)})
        return made

    def add_incident_entry(self, incident: Incident, facts: NewIncidentEntry) -> IncidentEntry:
        """Keep what was added to a report."""
        key = self._add_dated(year_tables.incident_entry, "incident_id", incident.id, facts.on, facts)
        return IncidentEntry(key, incident.id, facts)

    def add_quarantine(self, item: Item, facts: NewQuarantine) -> Quarantine:
        """Keep that a piece is evidence."""
        return Quarantine(self._add_event(year_tables.quarantine, item, facts.on, facts), item.id, facts)

    def add_release(self, item: Item, facts: NewRelease) -> Release:
        """Keep that a piece is evidence no more."""
        return Release(self._add_event(year_tables.release, item, facts.on, facts), item.id, facts)

    def add_stock_take(self, ref: str, facts: NewStockTake) -> StockTake:
        """Keep that a count was begun; its reference must be free."""
        made = StockTake(new_id(), ref, facts)
        self._add(year_tables.stock_take, {"id": made.id, "ref": ref, "day": facts.on, "body": to_body(facts)})
        return made

    def add_stock_entry(self, stock_take: StockTake, facts: NewStockEntry) -> StockEntry:
        """Keep a mark of a count, or its close."""
        key = self._add_dated(year_tables.stock_entry, "stock_take_id", stock_take.id, facts.on, facts)
        return StockEntry(key, stock_take.id, facts)

    def add_person_change(self, facts: NewPersonChange) -> None:
        """Keep a person's facts from a day on."""
        self._add_dated(year_tables.person_change, "person_id", facts.person.id, facts.on, facts)

    def add_attachment(self, about: str, facts: NewAttachment, data: bytes) -> Attachment:
        """Keep a file; the same bytes are kept once."""
        self.keep_bytes(facts.sha256, data)
        made = Attachment(new_id(), about, facts)
        row = {"id": made.id, "about": about, "day": facts.on, "data_id": facts.sha256, "body": to_body(facts)}
        self._add(year_tables.attachment, row)
        return made

    def keep_bytes(self, sha256: str, data: bytes) -> None:
        """Keep bytes under their sha256, once."""
        table = year_tables.attachment_data
        if self._connection.execute(select(table.c.id).where(table.c.id == sha256)).first() is None:
            self._add(table, {"id": sha256, "data": data})

    def set_contact(self, person_id: str, contact: Contact | None) -> None:
        """Write down how to reach a person, or take it out for good (None). At home alone: no merge carries it."""
        self._put(year_tables.contact, person_id, {"body": to_body(contact)} if contact else None)

    def set_passphrase(self, person_id: str, hashed: str) -> None:
        """Keep the hash of a person's passphrase; an empty one takes it out."""
        self._put(year_tables.passphrase, person_id, {"hashed": hashed} if hashed else None)

    def _put(self, table: Table, person_id: str, columns: dict[str, str] | None) -> None:
        self.check_at_home(table.name)
        if columns:
            self._put_row(table, {"person_id": person_id, **columns})
        else:
            self._take_rows(table, [person_id])

    # --- what is read ---

    def whereabouts(self, items: Iterable[Item]) -> dict[str, Whereabouts]:
        """Where each of these pieces is now, by its id; every piece is somewhere."""
        return places.whereabouts(self._connection, tuple(items))

    def whereabouts_of(self, item: Item) -> Whereabouts:
        """Where a piece is now."""
        return self.whereabouts([item])[item.id]

    def every_item(self) -> tuple[Item, ...]:
        """Every piece that was ever booked in and not withdrawn, by tag."""
        return tuple(select_items(self._connection, not_(IS_WITHDRAWN)))

    def document(self, number: str) -> tuple[str, str] | None:
        """What a document is about, and its body; None where no document has this number."""
        table = tables.document
        found = select(table.c.about, table.c.body).where(table.c.id == number)
        row = self._connection.execute(found).first()
        return (str(row[0]), str(row[1])) if row else None

    def booked(self, item: Item) -> NewItem:
        """What was written down of a piece when it came, before any change."""
        return booked(self._connection, [item.id])[item.id]

    def changes(self, item: Item) -> tuple[ItemChange, ...]:
        """What was changed of a piece's booking, the oldest first."""
        found = self._of(year_tables.item_change, "item_id", item.id, NewItemChange)
        return tuple(ItemChange(key, item.id, facts) for key, facts in found)

    def open_quarantines(self, item: Item) -> tuple[str, ...]:
        """The references of the incidents whose evidence a piece still is."""
        kept, gone = events(self._connection, (year_tables.quarantine, year_tables.release), [item.id])
        free = {from_body(one.body, NewRelease).incident for one in gone.get(item.id, ())}
        refs = (from_body(one.body, NewQuarantine).incident for one in kept.get(item.id, ()))
        return tuple(dict.fromkeys(ref for ref in refs if ref not in free))

    def open_breaks(self, item: Item) -> tuple[str, ...]:
        """The references of the incidents in which a piece broke, as long as no two have answered that."""
        broke = [one for _, one in self._of(year_tables.quarantine, "item_id", item.id, NewQuarantine) if one.broke]
        freed = self._of(year_tables.release, "item_id", item.id, NewRelease)
        answered = {one.incident for _, one in freed if one.whole}
        return tuple(dict.fromkeys(one.incident for one in broke if one.incident not in answered))

    def incidents(self) -> tuple[Incident, ...]:
        """Every report, the oldest first."""
        return tuple(Incident(key, ref, facts) for key, ref, facts in self._called(year_tables.incident, NewIncident))

    def incident_entries(self, incident: Incident) -> tuple[IncidentEntry, ...]:
        """What was added to a report, the oldest first."""
        found = self._of(year_tables.incident_entry, "incident_id", incident.id, NewIncidentEntry)
        return tuple(IncidentEntry(key, incident.id, facts) for key, facts in found)

    def stock_takes(self) -> tuple[StockTake, ...]:
        """Every count, the oldest first."""
        return tuple(
            StockTake(key, ref, facts) for key, ref, facts in self._called(year_tables.stock_take, NewStockTake)
        )

    def stock_entries(self, stock_take: StockTake) -> tuple[StockEntry, ...]:
        """What was marked, the oldest first."""
        found = self._of(year_tables.stock_entry, "stock_take_id", stock_take.id, NewStockEntry)
        return tuple(StockEntry(key, stock_take.id, facts) for key, facts in found)

    def attachments(self, about: str) -> tuple[Attachment, ...]:
        """The files that belong to a piece, incident or trip, the oldest first."""
        return tuple(
            Attachment(key, about, facts)
            for key, facts in self._of(year_tables.attachment, "about", about, NewAttachment)
        )

    def attachment_bytes(self, sha256: str) -> bytes:
        """The bytes of a kept file."""
        table = year_tables.attachment_data
        return bytes(self._connection.execute(select(table.c.data).where(table.c.id == sha256)).scalar_one())

    def contact(self, person_id: str) -> Contact | None:
        """How to reach a person, where it was written down."""
        table = year_tables.contact
        body = self._connection.execute(select(table.c.body).where(table.c.person_id == person_id)).scalar_one_or_none()
        return from_body(str(body), Contact) if body is not None else None

    def passphrase(self, person_id: str) -> str:
        """The hash of a person's passphrase; empty where there is none."""
        table = year_tables.passphrase
        found = select(table.c.hashed).where(table.c.person_id == person_id)
        return str(self._connection.execute(found).scalar_one_or_none() or "")

    def passphrase_holders(self) -> frozenset[str]:
        """The ids of everybody who has a passphrase."""
        return frozenset(map(str, self._connection.execute(select(year_tables.passphrase.c.person_id)).scalars()))

    def person_changes(self, person_id: str) -> tuple[NewPersonChange, ...]:
        """What was changed of a person, the oldest first."""
        found = self._of(year_tables.person_change, "person_id", person_id, NewPersonChange)
        return tuple(facts for _, facts in found)

    def _of(self, table: Table, column: str, owner: str, shape: type[Shape]) -> list[tuple[str, Shape]]:
        found = self._connection.execute(_owned(table, column), {"owner": owner})
        return [(str(key), from_body(str(body), shape)) for key, body in found]

    def _called(self, table: Table, shape: type[Shape]) -> list[tuple[str, str, Shape]]:
        found = self._connection.execute(_in_order(table))
        return [(str(key), str(ref), from_body(str(body), shape)) for key, ref, body in found]


@cache
def _owned(table: Table, column: str) -> Select[Any]:
    """What of a table belongs to somebody, the oldest first; made once, since making it takes longer than asking it."""
    found = select(table.c.id, table.c.body).where(table.c[column] == bindparam("owner"))
    return found.order_by(table.c.day, table.c.id)


@cache
def _in_order(table: Table) -> Select[Any]:
    """All of a table with its references, the oldest first; made once as well."""
    return select(table.c.id, table.c.ref, table.c.body).order_by(table.c.day, table.c.id)
