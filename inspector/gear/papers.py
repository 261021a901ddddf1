"""What a document says, as data: the paper room lays it out, the register keeps it for a later reprint."""

from datetime import date

from msgspec import Struct

from inspector.gear.bench import Worked
from inspector.gear.capacity import Capacity
from inspector.gear.damage import PinWear, StrapDamage
from inspector.gear.outcome import Outcome
from inspector.gear.rig_result import RigOutcome, RigResult
from inspector.gear.sheet_layout import SheetLayout
from inspector.gear.trip import Vehicle
from inspector.gear.verdict import Fact, Reason, WallForecast
from inspector.units import System

TRIP_SHEET = "trip_sheet"  # what the register calls this kind of document


class Imprint(Struct, frozen=True):
    """What stands on every document. mark: the club's, a small PNG; empty where it has none."""

    club: str
    title: str
    number: str
    on: date
    prepared_by: str
    rests_on: tuple[str, ...]  # rulebook, inspection dates, head of the ledger
    cautions: tuple[str, ...]
    mark: bytes = b""


class TickLine(Struct, frozen=True):
    """One box to tick. limit: what is written beside a measured check.

    key: of the check, or of the measure and its place as "measure/place", by which an answer is kept. units: what a
    figure may be written in, the usual one first.
    """

    text: str
    limit: str = ""
    key: str = ""
    units: tuple[str, ...] = ()


class GoingPiece(Struct, frozen=True):
    """A piece that goes on the trip, with its checks.

    where: it rides, sits or lies, in words; empty where nobody knows, to be written in. part_of: the tag of the vehicle
    that it is fitted to; empty for a piece of the kit.
    """

    tag: str
    kind_name: str
    marked: str
    now: str
    use_line: str
    outcome: Outcome
    ticks: tuple[TickLine, ...]
    where: str = ""
    part_of: str = ""


class StayingPiece(Struct, frozen=True):
    """A piece that may not go, and why in one line. where and part_of: as of a piece that goes."""

    tag: str
    kind_name: str
    outcome: Outcome
    why: str
    where: str = ""
    part_of: str = ""


class VehicleLine(Struct, frozen=True):
    """A vehicle of the trip. band: strap strengths that suit it. warning: where the kit holds a strap outside it."""

    tag: str
    name: str
    gvm: str
    band: str
    warning: str = ""


class RigLine(Struct, frozen=True):
    """A rig that the trip plans, as it is reckoned for its last day. weakest, speed, stand_off: as they print.

    says: the one sentence for a member.
    """

    ref: str
    name: str
    outcome: RigOutcome
    method: str
    pulls: str
    weakest: str
    speed: str
    stand_off: str
    says: str


class SheetScope(Struct, frozen=True):
    """What a sheet is of: one vehicle, or (is_rest) what rides on none by plan; without either the whole trip."""

    vehicle: str = ""
    is_rest: bool = False


class TripSheet(Struct, frozen=True):
    """The pre-trip inspection sheet, of the whole trip or of what its scope says. rigs: those that the trip plans.

    layout: where its boxes lie, and pdf: the sha256 of the file, both once it is printed.
    """

    imprint: Imprint
    trip: str
    place: str
    dates: str
    leader: str
    vehicles: tuple[VehicleLine, ...]
    going: tuple[GoingPiece, ...]
    staying: tuple[StayingPiece, ...]
    layout: SheetLayout | None = None
    pdf: str = ""
    rigs: tuple[RigLine, ...] = ()
    scope: SheetScope = SheetScope()


class RetirementNotice(Struct, frozen=True):
    """The retirement notice of one piece. destroy: how to make it unusable; retirement: the id of its verdict.

    addressed_to: the owner, where that is not the club: he decides about his property, the club asks.
    kind: its key; notices of before 2026-11-26 were kept without. damage: of a strap; pin: of a pin.
    system: the units of its pictures, the same whenever it is printed.
    """

    imprint: Imprint
    tag: str
    kind_name: str
    family: str
    owner: str
    piece: tuple[Fact, ...]
    plain: str
    reasons: tuple[Reason, ...]
    sums: tuple[Fact, ...]
    wall: WallForecast | None
    retired_on: date
    never_again: str
    destroy: str
    replace_by: str
    capacity: Capacity | None = None
    terms: tuple[Fact, ...] = ()
    retirement: str = ""
    addressed_to: str = ""
    kind: str = ""
    damage: StrapDamage | None = None
    pin: PinWear | None = None
    system: System = System.METRIC


class RigSheet(Struct, frozen=True):
    """The account of one rig, for a trainer or an inquiry. vehicles: those of the rig. trip: its name, if any."""

    imprint: Imprint
    result: RigResult
    vehicles: tuple[Vehicle, ...]
    trip: str = ""


class CountLine(Struct, frozen=True):
    """A piece to be counted. number: by which a ticked list is typed in; kept_apart: what to know on seeing it."""

    number: int
    tag: str
    kind_name: str
    marked: str
    kept_apart: str = ""


class CountPlace(Struct, frozen=True):
    """A place with the pieces that ought to lie there."""

    name: str
    lines: tuple[CountLine, ...]


class ElsewhereLine(Struct, frozen=True):
    """A piece that is not in store, and where it is."""

    tag: str
    kind_name: str
    where: str


class CountList(Struct, frozen=True):
    """A list to tick by hand. scope: the place that is counted; begun: the day of the first look, in words."""

    imprint: Imprint
    ref: str
    scope: str
    begun: str
    places: tuple[CountPlace, ...]
    elsewhere: tuple[ElsewhereLine, ...]


class ProtocolTable(Struct, frozen=True):
    """A list of a handover. shares: of the width, a column each; none: what stands where it has no lines."""

    title: str
    said: str
    columns: tuple[str, ...]
    shares: tuple[float, ...]
    lines: tuple[tuple[str, ...], ...]
    none: str


class HandoverProtocol(Struct, frozen=True):
    """What stands as the register passes from one officer to the next. handed_on: what passes with it."""

    imprint: Imprint
    from_name: str
    to_name: str
    handed_on: tuple[Fact, ...]
    mind: tuple[str, ...]
    tables: tuple[ProtocolTable, ...]


class Handout(Struct, frozen=True):
    """One topic of the trainer's bench on a sheet. from_piece: which piece or vehicle lent figures, and what stays."""

    imprint: Imprint
    worked: Worked
    from_piece: tuple[str, ...] = ()
