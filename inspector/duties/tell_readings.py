"""Say how each wall reading of a verdict was taken and by whom, as its inspection keeps it."""

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, Method, Reading, Surface
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.language import tr


def how_read(dossier: Dossier, wall: WallForecast | None) -> dict[WallPoint, str]:
    """Of each reading that the wall tells: the way, the face, the gauge with its block, and the name.

    A reading whose entry was struck since is left out: nobody stands behind it any more.
    """
    if wall is None:
        return {}
    taken = {
        (one.on, reading.point, reading.figure.as_typed): _words(dossier, one, reading)
        for one in dossier.inspections
        for reading in one.facts.readings
        if reading.measure == "wall"
    }
    points = dict.fromkeys((*wall.history, *wall.points))
    return {one: taken[key] for one in points if (key := (one.on, one.point, one.as_typed)) in taken}


def _words(dossier: Dossier, seen: Inspection, reading: Reading) -> str:
    name = dict(dossier.names).get(seen.facts.by, "")
    return ", ".join(part for part in (taken_words(reading), tr("by {name}", name=name) if name else "") if part)


def taken_words(reading: Reading) -> str:
    """The way, the face of a gauge's reading, and the gauge with its block."""
    return ", ".join(part for part in (_method(reading.method), _surface(reading), _gauge(reading)) if part)


def _method(method: Method) -> str:
    return {
        Method.ULTRASONIC_BARE: tr("thickness gauge on bare metal"),
        Method.ULTRASONIC_PAINT: tr("thickness gauge through paint"),
        Method.CALLIPER: tr("calliper"),
        Method.TAPE: tr("tape"),
        Method.COUNTED: tr("counted"),
    }[method]


def _is_gauge(reading: Reading) -> bool:
    return reading.method in {Method.ULTRASONIC_BARE, Method.ULTRASONIC_PAINT}


def _surface(reading: Reading) -> str:
    words = {
        Surface.DRESSED: tr("face dressed"),
        Surface.ROUGH: tr("face rough"),
        Surface.NOT_STATED: tr("face not stated"),
    }
    return words[reading.surface] if _is_gauge(reading) else ""


def _gauge(reading: Reading) -> str:
    """Which gauge, and whether it was tried on its block that day."""
    if not _is_gauge(reading):
        return reading.gauge
    tried = {True: tr("tried on its block"), False: tr("not tried on its block")}
    block = tr("nobody says whether it was tried on its block")
    if reading.block_checked is not None:
        block = tried[reading.block_checked]
    return tr("{gauge}, {block}", gauge=reading.gauge, block=block) if reading.gauge else block
