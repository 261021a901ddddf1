"""The read side of pieces: all their facts up to a day, struck entries left out, and their stored retirements."""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from datetime import date
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection, bindparam, select

from inspector.gear.custody import Custody, NewCustody, Untold
from inspector.gear.dossier import Dossier
from inspector.gear.evidence import NewQuarantine, NewRelease, Quarantine, Release
from inspector.gear.fitting import Fitted, Fitting, NewFitting
from inspector.gear.inspection import Inspection, NewInspection
from inspector.gear.item import Item, NewItem
from inspector.gear.item_change import ItemChange, NewItemChange
from inspector.gear.kind import Kind
from inspector.gear.opinion import NewOpinion, Opinion
from inspector.gear.outcome import Outcome
from inspector.gear.person import NewPersonChange, Person
from inspector.gear.recall_notice import NewPieceCall, PieceCall
from inspector.gear.repair import NewRepair, Repair
from inspector.gear.strike import NewStrike, Strike
from inspector.gear.use import Exposure, NewExposure, NewUse, Use
from inspector.gear.verdict import Explanation, Verdict
from inspector.gear.whereabouts import NewWhereabouts, WhereaboutsEntry
from inspector.register import tables, year_tables
from inspector.register.current import booked, items_called, select_items
from inspector.register.events import Rows, events, shares
from inspector.register.fleet import fittings
from inspector.register.rows import from_body

Facts = TypeVar("Facts")
Entry = TypeVar("Entry")

_EVENTS = (
    tables.strike,
    tables.inspection,
    tables.piece_use,
    tables.exposure,
    tables.opinion,
    tables.fitting,
    tables.custody,
    year_tables.whereabouts,
    year_tables.repair,
    year_tables.item_change,
    year_tables.quarantine,
    year_tables.release,
    year_tables.piece_call,
)  # fmt: skip - in the order of the fields of _Rows

# Questions that are asked with every judgement, made once: making one takes longer than asking it.
_RETIRED_ON = (
    select(tables.verdict.c.item_id, tables.verdict.c.id, tables.verdict.c.day)
    .where(tables.verdict.c.item_id.in_(bindparam("keys", expanding=True)))
    .where(tables.verdict.c.outcome == Outcome.RETIRE.value)
    .order_by(tables.verdict.c.day, tables.verdict.c.id)
)
_RETIRED = _RETIRED_ON.with_only_columns(
    tables.verdict.c.item_id, tables.verdict.c.id, tables.verdict.c.body, tables.verdict.c.words
)
_PERSON_CHANGED = (
    select(year_tables.person_change.c.body)
    .where(year_tables.person_change.c.person_id == tables.person.c.id)
    .order_by(year_tables.person_change.c.day.desc(), year_tables.person_change.c.id.desc())
    .limit(1)
    .scalar_subquery()
)
_PEOPLE = select(tables.person.c.body, _PERSON_CHANGED)


class Retirement(Struct, frozen=True):
    """A stored verdict that retired the piece."""

    id: str
    verdict: Verdict
    why: str


class Retired(Struct, frozen=True):
    """That a piece is retired: since when, and the ids of the verdicts that say so."""

    on: date
    verdicts: frozenset[str]


class _Rows(Struct, frozen=True):
    """Everything stored of some pieces up to a day, by piece, in order of day and entry."""

    strikes: Rows
    inspections: Rows
    uses: Rows
    exposures: Rows
    opinions: Rows
    fittings: Rows
    custody: Rows
    whereabouts: Rows
    repairs: Rows
    changes: Rows
    quarantines: Rows
    releases: Rows
    calls: Rows


class _Kept(Struct, frozen=True):
    """What else is stored: the verdicts that retired them, changed bookings, both by piece, and everybody's names."""

    retirements: dict[str, list[tuple[str, str, str]]]
    facts: dict[str, NewItem]
    names: tuple[tuple[str, str], ...]


def dossiers(
    connection: Connection, wanted: Sequence[tuple[Item, Kind]], on: date, everybody: Iterable[Person]
) -> tuple[Dossier, ...]:
    """All facts of the pieces up to the day, each with its first stored retirement that was not struck."""
    keys = [item.id for item, _ in wanted]
    rows = _Rows(*events(connection, _EVENTS, keys, on, ever=year_tables.item_change))
    facts, rows = _facts_then(connection, rows, on)
    names = tuple(sorted((one.id, one.name) for one in everybody))
    kept = _Kept(_retirements(connection, keys), facts, names)
    return tuple(_dossier(item, kind, on, rows, kept) for item, kind in wanted)


def _facts_then(connection: Connection, rows: _Rows, on: date) -> tuple[dict[str, NewItem], _Rows]:
    """What was written down by that day of pieces that were ever changed; and the rows without later changes."""
    then = {key: [row for row in changes if row.day <= on] for key, changes in rows.changes.items()}
    facts = {key: from_body(changes[-1].body, NewItemChange).item for key, changes in then.items() if changes}
    unchanged = [key for key, changes in then.items() if not changes]
    if unchanged:
        facts |= booked(connection, unchanged)
    return facts, replace(rows, changes={key: changes for key, changes in then.items() if changes})


def _dossier(item: Item, kind: Kind, on: date, rows: _Rows, kept: _Kept) -> Dossier:
    strikes = _entries(Strike, NewStrike, item, rows.strikes)
    struck = {one.facts.entry for one in strikes}
    retired = next(iter(_standing(kept.retirements.get(item.id, ()), strikes)), None)
    return Dossier(
        kind=kind,
        item=_where_it_sits(_as_then(item, kept.facts), rows),
        on=on,
        inspections=_entries(Inspection, NewInspection, item, rows.inspections, struck),
        uses=_entries(Use, NewUse, item, rows.uses, struck),
        exposures=_entries(Exposure, NewExposure, item, rows.exposures, struck),
        retired_on=retired.verdict.on if retired else None,
        retired_why=retired.why if retired else "",
        opinions=_entries(Opinion, NewOpinion, item, rows.opinions),
        strikes=strikes,
        fittings=_entries(Fitting, NewFitting, item, rows.fittings),
        names=kept.names,
        untold=_untold(item, rows.custody),
        finds=_finds(item, rows.whereabouts),
        repairs=_entries(Repair, NewRepair, item, rows.repairs),
        changes=_entries(ItemChange, NewItemChange, item, rows.changes),
        quarantines=_entries(Quarantine, NewQuarantine, item, rows.quarantines),
        evidence_releases=_entries(Release, NewRelease, item, rows.releases),
        calls=_entries(PieceCall, NewPieceCall, item, rows.calls),
    )


def _entries(
    entry: Callable[[str, str, Facts], Entry],
    facts: type[Facts],
    item: Item,
    rows: Rows,
    struck: Collection[str] = (),
) -> tuple[Entry, ...]:
    """What was logged of the piece in one table, each made of its id, the piece's and its facts."""
    logged = rows.get(item.id)
    if logged is None:
        return ()
    return tuple([entry(row.id, item.id, from_body(row.body, facts)) for row in logged if row.id not in struck])


def _as_then(item: Item, facts: dict[str, NewItem]) -> Item:
    """The piece with what was written down of it on the day."""
    return replace(item, facts=facts[item.id]) if item.id in facts else item


def _where_it_sits(item: Item, rows: _Rows) -> Item:
    """The piece where it is on the day, in place of where it was booked: on a vehicle, or at a place in the store."""
    fitted, moved = rows.fittings.get(item.id, []), rows.whereabouts.get(item.id, [])
    facts = item.facts.after(from_body(fitted[-1].body, NewFitting)) if fitted else item.facts
    if moved and not facts.fitted_to:
        facts = replace(facts, place=from_body(moved[-1].body, NewWhereabouts).place)
    return replace(item, facts=facts)


def _finds(item: Item, rows: Rows) -> tuple[WhereaboutsEntry, ...]:
    """When it was found again or came back from outside the club."""
    return tuple(one for one in _entries(WhereaboutsEntry, NewWhereabouts, item, rows) if one.facts.found)


def standing_retirements(connection: Connection, item_id: str, strikes: tuple[Strike, ...]) -> tuple[Retirement, ...]:
    """The stored retirements of a piece that no strike has voided, oldest first."""
    return tuple(_standing(_retirements(connection, [item_id]).get(item_id, ()), strikes))


def retired(connection: Connection, keys: Sequence[str]) -> dict[str, Retired]:
    """Of those of these pieces that were retired, by id, what no strike has voided."""
    (struck,) = events(connection, (tables.strike,), keys)
    voids = {one for rows in struck.values() for row in rows for one in from_body(row.body, NewStrike).voids}
    found: dict[str, list[tuple[str, date]]] = {}
    for some in shares(keys):
        for item_id, key, day in connection.execute(_RETIRED_ON, {"keys": some}):
            if str(key) not in voids:
                found.setdefault(str(item_id), []).append((str(key), day))
    return {piece: Retired(rows[0][1], frozenset(key for key, _ in rows)) for piece, rows in found.items()}


def _standing(rows: Iterable[tuple[str, str, str]], strikes: tuple[Strike, ...]) -> Iterator[Retirement]:
    voided = {one for strike in strikes for one in strike.facts.voids}
    return (_retirement(*row) for row in rows if row[0] not in voided)


def _retirements(connection: Connection, keys: Sequence[str]) -> dict[str, list[tuple[str, str, str]]]:
    """Id, verdict and words of every stored retirement, by piece, oldest first."""
    found: dict[str, list[tuple[str, str, str]]] = {}
    for some in shares(keys):
        for item_id, key, body, words in connection.execute(_RETIRED, {"keys": some}):
            found.setdefault(str(item_id), []).append((str(key), str(body), str(words)))
    return found


def is_destroyed(connection: Connection, item_id: str) -> bool:
    """Whether the piece was recorded as made unusable."""
    table = tables.destruction
    return connection.execute(select(table.c.id).where(table.c.item_id == item_id)).first() is not None


def _retirement(key: str, body: str, words: str) -> Retirement:
    said = from_body(words, Explanation)
    return Retirement(key, from_body(body, Verdict), said.reasons[0].sentence if said.reasons else said.headline)


def items(connection: Connection, tags: Sequence[str]) -> dict[str, Item]:
    """The pieces with these tags, by the tag as it was asked for: as written, else without regard to case."""
    sought = {tag.strip() for tag in tags}
    lowered = sorted({tag.lower() for tag in sought})
    by_tag: dict[str, Item] = {}
    for some in shares(lowered):
        by_tag |= items_called(connection, some)
    found = {tag: by_tag.get(tag.strip()) or by_tag.get(tag.strip().lower()) for tag in tags}
    return {tag: item for tag, item in found.items() if item}


def fitted_items(connection: Connection, vehicles: Sequence[str]) -> tuple[tuple[Item, Fitted], ...]:
    """The parts that sit on these vehicles now, by tag, each with its place."""
    places = {key: to for key, to in fittings(connection).items() if to.vehicle in vehicles}
    found: list[tuple[Item, Fitted]] = []
    for some in shares(list(places)):
        found += [(item, places[item.id]) for item in select_items(connection, tables.item.c.id.in_(some))]
    return tuple(sorted(found, key=lambda one: one[0].tag))


def _untold(item: Item, rows: Rows) -> tuple[Custody, ...]:
    """The returns of which nobody told the weather."""
    return tuple(one for one in _entries(Custody, NewCustody, item, rows) if Untold.EXPOSURES in one.facts.untold)


def people(connection: Connection) -> tuple[Person, ...]:
    """Everybody as they are written down now, by name."""
    found = [
        from_body(str(changed), NewPersonChange).person if changed else from_body(str(body), Person)
        for body, changed in connection.execute(_PEOPLE)
    ]
    return tuple(sorted(found, key=lambda one: one.name))
