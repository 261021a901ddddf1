"""The wall of a tube as it was, as it is, and as it must at least be: the section to scale and one wall enlarged."""

from inspector.drawings.shapes import Drawing, Shape
from inspector.drawings.tube import scale_words, tube
from inspector.drawings.wall_strip import STRIP_HEIGHT_MM, enlarged_words, strip
from inspector.drawings.wording import LEADING_MM, length_text, note
from inspector.gear.verdict import WallForecast
from inspector.language import show_day, tr
from inspector.units import System

_WIDTH_MM = 86.0
_EDGE_MM = 1.0
_TUBE_MM = 37.0
_GAP_MM = 7.0
_MOST_NOTE_LINES = 9


def wall_section(wall: WallForecast, system: System = System.METRIC) -> Drawing:
    """The section of a tube, 86 mm wide and as high as its note needs.

    Where the outside was not written down, one wall alone is drawn, to scale.
    """
    title = tr("What is left of the wall")
    notes = _notes(wall, system)
    height = _EDGE_MM + STRIP_HEIGHT_MM + len(notes) * LEADING_MM + 2 * _EDGE_MM
    return Drawing(_WIDTH_MM, height, (*_pictures(wall, system), *notes), title, _describes(wall, system))


def _pictures(wall: WallForecast, system: System) -> list[Shape]:
    if wall.outside_m is None:
        return strip(wall, _EDGE_MM, _EDGE_MM, _WIDTH_MM - 2 * _EDGE_MM, system)
    return [
        *tube(wall, wall.outside_m, _EDGE_MM, _EDGE_MM, _TUBE_MM),
        *strip(wall, _strip_left(), _EDGE_MM, _strip_width(), system),
    ]


def _strip_left() -> float:
    return _EDGE_MM + _TUBE_MM + _GAP_MM


def _strip_width() -> float:
    return _WIDTH_MM - _EDGE_MM - _strip_left()


def _notes(wall: WallForecast, system: System) -> list[Shape]:
    top = _EDGE_MM + STRIP_HEIGHT_MM + _EDGE_MM
    said = " ".join((_scale(wall, system), _thinnest(wall), _limit(wall)))
    return note(said, _EDGE_MM, top, _WIDTH_MM - 2 * _EDGE_MM, _MOST_NOTE_LINES)


def _scale(wall: WallForecast, system: System) -> str:
    if wall.outside_m is None:
        return tr("One wall, to scale; the outside size of the tube was not written down.")
    return f"{scale_words(wall.outside_m, system)} {enlarged_words(wall, _strip_width())}"


def _thinnest(wall: WallForecast) -> str:
    if not wall.history:
        return tr("No reading was taken: the wall now is an estimate.")
    point = min(wall.history, key=lambda point: point.read_m)
    place = point.point or tr("worst place")
    said = tr("Thinnest reading {value} at “{point}” on {day}.")
    return said.format(value=point.as_typed, point=place, day=show_day(point.on))


def _limit(wall: WallForecast) -> str:
    return tr("Must keep: {why}.", why=wall.required_because) if wall.required_because else ""


def _describes(wall: WallForecast, system: System) -> str:
    said = tr("The wall was {new} thick when new, is {now} now, and must keep {required}. {thinnest}")
    if wall.estimated:
        said = tr("The wall was {new} thick when new, is estimated at {now} now, and must keep {required}. {thinnest}")
    new, now, required = (length_text(length, system) for length in (wall.nominal_m, wall.wall_now_m, wall.required_m))
    return said.format(new=new, now=now, required=required, thinnest=_thinnest(wall))
