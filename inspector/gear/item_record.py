"""The record of a piece on paper: all that the register knows of it on a day, as it was said then."""

from datetime import date

from msgspec import Struct

from inspector.gear.capacity import Capacity
from inspector.gear.damage import PinWear, StrapDamage
from inspector.gear.life import Life
from inspector.gear.lists import PaperRow
from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint
from inspector.gear.verdict import Fact, Reason, WallForecast
from inspector.units import System


class SeenOn(Struct, frozen=True):
    """One inspection in full. state: that it was struck or could pass nothing, empty for none of it; good: names of the
    checks that were good; faults, readings, aside: a sentence each; by: who made it, in words.
    """

    on: date
    occasion: str
    by: str
    state: str
    good: tuple[str, ...]
    faults: tuple[str, ...]
    readings: tuple[str, ...]
    aside: tuple[str, ...]


class Passed(Struct, frozen=True):
    """A rule that the piece passed, or that only notes something."""

    sentence: str
    value: str
    limit: str
    source: str


class ItemRecord(Struct, frozen=True):
    """The whole of it. life: every entry but the inspections in full, which stand in `seen`, the newest first.

    kind, family: their keys; turns: what would change the verdict; head: of the ledger, whole; system: the units that
    it speaks in, and that its pictures are drawn in whenever it is printed.
    """

    imprint: Imprint
    tag: str
    kind: str
    kind_name: str
    family: str
    outcome: Outcome
    judged_on: date
    headline: str
    plain: str
    use_line: str
    reasons: tuple[Reason, ...]
    turns: tuple[Fact, ...]
    piece: tuple[Fact, ...]
    sums: tuple[Fact, ...]
    passes: tuple[Passed, ...]
    terms: tuple[Fact, ...]
    wall: WallForecast | None
    capacity: Capacity
    life: Life
    seen: tuple[SeenOn, ...]
    papers: tuple[PaperRow, ...]
    head: str
    system: System
    damage: StrapDamage | None = None
    pin: PinWear | None = None
