"""What waits for the equipment officer, as the window's first page shows it. Data only; worded where it is shown."""

from datetime import date, datetime
from enum import StrEnum

from msgspec import Struct

from inspector.gear.falls_due import DueLine
from inspector.gear.outcome import Outcome


class TripGlance(Struct, frozen=True):
    """The next trip: how many pieces of its kit go and stay, what is lacking, and what must be said of its vehicles.

    gone: pieces of the kit that are not at hand; may_be_away: that may not be. bad_parts: parts on its vehicles on hold
    or retired. trouble: why nothing could be told of it; empty where all could.
    """

    ref: str
    name: str
    place: str
    days: str
    first_on: date
    going: int = 0
    staying: int = 0
    due: int = 0
    bad_parts: int = 0
    gone: int = 0
    may_be_away: int = 0
    lacks: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    trouble: str = ""

    @property
    def is_ready(self) -> bool:
        """Whether something goes and nothing speaks against it."""
        wrong = (self.staying, self.due, self.bad_parts, self.gone, self.may_be_away)
        return self.going > 0 and not (any(wrong) or self.lacks or self.warnings or self.trouble)


class HeldPiece(Struct, frozen=True):
    """A piece on hold. why: what holds it; release: what would settle that; more: how many other faults hold it.

    serves: something is open to it all the same. evidence: the incidents it is kept for.
    """

    tag: str
    kind_name: str
    why: str
    release: str
    more: int
    serves: bool
    evidence: tuple[str, ...]
    people: tuple[str, ...]
    place: str


class NeedLine(Struct, frozen=True):
    """A line of the calendar with the outcome of its piece; None where it speaks of no piece."""

    due: DueLine
    outcome: Outcome | None


class Work(StrEnum):
    """A sort of work, in the order in which it is shown."""

    INSPECT = "inspect"
    READ = "read"
    BACK = "back"
    JUDGE = "judge"
    PEOPLE = "people"
    TRIPS = "trips"
    ANSWERS = "answers"


class WorkGroup(Struct, frozen=True):
    """What of one sort of work is overdue or due soon, the longest overdue first."""

    work: Work
    lines: tuple[NeedLine, ...]


class IncidentLine(Struct, frozen=True):
    """An open report, with the tags of the pieces and vehicles that are kept as found for it."""

    ref: str
    what: str
    on: date
    place: str
    pieces: tuple[str, ...]
    vehicles: tuple[str, ...]


class RetiredPiece(Struct, frozen=True):
    """A retired piece that was not yet made unusable. since: None where nobody knows the day."""

    tag: str
    kind_name: str
    since: date | None
    has_notice: bool
    evidence: tuple[str, ...]
    place: str


class EndsBy(StrEnum):
    """What ends a piece's service by time alone."""

    WALL = "wall"
    AGE = "age"


class Ending(Struct, frozen=True):
    """The day on which a piece would be retired, on what its stored verdict holds.

    earliest, latest: the band round a wall's day; None: not told. estimated: no reading stands behind it.
    """

    tag: str
    kind_name: str
    outcome: Outcome
    by: EndsBy
    on: date
    earliest: date | None = None
    latest: date | None = None
    estimated: bool = False

    @property
    def first(self) -> date:
        """The earliest day of all that are told."""
        return min(self.on, self.earliest) if self.earliest else self.on


class Backed(Struct, frozen=True):
    """The last copy of the register. at: None where none was ever made; deeds_since: lines of the ledger after it.

    is_file: the register is a file that this program copies; else its database has a tool of its own.
    """

    at: datetime | None
    file: str
    deeds_since: int
    is_file: bool = True


class Needs(Struct, frozen=True):
    """All that waits on a day. late: missing pieces, and what is overdue to come back; next_due: the first after it."""

    on: date
    club: str
    piece_count: int
    rulebook: tuple[str, ...]
    trip: TripGlance | None
    held: tuple[HeldPiece, ...]
    late: tuple[NeedLine, ...]
    incidents: tuple[IncidentLine, ...]
    counts: tuple[DueLine, ...]
    recalls: tuple[DueLine, ...]
    retired: tuple[RetiredPiece, ...]
    work: tuple[WorkGroup, ...]
    endings: tuple[Ending, ...]
    backup: Backed
    next_due: DueLine | None
    cautions: tuple[str, ...]

    @property
    def is_quiet(self) -> bool:
        """Whether no gear and no report waits for anybody."""
        waits = (
            self.rulebook,
            self.held,
            self.late,
            self.incidents,
            self.recalls,
            self.counts,
            self.retired,
            self.work,
        )
        return not any(waits)

    @property
    def without_notice(self) -> tuple[str, ...]:
        """The tags of retired pieces whose notice was not printed."""
        return tuple(one.tag for one in self.retired if not one.has_notice)

    @property
    def overdue_count(self) -> int:
        """How many lines are past their day, those that are missing or late to come back among them."""
        due = (line.due for group in self.work for line in group.lines)
        return sum(1 for one in due if one.overdue_days(self.on)) + len(self.late)

    @property
    def due_count(self) -> int:
        """How many lines are due soon and not overdue."""
        due = (line.due for group in self.work for line in group.lines)
        return sum(1 for one in due if not one.overdue_days(self.on))
