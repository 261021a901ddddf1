"""The strength of a piece: as marked, what took it away, and the ways in which its steel gives way."""

import math
from datetime import date

from msgspec import Struct


class CapacityStep(Struct, frozen=True):
    """One loss between the marking and what is left. loss_ratio of the strength before it; after_n in newtons."""

    cause: str
    loss_ratio: float
    after_n: float
    source: str
    name: str = ""  # the cause as a person says it


class SteelStrength(Struct, frozen=True):
    """One way in which a steel part gives way, in newtons without a partial factor.

    sound_n, now_n: as new and as it is; None where the sizes tell only what share is left, or nobody knows. set_n: the
    pull of the first lasting set now. because: what was assumed. beside: shown to warn or compare; it governs nothing.
    """

    mode: str
    part: str
    sound_n: float | None
    now_n: float | None
    left_ratio: float | None
    set_n: float | None
    because: str
    source: str
    beside: bool = False


class Capacity(Struct, frozen=True):
    """Characteristic minimum breaking strength in newtons, no design factor inside. None: nobody knows.

    as_new_n: reckoned from the sizes, weakest steel assumed, where no marking tells a failure load. strengths: the ways
    a steel part may give way. left_out: what would belong to them but nobody measured. wall_m, wall_on: the wall they
    are reckoned with and the day it belongs to; estimated: no competent reading stands behind some place.
    """

    as_marked_n: float | None
    now_n: float | None
    steps: tuple[CapacityStep, ...] = ()
    why_unknown: str = ""
    design_factor: float | None = None  # that of the marking, to show a WLL now
    as_new_n: float | None = None
    strengths: tuple[SteelStrength, ...] = ()
    left_out: tuple[str, ...] = ()
    wall_m: float | None = None
    wall_on: date | None = None
    estimated: bool = False

    @property
    def begins_n(self) -> float | None:
        """What losses are taken from: the marking, else the reckoned strength as new."""
        return self.as_new_n if self.as_marked_n is None else self.as_marked_n

    @property
    def left_ratio(self) -> float | None:
        """What is left of it."""
        return self.now_n / self.begins_n if self.now_n is not None and self.begins_n else None

    @property
    def counted(self) -> tuple[SteelStrength, ...]:
        """The strengths that may govern."""
        return tuple(one for one in self.strengths if not one.beside)

    @property
    def governing(self) -> SteelStrength | None:
        """What gives way first: the least in newtons, else the one with the smallest share left."""
        known = [one for one in self.counted if one.now_n is not None]
        if known:
            return min(known, key=lambda one: one.now_n or 0.0)
        shares = [one for one in self.counted if one.left_ratio is not None]
        return min(shares, key=lambda one: one.left_ratio or 0.0, default=None)

    @property
    def is_marking_lower(self) -> bool:
        """Whether the marking is less than all that sizes tell, so that something else gives way before it."""
        first = self.governing
        return first is not None and first.now_n is not None and first.now_n > (self.as_marked_n or math.inf)

    @property
    def first_set_n(self) -> float | None:
        """The pull of the first lasting set now, over all parts that tell it."""
        return min((one.set_n for one in self.counted if one.set_n is not None), default=None)
