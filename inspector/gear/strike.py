"""A wrong entry struck by two competent persons, and the day a retired piece was made unusable."""

from datetime import date

from msgspec import Struct


class NewStrike(Struct, frozen=True):
    """An entry that was wrong: the wrong tag, a misread gauge. by and second: two persons' ids.

    entry: the id of the inspection, use or exposure; voids: the stored retirements that rested on it alone.
    """

    on: date
    by: str
    second: str
    entry: str
    why: str
    voids: tuple[str, ...] = ()


class Strike(Struct, frozen=True):
    """A kept strike."""

    id: str
    item_id: str
    facts: NewStrike


class NewDestruction(Struct, frozen=True):
    """A retired piece made unusable. by: who did it; witness: who saw it, an id or empty."""

    on: date
    by: str
    how: str
    witness: str = ""
