"""The band round a wall's forecast, of the place that goes first. It informs; verdicts rest on rates."""

from collections.abc import Callable
from datetime import date, timedelta

from msgspec import Struct

from inspector.gear.wall_band import BandAt, BandFrom, WallBand
from inspector.mechanics import corrosion, regression, sea_zones
from inspector.rulebook.case import Case
from inspector.rulebook.wall_rates import Rate
from inspector.rulebook.wall_readings import Gauged, Place, Readings, is_tried
from inspector.units import DAYS_PER_YEAR, years

_LEAST_SPREAD_M = 0.1e-3 / 12**0.5  # GUM: what rounding to tenths of a millimetre scatters by itself
_LONGEST_DAYS = 36500
_STEPS = 8


def band_of(case: Case, required_m: float, read: Readings, rate: Rate, due_on: date | None) -> WallBand | None:
    """The band of the place that goes first; None for an unread tube that salt never reached."""
    lines = {place.point: line for place in read.read if (line := _line(place))}
    places = [(_level(case, place, lines.get(place.point), rate), place) for place in read.read]
    if not places:
        return _published(case, required_m) if case.wetted else None
    place = min(places, key=lambda pair: pair[0])[1]
    line = lines.get(place.point)
    return _by_line(case, required_m, line, due_on) if line else _by_rates(case, required_m, place, rate)


class _Line(Struct, frozen=True):
    """Readings of one place that a line may go through: at least three days, dressed, by a gauge that was tried."""

    point: str
    days: tuple[date, ...]
    taken_years: tuple[float, ...]  # the days in years from the first
    walls_m: tuple[float, ...]
    accuracy_m: float  # the greatest that is taken off one of them

    @property
    def reach_on(self) -> date:
        """The last day to which the line may be drawn: half the span of its readings ahead."""
        return self.days[-1] + (self.days[-1] - self.days[0]) / 2

    def years_of(self, day: date) -> float:
        """A day in years from the first reading."""
        return years((day - self.days[0]).days)

    def at(self, day: date) -> BandAt:
        """The band on a day."""
        band = regression.reading_band(
            self.taken_years, self.walls_m, self.years_of(day), least_spread_m=_LEAST_SPREAD_M
        )
        return BandAt(day, max(band.lower_m, 0.0), max(band.line_m, 0.0), max(band.upper_m, 0.0))

    def reaches(self, day: date) -> bool:
        """Whether the line may be drawn to a day."""
        return not regression.is_beyond_reach(self.taken_years, self.years_of(day))


def _line(place: Place) -> _Line | None:
    good = [one for one in place.passed if one.is_dressed and is_tried(one.reading)]
    days = tuple(one.on for one in good)
    if len(set(days)) < regression.LEAST_READINGS:
        return None
    walls_m = tuple(one.read_m for one in good)
    taken_years = tuple(years((day - days[0]).days) for day in days)
    return _Line(place.point, days, taken_years, walls_m, max(one.error_m for one in good))


def _level(case: Case, place: Place, line: _Line | None, rate: Rate) -> float:
    """How thin a place is today: by its line where it has one, which one reading alone does not move much."""
    if line is not None:
        return line.at(case.on).line_m
    last = _thinnest(place)
    return corrosion.estimated_wall_m(last.read_m, rate.governing, _age(case, last))


def _by_line(case: Case, required_m: float, line: _Line, due_on: date | None) -> WallBand:
    now = line.at(case.on) if line.reaches(case.on) else None
    at_due = line.at(due_on) if due_on and due_on >= line.days[-1] and line.reaches(due_on) else None
    retired_m = required_m + line.accuracy_m  # a reading is retired on once it is no more than this
    step = (line.reach_on - line.days[0]) / _STEPS
    return WallBand(
        made_from=BandFrom.LINE,
        point=line.point,
        reading_count=len(line.days),
        earliest_on=_falls_on(line, lambda at: at.low_m, retired_m),
        likely_on=_falls_on(line, lambda at: at.line_m, retired_m),
        latest_on=_falls_on(line, lambda at: at.high_m, retired_m),
        reach_on=line.reach_on,
        now=now,
        at_due=at_due,
        drawn=tuple(line.at(line.days[0] + count * step) for count in range(_STEPS + 1)),
    )


def _falls_on(line: _Line, bound: Callable[[BandAt], float], retired_m: float) -> date | None:
    """The first day from the last reading on at which the bound is down to where the piece is retired, by halving."""
    low, high = line.days[-1], line.reach_on
    if bound(line.at(low)) <= retired_m:
        return low
    if bound(line.at(high)) > retired_m:
        return None
    while (high - low).days > 1:
        middle = low + (high - low) // 2
        low, high = (middle, high) if bound(line.at(middle)) > retired_m else (low, middle)
    return high


def _by_rates(case: Case, required_m: float, place: Place, rate: Rate) -> WallBand:
    """Short of three days: the fastest and the slowest rate that the readings and the gauge allow."""
    last = _thinnest(place)
    measured = [one for one in (rate.long_term, rate.short_term) if one]
    fastest = max([rate.floor, *(one.rate + one.error for one in measured)])
    slowest = min((max(one.rate - one.error, 0.0) for one in measured), default=_slowest_published(case))
    on, wall_m, error_m = last.on, last.relied_m, last.error_m
    return WallBand(
        made_from=BandFrom.RATES,
        point=place.point,
        reading_count=len({one.on for one in place.passed}),
        earliest_on=_used_up(on, max(wall_m - error_m, 0.0), required_m, fastest),
        likely_on=_used_up(on, wall_m, required_m, rate.governing),
        latest_on=_used_up(on, wall_m + error_m, required_m, slowest),
    )


def _published(case: Case, required_m: float) -> WallBand | None:
    """No reading at all: the published rates, from the slowest to the worst, since the first day in salt."""
    nominal = case.dossier.item.size("wall")
    began = case.dossier.item.life_began_on if case.past_unknown else case.first_salt_on
    if nominal is None or began is None:
        return None
    return WallBand(
        made_from=BandFrom.PUBLISHED,
        point="",
        reading_count=0,
        earliest_on=_used_up(began, nominal.si, required_m, sea_zones.splash_rate_m_per_year()),
        likely_on=_used_up(began, nominal.si, required_m, case.book.setting("wall_rate_field_high")),
        latest_on=_used_up(began, nominal.si, required_m, _slowest_published(case)),
    )


def _slowest_published(case: Case) -> float:
    return sea_zones.splash_rate_m_per_year(sea_zones.SplashRate.MARINE_LOW) if case.wetted else 0.0


def _used_up(on: date, wall_m: float, required_m: float, rate: float) -> date | None:
    days = corrosion.remaining_life_years(wall_m, required_m, rate) * DAYS_PER_YEAR
    return on + timedelta(days=int(days)) if days < _LONGEST_DAYS else None


def _thinnest(place: Place) -> Gauged:
    return min(place.last, key=lambda one: one.read_m)


def _age(case: Case, taken: Gauged) -> float:
    return max(years((case.on - taken.on).days), 0.0)
