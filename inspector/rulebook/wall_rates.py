"""How fast a wall goes: the greatest of what readings show and what exposure makes likely. Metres a year."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.language import tr
from inspector.mechanics import corrosion, gauge
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken
from inspector.rulebook.wall_readings import Place, Readings, accuracy, is_dressed
from inspector.units import years

_LEAST_YEARS = 0.5  # two readings closer than this tell more of the gauge than of the steel
_SETTLED_YEARS = 1.0  # from here on the steel outweighs the gauge at the rates that matter


@dataclass(frozen=True, slots=True)
class Measured:
    """A rate that readings show, and how far the gauge alone may have put it out."""

    rate: float
    error: float


@dataclass(frozen=True, slots=True)
class Rate:
    """The rates that are known, the one that governs and which it is; unread: for a place nobody has read."""

    long_term: Measured | None
    short_term: Measured | None
    floor: float
    unread: float
    governing: float
    because: str

    @property
    def is_measured(self) -> bool:
        """Whether readings of its own show a rate."""
        return self.long_term is not None or self.short_term is not None


def rate_of(case: Case, nominal_m: float, read: Readings) -> Rate:
    """The greatest of the long-term rate, the short-term rate and what exposure makes likely. Metres a year."""
    long_term = _greatest(one for place in read.read for one in _long_term(case, nominal_m, place))
    short_term = _greatest(one for place in read.read for one in _short_term(case, place))
    floor = _floor(case, measured=bool(long_term or short_term))
    known = {
        tr("long-term rate, from new to the thinnest of the last readings"): long_term.rate if long_term else None,
        tr("short-term rate, between two readings of one place"): short_term.rate if short_term else None,
        tr("least rate that this exposure makes likely"): floor,
    }
    governing = corrosion.governing_rate_m_per_year([rate for rate in known.values() if rate is not None])
    because = next(name for name, rate in known.items() if rate == governing)
    unread = max(governing, _floor(case, measured=False))
    return Rate(long_term, short_term, floor, unread, governing, because)


def _floor(case: Case, *, measured: bool) -> float:
    """Until readings half a year apart show a rate, the high one stands: one reading tells nothing of speed."""
    if not case.wetted:
        return case.book.setting("wall_rate_open_air")
    return case.book.setting("wall_rate_field_default" if measured else "wall_rate_field_high")


def _greatest(found: Iterable[Measured]) -> Measured | None:
    return max(found, key=lambda one: one.rate, default=None)


def _long_term(case: Case, nominal_m: float, place: Place) -> list[Measured]:
    """From new to what a competent person read last, and to whatever others read since."""
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    found = []
    for one in (*place.last, *place.since):
        span = years((one.inspection.on - began).days)
        if span >= _LEAST_YEARS:
            rate = corrosion.long_term_rate_m_per_year(nominal_m, one.reading.figure.si, span)
            found.append(Measured(rate, gauge.rate_error_m_per_year(accuracy(case, one.reading), span)))
    return found


def _short_term(case: Case, place: Place) -> list[Measured]:
    """From an earlier competent reading on a dressed face to the same readings."""
    found = []
    for one in (*place.last, *place.since):
        earlier = _earlier(place, one)
        if earlier is not None:
            span = _span(earlier, one)
            rate = corrosion.short_term_rate_m_per_year(earlier.reading.figure.si, one.reading.figure.si, span)
            found.append(Measured(rate, gauge.rate_error_m_per_year(accuracy(case, one.reading), span)))
    return found


def _earlier(place: Place, later: Taken) -> Taken | None:
    """The thickest of the latest day a year or more before; half a year must do where there is none.

    Over half a year the gauge alone makes a rate of 0.3 mm. A wall that has begun to go faster within the year is seen
    at half its pace at the least, which is what the half-life rule allows for.
    """
    dressed = [one for one in place.passed if is_dressed(one.reading)]
    for least in (_SETTLED_YEARS, _LEAST_YEARS):
        earlier = [one for one in dressed if _span(one, later) >= least]
        if earlier:
            same_day = [one for one in earlier if one.inspection.on == earlier[-1].inspection.on]
            return max(same_day, key=lambda one: one.reading.figure.si)
    return None


def _span(earlier: Taken, later: Taken) -> float:
    return years((later.inspection.on - earlier.inspection.on).days)
