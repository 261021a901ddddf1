"""The sentences under a wall's chart."""

from inspector.drawings.wording import length_text
from inspector.gear.verdict import WallForecast
from inspector.language import show_day, tr
from inspector.units import System


def chart_note(wall: WallForecast, system: System) -> str:
    """What the dots and lines mean, and when the wall comes to its limit."""
    said = tr("Dots: readings as typed. Grey dashes: the average since new. Reckoned with: {rate} a year ({why}).")
    if wall.estimated:
        said = tr("Dashed: an estimate, no reading stands behind it, at {rate} a year ({why}).")
    said = said.format(rate=rate_text(wall, system), why=wall.rate_because)
    return f"{said} {_forecast(wall)}".strip()


def rate_text(wall: WallForecast, system: System) -> str:
    """The governing rate, a length for each year."""
    return length_text(wall.rate_m_per_year, system)


def _forecast(wall: WallForecast) -> str:
    if wall.wall_now_m < wall.required_m:
        return tr("The wall is below its limit.")
    if wall.wall_now_m == wall.required_m:
        return tr("The wall is at its limit.")
    day = wall.reaches_required_on
    return tr("It comes down to its limit on {day}.", day=show_day(day)) if day else ""


def in_words(wall: WallForecast, system: System) -> str:
    """The chart for a person who cannot see it: each reading named, then the note."""
    read = "; ".join(f"{point.as_typed}, {show_day(point.on)}" for point in wall.history)
    readings = tr("Readings: {readings}.", readings=read) if read else tr("No reading was taken.")
    return f"{readings} {chart_note(wall, system)}"
