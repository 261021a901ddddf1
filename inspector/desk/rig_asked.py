"""What is asked of the page of a rig, and what it needs from the register for that, fetched by the worker."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.desk.trip_opened import all_trips
from inspector.duties.keep_rigs import rigs
from inspector.duties.look_up import vehicles
from inspector.duties.office import Office
from inspector.gear.rig import Conditions, KeptRig, Method
from inspector.gear.rig_result import PairLine
from inspector.gear.trip import Trip, Vehicle
from inspector.units import Dimension, Figure, System, show


class RigAsked(Struct, frozen=True):
    """A rig to propose. Empty: nobody said; conditions None: by the trip's ground."""

    trip: str = ""
    method: Method = Method.KINETIC
    pulling: str = ""
    bogged: str = ""
    conditions: Conditions | None = None


class RigGround(Struct, frozen=True):
    """What there is to choose among: trips, the next one first; vehicles; kept rigs."""

    trips: tuple[Trip, ...]
    vehicles: tuple[Vehicle, ...]
    kept: tuple[KeptRig, ...]


def rig_ground(office: Office) -> RigGround:
    """What there is to choose among."""
    return RigGround(all_trips(office), vehicles(office), rigs(office))


def asked_of_pair(ref: str, line: PairLine, usual: Conditions, system: System) -> RigAsked:
    """The rig behind a pair, at the speed that it holds up to."""
    speed = line.up_to_m_per_s
    if speed is not None:
        usual = replace(usual, speed=Figure(speed, show(speed, Dimension.SPEED, system), Dimension.SPEED))
    return RigAsked(ref, Method(line.method), line.pulling, line.bogged, usual)
