"""Rows of one list that may speak of one piece: told apart or together by tag, serial, mark and all that they say."""

from collections import Counter
from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.importing.words import plain
from inspector.gear.import_list import RowFate
from inspector.gear.item import NewItem


class _Twin(Struct, frozen=True):
    """A row of a group. at: its place there; says: all that it says but where it stands in the list."""

    at: int
    row: RowFate
    tag: str
    mark: str
    says: NewItem


_Ends = tuple[_Twin, _Twin | None]  # the first of some rows, and the first that says anything else than it


class Names(Struct, frozen=True, gc=False):
    """What a row calls its piece, as plainly as two spellings of it are one.

    serial: None where it has none, or several may bear it.
    """

    tag: str
    serial: str | None


def names_of(facts: NewItem, *, shared_serials: bool) -> Names:
    """What a row calls its piece."""
    return Names(facts.tag.casefold(), None if shared_serials else plain_serial(facts))


def plain_serial(facts: NewItem) -> str | None:
    """A serial as plainly as two spellings of it are one, one of signs alone as it is; None where there is none."""
    return plain(facts.serial) or facts.serial.strip() or None


def twins_in(rows: Sequence[RowFate], names: Sequence[Names | None]) -> dict[int, RowFate]:
    """By the number of a row another one with its tag or serial. Of rows that say the same the first is free.

    names: of each row, None for one that has no facts.
    """
    tags, serials = _often([one.tag for one in names if one]), _often([one.serial for one in names if one])
    groups: dict[tuple[str, str], list[RowFate]] = {}
    for row, one in zip(rows, names, strict=True) if tags or serials else ():
        if one and one.tag in tags:
            groups.setdefault(("tag", one.tag), []).append(row)
        if one and one.serial is not None and one.serial in serials:
            groups.setdefault(("serial", one.serial), []).append(row)
    found: dict[int, RowFate] = {}
    for group in groups.values():
        for number, other in _twins_of(group):
            found.setdefault(number, other)
    return found


def _often(names: Sequence[str | None]) -> set[str]:
    """Those that come more than once."""
    return {name for name, count in Counter(names).items() if name is not None and count > 1}


def same_maker(one: NewItem, other: NewItem) -> bool:
    """Whether two pieces may be of one maker: the same mark, or one of them has none written down."""
    first, second = plain(one.maker_mark), plain(other.maker_mark)
    return not first or not second or first == second


def say_the_same(one: NewItem, other: NewItem) -> bool:
    """Whether two rows say the same of the same tag; where they stand in the list is no difference."""
    return _says(one) == _says(other)


def _says(facts: NewItem) -> NewItem:
    return replace(facts, note="")


def _twins_of(group: Sequence[RowFate]) -> Iterable[tuple[int, RowFate]]:
    """The numbers of those rows of a group that have another one, and the first such.

    Two may speak of one piece where their tags are the same, or their marks are or one has none. One that says anything
    else goes before one that says the same; of a few rows looked up, not of all the others, so that a column that says
    the same in every row takes no longer than another.
    """
    every = [_twin(at, row) for at, row in enumerate(group)]
    ends: dict[tuple[str, str], _Ends] = {}
    first: dict[NewItem, _Twin] = {}
    for one in every:
        first.setdefault(one.says, one)
        for key in (("tag", one.tag), ("mark", one.mark), ("any", "")):
            head, other = ends.get(key, (one, None))
            ends[key] = head, other or (one if one.says != head.says else None)
    for one in every:
        keys = [("tag", one.tag), ("mark", one.mark), ("mark", "") if one.mark else ("any", "")]
        others = [other for key in keys if key in ends and (other := _other(one, *ends[key]))]
        if others:
            yield one.row.number, min(others, key=lambda other: other.at).row
        elif (same := first[one.says]) is not one:
            yield one.row.number, same.row


def _twin(at: int, row: RowFate) -> _Twin:
    assert row.facts is not None
    return _Twin(at, row, row.tag.casefold(), plain(row.facts.maker_mark), _says(row.facts))


def _other(one: _Twin, head: _Twin, other: _Twin | None) -> _Twin | None:
    """Of some rows the first that says anything else than this one."""
    return head if head.says != one.says else other
