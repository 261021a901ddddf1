"""The square section of a tube to scale: steel left, steel lost, and the wall it must keep."""

from inspector.drawings.shapes import Ink, RoundedRect, Shape
from inspector.drawings.wall_points import Frame
from inspector.drawings.wording import length_text
from inspector.gear.verdict import WallForecast
from inspector.language import tr
from inspector.units import System

_CORNER_WALLS = 2.0  # outer corner radius of a new cold-formed tube, in walls
_DASH = (1.0, 0.8)


def tube(wall: WallForecast, frame: Frame) -> list[Shape]:
    """The section as shapes in its frame, whose scale follows from the tube's outer side."""
    return [*_steel(wall, frame), *_limit(wall, frame)]


def _steel(wall: WallForecast, frame: Frame) -> list[Shape]:
    """Outer face, the wall now, the lost steel inside it, and the new inner face as a dashed line."""
    said = tr("The inside of a tube rusts unseen.")
    lost = _contour(wall, frame, wall.wall_now_m, ink=Ink.INK, width=0.3, fill=Ink.THIN, tells=said)
    hollow = _contour(wall, frame, max(wall.nominal_m, wall.wall_now_m), ink=None, fill=Ink.PAPER)
    new = _contour(wall, frame, wall.nominal_m, ink=Ink.FAINT, dash=_DASH, tells=tr("Inner face as new"))
    outer = _contour(wall, frame, 0.0, ink=Ink.INK, width=0.4, fill=Ink.STEEL, tells=tr("Steel that is left"))
    return [outer, lost, hollow, new]


def _limit(wall: WallForecast, frame: Frame) -> list[Shape]:
    said = tr("The wall must not be thinner than this: {why}", why=wall.required_because)
    return [_contour(wall, frame, wall.required_m, ink=Ink.LIMIT, width=0.45, tells=said)]


def _contour(
    wall: WallForecast,
    frame: Frame,
    depth_m: float,
    *,
    ink: Ink | None,
    width: float = 0.25,
    fill: Ink | None = None,
    dash: tuple[float, ...] = (),
    tells: str = "",
) -> RoundedRect:
    """A rounded square depth_m inside the outer face; its corner radius shrinks by the same depth."""
    depth = min(max(depth_m, 0.0) * frame.mm_per_m, frame.side_mm / 2)
    side = frame.side_mm - 2 * depth
    radius = min(_CORNER_WALLS * wall.nominal_m * frame.mm_per_m, frame.side_mm / 2) - depth
    corner = (frame.left_mm + depth, frame.top_mm + depth)
    rounded = min(max(radius, 0.0), side / 2)
    return RoundedRect(corner, side, side, rounded, ink=ink, width_mm=width, fill=fill, dash_mm=dash, tells=tells)


def scale_words(outside_m: float, system: System) -> str:
    """What the section is a section of."""
    return tr("Section of the tube, to scale; outside {outside}.", outside=length_text(outside_m, system))
