"""Whether the ledger's lines follow one another: one chain a copy of the register, joined where copies were merged.

A line names the hash of the line it follows. A field copy goes on from the line it was made after, under its own
origin; a merge takes its lines over and then writes a line that names their last one. Two lines of one origin never
follow the same line, and every chain ends in a line that a merge names, or in the last line of all.
"""

import json
import sqlite3
from collections.abc import Iterator, Mapping
from typing import Any

from inspector.gear.lists import Fault
from inspector.register.aside import as_key
from inspector.register.canonical import digest_of

GENESIS = "0" * 64
MERGE = "merge"  # the deed whose line names the heads that it took over
HEADS = "heads"  # the fact of that line under which they stand
_TABLES = (
    "CREATE TABLE line (own PRIMARY KEY, number) WITHOUT ROWID",
    "CREATE TABLE follower (before, origin, PRIMARY KEY (before, origin)) WITHOUT ROWID",
)
_NOTE = "INSERT OR REPLACE INTO line VALUES (?, ?)"
_NUMBER = "SELECT number FROM line WHERE own = ?"
_FOLLOW = "INSERT OR IGNORE INTO follower VALUES (?, ?)"
_BESIDE = "SELECT origin FROM follower WHERE before = ?"


def line_hash(number: int, origin: str, at: str, by: str, deed: str, body: str, before: str) -> str:
    """The hash of one ledger line over all its columns but its place in this register."""
    return digest_of([number, origin, at, by, deed, body, before])


def hash_of(row: Mapping[Any, Any]) -> str:
    """The hash that a line with these columns must have."""
    columns = (row["origin"], row["at"], row["by"], row["deed"], row["body"], row["before"])
    return line_hash(row["number"], *columns)


class Chains:
    """Takes the lines in their order in the register and tells what does not hold together. noted: put aside there."""

    def __init__(self, noted: sqlite3.Connection) -> None:
        self._noted = noted
        for one in _TABLES:
            noted.execute(one)
        self._note(GENESIS, 0)
        self._open: dict[str, int] = {}  # hashes that no line follows yet, and where they stand
        self.last_id = 0
        self.head = GENESIS

    def faults_of(self, row: Mapping[Any, Any]) -> Iterator[Fault]:
        """What is wrong with the next line."""
        line = int(row["id"])
        if line != self.last_id + 1:
            yield Fault("ledger", f"line {self.last_id + 1} is missing", line)
        if hash_of(row) != row["hash"]:
            yield Fault("ledger", "was changed after it was written", line)
        yield from self._follows(row, line)
        if row["deed"] == MERGE:
            yield from self._takes_over(row, line)
        self.last_id, self.head = line, str(row["hash"])

    def faults_at_end(self) -> Iterator[Fault]:
        """Lines that nothing follows, though the register goes on elsewhere."""
        for own, line in self._open.items():
            if own != self.head:
                yield Fault("ledger", "is the end of a chain that no merge took over", line)

    def _follows(self, row: Mapping[Any, Any], line: int) -> Iterator[Fault]:
        before, own, origin = str(row["before"]), str(row["hash"]), str(row["origin"])
        number = self._number_of(before)
        if number is None:
            yield Fault("ledger", "does not follow from any line before it", line)
        elif row["number"] != number + 1:
            yield Fault("ledger", "does not have the number after the line that it follows", line)
        beside = {str(one) for (one,) in self._noted.execute(_BESIDE, (as_key(before),))}
        if origin in beside or (beside and before == GENESIS):
            yield Fault("ledger", "follows a line that another one of the same copy follows already", line)
        self._noted.execute(_FOLLOW, (as_key(before), origin))
        self._note(own, int(row["number"]))
        self._open.pop(before, None)
        self._open[own] = line

    def _takes_over(self, row: Mapping[Any, Any], line: int) -> Iterator[Fault]:
        for head in heads_named(str(row["body"])):
            if self._number_of(head) is None:
                yield Fault("ledger", f"took over lines up to {head[:12]}, which are gone", line)
            self._open.pop(head, None)

    def _number_of(self, own: str) -> int | None:
        found = self._noted.execute(_NUMBER, (as_key(own),)).fetchone()
        return int(found[0]) if found else None

    def _note(self, own: str, number: int) -> None:
        self._noted.execute(_NOTE, (as_key(own), number))


def heads_named(body: str) -> tuple[str, ...]:
    """The heads that a merge's line says it took over; none where it cannot be read."""
    try:
        return tuple(map(str, json.loads(body)["facts"][HEADS]))
    except (ValueError, KeyError, TypeError):
        return ()
