"""Walls of tubes: what a gauge allows one to rely on, how fast it goes, what must be left, and how long that lasts."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from inspector.gear.inspection import Method, Surface
from inspector.gear.kind import Basis
from inspector.gear.outcome import Purpose
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.language import tr
from inspector.mechanics import corrosion, shear
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken, counted, readings
from inspector.units import DAYS_PER_YEAR, STANDARD_GRAVITY_M_PER_S2, years

_COUPLING_TEST_FACTOR = 1.5  # ADR 62/02 12.3.2: longitudinal force 1.5 g times the trailer's mass
_LEAST_YEARS = 0.5  # two readings closer than this tell more of the gauge than of the steel
_OPEN_AIR_EXPONENT = 0.575  # ISO 9224, conservative exponent of carbon steel
_LONGEST_FORECAST_DAYS = 36500


@dataclass(frozen=True, slots=True)
class Wall:
    """The wall of a case: the forecast for the reader, and the figures the rules ask for. Lengths in metres."""

    forecast: WallForecast
    relied_m: float | None  # thinnest reading less the gauge's accuracy
    rough_relied_m: float | None  # thinnest of each point's latest reading, less what a rough face may add
    read_on: date | None
    thinnest: Taken | None
    interval_days: float
    wetted: bool
    per_day_m: float  # what the wall to reckon with does from today to tomorrow; no later day takes more
    reckonable: bool  # False: never read, and nobody knows how long it has rusted


def wall_of(case: Case) -> Wall | None:
    """The wall of a tube; None for a kind without one or a piece whose wall as new was not written down."""
    return case.once("wall", _work_out)


def _work_out(case: Case) -> Wall | None:
    nominal = case.dossier.item.size("wall")
    if case.dossier.kind.measure("wall") is None or nominal is None:
        return None
    taken = readings(case, "wall")
    history = _history(case, taken)
    rate = _rate(case, nominal.si, history, taken)
    required, because = _required(case, nominal.si)
    thinnest = min(taken, key=lambda one: _relied(case, one), default=None)
    relied = _relied(case, thinnest) if thinnest else None
    passed_on = max((one.inspection.on for one in taken if one.inspection in case.thorough), default=None)
    now, tomorrow = (
        _wall_on(case.on + timedelta(days=days), case, nominal.si, relied, history, rate.governing) for days in (0, 1)
    )
    life = corrosion.remaining_life_years(now, required, rate.governing)
    interval = _interval_days(case, relied, required, rate.governing)
    outside = case.dossier.item.size("outside")
    forecast = WallForecast(
        nominal_m=nominal.si,
        outside_m=outside.si if outside else None,
        required_m=required,
        required_because=because,
        history=history,
        long_term_m_per_year=rate.long_term,
        short_term_m_per_year=rate.short_term,
        floor_m_per_year=rate.floor,
        rate_m_per_year=rate.governing,
        rate_because=rate.because,
        wall_now_m=now,
        estimated=relied is None,
        life_years=life if math.isfinite(life) else None,
        reaches_required_on=_after(case.on, life * DAYS_PER_YEAR),
        next_reading_due=_reading_due(case, passed_on, interval),
    )
    latest = counted(case, "wall")  # a face that was dressed since takes the place of its rough reading
    rough = min((_relied(case, one) - _roughness(case, one) for one in latest), default=None)
    reckonable = relied is not None or not (case.past_unknown and case.dossier.item.life_began_on is None)
    return Wall(forecast, relied, rough, passed_on, thinnest, interval, _wetted(case), tomorrow - now, reckonable)


def _wetted(case: Case) -> bool:
    """Whether salt water may have stood inside: it was logged, or nobody can rule it out."""
    return case.first_salt_on is not None or case.past_unknown


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


@dataclass(frozen=True, slots=True)
class _Rate:
    long_term: float | None
    short_term: float | None
    floor: float
    governing: float
    because: str


def _rate(case: Case, nominal_m: float, history: tuple[WallPoint, ...], taken: list[Taken]) -> _Rate:
    """The greatest of the long-term rate, the short-term rate and what exposure makes likely. Metres a year."""
    long_term = _long_term(case, nominal_m, history)
    short_term = _short_term(taken)
    floor = _floor(case, measured=bool(history))
    known = {
        tr("long-term rate, from new to the thinnest reading"): long_term,
        tr("short-term rate, between two readings of one place"): short_term,
        tr("least rate that this exposure makes likely"): floor,
    }
    governing = corrosion.governing_rate_m_per_year([rate for rate in known.values() if rate is not None])
    because = next(name for name, rate in known.items() if rate == governing)
    return _Rate(long_term, short_term, floor, governing, because)


def _floor(case: Case, *, measured: bool) -> float:
    if not _wetted(case):
        return case.book.setting("wall_rate_open_air")
    return case.book.setting("wall_rate_field_default" if measured else "wall_rate_field_high")


def _long_term(case: Case, nominal_m: float, history: tuple[WallPoint, ...]) -> float | None:
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    rates = [
        corrosion.long_term_rate_m_per_year(nominal_m, point.read_m, span)
        for point in history
        if (span := years((point.on - began).days)) >= _LEAST_YEARS
    ]
    return max(rates, default=None)


def _short_term(taken: list[Taken]) -> float | None:
    """The fastest place: between its last reading and the latest one at least half a year before it."""
    rates = [_place_rate([one for one in taken if one.reading.point == point]) for point in _places(taken)]
    return max((rate for rate in rates if rate is not None), default=None)


def _places(taken: list[Taken]) -> list[str]:
    return list(dict.fromkeys(one.reading.point for one in taken))


def _place_rate(taken: list[Taken]) -> float | None:
    last = taken[-1]
    earlier = [one for one in taken if _years(one.inspection.on, last.inspection.on) >= _LEAST_YEARS]
    if not earlier:
        return None
    span = _years(earlier[-1].inspection.on, last.inspection.on)
    return corrosion.short_term_rate_m_per_year(earlier[-1].reading.figure.si, last.reading.figure.si, span)


def _required(case: Case, nominal_m: float) -> tuple[float, str]:
    """The larger of the club's share of the new wall and what the pin bears on; metres, and which of the two."""
    share = nominal_m * case.book.setting("required_wall_fraction")
    pull_n, pull_from = _pull(case)
    if case.dossier.item.size("pin_hole") is None:
        return share, tr("club's share of the wall as new")
    pin_m = case.book.setting("hitch_pin_diameter")
    yield_pa = case.book.setting("tube_yield_mpa") * 1e6
    needed = shear.bearing_wall_needed_m(pull_n, pin_m, yield_pa, wall_count=2)
    if needed > share:
        steel = case.dossier.kind.steel_grade
        return needed, tr("bearing of the hitch pin at {pull}; steel {steel}", pull=pull_from, steel=steel)
    return share, tr("club's share of the wall as new")


def _pull(case: Case) -> tuple[float, str]:
    """The pull the pin hole must bear, in newtons: its rating, and the club's pull where it recovers or has none."""
    rating = case.dossier.item.rating
    reference = (case.book.setting("reference_pull"), tr("the club's reference pull"))
    if rating.figure is None or rating.basis is Basis.UNRATED:
        return reference
    rated = (rating.figure.si, tr("its marked rating"))
    if rating.basis is Basis.TOWED_MASS:
        pull = rating.figure.si * STANDARD_GRAVITY_M_PER_S2 * _COUPLING_TEST_FACTOR
        rated = (pull, tr("1.5 g times the rated trailer mass"))
    recovers = any(purpose is not Purpose.TOWING for purpose in case.purposes)
    return max(rated, reference) if recovers else rated


def _wall_on(
    day: date, case: Case, nominal_m: float, relied_m: float | None, history: tuple[WallPoint, ...], rate: float
) -> float:
    """The wall to reckon with on a day, in metres: from the last reading, else estimated from exposure."""
    if relied_m is not None:
        return corrosion.estimated_wall_m(relied_m, rate, _years(history[-1].on, day))
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    if not _wetted(case):
        return max(nominal_m - corrosion.atmospheric_loss_m(rate, _years(began, day), _OPEN_AIR_EXPONENT), 0.0)
    since = began if case.past_unknown else (case.first_salt_on or began)
    return corrosion.estimated_wall_m(nominal_m, rate, _years(since, day))


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
    if since is None or not _wetted(case):
        return case.dossier.item.booked_on if _wetted(case) else None
    return since + timedelta(days=int(interval_days))


def _after(on: date, days: float) -> date | None:
    return on + timedelta(days=_whole_days(days)) if days < _LONGEST_FORECAST_DAYS else None


def _whole_days(days: float) -> int:
    """Full days; a hair under a whole one is that day, so that no unit of the reading moves a date."""
    return math.floor(days + 1e-6)
