"""Walls of tubes: what is left on a day, what must be left, how long that lasts, and when to read again."""

import math
from datetime import date, timedelta

from msgspec import Struct

from inspector.gear.outcome import Purpose
from inspector.gear.verdict import WallForecast
from inspector.mechanics import corrosion
from inspector.rulebook.case import Case
from inspector.rulebook.wall_band import band_of
from inspector.rulebook.wall_need import required_of
from inspector.rulebook.wall_places import Reckoned, reckoned
from inspector.rulebook.wall_rates import Rate, rate_of
from inspector.rulebook.wall_readings import Readings, read_last, readings_of
from inspector.units import DAYS_PER_YEAR

_LONGEST_FORECAST_DAYS = 36500


class Wall(Struct, frozen=True):
    """The wall of a case: the forecast for the reader, and the figures the rules ask for. Lengths in metres."""

    forecast: WallForecast
    read: Readings
    places: tuple[Reckoned, ...]
    interval_days: float
    reckonable: bool  # False: some place was never read, and nobody knows how long it has rusted
    rate: Rate

    @property
    def thinnest(self) -> Reckoned:
        """The place with the least wall today, read or estimated."""
        return min(self.places, key=lambda place: place.now_m)


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
    places = reckoned(case, nominal.si, read, rate)
    need = _Need(required, because, _interval_days(case, read, required, rate))
    return Wall(
        forecast=_forecast(case, nominal.si, read, rate, need, places),
        read=read,
        places=places,
        interval_days=need.interval_days,
        reckonable=not (read.unread and case.past_unknown and case.dossier.item.life_began_on is None),
        rate=rate,
    )


class _Need(Struct, frozen=True):
    required_m: float
    because: str
    interval_days: float


def _forecast(
    case: Case, nominal_m: float, read: Readings, rate: Rate, need: _Need, places: tuple[Reckoned, ...]
) -> WallForecast:
    """What was read governs once a competent person has read any place; the estimate stands for none before."""
    now = min((place for place in places if place.read_on or not read.read), key=lambda place: place.now_m)
    life = corrosion.remaining_life_years(now.now_m, need.required_m, now.rate)
    outside = case.dossier.item.size("outside")
    retires_on = _after(case.on, life * DAYS_PER_YEAR)
    due = _reading_due(case, read, need.interval_days)
    return WallForecast(
        nominal_m=nominal_m,
        outside_m=outside.si if outside else None,
        required_m=need.required_m,
        required_because=need.because,
        history=read.history,
        points=read_last(read.places),
        long_term_m_per_year=rate.long_term.rate if rate.long_term else None,
        short_term_m_per_year=rate.short_term.rate if rate.short_term else None,
        floor_m_per_year=rate.floor,
        rate_m_per_year=rate.governing,
        rate_because=rate.because,
        wall_now_m=now.now_m,
        estimated=not read.read,
        life_years=life if math.isfinite(life) else None,
        reaches_required_on=retires_on,
        next_reading_due=due,
        unread_points=read.unread,
        band=band_of(case, need.required_m, read, rate, due),
    )


def _interval_days(case: Case, read: Readings, required_m: float, rate: Rate) -> float:
    """Half the life left at the last reading, at most the club's cap, in whole days.

    While no rate of its own is known, no longer than the worst rate in print would need to use up what is left.
    """
    cap = min(case.book.setting("wall_reading_cap"), float(case.dossier.kind.reading_every_days))
    if not read.read or read.thinnest is None:
        return cap
    life = corrosion.remaining_life_years(read.thinnest.relied_m, required_m, rate.governing)
    interval = corrosion.half_life_interval_years(life, cap / DAYS_PER_YEAR)
    if case.wetted and not rate.is_measured:
        worst = case.book.setting("wall_rate_worst")
        interval = min(interval, corrosion.remaining_life_years(read.thinnest.relied_m, required_m, worst))
    return float(_whole_days(interval * DAYS_PER_YEAR))


def _reading_due(case: Case, read: Readings, interval_days: float) -> date | None:
    """A place never read is due at once where the piece pulls; one that only tows has the club's time from salt on.

    Where salt never came the wall as new stands for a reading on the first day, while the piece pulls.
    """
    pulls = any(purpose is not Purpose.TOWING for purpose in case.purposes)
    if not case.wetted:
        began = case.dossier.item.life_began_on or case.dossier.item.booked_on
        return began + timedelta(days=int(interval_days)) if read.unread and pulls else None
    days = [place.read_on + timedelta(days=int(interval_days)) for place in read.read if place.read_on]
    if read.unread:
        booked = case.dossier.item.booked_on
        salt = booked if case.past_unknown else (case.first_salt_on or booked)
        days.append(salt if pulls or case.past_unknown else salt + timedelta(days=int(interval_days)))
    return min(days)


def _after(on: date, days: float) -> date | None:
    return on + timedelta(days=_whole_days(days)) if days < _LONGEST_FORECAST_DAYS else None


def _whole_days(days: float) -> int:
    """Full days; a hair under a whole one is that day, so that no unit of the reading moves a date."""
    return math.floor(days + 1e-6)
