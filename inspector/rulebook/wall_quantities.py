"""The quantities that rules ask of a tube's wall."""

from inspector.gear.kind import kind_word
from inspector.gear.verdict import Known, Value
from inspector.language import later, tr
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown, word
from inspector.rulebook.wall_readings import Gauged, Place, is_tried, point_of
from inspector.rulebook.wall_sums import doubts
from inspector.rulebook.walls import Wall, wall_of
from inspector.units import DAYS_PER_YEAR, Dimension

_NO_END_DAYS = 1e6  # longer than any record
_NEVER_READ = later("The wall has never been measured by a competent person.")


def wall_relied(case: Case) -> Quantity:
    """The thinnest reading ever taken, less the gauge's accuracy: steel does not grow back."""
    wall = wall_of(case)
    return _read(wall.read.thinnest) if wall else _no_wall(case)


def wall_rough_allowed(case: Case) -> Quantity:
    """The thinnest of each point's latest reading, less what a rough or unstated face may have added to it."""
    wall = wall_of(case)
    if wall and wall.read.is_dressed:
        return NOT_APPLICABLE  # the plain reading tells it all
    return _read(wall.read.roughest, rough=True) if wall else _no_wall(case)


def _read(taken: Gauged | None, *, rough: bool = False) -> Quantity:
    if taken is None:
        return unknown(tr(_NEVER_READ), "wall")
    reading = taken.reading
    said = tr(
        "read {value} at “{point}”", value=reading.figure.as_typed, point=kind_word(reading.point) or tr("worst place")
    )
    return Quantity(
        Value(number=max(taken.rough_m if rough else taken.relied_m, 0.0), dimension=Dimension.LENGTH),
        came_from=said + doubts(point_of(taken)),
        measured_on=taken.on,
        observation="wall",
        known=Known.MEASURED,
        seen_in=taken.inspection,
    )


def required_wall(case: Case) -> Quantity:
    """What must be left of the wall."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    return number(wall.forecast.required_m, Dimension.LENGTH, wall.forecast.required_because, Known.STATED)


def wall_life(case: Case) -> Quantity:
    """Days until the wall reaches the required one at the governing rate; unknown without a reading."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if not wall.read.read:
        return unknown(tr(_NEVER_READ), "wall")
    life = wall.forecast.life_years
    days = _NO_END_DAYS if life is None else min(life * DAYS_PER_YEAR, _NO_END_DAYS)
    said = wall.forecast.rate_because
    read_on = max(place.read_on for place in wall.read.read if place.read_on)
    return number(days, Dimension.DAYS, said, Known.ESTIMATED, per_day=-1.0, measured_on=read_on, observation="wall")


def wall_estimate(case: Case) -> Quantity:
    """Today's least wall: a place's last reading less what has gone since, or the estimate where it was never read."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if not wall.reckonable:
        return unknown(tr("Nobody knows how long it has rusted, and {unread}.", unread=_unread(wall)), "wall")
    least = wall.thinnest
    said = tr("last reading at “{point}” less the loss since", point=kind_word(least.point))
    if least.read_on is None:
        said = tr("estimated from exposure; {unread}", unread=_unread(wall))
    per_day = min(place.per_day_m for place in wall.places)
    return number(least.now_m, Dimension.LENGTH, said, Known.ESTIMATED, per_day=per_day, observation="wall")


def _unread(wall: Wall) -> str:
    if not wall.read.read:
        return tr("it was never measured")
    return tr("never read: {points}", points=", ".join(wall.read.unread))


def wall_reading_age(case: Case) -> Quantity:
    """Days since the reading of the point read longest ago; unknown while a point was never read."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if not case.wetted:
        return NOT_APPLICABLE
    oldest = wall.read.longest_ago
    if oldest is None or oldest.read_on is None:
        why = tr(_NEVER_READ) if not wall.read.read else tr("One point tells nothing of the others.")
        never = tr("Never read: {points}.", points=", ".join(wall.read.unread))
        return unknown(f"{why} {never}" if wall.read.unread else why, "wall")
    days = (case.on - oldest.read_on).days
    said = tr("point read longest ago: “{point}”", point=kind_word(oldest.point))
    read_on = oldest.read_on
    return number(days, Dimension.DAYS, said, Known.COUNTED, measured_on=read_on, per_day=1.0, observation="wall")


def wall_unread_age(case: Case) -> Quantity:
    """Days since a tube that salt never reached came into service, while a place of its wall was never read."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if case.wetted or not wall.read.unread:
        return NOT_APPLICABLE  # salt asks for a reading of its own, and what was read is reckoned with
    began = case.dossier.item.life_began_on
    if began is None:
        return unknown(tr("Nobody knows how long it has rusted, and {unread}.", unread=_unread(wall)), "wall")
    said = tr("since it came into service; {unread}", unread=_unread(wall))
    days = max((case.on - began).days, 0)
    return number(days, Dimension.DAYS, said, Known.COUNTED, per_day=1.0, observation="wall")


def wall_reading_interval(case: Case) -> Quantity:
    """Days a reading may stand: half the life that was left, at most the club's cap."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    said = tr("half the remaining life, at most the club's cap")
    return number(wall.interval_days, Dimension.DAYS, said, Known.ESTIMATED)


def wall_gauge(case: Case) -> Quantity:
    """Whether the gauge was tried on its block on the day of each point's last reading; not stated is not tried."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if not case.wetted:
        return NOT_APPLICABLE  # no reading is needed for a pull
    if not wall.read.read:
        return unknown(tr(_NEVER_READ), "wall")
    untried = [place for place in wall.read.read if not _tried(place)]
    days = [place.read_on for place in untried or wall.read.read if place.read_on]
    if untried:
        said = tr("read at {points}", points=", ".join(kind_word(one.point) for one in untried))
        return word("untried", said, Known.STATED, max(days))
    return word("tried", tr("each point's last reading"), Known.STATED, min(days))


def _tried(place: Place) -> bool:
    return any(is_tried(one.reading) for one in place.last)


def _no_wall(case: Case) -> Quantity:
    """A tube whose wall as new nobody wrote down is unknown; a kind without a wall has none."""
    if case.dossier.kind.measure("wall") is None:
        return NOT_APPLICABLE
    return unknown(tr("The wall as new was not written down."), "wall")
