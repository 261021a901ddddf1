"""Vehicles and trips."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from inspector.language import tr
from inspector.units import Figure


@dataclass(frozen=True, slots=True)
class Vehicle:
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


class Ground(StrEnum):
    """What the trip drives on."""

    BEACH = "beach"
    MUD = "mud"
    ROCK = "rock"
    SNOW = "snow"
    GRAVEL = "gravel"


@dataclass(frozen=True, slots=True)
class Trip:
    """A trip with its kit. vehicles and kit hold tags, people ids."""

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
