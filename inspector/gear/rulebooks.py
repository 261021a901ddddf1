"""What is told of rulebooks: what a club changes, faults of its file, what a rule says, how two books differ."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.outcome import Outcome


class Direction(StrEnum):
    """How a club's figure stands to the packaged one."""

    STRICTER = "stricter"
    SAME = "same"
    LOOSER = "looser"


class Part(StrEnum):
    """Which part of the rulebook a club changes."""

    LIMIT = "limit"
    SETTING = "setting"
    INTERVAL = "interval"
    OUTCOME = "outcome"


class Change(Struct, frozen=True):
    """One figure or outcome that a club sets otherwise than the packaged rulebook.

    about: the rule's id, the setting's or the kind's key. key: which figure of it, e.g. "limit" or "every_days".
    profile: the packaged set it came with, where it did. source: where the club's figure comes from, as it prints.
    """

    part: Part
    about: str
    key: str
    packaged: str
    club: str
    direction: Direction
    why: str
    line: int
    profile: str = ""
    source: str = ""

    @property
    def place(self) -> tuple[str, str, str]:
        """What it changes: the same for two changes of one figure."""
        return self.part.value, self.about, self.key


class BookFault(Struct, frozen=True):
    """One thing that is wrong in a club's file. line 0: the file as a whole; column 0: the whole line."""

    file: str
    line: int
    says: str
    column: int = 0


class BookFound(Struct, frozen=True):
    """A club's file as it was read: whose it is, what it changes, and every fault. faults empty: it may be adopted."""

    club: str
    title: str
    from_on: date | None
    why: str
    changes: tuple[Change, ...]
    faults: tuple[BookFault, ...]


class RuleLine(Struct, frozen=True):
    """One rule in a list. loosened: whether a club has loosened its limit; club: its change in words, if any."""

    id: str
    quantity: str
    demand: str
    otherwise: str
    says: str
    club: str = ""
    loosened: bool = False


class WorkedExample(Struct, frozen=True):
    """An example of a rule, worked by the book in force. expected: what the packaged rulebook says of it."""

    given: str
    limit: str
    expected: str
    found: str


class RuleShown(Struct, frozen=True):
    """All that is to be told of one rule. purposes empty: it speaks of the whole piece."""

    line: RuleLine
    missing: str
    purposes: str
    source: str
    certainty: str
    since: date
    kinds: tuple[str, ...]
    examples: tuple[WorkedExample, ...]
    club_why: str = ""
    packaged: str = ""


class Standing(Struct, frozen=True):
    """How one piece comes out by one book."""

    outcome: Outcome
    now_n: float | None
    next_due: date | None


class PieceDiffers(Struct, frozen=True):
    """A piece that two books judge otherwise. purposes: the uses that come out otherwise; because: each rule that makes
    it; both in words."""

    tag: str
    kind_name: str
    before: Standing
    after: Standing
    purposes: tuple[str, ...]
    because: tuple[str, ...]


class Compared(Struct, frozen=True):
    """Two books on the whole register. retires: tags that only the second book retires."""

    first: str
    second: str
    piece_count: int
    pieces: tuple[PieceDiffers, ...]
    retires: tuple[str, ...]


class Adopted(Struct, frozen=True):
    """A club's rulebook as the register keeps it. text empty: the packaged rulebook alone, adopted again."""

    id: str
    made_on: date
    from_on: date
    text: str
