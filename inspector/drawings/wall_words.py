"""The sentences under a wall's chart, and those on its band, which the figures of a verdict share."""

from collections.abc import Mapping
from datetime import date

from inspector.drawings.wording import length_text
from inspector.gear.kind import kind_word
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.gear.wall_band import BandAt, BandFrom, WallBand
from inspector.language import show_day, tr
from inspector.units import System

How = Mapping[WallPoint, str]  # how a reading was taken and by whom, in words


def chart_note(wall: WallForecast, system: System) -> str:
    """What the dots and lines mean, and when the wall comes to its limit."""
    said = tr("Dots: readings as typed. Grey dashes: the average since new. Reckoned with: {rate} a year ({why}).")
    if wall.estimated:
        said = tr("Dashed: an estimate, no reading stands behind it, at {rate} a year ({why}).")
    said = said.format(rate=rate_text(wall, system), why=wall.rate_because)
    return " ".join(filter(None, (said, _forecast(wall), _band(wall), _upper_bounds(wall))))


def rate_text(wall: WallForecast, system: System) -> str:
    """The governing rate, a length for each year."""
    return length_text(wall.rate_m_per_year, system)


def point_words(point: WallPoint, how: str) -> str:
    """A reading: where, what, when, and, where that is known, how it was taken and by whom."""
    name = kind_word(point.point) or tr("worst place")
    said = tr("{point}: {value} on {day}", point=name, value=point.as_typed, day=show_day(point.on))
    said = tr("{said}, {how}", said=said, how=how) if how else said
    return tr("{said}, an upper bound: the face was not dressed", said=said) if point.upper_bound else said


def now_words(wall: WallForecast, on: date, system: System) -> str:
    """The wall on the day it was judged."""
    now = length_text(wall.wall_now_m, system)
    if wall.estimated:
        return tr("On {day}: {wall}, an estimate; no reading stands behind it", day=show_day(on), wall=now)
    said = tr("On {day}: {wall}, the thinnest reading less what the gauge allows and the loss since, at {rate} a year")
    return said.format(day=show_day(on), wall=now, rate=rate_text(wall, system))


def end_words(wall: WallForecast, day: date, system: System) -> str:
    """The day on which the wall comes down to its limit."""
    rate = rate_text(wall, system)
    said = tr("Down to its limit on {day}, at {rate} a year: {why}")
    return said.format(day=show_day(day), rate=rate, why=wall.rate_because)


def limit_words(wall: WallForecast, system: System) -> str:
    """What the wall must keep, and why."""
    return tr("Must keep {wall}: {why}", wall=length_text(wall.required_m, system), why=wall.required_because)


def _forecast(wall: WallForecast) -> str:
    if wall.wall_now_m < wall.required_m:
        return tr("The wall is below its limit.")
    if wall.wall_now_m == wall.required_m:
        return tr("The wall is at its limit.")
    day = wall.reaches_required_on
    return tr("It comes down to its limit on {day}.", day=show_day(day)) if day else ""


def _band(wall: WallForecast) -> str:
    return tr("Grey band: {made}", made=band_made(wall.band)) if wall.band and wall.band.drawn else ""


def _upper_bounds(wall: WallForecast) -> str:
    rough = any(point.upper_bound for point in wall.history)
    return tr("Hollow dots: the face was not dressed, the wall may be thinner than read.") if rough else ""


def band_made(band: WallBand) -> str:
    """How the band was made and what it claims."""
    if band.made_from is BandFrom.LINE:
        said = tr("straight line through {count} readings at “{point}”; of 100 new readings there, 95 lie in the band.")
        return said.format(count=band.reading_count, point=kind_word(band.point))
    if band.made_from is BandFrom.RATES:
        said = tr("from the slowest and fastest rate that the readings at “{point}” and the gauge's accuracy allow.")
        return said.format(point=kind_word(band.point))
    return tr("no reading: from the slowest and the worst rate in print.")


def band_days(band: WallBand) -> str:
    """When a reading, less the gauge's allowance, comes down to the limit: the likely day, the earliest, the latest."""
    earliest, likely, latest = (show_day(day) if day else "" for day in _days(band))
    reach = show_day(band.reach_on) if band.reach_on else ""
    if not earliest:
        return tr("not before {reach}; no line may be drawn further", reach=reach) if reach else tr("no end in sight")
    if earliest == latest:
        return tr("reached on {day}", day=latest)
    said = tr("not before {earliest}", earliest=earliest)
    said = tr("about {likely}; {bounds}", likely=likely, bounds=said) if likely else said
    if latest:
        return tr("{said}, not after {latest}", said=said, latest=latest)
    if not reach:
        return tr("{said}, no latest day", said=said)
    return tr("{said}, no latest day before {reach}, where the line must end", said=said, reach=reach)


def _days(band: WallBand) -> tuple[date | None, date | None, date | None]:
    return band.earliest_on, band.likely_on, band.latest_on


def band_at(at: BandAt, system: System) -> str:
    """The band on one day."""
    low, high, line = (length_text(one, system) for one in (at.low_m, at.high_m, at.line_m))
    return tr("{low} to {high}, the line at {line}", low=low, high=high, line=line)


def band_words(band: WallBand, system: System) -> str:
    """How the band was made, where it lies on the judging day and at the next reading, and when it meets the limit."""
    told = [tr("Band: {made}", made=band_made(band))]
    for at in (band.now, band.at_due):
        if at:
            told.append(tr("{day}: {band}.", day=show_day(at.on), band=band_at(at, system)))
    return " ".join([*told, tr("Down to the limit: {days}.", days=band_days(band))])


def in_words(wall: WallForecast, system: System) -> str:
    """The chart for a person who cannot see it: each reading named, then the note."""
    read = "; ".join(f"{point.as_typed}, {show_day(point.on)}" for point in wall.history)
    readings = tr("Readings: {readings}.", readings=read) if read else tr("No reading was taken.")
    return f"{readings} {chart_note(wall, system)}"
