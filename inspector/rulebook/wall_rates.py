"""How fast a wall goes: the greatest of what readings show and what exposure makes likely. Metres a year."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.language import tr
from inspector.mechanics import corrosion
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken
from inspector.rulebook.wall_readings import Readings
from inspector.units import years

_LEAST_YEARS = 0.5  # two readings closer than this tell more of the gauge than of the steel


@dataclass(frozen=True, slots=True)
class Rate:
    """The rates that are known, the one that governs, and which it is."""

    long_term: float | None
    short_term: float | None
    floor: float
    governing: float
    because: str


def rate_of(case: Case, nominal_m: float, read: Readings) -> Rate:
    """The greatest of the long-term rate, the short-term rate and what exposure makes likely. Metres a year."""
    long_term = _long_term(case, nominal_m, read.taken)
    short_term = _short_term(read.taken)
    floor = _floor(case, measured=bool(read.taken))
    known = {
        tr("long-term rate, from new to the thinnest reading"): long_term,
        tr("short-term rate, between two readings of one place"): short_term,
        tr("least rate that this exposure makes likely"): floor,
    }
    governing = corrosion.governing_rate_m_per_year([rate for rate in known.values() if rate is not None])
    because = next(name for name, rate in known.items() if rate == governing)
    return Rate(long_term, short_term, floor, governing, because)


def _floor(case: Case, *, measured: bool) -> float:
    if not case.wetted:
        return case.book.setting("wall_rate_open_air")
    return case.book.setting("wall_rate_field_default" if measured else "wall_rate_field_high")


def _long_term(case: Case, nominal_m: float, taken: Sequence[Taken]) -> float | None:
    """Of every reading, not only the day's least reliable one: else a thinner one could hide a faster one."""
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    rates = [
        corrosion.long_term_rate_m_per_year(nominal_m, one.reading.figure.si, span)
        for one in taken
        if (span := years((one.inspection.on - began).days)) >= _LEAST_YEARS
    ]
    return max(rates, default=None)


def _short_term(taken: Sequence[Taken]) -> float | None:
    """The fastest place: between its last reading and the latest one at least half a year before it."""
    rates = [_place_rate([one for one in taken if one.reading.point == point]) for point in _places(taken)]
    return max((rate for rate in rates if rate is not None), default=None)


def _places(taken: Sequence[Taken]) -> list[str]:
    return list(dict.fromkeys(one.reading.point for one in taken))


def _place_rate(taken: Sequence[Taken]) -> float | None:
    last = taken[-1]
    earlier = [one for one in taken if years((last.inspection.on - one.inspection.on).days) >= _LEAST_YEARS]
    if not earlier:
        return None
    span = years((last.inspection.on - earlier[-1].inspection.on).days)
    return corrosion.short_term_rate_m_per_year(earlier[-1].reading.figure.si, last.reading.figure.si, span)
