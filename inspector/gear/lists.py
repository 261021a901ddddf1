"""Rows of lists, read by columns, and what a list may be asked for."""

from collections.abc import Mapping
from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.outcome import Outcome


class Order(StrEnum):
    """By what the gear list is sorted; the tag decides between equals."""

    DUE = "due"
    TAG = "tag"
    WORST = "worst"
    KIND = "kind"
    MARKED = "marked"
    OWNER = "owner"
    PLACE = "place"
    MAKER = "maker"
    SERIAL = "serial"
    INSPECTED = "inspected"


class Owned(StrEnum):
    """Whose the pieces are."""

    CLUB = "club"
    OTHERS = "others"


class Due(StrEnum):
    """When a piece falls due. Each of the two spans holds what is overdue too: it is no less urgent."""

    OVERDUE = "overdue"
    IN_30_DAYS = "in_30_days"
    IN_90_DAYS = "in_90_days"
    NO_DAY = "no_day"


class Exposed(StrEnum):
    """What was logged of the weather a piece saw; an entry that was struck is none."""

    SALT = "salt"
    ANY = "any"
    NONE = "none"


class Held(StrEnum):
    """Where a piece is, as far as a list tells it apart."""

    IN_STORE = "in_store"
    ON_LOAN = "on_loan"
    ON_VEHICLE = "on_vehicle"
    LOST = "lost"  # missing or stolen: somebody still looks for it
    GONE = "gone"  # sold, given back or destroyed


class Wanted(Struct, frozen=True):
    """What the gear list is asked for; None or empty stands for all.

    owner: a name, for the pieces of one owner. gone_too: list what is gone beside what is here; without it a gone piece
    is listed only where held asks for it. falling: the last comes first.
    """

    search: str = ""
    outcome: Outcome | None = None
    kind: str = ""
    owned: Owned | None = None
    owner: str = ""
    due: Due | None = None
    exposed: Exposed | None = None
    held: Held | None = None
    gone_too: bool = False
    order: Order = Order.DUE
    falling: bool = False


class Answers(Struct, frozen=True):
    """The pieces that answer, by tag, in their order.

    counts: those that answer all but the outcome asked for, by outcome. gone_count: how many answer and are gone.
    """

    tags: tuple[str, ...]
    counts: Mapping[Outcome, int]
    gone_count: int


class Listing(Struct, frozen=True):
    """What the list finds and sorts a piece by, taken from its facts whenever it is judged.

    search: every word by which it is found. basis, rated: what its marking means, and how much in SI. inspected_on:
    the last inspection that was more than a look before use.
    """

    tag: str
    kind: str
    owner: str
    maker_mark: str
    serial: str
    place: str
    vehicle: str
    basis: str
    rated: float | None
    inspected_on: date | None
    exposed: Exposed
    search: str


class GearRow(Struct, frozen=True):
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
    serial: str = ""
    inspected_on: date | None = None
    use_line: str = ""  # what it may be used for
    where: str = ""  # where it is, in words


class HistoryRow(Struct, frozen=True):
    """One line of a piece's history. ref: the sign by which a wrong entry is struck, where it can be."""

    on: date
    what: str
    text: str
    by: str
    ref: str = ""


class PaperRow(Struct, frozen=True):
    """A document that was printed of a piece or that names it. again: it can be printed again as it was said."""

    number: str
    on: date
    what: str
    again: bool


class Fault(Struct, frozen=True):
    """Something `verify` found. line: the ledger line's number, where there is one."""

    where: str
    why: str
    line: int | None = None


class Verified(Struct, frozen=True):
    """What `verify` found. head: the hash of the last line. gaps: faults that a rescue has told of in the ledger."""

    line_count: int
    row_count: int
    head: str
    faults: tuple[Fault, ...]
    gaps: tuple[Fault, ...] = ()
