"""A stored verdict and its words, as far as lists of many pieces need them: read without all that passed."""

from datetime import date

from msgspec import Struct

from inspector.gear.outcome import Outcome
from inspector.gear.verdict import PurposeOutcome, Reason, Status, WallForecast


class StandingFinding(Struct, frozen=True):
    """One rule's answer, as far as time alone may change it."""

    rule: str
    quantity: str
    status: Status
    turns_on: date | None = None


class StandingVerdict(Struct, frozen=True):
    """What a verdict says of a piece and of its days."""

    outcome: Outcome
    by_purpose: tuple[PurposeOutcome, ...]
    findings: tuple[StandingFinding, ...]
    wall: WallForecast | None
    next_inspection_due: date | None
    holds_until: date | None


class StandingWords(Struct, frozen=True):
    """A verdict in words: what it is, what it means, what it may be used for, and what speaks against it."""

    headline: str
    plain: str
    use_line: str
    reasons: tuple[Reason, ...]
