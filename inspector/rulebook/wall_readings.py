"""Wall readings: what a gauge allows one to rely on, the thinnest of each day, and each named place. Metres."""

from collections.abc import Iterable
from datetime import date

from msgspec import Struct

from inspector.gear.inspection import Method, Reading, Surface
from inspector.gear.verdict import WallPoint
from inspector.mechanics import gauge
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken, counted, readings

_ACCURACY = {Method.ULTRASONIC_PAINT: "gauge_accuracy_paint", Method.CALLIPER: "calliper_accuracy"}


class Place(Struct, frozen=True):
    """One place of the wall. passed: readings by competent persons; others: anybody else's. In order of day."""

    point: str
    passed: tuple[Taken, ...]
    others: tuple[Taken, ...]

    @property
    def read_on(self) -> date | None:
        """The last day on which a competent person read it."""
        return self.passed[-1].inspection.on if self.passed else None

    @property
    def last(self) -> tuple[Taken, ...]:
        """What competent persons read on that day."""
        read_on = self.read_on
        return tuple(one for one in self.passed if one.inspection.on == read_on)

    @property
    def before(self) -> tuple[Taken, ...]:
        """All that anybody read until that day."""
        read_on = self.read_on
        return tuple(one for one in (*self.passed, *self.others) if read_on and one.inspection.on <= read_on)

    @property
    def since(self) -> tuple[Taken, ...]:
        """What others read after that day: it may tighten, it proves nothing."""
        read_on = self.read_on
        return tuple(one for one in self.others if read_on is None or one.inspection.on > read_on)


class Readings(Struct, frozen=True):
    """All wall readings of a case. thinnest: the one that may be relied on least, since steel does not grow back.

    rough_relied_m: the thinnest of each place's latest reading, less what a rough face may have added; a face that was
    dressed since takes the place of its rough reading. named: the places the kind names; places: all that have one.
    """

    taken: tuple[Taken, ...]
    history: tuple[WallPoint, ...]
    thinnest: Taken | None
    relied_m: float | None
    roughest: Taken | None
    rough_relied_m: float | None
    is_dressed: bool
    places: tuple[Place, ...]

    @property
    def unread(self) -> tuple[str, ...]:
        """The places no competent person has ever read."""
        return tuple(place.point for place in self.places if not place.passed)

    @property
    def read(self) -> tuple[Place, ...]:
        """The places a competent person has read."""
        return tuple(place for place in self.places if place.passed)

    @property
    def longest_ago(self) -> Place | None:
        """The place whose last reading lies furthest back; None while any was never read."""
        dated = [(place.read_on, place) for place in self.places if place.read_on]
        return min(dated, key=lambda pair: pair[0])[1] if dated and not self.unread else None


def readings_of(case: Case) -> Readings:
    """The wall readings of a case."""
    taken, latest = tuple(readings(case, "wall")), counted(case, "wall")
    thinnest = min(taken, key=lambda one: relied(case, one), default=None)
    roughest = min(latest, key=lambda one: rough_relied(case, one), default=None)
    return Readings(
        taken=taken,
        history=_history(case, taken),
        thinnest=thinnest,
        relied_m=relied(case, thinnest) if thinnest else None,
        roughest=roughest,
        rough_relied_m=rough_relied(case, roughest) if roughest else None,
        is_dressed=bool(latest) and all(is_dressed(one.reading) for one in latest),
        places=_places(case, taken),
    )


def relied(case: Case, taken: Taken) -> float:
    """A reading less its gauge's accuracy."""
    return gauge.relied_reading_m(taken.reading.figure.si, accuracy(case, taken.reading), 0.0)


def rough_relied(case: Case, taken: Taken) -> float:
    """A reading less its gauge's accuracy and what a rough face may have added to it."""
    over = 0.0 if is_dressed(taken.reading) else case.book.setting("rough_face_over_reading")
    return relied(case, taken) - over


def accuracy(case: Case, reading: Reading) -> float:
    """How far a reading may be out on a dressed face, in metres."""
    return case.book.setting(_ACCURACY.get(reading.method, "gauge_accuracy"))


def is_dressed(reading: Reading) -> bool:
    """Whether the face is known to have been dressed; a face nobody speaks of was not."""
    return reading.surface is Surface.DRESSED


def is_tried(reading: Reading) -> bool:
    """Whether the gauge is known to read true: tried on its block that day. A calliper needs no block."""
    return reading.method is Method.CALLIPER or reading.block_checked is True


def _places(case: Case, taken: Iterable[Taken]) -> tuple[Place, ...]:
    """Every place the kind names, read or not, and any other that was read."""
    measure = case.dossier.kind.measure("wall")
    found: dict[str, list[Taken]] = {point: [] for point in (measure.points if measure else ())}
    for one in taken:
        found.setdefault(one.reading.point, []).append(one)
    return tuple(
        Place(
            point,
            tuple(one for one in here if case.is_thorough(one.inspection)),
            tuple(one for one in here if not case.is_thorough(one.inspection)),
        )
        for point, here in found.items()
        if here or measure
    )


def _history(case: Case, taken: Iterable[Taken]) -> tuple[WallPoint, ...]:
    """The thinnest reading of each day."""
    days: dict[date, Taken] = {}
    for one in taken:
        held = days.get(one.inspection.on)
        if held is None or relied(case, one) < relied(case, held):
            days[one.inspection.on] = one
    return tuple(point_of(case, one) for _, one in sorted(days.items()))


def read_last(case: Case, places: Iterable[Place]) -> tuple[WallPoint, ...]:
    """Per place the thinnest of what was read there last, by a competent person or by others since."""
    last = [(*place.last, *place.since) for place in places]
    return tuple(point_of(case, min(taken, key=lambda one: relied(case, one))) for taken in last if taken)


def point_of(case: Case, one: Taken) -> WallPoint:
    """A reading as the reader sees it, with what makes it doubtful."""
    return WallPoint(
        one.inspection.on,
        one.reading.figure.si,
        relied(case, one),
        one.reading.point,
        one.reading.figure.as_typed,
        upper_bound=not is_dressed(one.reading),
        below_probe=_is_below_probe(one.reading),
    )


def _is_below_probe(reading: Reading) -> bool:
    """Whether a gauge reads less than its probe can tell; a calliper has no such floor."""
    return reading.method is not Method.CALLIPER and gauge.is_below_probe(reading.figure.si)
