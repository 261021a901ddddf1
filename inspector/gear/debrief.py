"""What was really pulled on a trip, told afterwards."""

from dataclasses import dataclass
from datetime import date

from inspector.gear.judged import Judged
from inspector.gear.rig import Rig
from inspector.units import Figure


@dataclass(frozen=True, slots=True)
class RigUsed:
    """One rig as it was used. hardest: the greatest pull read or reckoned, a force, None where nobody knows.

    jerked: a jerk, a stall or more speed than planned. near_miss: in words, empty for none.
    """

    rig: Rig
    pull_count: int
    on: date
    hardest: Figure | None = None
    jerked: bool = False
    near_miss: str = ""


@dataclass(frozen=True, slots=True)
class NewDebrief:
    """A trip told afterwards. by: a person's id."""

    trip: str
    on: date
    rigs: tuple[RigUsed, ...]
    by: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Debrief:
    """A kept debrief."""

    id: str
    facts: NewDebrief


@dataclass(frozen=True, slots=True)
class Debriefed:
    """What a debrief came to. pieces: each piece that was pulled with, judged by it; destroyed: tags of those that were
    made unusable since and are judged no more."""

    debrief: Debrief
    pieces: tuple[Judged, ...]
    destroyed: tuple[str, ...] = ()
