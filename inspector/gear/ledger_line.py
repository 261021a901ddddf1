"""Lines of the ledger: as they were written, and told as sentences."""

from collections.abc import Mapping
from datetime import datetime

from msgspec import Struct


class WrittenLine(Struct, frozen=True):
    """A line as it stands in the book. by: a person's id; rows: table and id of every row of the deed.

    number: its place in this register; origin: the copy of the register that wrote it.

    facts: what the deed said of itself, plain texts and lists; empty where the line cannot be read.
    """

    number: int
    hash: str
    at: datetime | None
    by: str
    deed: str
    facts: Mapping[str, object]
    rows: tuple[tuple[str, str], ...]
    origin: str = ""


class ToldLine(Struct, frozen=True):
    """A line as a sentence. when: day and time in words; in_full: False where only deed and rows could be told."""

    number: int
    hash: str
    at: datetime | None
    when: str
    deed: str
    sentence: str
    in_full: bool
