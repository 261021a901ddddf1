"""A page of the book: one transaction's view, in gear words."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime

from msgspec.structs import asdict
from sqlalchemy import ColumnElement, Select, bindparam, func, select

from inspector.gear.dossier import Dossier
from inspector.gear.fitting import Fitted
from inspector.gear.inspection import Inspection, NewInspection
from inspector.gear.item import Item
from inspector.gear.kind import Kind
from inspector.gear.lists import Verified
from inspector.gear.opinion import NewOpinion, Opinion
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.rulebooks import Adopted
from inspector.gear.strike import NewDestruction, NewStrike, Strike
from inspector.gear.use import Exposure, NewExposure, NewUse, Use
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import dossiers, ledger, lists, tables
from inspector.register.current import item_called, select_items
from inspector.register.dossiers import Retired, Retirement
from inspector.register.events import shares
from inspector.register.fleet_page import FleetPage
from inspector.register.hands import HandsPage
from inspector.register.history import HistoryLine, history
from inspector.register.ledger_page import LedgerPage
from inspector.register.merge_page import MergePage
from inspector.register.naming import name_tags
from inspector.register.pieces_page import PiecesPage
from inspector.register.proof import prove
from inspector.register.recall_page import RecallPage
from inspector.register.rows import as_facts, new_id, to_body
from inspector.register.turns import keep
from inspector.register.withdraw_page import WithdrawPage

_RULEBOOK = select(tables.rulebook.c.id).where(tables.rulebook.c.id == bindparam("name"))
_DOCUMENTS = (
    select(tables.document.c.about, tables.document.c.id, tables.document.c.body)
    .where(tables.document.c.kind == bindparam("kind"), tables.document.c.about.in_(bindparam("about", expanding=True)))
    .order_by(tables.document.c.day, tables.document.c.id)
)


class Page(PiecesPage, WithdrawPage, FleetPage, HandsPage, RecallPage, LedgerPage, MergePage):
    """One transaction's view of the book: what it adds is noted for its ledger line."""

    def left(self) -> None:
        """A page must not be left with rows that no ledger line accounts for."""
        if self._wrote or self._kept:
            raise RuntimeError("a deed wrote rows and was not entered in the ledger")

    # --- what is written ---

    def enter(self, deed: str, *, by: str, at: datetime, facts: object) -> str:
        """Close the deed: write its ledger line and keep the page. Returns the new head."""
        self._mind_clock(deed, at)
        plain = as_facts(facts)
        named: Mapping[str, object] = plain if isinstance(plain, dict) else {"facts": plain}
        line = ledger.Deed(deed, by, at, named, self._origin)
        own = ledger.add_line(self._connection, line, self._wrote, self._after, self._kept)
        if self._keeps:
            keep(self._connection, own)
        self._wrote, self._after, self._kept, self.newest = [], None, {}, own
        self.entered.add(own)
        return own

    def add_rulebook(self, name: str, text: str, on: date) -> None:
        """Keep the full text of an adopted rulebook under its hash."""
        self._add(tables.rulebook, {"id": name, "adopted_on": on, "text": text})

    def add_adoption(self, text: str, made_on: date, from_on: date) -> Adopted:
        """Keep a club's rulebook as it was adopted."""
        made = Adopted(new_id(), made_on, from_on, text)
        self._add(tables.adoption, asdict(made))
        return made

    def add_person(self, person: Person) -> None:
        """Keep a person."""
        self._add(tables.person, {"id": person.id, "name": person.name, "role": person.role, "body": to_body(person)})

    def add_inspection(self, item: Item, facts: NewInspection) -> Inspection:
        """Keep an inspection."""
        return Inspection(self._add_event(tables.inspection, item, facts.on, facts), item.id, facts)

    def add_use(self, item: Item, facts: NewUse) -> Use:
        """Keep a use."""
        return Use(self._add_event(tables.piece_use, item, facts.on, facts), item.id, facts)

    def add_exposure(self, item: Item, facts: NewExposure) -> Exposure:
        """Keep an exposure."""
        return Exposure(self._add_event(tables.exposure, item, facts.on, facts), item.id, facts)

    def add_opinion(self, item: Item, facts: NewOpinion) -> Opinion:
        """Keep an opinion."""
        return Opinion(self._add_event(tables.opinion, item, facts.on, facts), item.id, facts)

    def add_strike(self, item: Item, facts: NewStrike) -> Strike:
        """Keep the strike of a wrong entry; the entry itself stays."""
        return Strike(self._add_event(tables.strike, item, facts.on, facts), item.id, facts)

    def add_destruction(self, item: Item, facts: NewDestruction) -> None:
        """Keep that a piece was made unusable."""
        self._add_event(tables.destruction, item, facts.on, facts)

    def add_document(self, number: str, kind: str, on: date, about: str, content: object) -> None:
        """Keep what a document said, for a reprint in later years, and which tags it names."""
        body = to_body(content)
        self._add(tables.document, {"id": number, "kind": kind, "day": on, "about": about, "body": body})
        name_tags(self._connection, number, body)

    def set(self, key: str, value: str) -> None:
        """Set a club setting; refused in a field copy, but for what follows from the calendar."""
        self.check_at_home(key)
        self._put_row(tables.club_setting, {"key": key, "value": value})

    # --- what is read ---

    def has_rulebook(self, name: str) -> bool:
        """Whether the text of this rulebook is kept."""
        return self._connection.execute(_RULEBOOK, {"name": name}).first() is not None

    def adopted(self, on: date) -> Adopted | None:
        """The club's rulebook in force on a day: the last adopted whose day has come."""
        return lists.adopted(self._connection, on)

    def last_adoption(self) -> Adopted | None:
        """The rulebook adopted last, whether its day has come or not."""
        return lists.adopted(self._connection, date.max)

    def adoption(self, key: str) -> Adopted | None:
        """The adoption with this id."""
        return lists.adoption_with(self._connection, key)

    def item(self, tag: str) -> Item:
        """The piece that has or had this tag; a tag is sought as written, then without regard to case."""
        found = self._once(item_called, tag.strip())
        if found is None:
            why = tr("No piece has the tag “{tag}”.", tag=tag.strip())
            raise Refused(tr("tag"), why, tr("Look at the label again, or search the list for the piece."))
        return found

    def has_tag(self, tag: str) -> bool:
        """Whether a piece has or had this tag, in any case, one that was withdrawn too."""
        return self._once(item_called, tag) is not None

    def items(self, tags: Sequence[str]) -> dict[str, Item]:
        """The pieces with these tags, by the tag as it was asked for; a tag that no piece has is left out."""
        return dossiers.items(self._connection, tags)

    def dossier(self, item: Item, kind: Kind, on: date) -> Dossier:
        """All facts of the piece up to the day, with a stored retirement if there is one."""
        return self.dossiers([(item, kind)], on)[0]

    def dossiers(self, wanted: Sequence[tuple[Item, Kind]], on: date) -> tuple[Dossier, ...]:
        """The dossiers of many pieces in their order, by a few queries for all of them together."""
        return dossiers.dossiers(self._connection, wanted, on, self.people())

    def fitted_items(self, vehicles: Sequence[str]) -> tuple[tuple[Item, Fitted], ...]:
        """The parts that sit on these vehicles now, by tag, each with its place."""
        return dossiers.fitted_items(self._connection, vehicles)

    def standing_retirements(self, item: Item, strikes: tuple[Strike, ...]) -> tuple[Retirement, ...]:
        """The stored retirements of a piece that no strike has voided, oldest first."""
        return dossiers.standing_retirements(self._connection, item.id, strikes)

    def retired(self, keys: Sequence[str]) -> dict[str, Retired]:
        """Of those of these pieces that were retired, by id, since when and by which verdicts; none that was struck."""
        return dossiers.retired(self._connection, keys)

    def is_destroyed(self, item: Item) -> bool:
        """Whether the piece was recorded as made unusable."""
        return dossiers.is_destroyed(self._connection, item.id)

    def people(self) -> tuple[Person, ...]:
        """Everybody, by name."""
        return self._once(dossiers.people)

    def is_judging_due(self, on: date) -> bool:
        """Whether `due_for_judging` would find any piece."""
        return self._connection.execute(_stand(tables.standing.c.holds_until <= on).limit(1)).first() is not None

    def due_for_judging(self, on: date) -> tuple[Item, ...]:
        """Pieces whose verdict time alone may have changed by this day."""
        return self._standing_items(tables.standing.c.holds_until <= on)

    def not_retired(self) -> tuple[Item, ...]:
        """Every piece whose verdict may still change."""
        return self._standing_items()

    def is_judged_by_another(self, rulebook: str) -> bool:
        """Whether `judged_by_another` would find any piece. Most registers were judged by one rulebook alone."""
        told = select(tables.rulebook.c.id).where(tables.rulebook.c.id != rulebook).limit(1)
        if self._connection.execute(told).first() is None:
            return False
        return self._connection.execute(_stand(_by_another(rulebook)).limit(1)).first() is not None

    def judged_by_another(self, rulebook: str) -> tuple[Item, ...]:
        """Every piece that is not retired and whose standing verdict was given by another rulebook than this."""
        return self._standing_items(_by_another(rulebook))

    def _standing_items(self, *wanted: ColumnElement[bool]) -> tuple[Item, ...]:
        return tuple(select_items(self._connection, tables.item.c.id.in_(_stand(*wanted))))

    def document_count(self, kind: str) -> int:
        """How many documents of this kind were numbered."""
        table = tables.document
        counted = select(func.count()).select_from(table).where(table.c.kind == kind)
        return int(self._connection.execute(counted).scalar_one())

    def latest_document(self, kind: str, about: str) -> tuple[str, str] | None:
        """Number and body of the last document of this kind about a piece or trip."""
        return self.latest_documents(kind, [about]).get(about)

    def latest_documents(self, kind: str, about: Sequence[str]) -> dict[str, tuple[str, str]]:
        """Number and body of the last document of this kind about each of these, by what it is about."""
        asked = [{"kind": kind, "about": some} for some in shares(about)]
        rows = (row for given in asked for row in self._connection.execute(_DOCUMENTS, given))
        return {str(one): (str(number), str(body)) for one, number, body in rows}

    @property
    def origin(self) -> str:
        """The name of this copy of the register."""
        return self._origin

    def head(self) -> str:
        """The hash of the ledger's last line."""
        return ledger.head(self._connection)[1]

    def verify(self, against: str = "") -> Verified:
        """Check the file, the ledger and every row it accounts for."""
        return prove(self._connection, against)

    def find_gear(self, asked: lists.Asked) -> list[tuple[str, str]]:
        """Tag and outcome of each piece that answers, in its order."""
        return lists.found(self._connection, asked)

    def first_due(self, count: int) -> list[str]:
        """The tags of the first pieces in the order of the days they fall due, but of those that are gone."""
        return lists.first_due(self._connection, count)

    def gone(self) -> frozenset[str]:
        """The tags of what was sold, given back or destroyed."""
        return lists.gone(self._connection)

    def gear(self, asked: lists.Asked) -> tuple[lists.GearLine, ...]:
        """Lines of the gear list."""
        return lists.gear(self._connection, asked)

    def gear_lines(self, tags: Sequence[str]) -> tuple[lists.GearLine, ...]:
        """The lines of these pieces, in the order of the tags."""
        return lists.lines(self._connection, tags)

    def of_kinds(self, kinds: Sequence[str]) -> Iterator[Item]:
        """The pieces of these kinds in the order of booking, read some at a time as they are asked for."""
        return lists.of_kinds(self._connection, kinds)

    def outcome_counts(self, asked: lists.Asked) -> dict[str, int]:
        """How many pieces of each outcome answer."""
        return lists.outcome_counts(self._connection, asked)

    def piece_count(self) -> int:
        """How many pieces were ever booked in."""
        return lists.piece_count(self._connection)

    def listed_kinds(self) -> tuple[str, ...]:
        """The keys of the kinds there are pieces of."""
        return lists.distinct(self._connection, tables.standing.c.kind)

    def listed_owners(self) -> tuple[str, ...]:
        """The owners of the pieces, as they were written down."""
        return lists.distinct(self._connection, tables.standing.c.owner)

    def history(self, item_id: str) -> tuple[HistoryLine, ...]:
        """What happened to a piece, newest first."""
        return history(self._connection, item_id)


def _by_another(rulebook: str) -> ColumnElement[bool]:
    """Whether a standing verdict was given by another rulebook than this."""
    others = select(tables.verdict.c.id).where(tables.verdict.c.rulebook_id != rulebook)
    return tables.standing.c.verdict_id.in_(others)


def _stand(*wanted: ColumnElement[bool]) -> Select[tuple[str]]:
    """The ids of the pieces that are not retired and of whose standing line all of this holds."""
    standing = tables.standing
    return select(standing.c.item_id).where(standing.c.outcome != Outcome.RETIRE.value, *wanted)
