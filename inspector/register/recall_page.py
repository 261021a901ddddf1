"""The part of a page that keeps and reads recalls."""

from sqlalchemy import select

from inspector.gear.item import Item
from inspector.gear.recall_notice import (
    NewPieceCall,
    NewRecall,
    NewRecallEntry,
    PieceCall,
    Recall,
    RecallEntry,
    RecallEntryKind,
)
from inspector.register import year_tables
from inspector.register.current import withdrawn
from inspector.register.evidence_page import EvidencePage
from inspector.register.rows import from_body, new_id, to_body


class RecallPage(EvidencePage):
    """Notices, the pieces that stand under them, letters and answers."""

    def add_recall(self, ref: str, facts: NewRecall) -> Recall:
        """Keep a notice; its reference must be free."""
        made = Recall(new_id(), ref, facts)
        self._add(year_tables.recall, {"id": made.id, "ref": ref, "day": facts.on, "body": to_body(facts)})
        return made

    def add_recall_entry(self, recall: Recall, facts: NewRecallEntry) -> RecallEntry:
        """Keep what was added to a recall."""
        key = self._add_dated(year_tables.recall_entry, "recall_id", recall.id, facts.on, facts)
        return RecallEntry(key, recall.id, facts)

    def add_piece_call(self, item: Item, facts: NewPieceCall) -> PieceCall:
        """Keep a step of a piece under a recall."""
        return PieceCall(self._add_event(year_tables.piece_call, item, facts.on, facts), item.id, facts)

    def recalls(self) -> tuple[Recall, ...]:
        """Every recall, the oldest first."""
        return tuple(Recall(key, ref, facts) for key, ref, facts in self._called(year_tables.recall, NewRecall))

    def recall_entries(self, recall: Recall) -> tuple[RecallEntry, ...]:
        """What was added to a recall, the oldest first."""
        found = self._of(year_tables.recall_entry, "recall_id", recall.id, NewRecallEntry)
        return tuple(RecallEntry(key, recall.id, facts) for key, facts in found)

    def open_recalls(self) -> tuple[Recall, ...]:
        """Every recall that was neither closed nor withdrawn, the oldest first."""
        ended = self._with_entry(RecallEntryKind.CLOSED) | self._with_entry(RecallEntryKind.WITHDRAWN)
        return tuple(one for one in self.recalls() if one.id not in ended)

    def standing_recalls(self) -> tuple[Recall, ...]:
        """Every recall that was not withdrawn, the oldest first: what a closed one says of its pieces stays true."""
        gone = self._with_entry(RecallEntryKind.WITHDRAWN)
        return tuple(one for one in self.recalls() if one.id not in gone)

    def withdrawn_recalls(self) -> tuple[Recall, ...]:
        """Every recall that was withdrawn, the oldest first."""
        gone = self._with_entry(RecallEntryKind.WITHDRAWN)
        return tuple(one for one in self.recalls() if one.id in gone)

    def withdrawal_of(self, recall: Recall) -> NewRecallEntry | None:
        """By whom it was withdrawn, when and why; None where it was not. Of several in two copies the first."""
        said = (one.facts for one in self.recall_entries(recall))
        return next((one for one in said if one.kind is RecallEntryKind.WITHDRAWN), None)

    def is_recall_closed(self, recall: Recall) -> bool:
        """Whether it was closed."""
        return any(one.facts.kind is RecallEntryKind.CLOSED for one in self.recall_entries(recall))

    def _with_entry(self, kind: RecallEntryKind) -> frozenset[str]:
        """The ids of the recalls to which an entry of this kind was added."""
        table = year_tables.recall_entry
        found = select(table.c.recall_id).where(table.c.body.contains(f'"kind":"{kind.value}"', autoescape=True))
        return frozenset(str(key) for key in self._connection.execute(found).scalars())

    def piece_calls(self, item: Item) -> tuple[PieceCall, ...]:
        """The steps of a piece under recalls, the oldest first."""
        found = self._of(year_tables.piece_call, "item_id", item.id, NewPieceCall)
        return tuple(PieceCall(key, item.id, facts) for key, facts in found)

    def standing_calls(self, ref: str) -> dict[str, PieceCall]:
        """The last step of each piece under this recall, by the piece's id; none of a piece that was withdrawn."""
        return {item_id: steps[-1] for item_id, steps in self.steps_under(ref).items()}

    def steps_under(self, ref: str) -> dict[str, list[PieceCall]]:
        """Every step of each piece under this recall, in order, by the piece's id; none of one that was withdrawn."""
        found: dict[str, list[PieceCall]] = {}
        for key, item_id, body in self._every_call():
            facts = from_body(body, NewPieceCall)
            if facts.recall == ref:
                found.setdefault(item_id, []).append(PieceCall(key, item_id, facts))
        gone = withdrawn(self._connection, list(found))
        return {item_id: steps for item_id, steps in found.items() if item_id not in gone}

    def _every_call(self) -> list[tuple[str, str, str]]:
        table = year_tables.piece_call
        columns = table.select().with_only_columns(table.c.id, table.c.item_id, table.c.body)
        rows = self._connection.execute(columns.order_by(table.c.day, table.c.id))
        return [(str(key), str(item_id), str(body)) for key, item_id, body in rows]
