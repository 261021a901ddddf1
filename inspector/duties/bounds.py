"""What no piece of gear for recovery has, and what none went through: where it is typed, something was misread."""

from datetime import date

from inspector.gear.item import Item, Rating
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.units import Dimension, Figure, System, show, system_of

MOST_FACTOR = 15.0
_RATINGS = {Dimension.FORCE: (500.0, 2e6), Dimension.MASS: (50.0, 50e3)}  # N and kg, least and most
_LONGEST_M, _WIDEST_M, _THICKEST_M, _WALL_M = 200.0, 1.0, 0.2, 0.05
_MOST_M = {"length": _LONGEST_M, "sheave_diameter": _WIDEST_M}
_MOST_M |= dict.fromkeys(("wall", "plate", "weld_throat", "corner_radius"), _WALL_M)
_MOST_COUNT, _MOST_CLASS = 500.0, 15.0
_COLDEST_C, _HOTTEST_C = -80.0, 1500.0  # no frost on earth is colder, and steel melts
_FIRST_DAY = date(1950, 1, 1)


def check_rating_bounds(rating: Rating) -> None:
    """Refuse a rating, or a design factor, that no piece has."""
    if rating.figure and rating.figure.dimension in _RATINGS:
        least, most = _RATINGS[rating.figure.dimension]
        _check(tr("rating"), rating.figure, least, most)
    if rating.design_factor is not None and not 1 <= rating.design_factor <= MOST_FACTOR:
        why = tr("A design factor lies between 1 and {most}.", most=f"{MOST_FACTOR:g}")
        raise Refused(tr("design factor"), why, tr("Write the factor of the certificate, or leave it empty."))


def check_size_bounds(key: str, name: str, figure: Figure) -> None:
    """Refuse a size that no piece has. key, name: of the size."""
    most = {
        Dimension.LENGTH: _MOST_M.get(key, _THICKEST_M if key.endswith("diameter") else _WIDEST_M),
        Dimension.FORCE: _RATINGS[Dimension.FORCE][1],
        Dimension.COUNT: _MOST_COUNT,
        Dimension.FACTOR: _MOST_CLASS,
    }.get(figure.dimension)
    if most is not None:
        _check(name, figure, 0.0, most)


def check_heat_bounds(hottest: Figure) -> None:
    """Refuse a temperature that no piece went through and was still one."""
    if not _COLDEST_C <= hottest.si <= _HOTTEST_C:
        why = tr("“{typed}” is no temperature that a piece went through.", typed=hottest.as_typed)
        raise Refused(tr("hottest"), why, tr("Is the unit right? Read it again."))


def check_not_ancient(field: str, day: date | None) -> None:
    """Refuse the making or first use of a piece that nobody would have kept so long."""
    if day and day < _FIRST_DAY:
        why = tr("No piece of gear is from {day}.", day=show_day(day))
        raise Refused(field, why, tr("Correct the year, or leave the day empty where nobody knows it."))


def check_after_birth(field: str, item: Item, on: date) -> None:
    """Refuse a day before the piece was there, where that is known."""
    born = item.born_on
    if born and on < born:
        why = tr("{tag} was not there before {day}.", tag=item.tag, day=show_day(born))
        raise Refused(field, why, tr("Correct the day; is it this piece?"))


def check_within_life(item: Item, days_count: int, today: date) -> None:
    """Refuse more days of exposure than the piece has been there for, where that is known."""
    born = item.born_on
    if born and days_count > (today - born).days + 1:
        why = tr("{tag} has not been there for so many days: it is from {day}.", tag=item.tag, day=show_day(born))
        raise Refused(tr("days"), why, tr("Write for how many days it was exposed."))


def _check(field: str, figure: Figure, least: float, most: float) -> None:
    if least <= figure.si <= most:
        return
    bound = show(most if figure.si > most else least, figure.dimension, system_of(figure.as_typed, System.METRIC))
    says = (
        tr("“{typed}” is more than any piece of gear has ({bound}).")
        if figure.si > most
        else tr("“{typed}” is less than any piece of gear has ({bound}).")
    )
    raise Refused(field, says.format(typed=figure.as_typed, bound=bound), tr("Is the unit right? Read it again."))
