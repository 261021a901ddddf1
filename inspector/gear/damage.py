"""Damage of a piece as data for a sketch: what was seen on a strap and where, and how far a pin is worn."""

from datetime import date
from enum import StrEnum

from msgspec import Struct


class DamageSort(StrEnum):
    """How a damage looks, and so by which sign it is drawn."""

    CUT = "cut"
    RUB = "rub"
    HEAT = "heat"
    SEAM = "seam"
    EYE = "eye"
    STAIN = "stain"
    PALE = "pale"
    GRIT = "grit"
    KNOT = "knot"
    OTHER = "other"


class DamagePlace(StrEnum):
    """What the register knows of where a damage is."""

    MEASURED = "measured"  # so far from one end
    MIDDLE = "middle"
    SEAMS = "seams"  # at the stitching of one end; nobody wrote which
    EYES = "eyes"  # in one of both eyes; nobody wrote which
    UNKNOWN = "unknown"


class StrapMark(Struct, frozen=True):
    """One damage. name: of the check; grade: in words; note: what was written, whole; from_end_m: of a measured one."""

    sort: DamageSort
    name: str
    grade: str
    place: DamagePlace
    note: str
    on: date
    from_end_m: float | None = None


class StrapDamage(Struct, frozen=True):
    """The damage of a strap. length_m: as new or as measured last, None where nobody wrote it; length: as typed."""

    length_m: float | None
    length: str
    marks: tuple[StrapMark, ...]


class PinWear(Struct, frozen=True):
    """A pin as new and at its thinnest place. None and empty where nobody wrote it down; as_typed: how it was read."""

    new_m: float | None
    new_typed: str
    thinnest_m: float | None
    as_typed: str
    read_on: date | None
