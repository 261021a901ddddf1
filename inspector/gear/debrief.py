"""What was really pulled on a trip, told afterwards."""

from datetime import date

from msgspec import Struct

from inspector.gear.judged import Judged
from inspector.gear.rig import Rig
from inspector.units import Figure


class RigUsed(Struct, frozen=True):
    """One rig as it was used. hardest: the greatest pull read or reckoned, a force, None where nobody knows.

    jerked: a jerk, a stall or more speed than planned. near_miss: in words, empty for none.
    """

    rig: Rig
    pull_count: int
    on: date
    hardest: Figure | None = None
    jerked: bool = False
    near_miss: str = ""


class NewDebrief(Struct, frozen=True):
    """A trip told afterwards. by: a person's id."""

    trip: str
    on: date
    rigs: tuple[RigUsed, ...]
    by: str = ""
    note: str = ""


class Debrief(Struct, frozen=True):
    """A kept debrief."""

    id: str
    facts: NewDebrief


class Debriefed(Struct, frozen=True):
    """What a debrief came to. pieces: each piece that was pulled with, judged by it; destroyed: tags of those that were
    made unusable since and are judged no more."""

    debrief: Debrief
    pieces: tuple[Judged, ...]
    destroyed: tuple[str, ...] = ()
