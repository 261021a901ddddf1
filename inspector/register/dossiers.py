"""The read side of one piece: all its facts up to a day, struck entries left out, and its stored retirements."""

from dataclasses import dataclass
from datetime import date

from sqlalchemy import Connection, Table, select

from inspector.gear.custody import Custody, NewCustody, Untold
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, NewInspection
from inspector.gear.item import Item
from inspector.gear.kind import Kind
from inspector.gear.opinion import NewOpinion, Opinion
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.strike import NewStrike, Strike
from inspector.gear.use import Exposure, NewExposure, NewUse, Use
from inspector.gear.verdict import Explanation, Verdict
from inspector.register import tables
from inspector.register.rows import from_body


@dataclass(frozen=True, slots=True)
class Retirement:
    """A stored verdict that retired the piece."""

    id: str
    verdict: Verdict
    why: str


def dossier(connection: Connection, item: Item, kind: Kind, on: date) -> Dossier:
    """All facts of the piece up to the day, with the first stored retirement that was not struck."""
    strikes = tuple(
        Strike(key, item.id, from_body(body, NewStrike)) for key, body in _events(connection, tables.strike, item, on)
    )
    struck = {one.facts.entry for one in strikes}
    seen = [pair for pair in _events(connection, tables.inspection, item, on) if pair[0] not in struck]
    uses = [pair for pair in _events(connection, tables.piece_use, item, on) if pair[0] not in struck]
    sea = [pair for pair in _events(connection, tables.exposure, item, on) if pair[0] not in struck]
    said = _events(connection, tables.opinion, item, on)
    retired = next(iter(standing_retirements(connection, item.id, strikes)), None)
    return Dossier(
        kind=kind,
        item=item,
        on=on,
        inspections=tuple(Inspection(key, item.id, from_body(body, NewInspection)) for key, body in seen),
        uses=tuple(Use(key, item.id, from_body(body, NewUse)) for key, body in uses),
        exposures=tuple(Exposure(key, item.id, from_body(body, NewExposure)) for key, body in sea),
        retired_on=retired.verdict.on if retired else None,
        retired_why=retired.why if retired else "",
        opinions=tuple(Opinion(key, item.id, from_body(body, NewOpinion)) for key, body in said),
        strikes=strikes,
        names=_names(connection),
        untold=_untold(connection, item, on),
    )


def standing_retirements(connection: Connection, item_id: str, strikes: tuple[Strike, ...]) -> tuple[Retirement, ...]:
    """The stored retirements of a piece that no strike has voided, oldest first."""
    table = tables.verdict
    found = select(table.c.id, table.c.body, table.c.words).where(
        table.c.item_id == item_id, table.c.outcome == Outcome.RETIRE.value
    )
    voided = {one for strike in strikes for one in strike.facts.voids}
    rows = connection.execute(found.order_by(table.c.day, table.c.id))
    return tuple(_retirement(str(key), str(body), str(words)) for key, body, words in rows if str(key) not in voided)


def is_destroyed(connection: Connection, item_id: str) -> bool:
    """Whether the piece was recorded as made unusable."""
    table = tables.destruction
    return connection.execute(select(table.c.id).where(table.c.item_id == item_id)).first() is not None


def _retirement(key: str, body: str, words: str) -> Retirement:
    said = from_body(words, Explanation)
    return Retirement(key, from_body(body, Verdict), said.reasons[0].sentence if said.reasons else said.headline)


def _events(connection: Connection, table: Table, item: Item, on: date) -> list[tuple[str, str]]:
    found = select(table.c.id, table.c.body).where(table.c.item_id == item.id, table.c.day <= on)
    return [(str(key), str(body)) for key, body in connection.execute(found.order_by(table.c.day, table.c.id))]


def _untold(connection: Connection, item: Item, on: date) -> tuple[Custody, ...]:
    """The returns of which nobody told the weather."""
    entries = _events(connection, tables.custody, item, on)
    handed = [Custody(key, item.id, from_body(body, NewCustody)) for key, body in entries]
    return tuple(one for one in handed if Untold.EXPOSURES in one.facts.untold)


def _names(connection: Connection) -> tuple[tuple[str, str], ...]:
    rows = connection.execute(select(tables.person.c.id, tables.person.c.name).order_by(tables.person.c.id))
    return tuple((str(key), str(name)) for key, name in rows)


def people(connection: Connection) -> tuple[Person, ...]:
    """Everybody, by name."""
    rows = connection.execute(select(tables.person.c.body).order_by(tables.person.c.name)).scalars()
    return tuple(from_body(str(body), Person) for body in rows)
