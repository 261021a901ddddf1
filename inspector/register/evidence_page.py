"""The part of a page that reads what an incident asks of the register: how a piece stood, who had it, what is kept."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime

from msgspec import Struct
from sqlalchemy import Table, bindparam, select, union

from inspector.gear.custody import Hands, NewCustody
from inspector.gear.evidence import NewQuarantine, NewRelease, Release
from inspector.gear.incident import EntryKind, Gravity
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.standing import StandingVerdict, StandingWords
from inspector.gear.verdict import Explanation, Verdict
from inspector.register import tables, year_tables
from inspector.register.events import shares
from inspector.register.rows import from_body
from inspector.register.year import YearPage


class Kept(Struct, frozen=True):
    """A numbered document as kept. about: the id of the piece, trip, incident or person, as its kind asks."""

    number: str
    kind: str
    on: date
    about: str


_OUTCOMES = select(tables.verdict.c.id, tables.verdict.c.outcome).where(tables.verdict.c.item_id == bindparam("piece"))


_NAMING = union(  # one by one: with "or" between them a server reads every document
    select(tables.document.c.id.label("number")).where(tables.document.c.about == bindparam("piece")),
    select(tables.named_in.c.document_id).where(tables.named_in.c.tag.in_(bindparam("tags", expanding=True))),
).subquery()
_DOCUMENTS = (
    select(tables.document.c.id, tables.document.c.kind, tables.document.c.day, tables.document.c.about)
    .join(_NAMING, _NAMING.c.number == tables.document.c.id)
    .order_by(tables.document.c.day.desc(), tables.document.c.id.desc())
)
_NAMING_OF_A_KIND = (
    select(tables.document.c.day, tables.document.c.body)
    .join(tables.named_in, tables.named_in.c.document_id == tables.document.c.id)
    .where(
        tables.document.c.kind == bindparam("kind"),
        tables.named_in.c.tag.in_(bindparam("tags", expanding=True)),
    )
    .order_by(tables.document.c.day.desc(), tables.document.c.id.desc())
)


class EvidencePage(YearPage):
    """Verdicts of a day, hands of a day, evidence that is kept."""

    def stood_on(self, item: Item, on: date) -> tuple[str, Verdict, Explanation] | None:
        """The verdict that stood at the end of a day, with its id and words; None where there was none.

        One that was entered later for that day or an earlier one did not stand then.
        """
        table = tables.verdict
        found = select(table.c.id).where(table.c.item_id == item.id, table.c.day <= on)
        keys = self._connection.execute(found.order_by(table.c.day.desc(), table.c.id.desc())).scalars().all()
        for key in map(str, keys):
            if self._entered_on(key) <= on:
                return key, *self.verdict_with(key)
        return None

    def _entered_on(self, key: str) -> date:
        """The day on which the ledger line was written that names this row."""
        line = select(tables.ledger.c.at).where(tables.ledger.c.body.contains(key, autoescape=True))
        at = self._connection.execute(line.order_by(tables.ledger.c.id).limit(1)).scalar_one()
        return datetime.fromisoformat(str(at)).date()

    def verdict_with(self, key: str) -> tuple[Verdict, Explanation]:
        """A stored verdict by its id, with its words."""
        table = tables.verdict
        row = self._connection.execute(select(table.c.body, table.c.words).where(table.c.id == key)).one()
        return from_body(str(row[0]), Verdict), from_body(str(row[1]), Explanation)

    def outcomes_of(self, item: Item) -> dict[str, Outcome]:
        """The outcome of every verdict that was ever kept of a piece, by the verdict's id."""
        found = self._connection.execute(_OUTCOMES, {"piece": item.id})
        return {str(key): Outcome(outcome) for key, outcome in found}

    def documents_of(self, item: Item, tags: Iterable[str]) -> tuple[Kept, ...]:
        """Every document about a piece or that names one of its tags, the newest first."""
        rows = self._connection.execute(_DOCUMENTS, {"piece": item.id, "tags": list(tags)})
        return tuple(Kept(*row) for row in rows)

    def documents_naming(self, kind: str, tags: Iterable[str]) -> tuple[tuple[date, str], ...]:
        """Day and body of every document of a kind that names one of these tags, the newest first."""
        rows = self._connection.execute(_NAMING_OF_A_KIND, {"kind": kind, "tags": list(tags)})
        return tuple((on, str(body)) for on, body in rows)

    def document_body(self, number: str) -> str:
        """What a numbered document says, as kept; the number must be there."""
        table = tables.document
        return str(self._connection.execute(select(table.c.body).where(table.c.id == number)).scalar_one())

    def document_of(self, kind: str, number: str) -> str | None:
        """What the document of this kind with this number says; None where there is none."""
        table = tables.document
        found = select(table.c.body).where(table.c.kind == kind, table.c.id == number)
        body = self._connection.execute(found).scalar_one_or_none()
        return None if body is None else str(body)

    def standing_verdicts(self, items: Iterable[Item]) -> dict[str, tuple[StandingVerdict, StandingWords]]:
        """What the standing verdicts of many pieces say, by the piece's id, in a few questions."""
        table, standing = tables.verdict, tables.standing
        stands = select(standing.c.item_id, table.c.body, table.c.words).join(
            table, standing.c.verdict_id == table.c.id
        )
        found: dict[str, tuple[StandingVerdict, StandingWords]] = {}
        for some in shares([one.id for one in items]):
            for key, body, words in self._connection.execute(stands.where(standing.c.item_id.in_(some))):
                found[str(key)] = from_body(str(body), StandingVerdict), from_body(str(words), StandingWords)
        return found

    def every_open_quarantine(self) -> dict[str, tuple[str, ...]]:
        """Pieces that are evidence still, by id, with the references of the incidents."""
        free: dict[str, set[str]] = {}
        for key, body in self._by_piece(year_tables.release):
            free.setdefault(key, set()).add(from_body(body, NewRelease).incident)
        kept: dict[str, dict[str, None]] = {}
        for key, body in self._by_piece(year_tables.quarantine):
            ref = from_body(body, NewQuarantine).incident
            if ref not in free.get(key, ()):
                kept.setdefault(key, {})[ref] = None
        return {key: tuple(refs) for key, refs in kept.items()}

    def _by_piece(self, table: Table) -> Iterator[tuple[str, str]]:
        """The piece's id and the body of every row, in order of day and entry."""
        rows = select(table.c.item_id, table.c.body).order_by(table.c.day, table.c.id)
        return ((str(key), str(body)) for key, body in self._connection.execute(rows))

    def held_by_on(self, item: Item, on: date) -> str:
        """The id of whoever had the piece on loan on a day; who brought it back that very day had it."""
        holder = ""
        for _, entry in self._of(tables.custody, "item_id", item.id, NewCustody):
            if entry.on > on:
                break
            if entry.what is Hands.LENT:
                holder = entry.holder
            elif entry.on < on:
                holder = ""
        return holder

    def releases_of(self, item: Item) -> tuple[Release, ...]:
        """Who let a piece go from evidence, the oldest first."""
        found = self._of(year_tables.release, "item_id", item.id, NewRelease)
        return tuple(Release(key, item.id, facts) for key, facts in found)

    def quarantined_for(self, item: Item, ref: str) -> bool:
        """Whether a piece is or was evidence of this incident."""
        kept = self._of(year_tables.quarantine, "item_id", item.id, NewQuarantine)
        return any(one.incident == ref for _, one in kept)

    def kept_vehicles(self) -> dict[str, tuple[str, ...]]:
        """Vehicles that are kept as found, by tag, with the references of the incidents."""
        found: dict[str, list[str]] = {}
        for one in self.incidents():
            if one.facts.gravity is not Gravity.ACCIDENT:
                continue
            entries = (entry.facts for entry in self.incident_entries(one))
            free = {entry.about for entry in entries if entry.kind is EntryKind.VEHICLE_RELEASED}
            for tag in one.facts.vehicles:
                if tag not in free:
                    found.setdefault(tag, []).append(one.ref)
        return {tag: tuple(refs) for tag, refs in found.items()}
