"""A wall's band and its doubtful readings as labelled lines."""

from inspector.drawings.wall_words import band_at, band_days, band_made
from inspector.gear.verdict import Fact, WallForecast, WallPoint
from inspector.language import show_day, tr
from inspector.units import System


def band_lines(wall: WallForecast, system: System) -> list[Fact]:
    """When the wall comes down to its limit, give or take; the band now and at the next reading; how it was made."""
    band = wall.band
    if band is None:
        return []
    lines = [Fact(tr("Retire date"), band_days(band))]
    if band.now:
        lines.append(Fact(tr("Band today"), band_at(band.now, system)))
    if band.at_due:
        label = tr("Band at the next reading, {day}", day=show_day(band.at_due.on))
        lines.append(Fact(label, band_at(band.at_due, system)))
    informs = tr("It informs; the verdict rests on the rate of loss. A pit between the points is not seen.")
    return [*lines, Fact(tr("How sure"), f"{band_made(band)} {informs}")]


def doubts(point: WallPoint) -> str:
    """What makes a reading an upper bound, in words."""
    said = ""
    if point.upper_bound:
        said += tr("; an upper bound, since the face was not dressed: the wall may be thinner than read")
    if point.below_probe:
        said += tr("; less than the common probe can tell: the wall may be thinner than read")
    return said
