"""The quantities that rules ask of a tube's wall."""

from inspector.gear.verdict import Known, Value
from inspector.language import tr
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown
from inspector.rulebook.walls import Wall, wall_of
from inspector.units import DAYS_PER_YEAR, Dimension

_NO_END_DAYS = 1e6  # longer than any record
_NEVER_READ = "The wall has never been measured by a competent person."


def wall_relied(case: Case) -> Quantity:
    """The thinnest reading ever taken, less the gauge's accuracy: steel does not grow back."""
    wall = wall_of(case)
    return _read(wall, wall.read.relied_m) if wall else _no_wall(case)


def wall_rough_allowed(case: Case) -> Quantity:
    """The thinnest of each point's latest reading, less what a rough or unstated face may have added to it."""
    wall = wall_of(case)
    if wall and wall.read.is_dressed:
        return NOT_APPLICABLE  # the plain reading tells it all
    return _read(wall, wall.read.rough_relied_m) if wall else _no_wall(case)


def _read(wall: Wall, value_m: float | None) -> Quantity:
    if value_m is None or wall.read.thinnest is None:
        return unknown(tr(_NEVER_READ), "wall")
    reading = wall.read.thinnest.reading
    said = tr("read {value} at “{point}”", value=reading.figure.as_typed, point=reading.point or tr("worst place"))
    return Quantity(
        Value(number=max(value_m, 0.0), dimension=Dimension.LENGTH),
        came_from=said,
        measured_on=wall.read.thinnest.inspection.on,
        observation="wall",
        known=Known.MEASURED,
        seen_in=wall.read.thinnest.inspection,
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
    if wall.read.relied_m is None:
        return unknown(tr(_NEVER_READ), "wall")
    life = wall.forecast.life_years
    days = _NO_END_DAYS if life is None else min(life * DAYS_PER_YEAR, _NO_END_DAYS)
    return number(
        days,
        Dimension.DAYS,
        wall.forecast.rate_because,
        Known.ESTIMATED,
        per_day=-1.0,
        measured_on=wall.read.read_on,
        observation="wall",
    )


def wall_estimate(case: Case) -> Quantity:
    """Today's wall: the last reading less what has gone since, or the estimate from exposure."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if not wall.reckonable:
        return unknown(tr("Nobody knows how long it has rusted, and it was never measured."), "wall")
    said = tr("estimated from exposure") if wall.forecast.estimated else tr("last reading less the loss since")
    per_day = wall.per_day_m
    now_m = wall.forecast.wall_now_m
    return number(now_m, Dimension.LENGTH, said, Known.ESTIMATED, per_day=per_day, observation="wall")


def wall_reading_age(case: Case) -> Quantity:
    """Days since the last reading, or since the first salt where none was taken."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    if not case.wetted:
        return NOT_APPLICABLE
    since = wall.read.read_on or (None if case.past_unknown else case.first_salt_on)
    if since is None:
        return unknown(tr(_NEVER_READ), "wall")
    said = tr("last wall reading") if wall.read.read_on else tr("first day in salt, no reading since")
    days = (case.on - since).days
    return number(days, Dimension.DAYS, said, Known.COUNTED, measured_on=since, per_day=1.0, observation="wall")


def wall_reading_interval(case: Case) -> Quantity:
    """Days a reading may stand: half the life that was left, at most the club's cap."""
    wall = wall_of(case)
    if wall is None:
        return _no_wall(case)
    said = tr("half the remaining life, at most the club's cap")
    return number(wall.interval_days, Dimension.DAYS, said, Known.ESTIMATED)


def _no_wall(case: Case) -> Quantity:
    """A tube whose wall as new nobody wrote down is unknown; a kind without a wall has none."""
    if case.dossier.kind.measure("wall") is None:
        return NOT_APPLICABLE
    return unknown(tr("The wall as new was not written down."), "wall")
