"""The wall that a tube's strength is reckoned with: cautious, in steps, and never thicker for a member's word.

It is the wall as it will be on the first day of the next quarter, so that a strength that was said stands until then.
A member's reading makes it thinner, never thicker: the days of loss count from the last competent reading, and without
one the estimate from exposure goes on beside it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inspector.mechanics import atmosphere, corrosion
from inspector.rulebook.case import Case
from inspector.rulebook.observed import Taken
from inspector.rulebook.walls import Wall, wall_of
from inspector.units import years

_LEAST_YEARS = 0.5  # readings closer than this tell more of the gauge than of the steel


@dataclass(frozen=True, slots=True)
class StrengthWall:
    """The wall to reckon strength with, in metres, and the day it belongs to; None: nobody can tell."""

    new_m: float
    now_m: float | None
    on: date
    estimated: bool  # no competent person has read it


def strength_wall(case: Case) -> StrengthWall | None:
    """The wall of a tube for its strength; None where the wall as new was not written down."""
    return case.once("strength wall", _work_out)


def _work_out(case: Case) -> StrengthWall | None:
    wall = wall_of(case)
    if wall is None:
        return None
    until, new_m = next_quarter(case.on), wall.forecast.nominal_m
    competent = [one for one in wall.read.taken if one.inspection in case.thorough]
    if not competent and case.past_unknown and case.dossier.item.life_began_on is None:
        return StrengthWall(new_m, None, until, estimated=True)
    rate = _rate_m_per_year(case, wall, competent)
    thought = [new_m, *_read_m(wall, competent, rate, until)]
    if not competent:
        thought += _estimates_m(case, new_m, rate, until)
    return StrengthWall(new_m, min(thought), until, estimated=not competent)


def next_quarter(on: date) -> date:
    """The first day of the next quarter of the calendar."""
    ahead = on.month - 1 - (on.month - 1) % 3 + 3
    return date(on.year + ahead // 12, ahead % 12 + 1, 1)


def _read_m(wall: Wall, competent: Sequence[Taken], rate: float, until: date) -> list[float]:
    """What readings leave on the day: the thinnest that may be relied on, rough faces allowed for, less the loss."""
    known = [one for one in (wall.read.relied_m, wall.read.rough_relied_m) if one is not None]
    if not known:
        return []
    since = max((one.inspection.on for one in competent), default=wall.read.taken[0].inspection.on)
    return [corrosion.estimated_wall_m(max(min(known), 0.0), rate, _years(since, until))]


def _estimates_m(case: Case, new_m: float, rate: float, until: date) -> list[float]:
    """What exposure leaves on the day, by open air alone and, where salt got in, by salt."""
    began = case.dossier.item.life_began_on or case.dossier.item.booked_on
    exponent = atmosphere.growth_exponent_ratio()
    open_air = case.book.setting("wall_rate_open_air")
    found = [new_m - corrosion.atmospheric_loss_m(open_air, _years(began, until), exponent)]
    if case.wetted:
        since = began if case.past_unknown else (case.first_salt_on or began)
        found.append(corrosion.estimated_wall_m(new_m, rate, _years(since, until)))
    return [max(one, 0.0) for one in found]


def _rate_m_per_year(case: Case, wall: Wall, competent: Sequence[Taken]) -> float:
    """The greatest of what exposure makes likely, of the rate since new, and of competent readings of a place."""
    floor = "wall_rate_open_air"
    if case.wetted:
        floor = "wall_rate_field_default" if competent else "wall_rate_field_high"
    since_new = wall.forecast.long_term_m_per_year or 0.0
    return max([case.book.setting(floor), since_new, *_between_readings(competent)])


def _between_readings(competent: Sequence[Taken]) -> list[float]:
    """Of each place: from the latest reading at least half a year before its last one."""
    last = {one.reading.point: one for one in competent}
    earlier = {
        one.reading.point: one
        for one in competent
        if _years(one.inspection.on, last[one.reading.point].inspection.on) >= _LEAST_YEARS
    }
    return [
        corrosion.short_term_rate_m_per_year(
            one.reading.figure.si,
            last[place].reading.figure.si,
            _years(one.inspection.on, last[place].inspection.on),
        )
        for place, one in earlier.items()
    ]


def _years(since: date, day: date) -> float:
    return max(years((day - since).days), 0.0)
