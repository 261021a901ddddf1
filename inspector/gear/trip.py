"""Vehicles and trips."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.language import tr
from inspector.units import Figure

_HAIR_RATIO = 1e-9


class Vehicle(Struct, frozen=True):
    """A vehicle of the club or a member. gvm: greatest laden mass on its plate; mass: as it stands on the day.

    front_spacing, rear_spacing: between its two recovery points at that end, None where nobody measured it.
    """

    id: str
    tag: str
    name: str
    owner: str
    gvm: Figure
    mass: Figure | None = None
    note: str = ""
    front_spacing: Figure | None = None
    rear_spacing: Figure | None = None

    @property
    def is_overloaded(self) -> bool:
        """Whether it weighs more than its plate allows; one that nobody weighed is not known to."""
        return self.mass is not None and self.mass.si > self.gvm.si * (1 + _HAIR_RATIO)


class Ground(StrEnum):
    """What the trip drives on."""

    BEACH = "beach"
    MUD = "mud"
    ROCK = "rock"
    SNOW = "snow"
    GRAVEL = "gravel"


class Ride(Struct, frozen=True):
    """A piece of a trip's kit, by its tag, and the vehicle of the trip that it rides on."""

    tag: str
    vehicle: str


class Trip(Struct, frozen=True):
    """A trip with its kit. vehicles and kit hold tags, people ids.

    rides: where pieces of the kit ride, in the order of the kit; a piece that nobody planned it for has no entry.
    """

    id: str
    ref: str
    name: str
    place: str
    ground: Ground
    first_on: date
    last_on: date
    leader: str
    vehicles: tuple[str, ...] = ()
    kit: tuple[str, ...] = ()
    people: tuple[str, ...] = ()
    note: str = ""
    rides: tuple[Ride, ...] = ()

    def rides_on(self, tag: str) -> str:
        """The vehicle that a piece of the kit is planned to ride on; empty where nobody planned it."""
        return next((one.vehicle for one in self.rides if one.tag == tag), "")


def ground_words(ground: Ground) -> str:
    """What the trip drives on."""
    words = {
        Ground.BEACH: tr("beach"),
        Ground.MUD: tr("mud"),
        Ground.ROCK: tr("rock"),
        Ground.SNOW: tr("snow"),
        Ground.GRAVEL: tr("gravel"),
    }
    return words[ground]
