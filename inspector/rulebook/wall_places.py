"""The wall to reckon with at each place: from its last reading less the loss since, else from exposure. Metres."""

from datetime import date, timedelta

from msgspec import Struct

from inspector.mechanics import atmosphere, corrosion
from inspector.rulebook.case import Case
from inspector.rulebook.wall_rates import Rate
from inspector.rulebook.wall_readings import Place, Readings
from inspector.units import DAYS_PER_YEAR, years


class Reckoned(Struct, frozen=True):
    """The wall at one place today. per_day_m: the most that any later day takes. read_on None: an estimate."""

    point: str
    now_m: float
    per_day_m: float
    rate: float
    read_on: date | None


def reckoned(case: Case, nominal_m: float, read: Readings, rate: Rate) -> tuple[Reckoned, ...]:
    """Every place of the wall, read or not."""
    return tuple(_reckoned(case, nominal_m, place, rate) for place in read.places)


def _reckoned(case: Case, nominal_m: float, place: Place, rate: Rate) -> Reckoned:
    pace = pace_of(place, rate)
    now, tomorrow = (wall_on(case, case.on + timedelta(days=days), nominal_m, place, pace) for days in (0, 1))
    return Reckoned(place.point, now, min(tomorrow - now, -pace / DAYS_PER_YEAR), pace, place.read_on)


def pace_of(place: Place, rate: Rate) -> float:
    """The rate to reckon a place with."""
    return rate.governing if place.passed else rate.unread


def wall_on(case: Case, day: date, nominal_m: float, place: Place, pace: float) -> float:
    """The wall of a place on a day, today or later. What others read since may only make it less."""
    told = [corrosion.estimated_wall_m(one.relied_m, pace, _years(one.on, day)) for one in place.since if one.on <= day]
    if place.read_on is None or place.least_m is None:
        return min([_from_exposure(case, day, nominal_m, pace), *told])
    return min([corrosion.estimated_wall_m(place.least_m, pace, _years(place.read_on, day)), *told])


def _from_exposure(case: Case, day: date, nominal_m: float, pace: float) -> float:
    """The estimate where no reading exists: the greater of what open air took and, from the first salt on, salt."""
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    open_air = case.book.setting("wall_rate_open_air")
    lost = corrosion.atmospheric_loss_m(open_air, _years(began, day), atmosphere.growth_exponent_ratio())
    in_air = max(nominal_m - lost, 0.0)
    if not case.wetted:
        return in_air
    salt = began if case.past_unknown else (case.first_salt_on or began)
    return min(in_air, corrosion.estimated_wall_m(nominal_m, pace, _years(salt, day)))


def _years(since: date, day: date) -> float:
    return max(years((day - since).days), 0.0)
