"""The wall that a tube's strength is reckoned with: that of the wall rules, carried on to the next quarter.

It is the wall as it will be on the first day of the next quarter, so that a strength that was said stands until then:
the least over all places, read or not, each by the rate the wall rules give it, and rough faces allowed for.
"""

from datetime import date

from msgspec import Struct

from inspector.mechanics import corrosion
from inspector.rulebook.case import Case
from inspector.rulebook.wall_places import pace_of, wall_on
from inspector.rulebook.walls import Wall, wall_of
from inspector.units import years


class StrengthWall(Struct, frozen=True):
    """The wall to reckon strength with, in metres, and the day it belongs to; None: nobody can tell.

    unread: the points no competent person has read, where one has read others.
    """

    new_m: float
    now_m: float | None
    on: date
    estimated: bool  # some place was never read by a competent person
    unread: tuple[str, ...] = ()


def strength_wall(case: Case) -> StrengthWall | None:
    """The wall of a tube for its strength; None where the wall as new was not written down."""
    return case.once("strength wall", _work_out)


def _work_out(case: Case) -> StrengthWall | None:
    wall = wall_of(case)
    if wall is None:
        return None
    until, new_m = next_quarter(case.on), wall.forecast.nominal_m
    estimated = bool(wall.read.unread)
    if not wall.reckonable:
        return StrengthWall(new_m, None, until, estimated, wall.read.unread if wall.read.read else ())
    places = [wall_on(case, until, new_m, place, pace_of(place, wall.rate)) for place in wall.read.places]
    least_m = min([new_m, *places, *_behind_rough_faces(wall, until)])
    return StrengthWall(new_m, max(least_m, 0.0), until, estimated)


def next_quarter(on: date) -> date:
    """The first day of the next quarter of the calendar."""
    ahead = on.month - 1 - (on.month - 1) % 3 + 3
    return date(on.year + ahead // 12, ahead % 12 + 1, 1)


def _behind_rough_faces(wall: Wall, until: date) -> list[float]:
    """What each point's latest readings leave on the day, less what a rough face may have added to them."""
    pace = {place.point: pace_of(place, wall.rate) for place in wall.read.places}
    return [
        corrosion.estimated_wall_m(max(one.rough_m, 0.0), pace[one.reading.point], years((until - one.on).days))
        for one in wall.read.latest
    ]
