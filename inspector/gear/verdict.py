"""What judging returns: data only. The sentences are made in rulebook/wording."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.capacity import Capacity
from inspector.gear.kind import Service
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.wall_band import WallBand
from inspector.units import Dimension


class Status(StrEnum):
    """How a rule came out."""

    PASSES = "passes"
    FAILS = "fails"
    UNKNOWN = "unknown"  # a required fact is missing or stale
    NOTE = "note"
    ANSWERED = "answered"  # it failed, and a competent person's opinion answers it


class Known(StrEnum):
    """How a value came to be known."""

    SEEN = "seen"  # graded by looking
    MEASURED = "measured"
    STATED = "stated"  # written down when the piece was booked in
    COUNTED = "counted"  # from logged uses, exposures and days
    ESTIMATED = "estimated"  # from exposure, with no reading behind it


class Value(Struct, frozen=True, gc=False):
    """A value as a rule saw it: a number in SI or a word such as a grade. as_typed: how the officer wrote it."""

    number: float | None = None
    word: str = ""
    dimension: Dimension | None = None
    as_typed: str = ""


class Finding(Struct, frozen=True, gc=False):
    """One rule's answer. purposes: those it speaks to, empty for the whole piece. limit_from: the named quantity
    the limit is, where it is one. came_from: what the value was computed from; known: how; by: who saw or measured it,
    a person's id; rests_on: the id of the entry it stands in. turns_on: the day on which time alone makes this rule
    answer otherwise. answered: the opinion that answers it, in words."""

    rule: str
    quantity: str
    status: Status
    outcome: Outcome
    says: str
    source: str
    purposes: tuple[Purpose, ...]
    must: str
    value: Value | None
    limit: Value | None
    limit_from: str = ""
    limit_came_from: str = ""
    came_from: str = ""
    measured_on: date | None = None
    why_unknown: str = ""
    turns_on: date | None = None
    observation: str = ""  # the check or measure this rests on
    known: Known | None = None
    by: str = ""
    rests_on: str = ""
    answered: str = ""
    loosened: str = ""  # which club limit it was judged by that is milder than the packaged one, and from what


class Needed(StrEnum):
    """What would release a finding."""

    READING = "reading"
    GRADE = "grade"
    INSPECTION = "inspection"
    MARKING = "marking"
    TWO_NAMES = (
        "two_names"  # evidence, or what broke: two competent persons release it or answer that, then it is inspected
    )
    RECALL = "recall"  # it is read not to be meant, or what the notice asks for is done and inspected
    STRIKE = "strike"  # the reading stands for good; only two competent persons may strike it, if it was wrong
    NOTHING = "nothing"


class Release(Struct, frozen=True):
    """What would release one finding with all else as it is: the limit of its own quantity, or what is missing.

    observation: the check or measure; points: its named places; must: at_least, at_most, above or below; limit: the
    reading in SI as a gauge shows it, with the gauge's allowance inside.
    """

    rule: str
    needed: Needed
    observation: str = ""
    points: tuple[str, ...] = ()
    must: str = ""
    limit: float | None = None
    dimension: Dimension | None = None


class WallPoint(Struct, frozen=True):
    """The thinnest wall on one day in metres: as read, and what may be relied on after the gauge's allowance."""

    on: date
    read_m: float
    relied_m: float
    point: str
    as_typed: str
    upper_bound: bool = False  # the face was not known to be dressed: the wall may be thinner than read
    below_probe: bool = False  # thinner than the common probe can tell


class WallForecast(Struct, frozen=True):
    """The wall of a tube: history, rates in metres a year, what it must keep, and how long that lasts."""

    nominal_m: float
    outside_m: float | None
    required_m: float
    required_because: str
    history: tuple[WallPoint, ...]
    long_term_m_per_year: float | None
    short_term_m_per_year: float | None
    floor_m_per_year: float
    rate_m_per_year: float
    rate_because: str
    wall_now_m: float  # on the judging day: last relied wall less the rate since, or the estimate
    estimated: bool  # True: no reading stands behind it
    life_years: float | None  # None: no end in sight
    reaches_required_on: date | None
    next_reading_due: date | None
    unread_points: tuple[str, ...] = ()  # named places no competent person has ever read
    points: tuple[WallPoint, ...] = ()  # what was read last at each place
    band: WallBand | None = None

    @property
    def is_used_up(self) -> bool:
        """Whether by the rate that verdicts rest on nothing is left: no band tells of a day to come then."""
        return self.life_years == 0


class PurposeOutcome(Struct, frozen=True):
    """The outcome for one purpose the kind may serve."""

    purpose: Purpose
    outcome: Outcome


class Unloosened(Struct, frozen=True):
    """What a verdict would be had the club loosened nothing, where that is another."""

    outcome: Outcome
    by_purpose: tuple[PurposeOutcome, ...]
    now_n: float | None
    next_due: date | None


class Verdict(Struct, frozen=True):
    """The judgement of one piece on one day."""

    item_id: str
    on: date
    outcome: Outcome
    by_purpose: tuple[PurposeOutcome, ...]
    findings: tuple[Finding, ...]
    capacity: Capacity
    wall: WallForecast | None
    next_inspection_due: date | None
    holds_until: date | None
    rulebook: str
    program: str
    service: Service = Service.NORMAL
    releases: tuple[Release, ...] = ()  # of each finding that governs; empty where nobody asked
    unloosened: Unloosened | None = None

    @property
    def next_due(self) -> date | None:
        """The earlier of the next inspection and the next wall reading."""
        reading = self.wall.next_reading_due if self.wall else None
        return min((day for day in (self.next_inspection_due, reading) if day), default=None)

    @property
    def turns_first(self) -> date | None:
        """The day on which time alone may change it, where that comes no later than what is next due."""
        turns, due = self.holds_until, self.next_due
        return turns if turns and (due is None or turns <= due) else None


class Reason(Struct, frozen=True, gc=False):
    """One finding in words: the sentence, the value, the limit and where the limit comes from."""

    outcome: Outcome
    status: Status
    sentence: str
    value: str
    limit: str
    source: str
    rule: str
    purposes: str = ""
    release: str = ""  # what would release it, where anything would
    what: str = ""  # the name of what was looked at, for lists of what is missing
    why: str = ""  # why the rule stands


class Fact(Struct, frozen=True, gc=False):
    """A labelled line, e.g. ("Wall now", "2.2 mm")."""

    label: str
    text: str


class Explanation(Struct, frozen=True):
    """A verdict in words. headline: the outcome in one line; plain: what it means, one sentence; use_line: what the
    piece may be used for, for sheets; sums: the figures behind it."""

    headline: str
    plain: str
    use_line: str
    reasons: tuple[Reason, ...]
    passes: tuple[Reason, ...]
    sums: tuple[Fact, ...]
    cautions: tuple[str, ...]
    piece: tuple[Fact, ...]
    terms: tuple[Fact, ...] = ()  # words of the trade that it uses, with their meaning
