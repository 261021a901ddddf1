"""A rig: which pieces join which vehicles, in what order, and what is known of the pull."""

from collections.abc import Mapping
from datetime import date
from enum import StrEnum

from msgspec import Struct, field
from msgspec.structs import replace

from inspector.gear.fitting import Fitted
from inspector.gear.judged import Judged
from inspector.gear.trip import Vehicle
from inspector.units import Figure


class Method(StrEnum):
    """How the bogged vehicle is brought out."""

    KINETIC = "kinetic"  # another vehicle runs up a stretching strap
    TOW_OUT = "tow_out"  # another vehicle pulls steadily through a line that hardly stretches
    WINCH = "winch"


class Footing(StrEnum):
    """What a vehicle stands in, by the words of the published scales."""

    HARD_ROAD = "hard_road"
    GRASS = "grass"
    HARD_WET_SAND = "hard_wet_sand"
    GRAVEL = "gravel"
    SOFT_WET_SAND = "soft_wet_sand"
    SOFT_DRY_SAND = "soft_dry_sand"
    SHALLOW_MUD = "shallow_mud"
    BOG = "bog"
    WHEEL_DEEP_MUD = "wheel_deep_mud"
    SILL_DEEP_MUD = "sill_deep_mud"
    CAB_DEEP_MUD = "cab_deep_mud"
    WHEELS_LOCKED = "wheels_locked"


class LooseEnd(StrEnum):
    """An end of a rig that no register holds: "tree@ground", "tie_down@V-05"."""

    TREE = "tree"
    GROUND_ANCHOR = "ground_anchor"
    TOWING_EYE = "towing_eye"  # the maker's own eye
    TIE_DOWN = "tie_down"
    CHAIN_PLATE = "chain_plate"  # of the safety chain


GROUND = "ground"  # what a loose end stands on where it is no vehicle


class Conditions(Struct, frozen=True):
    """What is known of the pull. None: nobody said, and the severe assumption stands and is told.

    bogged_in: under the stuck vehicle; pulling_on: under the other. slope: uphill, an angle. speed: of the towing
    vehicle as the line comes taut. slack: lying on the ground. drive: pull of the driven wheels as a share of the
    vehicle's weight. layers: of line left on the drum. scale: whose figures for the ground, "largest" for the greatest.
    """

    bogged_in: Footing | None = None
    pulling_on: Footing | None = None
    slope: Figure | None = None
    speed: Figure | None = None
    slack: Figure | None = None
    drive: Figure | None = None
    wet: bool | None = None
    layers: int | None = None
    scale: str = "largest"
    distance_rule: str = "longest"


class Angle(Struct, frozen=True):
    """An angle at a piece: between the two lines of a block, between the legs of a bridle or a strap round a tree."""

    at: str
    figure: Figure


class NamedJoint(Struct, frozen=True):
    """How two neighbours are joined where it is not the usual way for their kinds. how: a key of the joints' list."""

    one: str
    other: str
    how: str


class Rig(Struct, frozen=True):
    """Runs of parts by tag, each joined to the next; a part that stands in several runs branches there.

    A loose end is written "tree@ground". pulling, bogged: tags of vehicles; pulling may be empty where the winch is on
    the bogged one. trip: its reference, if any. dampers: what is laid over the line.
    """

    name: str
    method: Method
    bogged: str
    pulling: str
    runs: tuple[tuple[str, ...], ...]
    conditions: Conditions = Conditions()
    angles: tuple[Angle, ...] = ()
    joints: tuple[NamedJoint, ...] = ()
    trip: str = ""
    note: str = ""
    dampers: tuple[str, ...] = ()

    def angle(self, tag: str) -> Figure | None:
        """The angle written down for a piece."""
        return next((one.figure for one in self.angles if one.at == tag), None)

    @property
    def tags(self) -> tuple[str, ...]:
        """Every part once, in the order of the runs."""
        return tuple(dict.fromkeys(tag for run in self.runs for tag in run))

    def called(self, tags: Mapping[str, str]) -> "Rig":
        """The same rig with other tags for the pieces that were tagged anew. tags: by the tag before."""
        return replace(
            self,
            runs=tuple(tuple(tags.get(tag, tag) for tag in run) for run in self.runs),
            angles=tuple(replace(one, at=tags.get(one.at, one.at)) for one in self.angles),
            joints=tuple(
                replace(one, one=tags.get(one.one, one.one), other=tags.get(one.other, one.other))
                for one in self.joints
            ),
            dampers=tuple(tags.get(tag, tag) for tag in self.dampers),
        )


class KeptRig(Struct, frozen=True):
    """A rig in the register under the officer's own reference. on: the day it was kept."""

    id: str
    ref: str
    on: date
    rig: Rig


class RigPiece(Struct, frozen=True):
    """A piece judged for the day of the pull, and where it sits if it is fitted to a vehicle."""

    judged: Judged
    fitted: Fitted | None = None

    @property
    def tag(self) -> str:
        """What is written on it."""
        return self.judged.dossier.item.tag

    @property
    def kind(self) -> str:
        """The key of its kind."""
        return self.judged.dossier.kind.key


class RigFacts(Struct, frozen=True):
    """All that checking a rig reads: its pieces by tag (those on the vehicles too) and the vehicles by tag.

    absent: by the tag of a piece or vehicle, why it is not to be had whatever its verdict: gone, or kept as evidence.
    """

    rig: Rig
    on: date
    pieces: dict[str, RigPiece] = field(default_factory=dict)
    vehicles: dict[str, Vehicle] = field(default_factory=dict)
    absent: dict[str, str] = field(default_factory=dict)
