"""A vehicle from the side as a plain outline, its tow height at the line. Millimetres."""

from inspector.drawings.change import moved
from inspector.drawings.rig_arcs import ring
from inspector.drawings.rig_signs import Reach
from inspector.drawings.shapes import Circle, Ink, Line, Point, Polygon, Polyline, Shape

_OUTLINE = (
    (-10.4, 1.6), (-10.4, -1.8), (-9.4, -2.4), (-8.2, -6.4), (2.6, -6.4), (5.4, -2.6),
    (10.0, -1.9), (10.4, -1.2), (10.4, 1.6),
)  # fmt: skip
_WINDOWS = (
    ((-8.2, -2.8), (-7.3, -5.6), (-3.4, -5.6), (-3.4, -2.8)),
    ((-2.6, -2.8), (-2.6, -5.6), (2.2, -5.6), (4.2, -2.8)),
)


def vehicle(at: Point, reach: Reach, tells: str, *, stuck: bool) -> list[Shape]:
    """The outline about a place, with the line that leaves it; stuck: mud up to its axles."""
    body: list[Shape] = [
        *_line(-reach.left_mm, -10.4),
        *_line(10.4, reach.right_mm),
        Polygon(_OUTLINE, width_mm=0.4, fill=Ink.BAND, tells=tells),
        *(Polygon(points, width_mm=0.2, fill=Ink.PAPER) for points in _WINDOWS),
        *(Circle((x, 2.2), 2.1, width_mm=0.4, fill=Ink.STEEL) for x in (-6.4, 6.2)),
        *(ring((x, 2.2), 0.8, 0.25) for x in (-6.4, 6.2)),
    ]
    return [moved(shape, *at) for shape in (*body, *_ground(stuck))]


def _line(start_mm: float, end_mm: float) -> list[Shape]:
    return [Line((start_mm, 0.0), (end_mm, 0.0), width_mm=0.5)] if end_mm > start_mm else []


def _ground(stuck: bool) -> list[Shape]:
    """A level line; where it is stuck, a heap round its wheels."""
    if not stuck:
        return [Line((-11.0, 4.4), (11.0, 4.4), ink=Ink.FAINT)]
    heap = ((-11.0, 2.6), (-9.2, 2.4), (-8.6, 1.9), (-4.2, 2.5), (4.0, 2.4), (8.4, 1.9), (9.2, 2.6), (11.0, 2.4))
    mud = Polygon((*heap, (11.0, 4.9), (-11.0, 4.9)), ink=None, fill=Ink.THIN)
    return [mud, Polyline(heap, ink=Ink.FAINT, width_mm=0.3)]
