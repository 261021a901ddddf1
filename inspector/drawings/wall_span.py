"""Which days and lengths a wall's chart spans, and the two lines it draws besides the readings."""

from datetime import date

from msgspec import Struct

from inspector.gear.verdict import WallForecast
from inspector.units import DAYS_PER_YEAR

_LEAST_DAYS = 365
_LONGEST_PAST_DAYS = 40 * 365
_LEAST_AHEAD_DAYS = 3 * 365
_LAST_DAY = date.max.toordinal() - 400


class Stretch(Struct, frozen=True):
    """A straight line of wall over time: days as ordinals, walls in metres."""

    from_day: float
    from_m: float
    to_day: float
    to_m: float


def past(wall: WallForecast) -> Stretch | None:
    """From the wall as new to the reading that gives the long-term rate; None where no such rate is known."""
    rate = wall.long_term_m_per_year
    if not rate or rate < 0 or not wall.history:
        return None
    point = min(wall.history, key=lambda point: _days_ago(point.on, wall.nominal_m - point.read_m, rate))
    began, day = _days_ago(point.on, wall.nominal_m - point.read_m, rate), point.on.toordinal()
    if not 0 < day - began <= _LONGEST_PAST_DAYS or began < 1:
        return None
    return Stretch(began, wall.nominal_m, day, point.read_m)


def until_now(wall: WallForecast, on: date) -> Stretch:
    """From the last reading's relied wall, or from new by the estimate, to the wall on the judging day."""
    if wall.history:
        last = max(point.on for point in wall.history)
        thinnest_m = min(point.relied_m for point in wall.history)
        return Stretch(min(last, on).toordinal(), thinnest_m, on.toordinal(), wall.wall_now_m)
    began = on.toordinal() - _LEAST_DAYS
    if wall.rate_m_per_year > 0:
        began_by_rate = _days_ago(on, wall.nominal_m - wall.wall_now_m, wall.rate_m_per_year)
        began = int(max(min(began_by_rate, on.toordinal()), on.toordinal() - _LONGEST_PAST_DAYS, 1))
    return Stretch(began, wall.nominal_m, on.toordinal(), wall.wall_now_m)


def ahead(wall: WallForecast, on: date) -> Stretch | None:
    """From now to the required wall, cut where it leaves the chart; None where nothing is lost or nothing is left."""
    if wall.wall_now_m <= wall.required_m or wall.rate_m_per_year <= 0:
        return None
    start = on.toordinal()
    life_days = (wall.wall_now_m - wall.required_m) / wall.rate_m_per_year * DAYS_PER_YEAR
    days = min(life_days, _most_ahead(wall, on))
    return Stretch(start, wall.wall_now_m, start + days, wall.wall_now_m - wall.rate_m_per_year * days / DAYS_PER_YEAR)


def _most_ahead(wall: WallForecast, on: date) -> float:
    """As far ahead as the chart looks back, at least three years: a line to the next century tells nobody anything."""
    behind = until_now(wall, on).from_day if not wall.history else min(p.on for p in wall.history).toordinal()
    return min(max(on.toordinal() - behind, _LEAST_AHEAD_DAYS), _LAST_DAY - on.toordinal())


def _days_ago(on: date, loss_m: float, rate_m_per_year: float) -> float:
    return on.toordinal() - max(loss_m, 0.0) / rate_m_per_year * DAYS_PER_YEAR


def day_range(wall: WallForecast, on: date) -> tuple[float, float]:
    """The first and last ordinal of the chart, a little wider than what it shows and never narrower than a year."""
    stretches = [stretch for stretch in (past(wall), until_now(wall, on), ahead(wall, on)) if stretch]
    days = [day for stretch in stretches for day in (stretch.from_day, stretch.to_day)]
    days += [float(point.on.toordinal()) for point in wall.history]
    days += [float(at.on.toordinal()) for at in (wall.band.drawn if wall.band else ())]
    margin = max(_LEAST_DAYS / 3, (max(days) - min(days)) * 0.06)
    return max(min(days) - margin, 1.0), min(max(days) + margin, _LAST_DAY + 300.0)


def highest_m(wall: WallForecast) -> float:
    """The top of the chart in metres: a tenth above the thickest wall shown."""
    thickest = [wall.nominal_m, wall.required_m, wall.wall_now_m, *(point.read_m for point in wall.history)]
    thickest += [point.relied_m for point in wall.history]
    return max(thickest) * 1.12
