"""The report on all the gear, for the club's meeting or an insurer: what stands on a day, and what changed since."""

from datetime import date

from msgspec import Struct

from inspector.gear.needs import Ending
from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint, ProtocolTable


class KindCount(Struct, frozen=True):
    """How many pieces of a kind the club has or ought to have, by outcome."""

    kind_name: str
    fit: int
    derate: int
    hold: int
    retire: int

    def of(self, outcome: Outcome) -> int:
        """How many have this outcome."""
        return {
            Outcome.FIT: self.fit,
            Outcome.DERATE: self.derate,
            Outcome.HOLD: self.hold,
            Outcome.RETIRE: self.retire,
        }[outcome]

    @property
    def total(self) -> int:
        """All of them."""
        return self.fit + self.derate + self.hold + self.retire


class AgeCount(Struct, frozen=True):
    """How many pieces that are not retired are of an age, in words."""

    age: str
    count: int


class RegisterReport(Struct, frozen=True):
    """All of it. since: the day from which it tells what changed; answer: what everybody must take home, in sentences.

    decide, buy: what the club has to settle and what to replace, a sentence each; horizon: the last day that the
    endings look at.
    """

    imprint: Imprint
    since: date
    all: KindCount
    answer: tuple[str, ...]
    decide: tuple[str, ...]
    buy: tuple[str, ...]
    kinds: tuple[KindCount, ...]
    ages: tuple[AgeCount, ...]
    endings: tuple[Ending, ...]
    horizon: date
    tables: tuple[ProtocolTable, ...]
