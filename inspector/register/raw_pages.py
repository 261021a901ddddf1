"""The rows of a damaged SQLite file, read page by page without SQLite: every leaf that still holds together.

The file format is SQLite's own (https://www.sqlite.org/fileformat2.html). Nothing is believed because it is read:
whoever uses a row proves it by its checksum. What was committed into the write-ahead file is read too.
"""

import struct
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Literal

from msgspec import Struct

_USUAL_PAGE = 4096
_PAGES = frozenset(1 << power for power in range(9, 17))
_HEADER_BYTES = 100
_LEAF, _INTERIOR = 0x0D, 0x05
_WAL_HEADER, _FRAME_HEADER = 32, 24
_WAL_MAGIC = (0x377F0682, 0x377F0683)
_INTEGERS = {1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8}
_FLOAT, _ZERO, _ONE, _FIRST_BYTES = 7, 8, 9, 12


class Record(Struct, frozen=True):
    """A row as it lies in the file. page: the page it begins on; rowid: SQLite's own number of it."""

    page: int
    rowid: int
    values: tuple[Any, ...]


class Broken(Exception):  # noqa: N818 - no fault of the program: this place of the file is spoilt
    """What lies there is no row."""


class RawFile:
    """A file and what lies beside it. pages: how many are there; whole: how many its head says there are."""

    def __init__(self, file: Path) -> None:
        self._data = file.read_bytes()
        named = int.from_bytes(self._data[16:18], "big")
        named = 65536 if named == 1 else named
        self.page_bytes = named if named in _PAGES else _USUAL_PAGE
        reserved = self._data[20] if len(self._data) > 20 else 0
        self._usable = self.page_bytes - (reserved if reserved <= self.page_bytes - 480 else 0)
        self.pages = len(self._data) // self.page_bytes
        self.whole = int.from_bytes(self._data[28:32], "big")
        wal = file.with_name(file.name + "-wal")
        self._later = _frames(wal.read_bytes(), self.page_bytes) if wal.is_file() else []
        self._newest = dict(self._later)

    def records(self) -> Iterator[Record]:
        """Every row of every leaf, the newer ones of the write-ahead file last."""
        for number in range(1, self.pages + 1):
            yield from self._leaf(number, self._of_file(number))
        for number, page in self._later:
            yield from self._leaf(number, page)

    def leaves_under(self, root: int) -> list[int] | None:
        """The leaves of a table in their order, by its root; None where the way to them is broken."""
        found: list[int] = []
        return found if self._walk(root, found, set()) else None

    def _walk(self, number: int, found: list[int], seen: set[int]) -> bool:
        page = self._page(number)
        start = _HEADER_BYTES if number == 1 else 0
        if number in seen or page is None or page[start] not in {_LEAF, _INTERIOR}:
            found.append(number)  # a place where a leaf should be
            return page is not None and number not in seen and len(seen) > 0
        seen.add(number)
        if page[start] == _LEAF:
            found.append(number)
            return True
        cells = int.from_bytes(page[start + 3 : start + 5], "big")
        places = [int.from_bytes(page[at : at + 2], "big") for at in range(start + 12, start + 12 + 2 * cells, 2)]
        children = [int.from_bytes(page[at : at + 4], "big") for at in places]
        last = int.from_bytes(page[start + 8 : start + 12], "big")
        whole = [self._walk(one, found, seen) for one in (*children, last)]  # all are wanted, whatever broke
        return all(whole)

    def _of_file(self, number: int) -> bytes | None:
        start = (number - 1) * self.page_bytes
        page = self._data[start : start + self.page_bytes]
        return page if number > 0 and len(page) == self.page_bytes else None

    def _page(self, number: int) -> bytes | None:
        return self._newest.get(number) or self._of_file(number)

    def _leaf(self, number: int, page: bytes | None) -> Iterator[Record]:
        start = _HEADER_BYTES if number == 1 else 0
        if page is None or page[start] != _LEAF:
            return
        cells = int.from_bytes(page[start + 3 : start + 5], "big")
        for cell in range(min(cells, self.page_bytes // 4)):
            at = start + 8 + 2 * cell
            try:
                yield self._record(number, page, int.from_bytes(page[at : at + 2], "big"))
            except (Broken, IndexError, UnicodeDecodeError):
                continue

    def _record(self, number: int, page: bytes, at: int) -> Record:
        length, at = _varint(page, at)
        rowid, at = _varint(page, at)
        if length > self.page_bytes * (self.pages + len(self._later)):
            raise Broken
        return Record(number, rowid, _values(self._payload(page, at, length)))

    def _payload(self, page: bytes, at: int, length: int) -> bytes:
        """The bytes of a row: on its leaf, and from there on along its chain of further pages."""
        most = self._usable - 35
        if length <= most:
            return page[at : at + length]
        least = (self._usable - 12) * 32 // 255 - 23
        local = least + (length - least) % (self._usable - 4)
        local = local if local <= most else least
        parts, left = [page[at : at + local]], length - local
        following = int.from_bytes(page[at + local : at + local + 4], "big")
        while left > 0:
            more = self._page(following)
            if more is None:
                raise Broken
            parts.append(more[4 : 4 + min(left, self._usable - 4)])
            left -= self._usable - 4
            following = int.from_bytes(more[:4], "big")
        return b"".join(parts)


def _frames(wal: bytes, page_bytes: int) -> list[tuple[int, bytes]]:
    """Number and bytes of every page that a commit ended. What lies behind may be left of a deed that never was."""
    if len(wal) < _WAL_HEADER or int.from_bytes(wal[:4], "big") not in _WAL_MAGIC:
        return []
    order: Literal["little", "big"] = "big" if wal[3] & 1 else "little"
    salt, found, ended = wal[16:24], list[tuple[int, bytes]](), 0
    sums = _sums(wal[:24], (0, 0), order)
    for at in range(_WAL_HEADER, len(wal) - page_bytes - _FRAME_HEADER + 1, page_bytes + _FRAME_HEADER):
        head, page = wal[at : at + _FRAME_HEADER], wal[at + _FRAME_HEADER : at + _FRAME_HEADER + page_bytes]
        sums = _sums(page, _sums(head[:8], sums, order), order)
        told = int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")
        if head[8:16] != salt or told != sums:
            break
        found.append((int.from_bytes(head[:4], "big"), page))
        ended = len(found) if int.from_bytes(head[4:8], "big") else ended
    return found[:ended]


def _sums(data: bytes, before: tuple[int, int], order: Literal["little", "big"]) -> tuple[int, int]:
    """The running checksum of the write-ahead file over whole pairs of 32-bit words."""
    one, two = before
    words = struct.unpack(f"{'>' if order == 'big' else '<'}{len(data) // 4}I", data)
    for first, second in zip(words[::2], words[1::2], strict=True):
        one = (one + first + two) & 0xFFFFFFFF
        two = (two + second + one) & 0xFFFFFFFF
    return one, two


def _varint(data: bytes, at: int) -> tuple[int, int]:
    value = 0
    for step in range(8):
        byte = data[at + step]
        value = value << 7 | byte & 0x7F
        if byte < 0x80:
            return value, at + step + 1
    return value << 8 | data[at + 8], at + 9


def _values(payload: bytes) -> tuple[Any, ...]:
    """The columns of a row's bytes."""
    head, at = _varint(payload, 0)
    if head > len(payload):
        raise Broken
    kinds = []
    while at < head:
        kind, at = _varint(payload, at)
        kinds.append(kind)
    values, at = [], head
    for kind in kinds:
        value, at = _value(payload, at, kind)
        values.append(value)
    if at != len(payload):
        raise Broken
    return tuple(values)


def _value(data: bytes, at: int, kind: int) -> tuple[Any, int]:
    if kind in {0, _ZERO, _ONE}:
        return {0: None, _ZERO: 0, _ONE: 1}[kind], at
    if kind == _FLOAT:
        return memoryview(data[at : at + 8][::-1]).cast("d")[0], at + 8
    if kind < _FIRST_BYTES:
        size = _INTEGERS.get(kind, 0)
        return int.from_bytes(data[at : at + size], "big", signed=True), at + size
    size = (kind - _FIRST_BYTES) // 2
    part = data[at : at + size]
    return (part.decode() if kind % 2 else part), at + size


def named(columns: tuple[str, ...], record: Record) -> Mapping[str, Any]:
    """The values by their columns; those that were added later and never written are None."""
    return dict.fromkeys(columns) | dict(zip(columns, record.values, strict=False))
