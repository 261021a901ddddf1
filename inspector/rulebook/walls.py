"""Walls of tubes: what is left on a day, what must be left, how long that lasts, and when to read again."""

import math
from dataclasses import dataclass
from datetime import date, timedelta

from inspector.gear.verdict import WallForecast
from inspector.mechanics import corrosion
from inspector.rulebook.case import Case
from inspector.rulebook.wall_need import required_of
from inspector.rulebook.wall_rates import Rate, rate_of
from inspector.rulebook.wall_readings import Readings, readings_of
from inspector.units import DAYS_PER_YEAR, years

_OPEN_AIR_EXPONENT = 0.575  # ISO 9224, conservative exponent of carbon steel
_LONGEST_FORECAST_DAYS = 36500


@dataclass(frozen=True, slots=True)
class Wall:
    """The wall of a case: the forecast for the reader, and the figures the rules ask for. Lengths in metres."""

    forecast: WallForecast
    read: Readings
    interval_days: float
    per_day_m: float  # what the wall to reckon with does from today to tomorrow; no later day takes more
    reckonable: bool  # False: never read, and nobody knows how long it has rusted


def wall_of(case: Case) -> Wall | None:
    """The wall of a tube; None for a kind without one or a piece whose wall as new was not written down."""
    return case.once("wall", _work_out)


def _work_out(case: Case) -> Wall | None:
    nominal = case.dossier.item.size("wall")
    if case.dossier.kind.measure("wall") is None or nominal is None:
        return None
    read = readings_of(case)
    rate = rate_of(case, nominal.si, read)
    required, because = required_of(case, nominal.si)
    interval = _interval_days(case, read.relied_m, required, rate.governing)
    now, tomorrow = (_wall_on(case, case.on + timedelta(days=days), nominal.si, read, rate) for days in (0, 1))
    return Wall(
        forecast=_forecast(case, nominal.si, read, rate, _Need(required, because, interval), now),
        read=read,
        interval_days=interval,
        per_day_m=tomorrow - now,
        reckonable=read.relied_m is not None or not (case.past_unknown and case.dossier.item.life_began_on is None),
    )


@dataclass(frozen=True, slots=True)
class _Need:
    required_m: float
    because: str
    interval_days: float


def _forecast(case: Case, nominal_m: float, read: Readings, rate: Rate, need: _Need, now_m: float) -> WallForecast:
    life = corrosion.remaining_life_years(now_m, need.required_m, rate.governing)
    outside = case.dossier.item.size("outside")
    return WallForecast(
        nominal_m=nominal_m,
        outside_m=outside.si if outside else None,
        required_m=need.required_m,
        required_because=need.because,
        history=read.history,
        long_term_m_per_year=rate.long_term,
        short_term_m_per_year=rate.short_term,
        floor_m_per_year=rate.floor,
        rate_m_per_year=rate.governing,
        rate_because=rate.because,
        wall_now_m=now_m,
        estimated=read.relied_m is None,
        life_years=life if math.isfinite(life) else None,
        reaches_required_on=_after(case.on, life * DAYS_PER_YEAR),
        next_reading_due=_reading_due(case, read.read_on, need.interval_days),
    )


def _wall_on(case: Case, day: date, nominal_m: float, read: Readings, rate: Rate) -> float:
    """The wall to reckon with on a day, in metres: from the last reading, else estimated from exposure."""
    if read.relied_m is not None:
        return corrosion.estimated_wall_m(read.relied_m, rate.governing, _years(read.history[-1].on, day))
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    if not case.wetted:
        loss = corrosion.atmospheric_loss_m(rate.governing, _years(began, day), _OPEN_AIR_EXPONENT)
        return max(nominal_m - loss, 0.0)
    since = began if case.past_unknown else (case.first_salt_on or began)
    return corrosion.estimated_wall_m(nominal_m, rate.governing, _years(since, day))


def _years(since: date, day: date) -> float:
    return max(years((day - since).days), 0.0)


def _interval_days(case: Case, relied_m: float | None, required_m: float, rate: float) -> float:
    """Half the life left at the last reading, at most the club's cap, in whole days."""
    cap = min(case.book.setting("wall_reading_cap"), float(case.dossier.kind.reading_every_days))
    if relied_m is None:
        return cap
    life = corrosion.remaining_life_years(relied_m, required_m, rate)
    days = corrosion.half_life_interval_years(life, cap / DAYS_PER_YEAR) * DAYS_PER_YEAR
    return float(_whole_days(days))


def _reading_due(case: Case, read_on: date | None, interval_days: float) -> date | None:
    since = read_on or case.first_salt_on
    if since is None or not case.wetted:
        return case.dossier.item.booked_on if case.wetted else None
    return since + timedelta(days=int(interval_days))


def _after(on: date, days: float) -> date | None:
    return on + timedelta(days=_whole_days(days)) if days < _LONGEST_FORECAST_DAYS else None


def _whole_days(days: float) -> int:
    """Full days; a hair under a whole one is that day, so that no unit of the reading moves a date."""
    return math.floor(days + 1e-6)
