"""Pieces as they are called and written down now: the booking, or the last change of it."""

from collections.abc import Iterable, Sequence
from typing import Any

from sqlalchemy import (
    ColumnElement,
    CompoundSelect,
    Connection,
    RowMapping,
    Select,
    bindparam,
    exists,
    func,
    literal_column,
    select,
    union,
    union_all,
)

from inspector.gear.item import Item, NewItem
from inspector.gear.item_change import NewItemChange
from inspector.gear.whereabouts import Where
from inspector.register.events import shares
from inspector.register.rows import from_body
from inspector.register.tables import item
from inspector.register.year_tables import item_change, whereabouts

_LAST = (item_change.c.day.desc(), item_change.c.id.desc())
CHANGED = (
    select(item_change.c.body).where(item_change.c.item_id == item.c.id).order_by(*_LAST).limit(1).scalar_subquery()
)
TAG: ColumnElement[str] = func.coalesce(
    select(item_change.c.tag).where(item_change.c.item_id == item.c.id).order_by(*_LAST).limit(1).scalar_subquery(),
    item.c.tag,
)
IS_WITHDRAWN: ColumnElement[bool] = exists(
    select(whereabouts.c.id).where(
        whereabouts.c.item_id == item.c.id,
        whereabouts.c.body.contains(f'"where":"{Where.WITHDRAWN.value}"', autoescape=True),
    )
)
COLUMNS = (item.c.id, item.c.booked_on, item.c.body, CHANGED.label("changed"))


_OTHER = item.alias()  # the same table within a question about it


def _called(booked: ColumnElement[str], later: ColumnElement[str]) -> Select[Any]:
    """The question for a piece by its tags; made once, since making it takes longer than asking it.

    The two ways to a tag are asked one by one: with "or" between them a server reads every piece. Of several with one
    tag the one that was not withdrawn, else the one that was booked last.
    """
    has = select(_OTHER.c.id).where(booked == bindparam("tag"))
    had = select(item_change.c.item_id).where(later == bindparam("tag"))
    found = select(*COLUMNS, IS_WITHDRAWN.label("withdrawn")).where(item.c.id.in_(union(has, had)))
    return found.order_by(IS_WITHDRAWN, item.c.id.desc()).limit(1)


_AS_WRITTEN = _called(_OTHER.c.tag, item_change.c.tag)
_IN_ANY_CASE = _called(func.lower(_OTHER.c.tag), func.lower(item_change.c.tag))
_WITHDRAWN = select(item.c.id).where(item.c.id.in_(bindparam("keys", expanding=True)), IS_WITHDRAWN)
_HAS_HAD = union_all(
    select(
        item.c.id.label("piece"),
        item.c.tag,
        literal_column("0").label("later"),
        item.c.booked_on.label("day"),
        item.c.id.label("key"),
    ).where(item.c.id.in_(bindparam("keys", expanding=True))),
    select(item_change.c.item_id, item_change.c.tag, literal_column("1"), item_change.c.day, item_change.c.id).where(
        item_change.c.item_id.in_(bindparam("keys", expanding=True))
    ),
).order_by("later", "day", "key")


def facts_of(body: str, changed: str | None) -> NewItem:
    """The facts that stand: those of the last change, else those of the booking."""
    return from_body(changed, NewItemChange).item if changed else from_body(body, NewItem)


def item_of(row: RowMapping) -> Item:
    """A piece from a row of COLUMNS."""
    changed = row["changed"]
    return Item(str(row["id"]), row["booked_on"], facts_of(str(row["body"]), str(changed) if changed else None))


def item_called(connection: Connection, tag: str) -> Item | None:
    """The piece that has or had this tag: as written, else in any case; a withdrawn one where there is no other."""
    withdrawn: Item | None = None
    for question, sought in ((_AS_WRITTEN, tag), (_IN_ANY_CASE, tag.lower())):
        row = connection.execute(question, {"tag": sought}).mappings().first()
        if row is not None and not row["withdrawn"]:
            return item_of(row)
        withdrawn = withdrawn or (item_of(row) if row is not None else None)
    return withdrawn


def items_called(connection: Connection, lowered: Sequence[str]) -> dict[str, Item]:
    """The pieces that have or had one of these tags, given in small letters; by every tag they had, and in any case."""
    had = select(item_change.c.item_id, item_change.c.tag).where(func.lower(item_change.c.tag).in_(lowered))
    tags: dict[str, list[str]] = {}
    for item_id, tag in connection.execute(had):
        tags.setdefault(str(item_id), []).append(str(tag))
    found = select(*COLUMNS, item.c.tag, IS_WITHDRAWN.label("withdrawn"))
    found = found.where(func.lower(item.c.tag).in_(lowered) | item.c.id.in_(list(tags)))
    by_tag: dict[str, Item] = {}
    for row in connection.execute(found.order_by(IS_WITHDRAWN, item.c.id.desc())).mappings():
        for tag in (str(row["tag"]), *tags.get(str(row["id"]), ())):
            if not (row["withdrawn"] and tag.lower() in by_tag):
                by_tag.setdefault(tag, item_of(row))
                by_tag.setdefault(tag.lower(), by_tag[tag])
    return by_tag


def tags_of(connection: Connection, keys: Sequence[str]) -> dict[str, tuple[str, ...]]:
    """Every tag that each of some pieces has or had, the first one first, by its id."""
    found: dict[str, dict[str, None]] = {}
    for key, tag, *_ in connection.execute(_HAS_HAD, {"keys": keys}):
        found.setdefault(str(key), {})[str(tag)] = None
    return {key: tuple(tags) for key, tags in found.items()}


def tags_now(connection: Connection) -> dict[str, str]:
    """By each tag that a piece had before, the one it has now."""
    booked = select(item.c.id, item.c.tag).where(item.c.id.in_(select(item_change.c.item_id)))
    later = select(item_change.c.item_id, item_change.c.tag).order_by(item_change.c.day, item_change.c.id)
    had = [*connection.execute(booked), *connection.execute(later)]
    now = {str(key): str(tag) for key, tag in had}
    return {str(tag): now[str(key)] for key, tag in had if now[str(key)] != tag}


def select_items(connection: Connection, *wanted: Any) -> Iterable[Item]:
    """The pieces for which all of this holds, by tag."""
    rows = connection.execute(select(*COLUMNS).where(*wanted).order_by(TAG)).mappings()
    return (item_of(row) for row in rows)


def borrowed() -> CompoundSelect[Any]:
    """The ids of the pieces of which it is or was written down by when they go back."""
    sign = '"borrowed_until":"'
    return union(
        select(item.c.id).where(item.c.body.contains(sign, autoescape=True)),
        select(item_change.c.item_id).where(item_change.c.body.contains(sign, autoescape=True)),
    )


def withdrawn(connection: Connection, keys: Sequence[str]) -> frozenset[str]:
    """The ids of those of these pieces that were withdrawn."""
    found: set[str] = set()
    for some in shares(keys):
        found |= set(connection.execute(_WITHDRAWN, {"keys": some}).scalars())
    return frozenset(found)


def booked(connection: Connection, keys: Sequence[str]) -> dict[str, NewItem]:
    """What was written down of pieces when they came, by their ids."""
    found = select(item.c.id, item.c.body)
    rows = (row for some in shares(keys) for row in connection.execute(found.where(item.c.id.in_(some))))
    return {str(key): from_body(str(body), NewItem) for key, body in rows}
