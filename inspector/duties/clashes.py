"""In what the deeds of two copies do not go together, and what is safe where they do not."""

from collections.abc import Callable, Iterator, Mapping, Sequence

from msgspec import Struct

from inspector.gear.item_change import NewItemChange
from inspector.gear.merging import Clash
from inspector.gear.outcome import Outcome
from inspector.gear.stock_take import NewStockEntry, StockStep
from inspector.gear.whereabouts import NewWhereabouts
from inspector.register.merge_page import Touch
from inspector.register.rows import from_body

_PLACED = frozenset({"custody", "whereabouts", "fitting"})
_MOVED = _PLACED | {"repair", "item_change", "destruction"}
_HANDED = frozenset({"custody", "fitting", "piece_use"})
_QUIET = frozenset({"verdict", "item"})  # what follows from others, or cannot be in both


class Found(Struct, frozen=True):
    """A clash about one thing. owner: its table and id; ours, theirs: the hashes of the lines.

    beside: of one tag for two pieces, the id of the one that got another tag, and the tag it was booked in as.
    """

    clash: Clash
    owner: tuple[str, str]
    ours: tuple[str, ...]
    theirs: tuple[str, ...]
    beside: tuple[str, str] = ("", "")


_Side = Sequence[Touch]
_Finds = Callable[[_Side, _Side], tuple[_Side, _Side]]


def clashes(ours: Sequence[Touch], theirs: Sequence[Touch]) -> tuple[Found, ...]:
    """Every clash between what two copies wrote, each way of clashing once for each thing."""
    here, there = _by_owner(ours), _by_owner(theirs)
    both = [owner for owner in here if owner in there]
    return tuple(one for owner in both for one in _of_one(owner, here[owner], there[owner]))


def _of_one(owner: tuple[str, str], ours: _Side, theirs: _Side) -> Iterator[Found]:
    for clash, finds in _FINDS[owner[0]].items():
        own, other = finds(ours, theirs)
        if own and other:
            yield Found(clash, owner, _lines(own), _lines(other))


def _by_owner(touches: Sequence[Touch]) -> Mapping[tuple[str, str], list[Touch]]:
    found: dict[tuple[str, str], list[Touch]] = {}
    for one in touches:
        found.setdefault(one.owner, []).append(one)
    return found


def _lines(side: _Side) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.line for one in side))


def _of(side: _Side, tables: frozenset[str]) -> list[Touch]:
    return [one for one in side if one.table in tables]


def _deeds(side: _Side) -> list[Touch]:
    return [one for one in side if one.table not in _QUIET]


def _either(first: Callable[[_Side], _Side], second: Callable[[_Side], _Side]) -> _Finds:
    """One thing on one side and another on the other, whichever side it is."""

    def finds(ours: _Side, theirs: _Side) -> tuple[_Side, _Side]:
        if first(ours) and second(theirs):
            return first(ours), second(theirs)
        return (second(ours), first(theirs)) if first(theirs) else ((), ())

    return finds


def _closing(side: _Side) -> list[Touch]:
    return [
        one
        for one in side
        if one.table == "destruction"
        or (one.table == "whereabouts" and from_body(one.said, NewWhereabouts).where.is_closed)
    ]


def _same(ours: _Side, theirs: _Side) -> tuple[_Side, _Side]:
    """The very same written in both."""
    said = {(one.table, one.said) for one in _deeds(theirs)}
    own = [one for one in _deeds(ours) if (one.table, one.said) in said]
    also = {(one.table, one.said) for one in own}
    return own, [one for one in theirs if (one.table, one.said) in also]


def _placed(ours: _Side, theirs: _Side) -> tuple[_Side, _Side]:
    return _differing(_of(ours, _PLACED), _of(theirs, _PLACED))


def _changed(ours: _Side, theirs: _Side) -> tuple[_Side, _Side]:
    """What is written of a piece, where the two do not end with the same."""
    own, other = _of(ours, frozenset({"item_change"})), _of(theirs, frozenset({"item_change"}))
    if own and other and _ends_with(own) == _ends_with(other):
        return (), ()
    return own, other


def _ends_with(side: _Side) -> object:
    return from_body(side[-1].said, NewItemChange).item


def _differing(own: _Side, other: _Side) -> tuple[_Side, _Side]:
    if {(one.table, one.said) for one in own} == {(one.table, one.said) for one in other}:
        return (), ()
    return own, other


def _both(table: str) -> _Finds:
    wanted = frozenset({table})
    return lambda ours, theirs: _differing(_of(ours, wanted), _of(theirs, wanted))


def _ended(side: _Side) -> list[Touch]:
    return [one for one in side if from_body(one.said, NewStockEntry).step is StockStep.CLOSED]


_FINDS: Mapping[str, Mapping[Clash, _Finds]] = {
    "item": {
        Clash.LEFT_FOR_GOOD: _either(_closing, _deeds),
        Clash.WHERE_IT_IS: _placed,
        Clash.WHAT_IT_IS: _changed,
        Clash.EVIDENCE: _either(lambda side: _of(side, frozenset({"quarantine"})), lambda side: _of(side, _MOVED)),
        Clash.RETIRED_AND_USED: _either(
            lambda side: [one for one in side if one.table == "verdict" and one.said == Outcome.RETIRE],
            lambda side: _of(side, _HANDED),
        ),
        Clash.WRITTEN_TWICE: _same,
    },
    "vehicle": {Clash.CHANGED_BOTH: _both("vehicle_change")},
    "trip": {Clash.CHANGED_BOTH: _both("trip_change")},
    "person": {Clash.CHANGED_BOTH: _both("person_change")},
    "stock_take": {
        Clash.COUNT_CLOSED: _either(
            lambda side: _ended([one for one in side if one.table == "stock_entry"]),
            lambda side: _of(side, frozenset({"stock_entry"})),
        )
    },
}
