"""The read side: the gear list, the adopted rulebooks; by columns, no entities built.

Finding reads one narrow table and gives back tags alone; what stands in a line is read for the lines in view.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any

from msgspec import Struct
from sqlalchemy import (
    Column,
    ColumnElement,
    Connection,
    Select,
    Table,
    and_,
    bindparam,
    case,
    exists,
    func,
    not_,
    or_,
    select,
    union,
)

from inspector.gear.custody import Hands
from inspector.gear.item import Item
from inspector.gear.lists import Exposed, Held, Order
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Adopted
from inspector.gear.whereabouts import Where
from inspector.register.current import CHANGED, COLUMNS, item_of
from inspector.register.tables import (
    adoption,
    custody,
    destruction,
    fitting,
    item,
    standing,
    verdict,
)
from inspector.register.year_tables import whereabouts

_AT_ONCE = 500
_SOME = 50  # pieces, where the first few may well do


class Asked(Struct, frozen=True):
    """What a list is asked for. words: every one must occur. outcome, kind: a key, or empty for all.

    owners: as they were written down, or None for all; others: all but these. due_by: the day itself counts.
    tags: only these pieces; None for all. kinds: every kind by its name, for the order by kind.
    """

    words: tuple[str, ...] = ()
    outcome: str = ""
    kind: str = ""
    owners: tuple[str, ...] | None = None
    others: bool = False
    due_by: date | None = None
    no_day: bool = False
    exposed: Exposed | None = None
    held: Held | None = None
    order: Order = Order.TAG
    falling: bool = False
    kinds: tuple[str, ...] = ()
    tags: tuple[str, ...] | None = None
    limit: int = 500
    offset: int = 0


class GearLine(Struct, frozen=True):
    """A line as stored; the duty gives the kind its name. body: the booking as JSON; words: of the verdict, as JSON."""

    item_id: str
    booked_on: date
    tag: str
    kind: str
    body: str
    outcome: str
    headline: str
    next_due: date | None
    unloosened: str | None
    inspected_on: date | None
    words: str
    fitting: str | None  # the last fitting as JSON; None where the booking stands
    changed: str | None  # the last change of the booking as JSON


def found(connection: Connection, asked: Asked) -> list[tuple[str, str]]:
    """Tag and outcome of each piece that answers, whatever its outcome, in its order.

    One pass over one table answers for list and counts alike; the rows stay as the driver gives them: half the time.
    """
    wanted = _filtered(select(standing.c.tag, standing.c.outcome), asked)
    return _raw(connection, wanted.order_by(*_order(asked)))


def first_due(connection: Connection, count: int) -> list[str]:
    """The tags with which `found` begins where nothing is left out but what is gone, in the order of the days due.

    The index of those days leads to them, so that it takes as long in a register of any size.
    """
    is_gone = or_(*(exists(one.where(one.selected_columns.item_id == standing.c.item_id)) for one in _LEFT))
    order = (standing.c.next_due.asc().nulls_last(), standing.c.tag)
    rows = _raw(connection, select(standing.c.tag).where(not_(is_gone)).order_by(*order).limit(count))
    return [tag for (tag,) in rows]


def gone(connection: Connection) -> frozenset[str]:
    """The tags of what was sold, given back or destroyed."""
    return frozenset(tag for (tag,) in _raw(connection, select(standing.c.tag).where(_GONE)))


def _raw(connection: Connection, wanted: Select[Any]) -> list[Any]:
    with connection.execute(wanted) as result:
        return list(result.cursor.fetchall())


def gear(connection: Connection, asked: Asked) -> tuple[GearLine, ...]:
    """The lines of the pieces asked for, at most `limit` of them."""
    tags = [tag for tag, outcome in found(connection, asked) if asked.outcome in {"", outcome}]
    return lines(connection, tags[asked.offset : asked.offset + asked.limit])


def outcome_counts(connection: Connection, asked: Asked) -> dict[str, int]:
    """How many pieces of each outcome answer, whatever outcome was asked for."""
    return dict(Counter(outcome for _, outcome in found(connection, asked)))


def lines(connection: Connection, tags: Sequence[str]) -> tuple[GearLine, ...]:
    """The lines of these pieces, in the order of their tags as given; a tag that no piece has now is left out."""
    sits = select(fitting.c.body).where(fitting.c.item_id == item.c.id)
    sits = sits.order_by(fitting.c.day.desc(), fitting.c.id.desc()).limit(1)
    stands = (standing.c.outcome, standing.c.headline, standing.c.next_due, standing.c.unloosened)
    columns = (item.c.id, item.c.booked_on, standing.c.tag, item.c.kind, item.c.body, *stands, standing.c.inspected_on)
    every: Select[Any] = select(*columns, verdict.c.words, sits.scalar_subquery(), CHANGED)
    joined = standing.join(item, item.c.id == standing.c.item_id).join(verdict, verdict.c.id == standing.c.verdict_id)
    read: dict[str, GearLine] = {}
    for at in range(0, len(tags), _AT_ONCE):
        some = every.select_from(joined).where(standing.c.tag.in_(tags[at : at + _AT_ONCE]))
        read |= {line.tag: line for line in (GearLine(*row) for row in connection.execute(some))}
    return tuple(read[tag] for tag in tags if tag in read)


_OF_KINDS = (
    select(*COLUMNS)
    .join(standing, standing.c.item_id == item.c.id)
    .where(standing.c.kind.in_(bindparam("kinds", expanding=True)), item.c.id > bindparam("after"))
    .order_by(item.c.id)
    .limit(bindparam("most"))
)


def of_kinds(connection: Connection, kinds: Sequence[str]) -> Iterator[Item]:
    """The pieces of these kinds in the order of booking, read some at a time as they are asked for."""
    asked = {"kinds": list(kinds), "after": "", "most": _SOME}
    while rows := connection.execute(_OF_KINDS, asked).mappings().all():
        yield from (item_of(row) for row in rows)
        asked["after"] = str(rows[-1]["id"])


def piece_count(connection: Connection) -> int:
    """How many pieces were ever booked in."""
    return int(connection.execute(select(func.count()).select_from(standing)).scalar_one())


def distinct(connection: Connection, column: Column[Any]) -> tuple[str, ...]:
    """What stands in a column, each once."""
    return tuple(str(one) for one in connection.execute(select(column).distinct().order_by(column)).scalars())


def _last_says(table: Table, *signs: str) -> Select[Any]:
    """The pieces whose last entry has one of these words. A quote within a text is never bare in JSON, so that the sign
    can stand nowhere but at its own key."""
    later = table.alias()
    newer = or_(later.c.day > table.c.day, and_(later.c.day == table.c.day, later.c.id > table.c.id))
    is_last = ~exists().where(later.c.item_id == table.c.item_id, newer)
    said = or_(*(table.c.body.contains(sign, autoescape=True) for sign in signs))
    return select(table.c.item_id).where(said, is_last)


def put(*wheres: Where) -> Select[Any]:
    """The ids of the pieces that were put there last."""
    return _last_says(whereabouts, *(f'"where":"{one.value}"' for one in wheres))


def lent() -> Select[Any]:
    """The ids of the pieces that are out on loan."""
    return _last_says(custody, f'"what":"{Hands.LENT.value}"')


_LEFT = (select(destruction.c.item_id), put(Where.SOLD, Where.GIVEN_BACK))
_GONE = standing.c.item_id.in_(union(*_LEFT))
_HELD: ColumnElement[str] = case(
    (_GONE, Held.GONE.value),
    (standing.c.item_id.in_(put(Where.MISSING, Where.STOLEN)), Held.LOST.value),
    (standing.c.item_id.in_(lent()), Held.ON_LOAN.value),
    (standing.c.vehicle != "", Held.ON_VEHICLE.value),
    else_=Held.IN_STORE.value,
)


def _filtered(wanted: Select[Any], asked: Asked) -> Select[Any]:
    for word in asked.words:
        wanted = wanted.where(standing.c.search.contains(word.casefold(), autoescape=True))
    if asked.kind:
        wanted = wanted.where(standing.c.kind == asked.kind)
    if asked.owners is not None:
        is_theirs = standing.c.owner.in_(asked.owners)
        wanted = wanted.where(not_(is_theirs) if asked.others else is_theirs)
    if asked.exposed:
        any_of = (Exposed.SALT, Exposed.ANY) if asked.exposed is Exposed.ANY else (asked.exposed,)
        wanted = wanted.where(standing.c.exposed.in_([one.value for one in any_of]))
    if asked.tags is not None:
        wanted = wanted.where(standing.c.tag.in_(asked.tags))
    if asked.held:
        wanted = wanted.where(_HELD.in_([asked.held.value]))
    return _due(wanted, asked)


def _due(wanted: Select[Any], asked: Asked) -> Select[Any]:
    if asked.due_by:
        wanted = wanted.where(standing.c.next_due <= asked.due_by)
    return wanted.where(standing.c.next_due.is_(None)) if asked.no_day else wanted


def _order(asked: Asked) -> tuple[Any, ...]:
    """What nobody wrote down comes last, whichever end comes first; the tag decides between equals."""
    columns = standing.c
    places = case({one.value: number for number, one in enumerate(Held)}, value=_HELD)
    kinds = {key: number for number, key in enumerate(asked.kinds)}
    severity = {one.value: -one.severity for one in Outcome}
    orders: dict[Order, tuple[Any, ...]] = {
        Order.TAG: (),
        Order.DUE: (columns.next_due.is_(None), columns.next_due),
        Order.WORST: (case(severity, value=columns.outcome),),
        Order.KIND: (case(kinds, value=columns.kind, else_=len(kinds)) if kinds else columns.kind,),
        Order.MARKED: (columns.rated.is_(None), columns.basis, columns.rated),
        Order.INSPECTED: (columns.inspected_on.is_(None), columns.inspected_on),
        Order.PLACE: (places, columns.vehicle, columns.place == "", columns.place),
        Order.OWNER: (columns.owner == "", columns.owner),
        Order.MAKER: (columns.maker_mark == "", columns.maker_mark),
        Order.SERIAL: (columns.serial == "", columns.serial),
    }
    by_tag = columns.tag.concat("")  # not the bare column: its index would lead through the table row by row
    keys = (*orders[asked.order], by_tag)
    return tuple(_turned(key) for key in keys) if asked.falling else keys


def _turned(key: Any) -> Any:
    """The other way round; what is not written down stays last."""
    is_missing = isinstance(key, ColumnElement) and str(key.type) == "BOOLEAN"
    return key if is_missing else key.desc()


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
