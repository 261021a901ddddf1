"""Rows of lists, read by columns."""

from dataclasses import dataclass
from datetime import date

from inspector.gear.outcome import Outcome


@dataclass(frozen=True, slots=True)
class GearRow:
    """One line of the gear list. outcome None: booked in and not yet judged."""

    tag: str
    kind: str
    kind_name: str
    maker_mark: str
    marked: str
    owner: str
    place: str
    outcome: Outcome | None
    headline: str
    next_due: date | None
    unloosened: Outcome | None = None  # what it would be without the club's loosened limits, where that is another


@dataclass(frozen=True, slots=True)
class HistoryRow:
    """One line of a piece's history. ref: the sign by which a wrong entry is struck, where it can be."""

    on: date
    what: str
    text: str
    by: str
    ref: str = ""


@dataclass(frozen=True, slots=True)
class PaperRow:
    """A document that was printed of a piece or that names it. again: it can be printed again as it was said."""

    number: str
    on: date
    what: str
    again: bool


@dataclass(frozen=True, slots=True)
class Fault:
    """Something `verify` found. line: the ledger line's number, where there is one."""

    where: str
    why: str
    line: int | None = None


@dataclass(frozen=True, slots=True)
class Verified:
    """What `verify` found. head: the hash of the last line."""

    line_count: int
    row_count: int
    head: str
    faults: tuple[Fault, ...]
