"""How fast a wall goes: the greatest of what readings show and what exposure makes likely. Metres a year."""

from collections.abc import Iterable
from datetime import date

from msgspec import Struct

from inspector.language import tr
from inspector.mechanics import corrosion, gauge
from inspector.rulebook.case import Case
from inspector.rulebook.wall_readings import Gauged, Place, Readings
from inspector.units import years

_LEAST_YEARS = 0.5  # two readings closer than this tell more of the gauge than of the steel
_SETTLED_YEARS = 1.0  # from here on the steel outweighs the gauge at the rates that matter


class Measured(Struct, frozen=True):
    """A rate that readings show, and how far the gauge alone may have put it out."""

    rate: float
    error: float


class Rate(Struct, frozen=True):
    """The rates that are known, the one that governs and which it is; unread: for a place nobody has read.

    is_measured: whether competent readings show how fast it goes where it is now, in salt or out of it.
    """

    long_term: Measured | None
    short_term: Measured | None
    floor: float
    unread: float
    governing: float
    because: str
    is_measured: bool


def rate_of(case: Case, nominal_m: float, read: Readings) -> Rate:
    """The greatest of the long-term rate, the short-term rate and what exposure makes likely. Metres a year."""
    long_term = _greatest(one for place in read.read for one in _long_term(case, nominal_m, place))
    short_term = _greatest(one for place in read.read for one in _short_term(case, place))
    is_measured = any(_is_measured(case, place) for place in read.read)
    floor = _floor(case, measured=is_measured)
    known = {
        tr("long-term rate, from new to the thinnest of the last readings"): long_term.rate if long_term else None,
        tr("short-term rate, between two readings of one place"): short_term.rate if short_term else None,
        tr("least rate that this exposure makes likely"): floor,
    }
    governing = corrosion.governing_rate_m_per_year([rate for rate in known.values() if rate is not None])
    because = next(name for name, rate in known.items() if rate == governing)
    unread = max(governing, _floor(case, measured=False))
    return Rate(long_term, short_term, floor, unread, governing, because, is_measured)


def _floor(case: Case, *, measured: bool) -> float:
    """Until readings half a year apart show a rate, the high one stands: one reading tells nothing of speed."""
    if not case.wetted:
        return case.book.setting("wall_rate_open_air")
    return case.book.setting("wall_rate_field_default" if measured else "wall_rate_field_high")


def _greatest(found: Iterable[Measured]) -> Measured | None:
    return max(found, key=lambda one: one.rate, default=None)


def _is_measured(case: Case, place: Place) -> bool:
    """Whether competent persons read the place on dressed faces half a year apart, both since salt got in.

    A member's reading, a rough face and a time before the salt tell nothing of the pace in salt.
    """
    salt_on = _salt_since(case)
    good = [one for one in place.passed if one.is_dressed and one.on >= salt_on]
    return bool(good) and _span(good[0], good[-1]) >= _LEAST_YEARS


def _salt_since(case: Case) -> date:
    """The day from which the tube is known to be in salt: that of the salt written down first.

    A day of salt that is written down later for an earlier time does not turn dry readings into readings in salt; the
    keys of entries are in order of writing. Where nobody knows the past, not before it was booked in.
    """
    if not case.salt:
        return case.dossier.item.booked_on
    _, first_on = min(case.salt, key=lambda entry: entry[0])
    return max(first_on, case.dossier.item.booked_on) if case.past_unknown else first_on


def _latest(place: Place) -> list[Gauged]:
    """From the last competent day on a dressed face on, whatever anybody read: rough faces may only raise a rate."""
    since = next((one.on for one in reversed(place.passed) if one.is_dressed), date.min)
    passed = [one for one in place.passed if one.on >= since]
    return [*passed, *(one for one in place.others if one.on > since)]


def _long_term(case: Case, nominal_m: float, place: Place) -> list[Measured]:
    """From new to what a competent person read last, and to whatever others read since."""
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    found = []
    for one in _latest(place):
        span = years((one.on - began).days)
        if span >= _LEAST_YEARS:
            rate = corrosion.long_term_rate_m_per_year(nominal_m, one.read_m, span)
            found.append(Measured(rate, gauge.rate_error_m_per_year(one.error_m, span)))
    return found


def _short_term(case: Case, place: Place) -> list[Measured]:
    """From earlier competent readings on a dressed face to the same readings."""
    found = []
    for one in _latest(place):
        for earlier in _earlier(case, place, one):
            span = _span(earlier, one)
            rate = corrosion.short_term_rate_m_per_year(earlier.read_m, one.read_m, span)
            found.append(Measured(rate, gauge.rate_error_m_per_year(one.error_m, span)))
    return found


def _earlier(case: Case, place: Place, later: Gauged) -> list[Gauged]:
    """The thickest of the latest day a year or more before; half a year must do where there is none.

    Over half a year the gauge alone makes a rate of 0.3 mm. A wall that has begun to go faster within the year is seen
    at half its pace at the least, which is what the half-life rule allows for. A year that began before the salt would
    hide more, so then the half year counts beside it.
    """
    year, half = (_thickest_before(place, later, least) for least in (_SETTLED_YEARS, _LEAST_YEARS))
    if year is None or half is None:
        return [half] if half else []
    began_dry = case.wetted and year.on < _salt_since(case)
    return [year, half] if began_dry else [year]


def _thickest_before(place: Place, later: Gauged, least_years: float) -> Gauged | None:
    dressed = [one for one in place.passed if one.is_dressed]
    last = next((one for one in reversed(dressed) if _span(one, later) >= least_years), None)
    same_day = [one for one in dressed if last is not None and one.on == last.on]
    return max(same_day, key=lambda one: one.read_m, default=None)


def _span(earlier: Gauged, later: Gauged) -> float:
    return years((later.on - earlier.on).days)
