"""The read side of pieces: all their facts up to a day, struck entries left out, and their stored retirements."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from typing import Any

from sqlalchemy import Connection, Select, Table, bindparam, select

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
from inspector.register.current import facts_on, items_called, select_items
from inspector.register.fleet import fittings
from inspector.register.places import shares
from inspector.register.rows import from_body


@dataclass(frozen=True, slots=True)
class Retirement:
    """A stored verdict that retired the piece."""

    id: str
    verdict: Verdict
    why: str


@dataclass(frozen=True, slots=True)
class _Rows:
    """Everything stored of some pieces up to a day, by piece, in order of day and entry."""

    strikes: dict[str, list[tuple[str, str]]]
    inspections: dict[str, list[tuple[str, str]]]
    uses: dict[str, list[tuple[str, str]]]
    exposures: dict[str, list[tuple[str, str]]]
    opinions: dict[str, list[tuple[str, str]]]
    fittings: dict[str, list[tuple[str, str]]]
    custody: dict[str, list[tuple[str, str]]]
    retirements: dict[str, list[tuple[str, str, str]]]
    whereabouts: dict[str, list[tuple[str, str]]]
    repairs: dict[str, list[tuple[str, str]]]
    changes: dict[str, list[tuple[str, str]]]
    quarantines: dict[str, list[tuple[str, str]]]
    releases: dict[str, list[tuple[str, str]]]
    calls: dict[str, list[tuple[str, str]]]
    facts: dict[str, NewItem]


def dossiers(connection: Connection, wanted: Sequence[tuple[Item, Kind]], on: date) -> tuple[Dossier, ...]:
    """All facts of the pieces up to the day, each with its first stored retirement that was not struck."""
    keys = [item.id for item, _ in wanted]
    rows = _Rows(
        strikes=_events(connection, tables.strike, keys, on),
        inspections=_events(connection, tables.inspection, keys, on),
        uses=_events(connection, tables.piece_use, keys, on),
        exposures=_events(connection, tables.exposure, keys, on),
        opinions=_events(connection, tables.opinion, keys, on),
        fittings=_events(connection, tables.fitting, keys, on),
        custody=_events(connection, tables.custody, keys, on),
        retirements=_retirements(connection, keys),
        whereabouts=_events(connection, year_tables.whereabouts, keys, on),
        repairs=_events(connection, year_tables.repair, keys, on),
        changes=_events(connection, year_tables.item_change, keys, on),
        quarantines=_events(connection, year_tables.quarantine, keys, on),
        releases=_events(connection, year_tables.release, keys, on),
        calls=_events(connection, year_tables.piece_call, keys, on),
        facts={key: facts for some in shares(keys) for key, facts in facts_on(connection, some, on).items()},
    )
    names = _names(connection)
    return tuple(_dossier(item, kind, on, rows, names) for item, kind in wanted)


def _dossier(item: Item, kind: Kind, on: date, rows: _Rows, names: tuple[tuple[str, str], ...]) -> Dossier:
    strikes = tuple(Strike(key, item.id, from_body(body, NewStrike)) for key, body in rows.strikes.get(item.id, ()))
    struck = {one.facts.entry for one in strikes}
    seen = [pair for pair in rows.inspections.get(item.id, ()) if pair[0] not in struck]
    uses = [pair for pair in rows.uses.get(item.id, ()) if pair[0] not in struck]
    sea = [pair for pair in rows.exposures.get(item.id, ()) if pair[0] not in struck]
    retired = next(iter(_standing(rows.retirements.get(item.id, ()), strikes)), None)
    return Dossier(
        kind=kind,
        item=_where_it_sits(_as_then(item, rows.facts), rows),
        on=on,
        inspections=tuple(Inspection(key, item.id, from_body(body, NewInspection)) for key, body in seen),
        uses=tuple(Use(key, item.id, from_body(body, NewUse)) for key, body in uses),
        exposures=tuple(Exposure(key, item.id, from_body(body, NewExposure)) for key, body in sea),
        retired_on=retired.verdict.on if retired else None,
        retired_why=retired.why if retired else "",
        opinions=tuple(
            Opinion(key, item.id, from_body(body, NewOpinion)) for key, body in rows.opinions.get(item.id, ())
        ),
        strikes=strikes,
        fittings=_fittings(item, rows.fittings.get(item.id, ())),
        names=names,
        untold=_untold(item, rows.custody.get(item.id, ())),
        finds=_finds(item, rows.whereabouts.get(item.id, ())),
        repairs=tuple(Repair(key, item.id, from_body(body, NewRepair)) for key, body in rows.repairs.get(item.id, ())),
        changes=tuple(
            ItemChange(key, item.id, from_body(body, NewItemChange)) for key, body in rows.changes.get(item.id, ())
        ),
        quarantines=tuple(
            Quarantine(key, item.id, from_body(body, NewQuarantine)) for key, body in rows.quarantines.get(item.id, ())
        ),
        evidence_releases=tuple(
            Release(key, item.id, from_body(body, NewRelease)) for key, body in rows.releases.get(item.id, ())
        ),
        calls=tuple(
            PieceCall(key, item.id, from_body(body, NewPieceCall)) for key, body in rows.calls.get(item.id, ())
        ),
    )


def _as_then(item: Item, facts: dict[str, NewItem]) -> Item:
    """The piece with what was written down of it on the day."""
    return replace(item, facts=facts[item.id]) if item.id in facts else item


def _where_it_sits(item: Item, rows: _Rows) -> Item:
    """The piece where it is on the day, in place of where it was booked: on a vehicle, or at a place in the store."""
    fitted, moved = rows.fittings.get(item.id, []), rows.whereabouts.get(item.id, [])
    facts = item.facts.after(from_body(fitted[-1][1], NewFitting)) if fitted else item.facts
    if moved and not facts.fitted_to:
        facts = replace(facts, place=from_body(moved[-1][1], NewWhereabouts).place)
    return replace(item, facts=facts)


def _finds(item: Item, entries: Iterable[tuple[str, str]]) -> tuple[WhereaboutsEntry, ...]:
    """When it was found again or came back from outside the club."""
    every = (WhereaboutsEntry(key, item.id, from_body(body, NewWhereabouts)) for key, body in entries)
    return tuple(one for one in every if one.facts.found)


def standing_retirements(connection: Connection, item_id: str, strikes: tuple[Strike, ...]) -> tuple[Retirement, ...]:
    """The stored retirements of a piece that no strike has voided, oldest first."""
    return tuple(_standing(_retirements(connection, [item_id]).get(item_id, ()), strikes))


def _standing(rows: Iterable[tuple[str, str, str]], strikes: tuple[Strike, ...]) -> Iterator[Retirement]:
    voided = {one for strike in strikes for one in strike.facts.voids}
    return (_retirement(*row) for row in rows if row[0] not in voided)


def _retirements(connection: Connection, keys: Sequence[str]) -> dict[str, list[tuple[str, str, str]]]:
    """Id, verdict and words of every stored retirement, by piece, oldest first."""
    table = tables.verdict
    found: dict[str, list[tuple[str, str, str]]] = {}
    for some in shares(keys):
        rows = select(table.c.item_id, table.c.id, table.c.body, table.c.words).where(
            table.c.item_id.in_(some), table.c.outcome == Outcome.RETIRE.value
        )
        for item_id, key, body, words in connection.execute(rows.order_by(table.c.day, table.c.id)):
            found.setdefault(str(item_id), []).append((str(key), str(body), str(words)))
    return found


def is_destroyed(connection: Connection, item_id: str) -> bool:
    """Whether the piece was recorded as made unusable."""
    table = tables.destruction
    return connection.execute(select(table.c.id).where(table.c.item_id == item_id)).first() is not None


def _retirement(key: str, body: str, words: str) -> Retirement:
    said = from_body(words, Explanation)
    return Retirement(key, from_body(body, Verdict), said.reasons[0].sentence if said.reasons else said.headline)


def _events(connection: Connection, table: Table, keys: Sequence[str], on: date) -> dict[str, list[tuple[str, str]]]:
    """Id and body of what happened to the pieces up to the day, by piece, in order of day and entry."""
    found: dict[str, list[tuple[str, str]]] = {}
    for some in shares(keys):
        for item_id, key, body in connection.execute(_rows_of(table), {"keys": some, "on": on}):
            found.setdefault(str(item_id), []).append((str(key), str(body)))
    return found


@cache
def _rows_of(table: Table) -> Select[Any]:
    """The question for the events of some pieces; made once, since making it takes longer than asking it."""
    rows = select(table.c.item_id, table.c.id, table.c.body)
    some = rows.where(table.c.item_id.in_(bindparam("keys", expanding=True)), table.c.day <= bindparam("on"))
    return some.order_by(table.c.day, table.c.id)


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


def _fittings(item: Item, entries: Iterable[tuple[str, str]]) -> tuple[Fitting, ...]:
    """Every time it was put on a vehicle or taken off."""
    return tuple(Fitting(key, item.id, from_body(body, NewFitting)) for key, body in entries)


def _calls(item: Item, entries: Iterable[tuple[str, str]]) -> tuple[PieceCall, ...]:
    """Its steps under recalls."""
    return tuple(PieceCall(key, item.id, from_body(body, NewPieceCall)) for key, body in entries)


def _untold(item: Item, entries: Iterable[tuple[str, str]]) -> tuple[Custody, ...]:
    """The returns of which nobody told the weather."""
    handed = [Custody(key, item.id, from_body(body, NewCustody)) for key, body in entries]
    return tuple(one for one in handed if Untold.EXPOSURES in one.facts.untold)


def _names(connection: Connection) -> tuple[tuple[str, str], ...]:
    return tuple(sorted((one.id, one.name) for one in people(connection)))


def people(connection: Connection) -> tuple[Person, ...]:
    """Everybody as they are written down now, by name."""
    table = year_tables.person_change
    changes = connection.execute(select(table.c.person_id, table.c.body).order_by(table.c.day, table.c.id))
    now = {str(key): from_body(str(body), NewPersonChange).person for key, body in changes}
    rows = connection.execute(select(tables.person.c.id, tables.person.c.body))
    found = [now.get(str(key)) or from_body(str(body), Person) for key, body in rows]
    return tuple(sorted(found, key=lambda one: one.name))
