"""A wall's band and its doubtful readings as labelled lines."""

from inspector.drawings.wall_words import band_at, band_days, band_made
from inspector.gear.verdict import Fact, WallForecast, WallPoint
from inspector.gear.wall_band import BandAt, BandFrom, WallBand
from inspector.language import show_day, tr
from inspector.units import System


def band_lines(wall: WallForecast, system: System) -> list[Fact]:
    """When the wall comes down to its limit, give or take; the band now and at the next reading; how it was made.

    Nothing of a wall that is used up already.
    """
    band = wall.band
    if band is None or wall.is_used_up:
        return []
    lines = [Fact(tr("Retire date"), band_days(band))]
    if band.made_from is BandFrom.LINE:
        lines.append(Fact(tr("Band today"), _at(band.now, band, system)))
    if band.made_from is BandFrom.LINE and wall.next_reading_due:
        label = tr("Band at the next reading, {day}", day=show_day(wall.next_reading_due))
        lines.append(Fact(label, _at(band.at_due, band, system)))
    informs = tr("It informs; the verdict rests on the rate of loss. A pit between the points is not seen.")
    return [*lines, Fact(tr("How sure"), f"{band_made(band)} {informs}")]


def _at(at: BandAt | None, band: WallBand, system: System) -> str:
    if at is None:
        day = show_day(band.reach_on) if band.reach_on else ""
        return tr("none: the readings bear a line no further than {day}", day=day)
    return band_at(at, system)


def doubts(point: WallPoint) -> str:
    """What makes a reading an upper bound, in words."""
    said = ""
    if point.upper_bound:
        said += tr("; an upper bound, since the face was not dressed: the wall may be thinner than read")
    if point.below_probe:
        said += tr("; less than the common probe can tell: the wall may be thinner than read")
    return said
