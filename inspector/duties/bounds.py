"""What no piece of gear for recovery has, whatever its kind: where it is typed, a unit or a sign was misread."""

from inspector.gear.item import Rating
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, Figure, System, show, system_of

MOST_FACTOR = 15.0
_RATINGS = {Dimension.FORCE: (500.0, 2e6), Dimension.MASS: (50.0, 50e3)}  # N and kg, least and most
_LONGEST_M, _WIDEST_M, _THICKEST_M, _WALL_M = 200.0, 1.0, 0.2, 0.05
_MOST_M = {"length": _LONGEST_M, "sheave_diameter": _WIDEST_M}
_MOST_M |= dict.fromkeys(("wall", "plate", "weld_throat", "corner_radius"), _WALL_M)
_MOST_COUNT, _MOST_CLASS = 500.0, 15.0


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
