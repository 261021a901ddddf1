"""Wall readings: what a gauge allows one to rely on, the thinnest of each day, and each named place. Metres."""

import math
from collections.abc import Iterable
from datetime import date
from operator import attrgetter

from msgspec import Struct

from inspector.gear.inspection import Method, Reading, Surface
from inspector.gear.verdict import WallPoint
from inspector.mechanics import gauge
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken, counted, readings
from inspector.rulebook.unlikely import most_m

_relied = attrgetter("relied_m")
_ACCURACY = {Method.ULTRASONIC_PAINT: "gauge_accuracy_paint", Method.CALLIPER: "calliper_accuracy"}


class Gauged(Taken, frozen=True, gc=False):
    """A wall reading and what it is worth, in metres.

    error_m: how far it may be out on a dressed face. relied_m: the reading less that. rough_m: the same less what a
    rough face may have added to it. is_dressed: whether the face is known to have been dressed; one that nobody speaks
    of was not.
    """

    read_m: float
    error_m: float
    relied_m: float
    rough_m: float
    is_dressed: bool


class Place(Struct, frozen=True):
    """One place of the wall, its readings in order of day. passed: by competent persons; others: anybody else's.

    read_on: the last day on which a competent person read it, and last: what was read then; least_m: the least that may
    be relied on of all that anybody read until that day. since: what others read after it: it may tighten, it proves
    nothing.
    """

    point: str
    passed: tuple[Gauged, ...]
    others: tuple[Gauged, ...]
    read_on: date | None
    last: tuple[Gauged, ...]
    least_m: float | None
    since: tuple[Gauged, ...]


class Readings(Struct, frozen=True):
    """All wall readings of a case. thinnest: the one that may be relied on least, since steel does not grow back.

    latest: each place's latest; roughest: the thinnest of them, less what a rough face may have added; a face that was
    dressed since takes the place of its rough reading. places: those the kind names and all others that were read;
    read: those that a competent person has read; unread: the names of those that none has.
    """

    history: tuple[WallPoint, ...]
    latest: tuple[Gauged, ...]
    thinnest: Gauged | None
    roughest: Gauged | None
    is_dressed: bool
    places: tuple[Place, ...]
    read: tuple[Place, ...]
    unread: tuple[str, ...]

    @property
    def longest_ago(self) -> Place | None:
        """The place whose last reading lies furthest back; None while any was never read."""
        dated = [(place.read_on, place) for place in self.places if place.read_on]
        return min(dated, key=lambda pair: pair[0])[1] if dated and not self.unread else None


def readings_of(case: Case) -> Readings:
    """The wall readings of a case. One that cannot be true is none: nothing is reckoned from it."""
    error_m = {method: case.book.setting(_ACCURACY.get(method, "gauge_accuracy")) for method in Method}
    over_m = case.book.setting("rough_face_over_reading")
    taken = [_gauged(one, error_m[one.reading.method], over_m) for one in _believed(case)]
    latest = tuple(one for point in counted(taken).values() for one in point)
    places = _places(case, taken)
    return Readings(
        history=_history(taken),
        latest=latest,
        thinnest=min(taken, key=_relied, default=None),
        roughest=min(latest, key=attrgetter("rough_m"), default=None),
        is_dressed=bool(latest) and all(one.is_dressed for one in latest),
        places=places,
        read=tuple(place for place in places if place.passed),
        unread=tuple(place.point for place in places if not place.passed),
    )


def _believed(case: Case) -> list[Taken]:
    new = case.dossier.item.size("wall")
    most = most_m(case.book, case.dossier.kind, "wall", new.si) if new else math.inf
    return [one for one in readings(case, "wall") if one.reading.figure.si <= most]


def _gauged(taken: Taken, error_m: float, over_m: float) -> Gauged:
    """The reading with what it is worth. over_m: what a rough face may add to it."""
    reading = taken.reading
    read_m, is_dressed = reading.figure.si, reading.surface is Surface.DRESSED
    relied_m = gauge.relied_reading_m(read_m, error_m, 0.0)
    rough_m = relied_m - (0.0 if is_dressed else over_m)
    return Gauged(
        taken.inspection, reading, taken.on, taken.passed, read_m, error_m, relied_m, rough_m, is_dressed=is_dressed
    )


def is_tried(reading: Reading) -> bool:
    """Whether the gauge is known to read true: tried on its block that day. A calliper needs no block."""
    return reading.method is Method.CALLIPER or reading.block_checked is True


def _places(case: Case, taken: Iterable[Gauged]) -> tuple[Place, ...]:
    """Every place the kind names, read or not, and any other that was read."""
    measure = case.dossier.kind.measure("wall")
    found: dict[str, list[Gauged]] = {point: [] for point in (measure.points if measure else ())}
    for one in taken:
        found.setdefault(one.reading.point, []).append(one)
    return tuple(_place(point, here) for point, here in found.items() if here or measure)


def _place(point: str, here: list[Gauged]) -> Place:
    passed = tuple(one for one in here if one.passed)
    others = tuple(one for one in here if not one.passed)
    if not passed:
        return Place(point, passed, others, None, (), None, others)
    read_on = passed[-1].on
    return Place(
        point,
        passed,
        others,
        read_on,
        last=tuple(one for one in passed if one.on == read_on),
        least_m=min(one.relied_m for one in here if one.on <= read_on),
        since=tuple(one for one in others if one.on > read_on),
    )


def _history(taken: Iterable[Gauged]) -> tuple[WallPoint, ...]:
    """The thinnest reading of each day."""
    days: dict[date, Gauged] = {}
    for one in taken:
        held = days.get(one.on)
        if held is None or one.relied_m < held.relied_m:
            days[one.on] = one
    return tuple(point_of(one) for _, one in sorted(days.items()))


def read_last(places: Iterable[Place]) -> tuple[WallPoint, ...]:
    """Per place the thinnest of what was read there last, by a competent person or by others since."""
    last = [(*place.last, *place.since) for place in places]
    return tuple(point_of(min(taken, key=_relied)) for taken in last if taken)


def point_of(one: Gauged) -> WallPoint:
    """A reading as the reader sees it, with what makes it doubtful."""
    return WallPoint(
        one.on,
        one.read_m,
        one.relied_m,
        one.reading.point,
        one.reading.figure.as_typed,
        upper_bound=not one.is_dressed,
        below_probe=_is_below_probe(one.reading),
    )


def _is_below_probe(reading: Reading) -> bool:
    """Whether a gauge reads less than its probe can tell; a calliper has no such floor."""
    return reading.method is not Method.CALLIPER and gauge.is_below_probe(reading.figure.si)
