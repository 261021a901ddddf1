"""What the rows of a list say: looked up by columns, some rows at a time, and given back row by row."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain, repeat, zip_longest
from typing import TypeVar

from msgspec import Struct

from inspector.duties.importing.columns import DAYS
from inspector.duties.importing.looks import LINES, Look
from inspector.duties.importing.reader import Reader
from inspector.gear.import_list import Cell, Field, Row

One = TypeVar("One")
_AT_ONCE = 500  # rows: who waits is told in between, and a long list needs no more room than a short one
_UNTOLD = Look(-1, "")  # of what no column tells


class Said(Struct, frozen=True, gc=False):
    """What the cells of a row say; of several columns that mean one thing the first that tells it.

    alike: the cells on which its kind and marks hang. asides: for the note, some of them empty; odd: those of days,
    lines and past in whose columns any look is odd. What bears the name of a Field is what tells that.
    """

    row: Row
    alike: tuple[Cell, ...]
    photos: tuple[Look, ...]
    asides: tuple[str, ...]
    odd: tuple[Look, ...]
    tag: Look
    kind: Look
    made_on: Look
    in_service_on: Look
    borrowed_until: Look
    maker_mark: Look
    serial: Look
    material: Look
    owner: Look
    place: Look
    from_whom: Look
    paper: Look
    provenance: Look


_TOLD_ONCE = [name for name in Said.__struct_fields__ if name in {*Field}]


def said_in(reads: Reader, rows: Sequence[Row]) -> Iterator[Said]:
    """What each row says."""
    starts = range(0, len(rows), _AT_ONCE)
    return chain.from_iterable(_said(reads, rows[start : start + _AT_ONCE]) for start in starts)


def _said(reads: Reader, rows: Sequence[Row]) -> Iterator[Said]:
    cells = list(zip_longest(*rows, fillvalue=""))
    cells += [("",) * len(rows)] * (reads.width - len(cells))
    every = [list(map(one.__getitem__, cells[one.column.at])) for one in reads.looks]
    first = {name: _first([every[at] for at in reads.telling.get(name, ())], len(rows)) for name in _TOLD_ONCE}
    odd = [at for at, one in enumerate(reads.looks) if one.is_odd]
    odd_fields = {reads.looks[at].column.field for at in odd}
    asides = [[look.aside for look in every[at]] for at in odd]
    asides += [[look.also for look in first[name]] for name in DAYS if name in odd_fields]
    return map(
        Said,
        rows,
        _across([cells[at] for at in reads.marked]),
        _across([every[at] for at in reads.telling.get(Field.PHOTO, ())]),
        _across(asides),
        _across([first[name] for name in (*DAYS, *LINES, Field.PAST) if name in odd_fields]),
        *[first[name] for name in _TOLD_ONCE],
    )


def _first(columns: Sequence[Sequence[Look]], count: int) -> Sequence[Look]:
    """Of columns that mean one thing what tells it first in each row."""
    found = columns[0] if columns else (_UNTOLD,) * count
    for other in columns[1:]:
        found = [one if one.counts else two for one, two in zip(found, other, strict=True)]
    return found


def _across(columns: Sequence[Sequence[One]]) -> Iterable[tuple[One, ...]]:
    return zip(*columns, strict=True) if columns else repeat(())
