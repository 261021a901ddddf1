"""The read side: lists by columns, filtered and sorted in SQL, no entities built."""

from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from sqlalchemy import Connection, Select, case, func, literal, select, union_all

from inspector.gear.rulebooks import Adopted
from inspector.register.current import CHANGED, TAG
from inspector.register.tables import (
    adoption,
    custody,
    destruction,
    document,
    exposure,
    fitting,
    inspection,
    item,
    opinion,
    piece_use,
    standing,
    strike,
    verdict,
)
from inspector.register.year_tables import attachment, item_change, quarantine, release, repair, whereabouts

_HAPPENED = (
    (inspection, "inspection"),
    (piece_use, "use"),
    (exposure, "exposure"),
    (opinion, "opinion"),
    (strike, "strike"),
    (destruction, "destruction"),
    (fitting, "fitting"),
    (custody, "custody"),
    (whereabouts, "whereabouts"),
    (repair, "repair"),
    (item_change, "item_change"),
    (quarantine, "quarantine"),
    (release, "release"),
)


@dataclass(frozen=True, slots=True)
class Asked:
    """What a gear list is asked for. words: every one must occur. outcome: one of the four, or empty for all.

    tags: only these pieces; None for all.
    """

    words: tuple[str, ...] = ()
    outcome: str = ""
    kind: str = ""
    due_by: date | None = None
    order: str = "tag"  # tag, due or worst
    limit: int = 500
    offset: int = 0
    tags: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True)
class GearLine:
    """A row as stored; the duty gives the kind its name. body: the booking as JSON."""

    tag: str
    kind: str
    body: str
    outcome: str
    headline: str
    next_due: date | None
    unloosened: str | None
    fitting: str | None  # the last fitting as JSON; None where the booking stands
    changed: str | None  # the last change of the booking as JSON


@dataclass(frozen=True, slots=True)
class HistoryLine:
    """A row of a piece's history as stored. what: the name of its table; key: the entry's id."""

    on: date
    what: str
    key: str
    body: str


def gear(connection: Connection, asked: Asked) -> tuple[GearLine, ...]:
    """The rows asked for, at most `limit` of them."""
    stands = (standing.c.outcome, standing.c.headline, standing.c.next_due, standing.c.unloosened)
    sits = select(fitting.c.body).where(fitting.c.item_id == item.c.id)
    sits = sits.order_by(fitting.c.day.desc(), fitting.c.id.desc()).limit(1)
    found = (
        _filtered(select(TAG, item.c.kind, item.c.body, *stands, sits.scalar_subquery(), CHANGED), asked)
        .order_by(*_order(asked.order))
        .limit(asked.limit)
        .offset(asked.offset)
    )
    return tuple(GearLine(*row) for row in connection.execute(found))


def outcome_counts(connection: Connection, asked: Asked) -> dict[str, int]:
    """How many pieces of each outcome answer the search, whatever outcome was asked for."""
    found = _filtered(select(standing.c.outcome, func.count()), replace(asked, outcome=""))
    return {str(outcome): int(count) for outcome, count in connection.execute(found.group_by(standing.c.outcome))}


def _filtered(found: Select[Any], asked: Asked) -> Select[Any]:
    found = found.select_from(item.join(standing, standing.c.item_id == item.c.id))
    for word in asked.words:
        found = found.where(standing.c.search.contains(word.casefold(), autoescape=True))
    if asked.outcome:
        found = found.where(standing.c.outcome == asked.outcome)
    if asked.kind:
        found = found.where(item.c.kind == asked.kind)
    if asked.tags is not None:
        found = found.where(TAG.in_(asked.tags))
    if asked.due_by:
        found = found.where(standing.c.next_due <= asked.due_by)
    return found


def _order(order: str) -> tuple[Any, ...]:
    severity = case({"retire": 0, "hold": 1, "derate": 2, "fit": 3}, value=standing.c.outcome)
    orders: dict[str, tuple[Any, ...]] = {
        "tag": (TAG,),
        "due": (standing.c.next_due.is_(None), standing.c.next_due, TAG),
        "worst": (severity, TAG),
    }
    return orders[order]


def history(connection: Connection, item_id: str) -> tuple[HistoryLine, ...]:
    """Everything that happened to a piece, newest first."""
    parts = [
        select(table.c.day, literal(what).label("what"), table.c.id.label("key"), table.c.body).where(
            table.c.item_id == item_id
        )
        for table, what in _HAPPENED
    ]
    said = select(verdict.c.day, literal("verdict"), verdict.c.id, verdict.c.words).where(verdict.c.item_id == item_id)
    papers = select(document.c.day, literal("document"), document.c.id, document.c.kind)
    files = select(attachment.c.day, literal("attachment"), attachment.c.id, attachment.c.body)
    parts += [said, papers.where(document.c.about == item_id), files.where(attachment.c.about == item_id)]
    rows = union_all(*parts).subquery()
    ordered = select(rows.c.day, rows.c.what, rows.c.key, rows.c.body).order_by(rows.c.day.desc(), rows.c.key.desc())
    return tuple(HistoryLine(*row) for row in connection.execute(ordered))


def adopted(connection: Connection, on: date) -> Adopted | None:
    """The last adopted rulebook whose day has come; one adopted later takes the place of one that has not begun."""
    found = select(adoption).where(adoption.c.from_on <= on).order_by(adoption.c.id.desc()).limit(1)
    return _adoption(connection, found)


def adoption_with(connection: Connection, key: str) -> Adopted | None:
    """The adoption with this id."""
    return _adoption(connection, select(adoption).where(adoption.c.id == key))


def _adoption(connection: Connection, wanted: Select[Any]) -> Adopted | None:
    row = connection.execute(wanted).mappings().first()
    return Adopted(str(row["id"]), row["made_on"], row["from_on"], str(row["text"])) if row else None
