"""The life of a piece for a picture: what happened to it, sorted, from its booking to what falls due next."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.outcome import Outcome


class LifeSort(StrEnum):
    """The row of the picture that an entry stands in; in the order in which the rows stand."""

    VERDICT = "verdict"
    INSPECTION = "inspection"
    USE = "use"
    EXPOSURE = "exposure"
    LENDING = "lending"
    WORK = "work"  # repairs, new parts, markings and bookings written down anew
    PLACE = "place"  # booked in, put away, fitted, missing, found again, kept as evidence, gone
    WORD = "word"  # doubts, opinions, entries struck
    FILE = "file"  # photos and papers put in
    PAPER = "paper"  # documents printed


class LifeEntry(Struct, frozen=True):
    """Something that happened on a day. says: all of it in words, without the day. until: the last day of a stretch.

    outcome: of a verdict that differs from the one before it. back: it ends what an earlier entry began.
    """

    on: date
    sort: LifeSort
    says: str
    until: date | None = None
    outcome: Outcome | None = None
    back: bool = False


class Life(Struct, frozen=True):
    """Entries in order of day. today: the day of looking; due: of the next inspection or reading, None: nothing is."""

    booked: date
    today: date
    due: date | None
    entries: tuple[LifeEntry, ...]
