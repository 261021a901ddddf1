"""Wall readings: what a gauge allows one to rely on, and the thinnest of each day. Lengths in metres."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from inspector.gear.inspection import Method, Surface
from inspector.gear.verdict import WallPoint
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken, counted, readings


@dataclass(frozen=True, slots=True)
class Readings:
    """All wall readings of a case. thinnest: the one that may be relied on least, since steel does not grow back.

    rough_relied_m: the thinnest of each place's latest reading, less what a rough face may have added; a face that was
    dressed since takes the place of its rough reading. read_on: the last reading by a competent person.
    """

    taken: tuple[Taken, ...]
    history: tuple[WallPoint, ...]
    thinnest: Taken | None
    relied_m: float | None
    rough_relied_m: float | None
    is_dressed: bool
    read_on: date | None


def readings_of(case: Case) -> Readings:
    """The wall readings of a case."""
    taken, latest = tuple(readings(case, "wall")), counted(case, "wall")
    thinnest = min(taken, key=lambda one: _relied(case, one), default=None)
    return Readings(
        taken=taken,
        history=_history(case, taken),
        thinnest=thinnest,
        relied_m=_relied(case, thinnest) if thinnest else None,
        rough_relied_m=min((_relied(case, one) - _roughness(case, one) for one in latest), default=None),
        is_dressed=bool(latest) and all(_roughness(case, one) == 0 for one in latest),
        read_on=max((one.inspection.on for one in taken if one.inspection in case.thorough), default=None),
    )


def _relied(case: Case, taken: Taken) -> float:
    accuracy = {
        Method.ULTRASONIC_PAINT: "gauge_accuracy_paint",
        Method.CALLIPER: "calliper_accuracy",
    }.get(taken.reading.method, "gauge_accuracy")
    return max(taken.reading.figure.si - case.book.setting(accuracy), 0.0)


def _roughness(case: Case, taken: Taken) -> float:
    return 0.0 if taken.reading.surface is Surface.DRESSED else case.book.setting("rough_face_over_reading")


def _history(case: Case, taken: Iterable[Taken]) -> tuple[WallPoint, ...]:
    """The thinnest reading of each day."""
    days: dict[date, Taken] = {}
    for one in taken:
        held = days.get(one.inspection.on)
        if held is None or _relied(case, one) < _relied(case, held):
            days[one.inspection.on] = one
    return tuple(
        WallPoint(day, one.reading.figure.si, _relied(case, one), one.reading.point, one.reading.figure.as_typed)
        for day, one in sorted(days.items())
    )
