"""What the strengths of all steel parts share: the steel assumed, a way to give way, and what comes of it."""

from collections.abc import Callable
from typing import Generic, TypeVar

from msgspec import Struct

from inspector.gear.capacity import SteelStrength
from inspector.language import tr
from inspector.mechanics.fasteners import BoltClass
from inspector.rulebook.case import Case
from inspector.units import Dimension, show

State = TypeVar("State")

CLASS_PA = {  # nominal yield and ultimate strength, as the standard for joints takes them
    BoltClass.C4_6: (240e6, 400e6),
    BoltClass.C8_8: (640e6, 800e6),
    BoltClass.C10_9: (900e6, 1000e6),
}


class SteelTaken(Struct, frozen=True):
    """The steel a part is reckoned with: yield and ultimate strength in pascals, and why."""

    yield_pa: float
    ultimate_pa: float
    because: str
    grade: BoltClass = BoltClass.C4_6


class Way(Struct, Generic[State], frozen=True):
    """One way for a part to give way. holds_n, set_n: the pull it bears, and that of the first lasting set, in newtons.

    only_share: the sizes tell what share is left, no newtons. beside: shown to warn or compare.
    """

    mode: str
    part: str
    because: str
    source: str
    holds_n: Callable[[State], float]
    set_n: Callable[[State], float] | None = None
    only_share: bool = False
    beside: bool = False


class Found(Struct, frozen=True):
    """The strengths of a piece, what is left out of them for want of a size, and why they are not known now."""

    strengths: tuple[SteelStrength, ...] = ()
    left_out: tuple[str, ...] = ()
    why_unknown: str = ""


def strength(way: Way[State], new: State, now: State | None) -> SteelStrength | None:
    """The way's strength as new and now; None where the sizes as new bear nothing, so do not belong together.

    now None: nobody knows how it is. What reads larger than new counts as new.
    """
    sound_n = way.holds_n(new)
    if sound_n <= 0:
        return None
    now_n = min(way.holds_n(now), sound_n) if now is not None else None
    set_n = way.set_n(now) if way.set_n and now is not None else None
    return SteelStrength(
        mode=way.mode,
        part=way.part,
        sound_n=None if way.only_share else sound_n,
        now_n=None if way.only_share else now_n,
        left_ratio=None if now_n is None else now_n / sound_n,
        set_n=set_n,
        because=way.because,
        source=way.source,
        beside=way.beside,
    )


def found(ways: list[Way[State]], new: State, now: State | None, left_out: list[str], why: str = "") -> Found:
    """All strengths of a piece. why: what has to be measured before anybody knows how it is."""
    made = [(way, strength(way, new, now)) for way in ways]
    odd = [tr("{part}: its sizes as new do not belong together", part=way.part) for way, one in made if one is None]
    return Found(tuple(one for _, one in made if one), (*left_out, *odd), "" if now is not None else why)


def unknown_steel(case: Case) -> SteelTaken:
    """Steel that nobody knows, as the club's settings take it."""
    yield_pa = case.book.setting("tube_yield_mpa") * 1e6
    because = tr("steel taken as weak as {stress} in yield, since nobody knows it", stress=_stress(yield_pa))
    return SteelTaken(yield_pa, case.book.setting("tube_ultimate_mpa") * 1e6, because)


def class_steel(case: Case, size: str) -> SteelTaken:
    """The steel of a pin or bolt by the class stamped on it, the nearest class below; class 4.6 where none is."""
    stamped = case.dossier.item.size(size)
    known = [one for one in BoltClass if stamped is not None and float(one) <= stamped.si * (1 + 1e-9)]
    grade = known[-1] if known else BoltClass.C4_6
    because = tr("class {grade} as stamped", grade=grade.value)
    if not known:
        because = tr("steel assumed class {grade} since no known class is stamped on it", grade=grade.value)
    return SteelTaken(*CLASS_PA[grade], because, grade)


def pin_diameter_m(case: Case, hole: str) -> float:
    """The hitch pin through a hole: the club's, or as thick as the hole where that is smaller."""
    hitch_pin = case.book.setting("hitch_pin_diameter")
    size = case.dossier.item.size(hole)
    return min(hitch_pin, size.si) if size else hitch_pin


def beyond_calliper_m(case: Case, read_m: float, new_m: float) -> float:
    """A size as it is; a difference that a calliper cannot tell is none."""
    accuracy_m = case.book.setting("calliper_accuracy") * (1 + 1e-9)
    return new_m if abs(read_m - new_m) <= accuracy_m else read_m


def _stress(stress_pa: float) -> str:
    return show(stress_pa, Dimension.STRESS)
