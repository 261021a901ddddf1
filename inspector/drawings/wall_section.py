"""The wall of a tube as it was, as it is, and as it must at least be: the section to scale and one wall enlarged."""

from types import MappingProxyType

from inspector.drawings.shapes import Drawing, Shape
from inspector.drawings.tube import scale_words, tube
from inspector.drawings.wall_points import Frame, Spot, below, on_section, spots
from inspector.drawings.wall_strip import STRIP_HEIGHT_MM, enlarged_words, strip
from inspector.drawings.wall_words import How
from inspector.drawings.wording import LEADING_MM, length_text, note
from inspector.gear.kind import kind_word
from inspector.gear.verdict import WallForecast
from inspector.language import show_day, tr
from inspector.units import System

_WIDTH_MM = 86.0
_EDGE_MM = 1.0
_TUBE_MM = 37.0
_GAP_MM = 7.0
_MOST_NOTE_LINES = 9


def wall_section(wall: WallForecast, system: System = System.METRIC, how: How = MappingProxyType({})) -> Drawing:
    """The section of a tube, 86 mm wide and as high as its points and its note need.

    Where the outside was not written down, one wall alone is drawn, to scale. how: how each reading was taken and by
    whom, in words, told on hover.
    """
    title = tr("What is left of the wall")
    pictures, untold = _pictures(wall, system, how)
    top = _EDGE_MM + STRIP_HEIGHT_MM + _EDGE_MM
    listed, top = below(untold, _EDGE_MM, top, _WIDTH_MM - 2 * _EDGE_MM, how)
    notes = _notes(wall, system, top)
    height = top + len(notes) * LEADING_MM + _EDGE_MM
    return Drawing(_WIDTH_MM, height, (*pictures, *listed, *notes), title, _describes(wall, system))


def _pictures(wall: WallForecast, system: System, how: How) -> tuple[list[Shape], list[Spot]]:
    """The drawings, and the places whose readings are to be told below them."""
    if wall.outside_m is None:
        return strip(wall, _EDGE_MM, _EDGE_MM, _WIDTH_MM - 2 * _EDGE_MM, system), spots(wall)
    frame = Frame(_EDGE_MM, _EDGE_MM, _TUBE_MM, _TUBE_MM / wall.outside_m)
    dots, untold = on_section(wall, frame, how)
    enlarged = strip(wall, _strip_left(), _EDGE_MM, _strip_width(), system)
    return [*tube(wall, frame), *dots, *enlarged], untold


def _strip_left() -> float:
    return _EDGE_MM + _TUBE_MM + _GAP_MM


def _strip_width() -> float:
    return _WIDTH_MM - _EDGE_MM - _strip_left()


def _notes(wall: WallForecast, system: System, top: float) -> list[Shape]:
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
    place = kind_word(point.point) or tr("worst place")
    said = tr("Thinnest reading {value} at “{point}” on {day}.")
    return said.format(value=point.as_typed, point=place, day=show_day(point.on))


def _limit(wall: WallForecast) -> str:
    return tr("Must keep: {why}.", why=wall.required_because) if wall.required_because else ""


def _describes(wall: WallForecast, system: System) -> str:
    never = tr("Never read: {points}.", points=", ".join(wall.unread_points)) if wall.unread_points else ""
    said = tr("The wall was {new} thick when new, is {now} now, and must keep {required}. {thinnest}")
    if wall.estimated:
        said = tr("The wall was {new} thick when new, is estimated at {now} now, and must keep {required}. {thinnest}")
    new, now, required = (length_text(length, system) for length in (wall.nominal_m, wall.wall_now_m, wall.required_m))
    return f"{said.format(new=new, now=now, required=required, thinnest=_thinnest(wall))} {never}".strip()
