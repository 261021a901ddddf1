"""What an evidence list says, as data: the paper room lays it out, the register keeps it for a later reprint."""

from msgspec import Struct

from inspector.gear.incident import Distance
from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint
from inspector.gear.rig_result import RigResult
from inspector.gear.trip import Vehicle
from inspector.gear.verdict import Fact


class EvidencePiece(Struct, frozen=True):
    """A piece that was there. outcome, headline: its verdict of that day; held_by: who had it then; now: where it is
    and who holds it; state: whether it is kept, and if not why; is_broken: it broke, and nobody has answered that."""

    tag: str
    kind_name: str
    marked: str
    maker_mark: str
    serial: str
    outcome: Outcome
    headline: str
    held_by: str
    now: str
    state: str
    is_kept: bool
    is_broken: bool = False


class EvidenceList(Struct, frozen=True):
    """All that is kept of an incident. facts: when, where, who; result: the rig's sum as it stood, None where
    why_no_result says why; told: dated lines of what was added, as (day, what, text); files: name and checksum."""

    imprint: Imprint
    ref: str
    gravity: str
    what: str
    facts: tuple[Fact, ...]
    pieces: tuple[EvidencePiece, ...]
    vehicles: tuple[tuple[str, str, str], ...]  # tag, name, state
    distances: tuple[Distance, ...]
    result: RigResult | None
    why_no_result: str
    rig_vehicles: tuple[Vehicle, ...]
    told: tuple[tuple[str, str, str], ...]
    files: tuple[tuple[str, str], ...]
    may_not: tuple[str, ...]
    head: str
