"""Who has a piece, since when: lent and returned."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class Hands(StrEnum):
    """What an entry says."""

    LENT = "lent"
    RETURNED = "returned"


@dataclass(frozen=True, slots=True)
class NewCustody:
    """A piece handed over or brought back. holder, by: ids of people; trip: its reference; due: to be back by."""

    on: date
    what: Hands
    holder: str
    due: date | None = None
    trip: str = ""
    by: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Custody:
    """A logged entry."""

    id: str
    item_id: str
    facts: NewCustody


@dataclass(frozen=True, slots=True)
class Loan:
    """A piece that is out: with whom, since when, due when, for which trip."""

    tag: str
    kind_name: str
    holder: str
    since: date
    due: date | None
    trip: str = ""
