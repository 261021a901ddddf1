"""The bad day: what happened, which pieces and vehicles are kept as found, and who released them."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.outcome import Outcome
from inspector.gear.rig import Rig
from inspector.units import Figure


class Gravity(StrEnum):
    """How bad it was."""

    ACCIDENT = "accident"  # somebody was hurt, or something broke or flew
    NEAR_MISS = "near_miss"  # nothing of that, but it might have come to it


class Distance(Struct, frozen=True):
    """A distance of the sketch: between what and what."""

    one: str
    other: str
    figure: Figure


class StoodThen(Struct, frozen=True):
    """How a piece stood on the day: its verdict, its words and who had it (a person's id; empty: nobody)."""

    tag: str
    outcome: Outcome
    headline: str
    held_by: str
    verdict_id: str


class NewIncident(Struct, frozen=True):
    """A report. rig: as it was rigged, if anybody knows; pieces: every piece of it and every fitted part, by tag.

    witnesses: names as stated. rig_result: the rig's sum as it stood, as JSON of a RigResult; empty where none could
    be made, and rig_why_not says why. by: the id of whoever reports. gone: pieces of it that cannot be kept as found,
    by tag, and why. broken: tags of what broke or let go.
    """

    on: date
    gravity: Gravity
    place: str
    what: str
    pieces: tuple[str, ...]
    vehicles: tuple[str, ...] = ()
    witnesses: tuple[str, ...] = ()
    rig: Rig | None = None
    rig_result: str = ""
    rig_why_not: str = ""
    distances: tuple[Distance, ...] = ()
    stood: tuple[StoodThen, ...] = ()
    trip: str = ""
    by: str = ""
    gone: tuple[tuple[str, str], ...] = ()
    broken: tuple[str, ...] = ()


class Incident(Struct, frozen=True):
    """A kept report. ref: what it is called by."""

    id: str
    ref: str
    facts: NewIncident


class EntryKind(StrEnum):
    """What was added to a report later."""

    STATEMENT = "statement"
    HELD = "held"  # a piece that was found to belong to it only later
    CUSTODY = "custody"  # who holds a piece of evidence from now on
    VEHICLE_RELEASED = "vehicle_released"
    CLOSED = "closed"


class NewIncidentEntry(Struct, frozen=True):
    """What was added. about: the tag of the piece or vehicle, or the name of the witness; by, second: ids of people.

    holder: of a custody, who has the piece from now on, as stated. stood: of a piece held later, how it stood.
    """

    on: date
    kind: EntryKind
    about: str
    text: str
    by: str
    second: str = ""
    holder: str = ""
    stood: StoodThen | None = None


class IncidentEntry(Struct, frozen=True):
    """A logged addition."""

    id: str
    incident_id: str
    facts: NewIncidentEntry
