"""Bytes of a register's file are flipped one after the other, and what the program makes of each is noted.

A flip is found as the register is opened, by the look at the file's pages and indexes, or by the proof of ledger and
rows; or every row reads as before. Half of the places are even over the file, half even over its tables and indexes,
since nearly all of a register is verdicts.
"""

import hashlib
import random
import sqlite3
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import closing
from pathlib import Path

from msgspec import Struct

from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.columns import METADATA

OPENED, PAGES, PROVED, SAME, SLIPPED = "on opening", "by the file's pages", "by the proof", "reads as before", "SLIPPED"
OUTCOMES = (OPENED, PAGES, PROVED, SAME, SLIPPED)


class Flip(Struct, frozen=True):
    """One flipped byte. of: the table or index its page belongs to."""

    at: int
    mask: int
    of: str


class Made(Struct, frozen=True):
    """What came of a flip, and what was told."""

    flip: Flip
    outcome: str
    told: str


def flips(good: bytes, file: Path, count: int, seed: int) -> Iterator[Flip]:
    """Places and bits, the same for the same seed. file: holds the good bytes."""
    dice = random.Random(seed)
    pages = _pages(file)
    page_bytes = int.from_bytes(good[16:18], "big")
    owner = {page: name for name, some in pages.items() for page in some}
    names = sorted(pages)
    for number in range(count):
        if number % 2:
            at = dice.randrange(len(good))
        else:
            page = dice.choice(pages[names[number // 2 % len(names)]])
            at = (page - 1) * page_bytes + dice.randrange(page_bytes)
        yield Flip(at, 1 << dice.randrange(8) if dice.random() < 0.8 else dice.randrange(1, 256),
                   owner.get(at // page_bytes + 1, "free"))  # fmt: skip


def _pages(file: Path) -> dict[str, list[int]]:
    """The pages of each table and index, by its name."""
    found: dict[str, list[int]] = {}
    with closing(sqlite3.connect(file)) as connection:
        for name, page in connection.execute("SELECT name, pageno FROM dbstat ORDER BY pageno"):
            found.setdefault(str(name), []).append(int(page))
    return found


def export(file: Path) -> str:
    """A checksum over every row of every table as it reads. The name of this copy is in it for nothing."""
    found = hashlib.sha256()
    with closing(sqlite3.connect(f"{file.as_uri()}?mode=ro", uri=True)) as connection:
        for table in sorted((*METADATA.tables, "alembic_version")):
            said = "WHERE key <> 'origin'" if table == "club_setting" else ""
            for row in connection.execute(f"SELECT * FROM {table} {said} ORDER BY 1"):
                found.update(repr((table, row)).encode())
    return found.hexdigest()


def tried(good: bytes, file: Path, flip: Flip, expected: str) -> Made:
    """Flip it, open the register, prove it, and read it. The file is left with the good bytes."""
    data = bytearray(good)
    data[flip.at] ^= flip.mask
    for end in ("-wal", "-shm", "-journal"):
        file.with_name(file.name + end).unlink(missing_ok=True)
    file.write_bytes(data)
    try:
        book = open_book(file)
    except Refused as refusal:
        same = file.read_bytes() == bytes(data)
        return Made(flip, OPENED if same else SLIPPED, f"{refusal.why} (the file is as it was: {same})")
    try:
        with book.reading() as page:
            faults = page.verify().faults
    except Refused as refusal:
        return Made(flip, PROVED, refusal.why)
    finally:
        book.close()
    if faults:
        by_pages = all(one.where == "file" for one in faults[:1])
        return Made(flip, PAGES if by_pages else PROVED, f"{faults[0].where}: {faults[0].why}")
    now = export(file)
    return Made(flip, SAME if now == expected else SLIPPED, "")


def run(file: Path, count: int, seed: int) -> Sequence[Made]:
    """Try many flips on the register in a file."""
    good, expected = file.read_bytes(), export(file)
    made = [tried(good, file, one, expected) for one in list(flips(good, file, count, seed))]
    file.write_bytes(good)
    return made


def counted(made: Sequence[Made]) -> Counter[str]:
    """How many of each outcome."""
    return Counter(one.outcome for one in made)
