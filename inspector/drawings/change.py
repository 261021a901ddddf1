"""Shapes moved, enlarged and turned to the other side."""

from msgspec.structs import replace

from inspector.drawings.shapes import Circle, Line, Point, Polygon, Polyline, RoundedRect, Shape, Text


def moved(shape: Shape, across_mm: float, down_mm: float = 0.0) -> Shape:
    """The shape across_mm further to the right and down_mm further down."""
    return _changed(shape, 1.0, across_mm, down_mm)


def grown(shape: Shape, factor: float) -> Shape:
    """The shape enlarged about the origin, line widths and type with it."""
    return _changed(shape, factor, 0.0, 0.0)


def mirrored(shape: Shape) -> Shape:
    """The shape with left and right changed; words stay readable and stand at their new place."""
    match shape:
        case Line():
            return replace(shape, start=_flipped(shape.start), end=_flipped(shape.end))
        case Circle():
            return replace(shape, centre=_flipped(shape.centre))
        case RoundedRect():
            return replace(shape, corner=(-shape.corner[0] - shape.wide_mm, shape.corner[1]))
        case Text():
            return replace(shape, at=_flipped(shape.at))
        case Polyline() | Polygon():
            return replace(shape, points=tuple(_flipped(point) for point in shape.points))


def _flipped(point: Point) -> Point:
    return -point[0], point[1]


def _changed(shape: Shape, factor: float, across_mm: float, down_mm: float) -> Shape:
    def at(point: Point) -> Point:
        return (point[0] + across_mm) * factor, (point[1] + down_mm) * factor

    drawn = replace(shape, width_mm=shape.width_mm * factor, dash_mm=tuple(part * factor for part in shape.dash_mm))
    match drawn:
        case Line():
            return replace(drawn, start=at(drawn.start), end=at(drawn.end))
        case Circle():
            return replace(drawn, centre=at(drawn.centre), radius_mm=drawn.radius_mm * factor)
        case RoundedRect():
            return _grown_rect(drawn, at(drawn.corner), factor)
        case Text():
            return replace(drawn, at=at(drawn.at), size_mm=drawn.size_mm * factor)
        case Polyline() | Polygon():
            return replace(drawn, points=tuple(at(point) for point in drawn.points))


def _grown_rect(rect: RoundedRect, corner: Point, factor: float) -> RoundedRect:
    wide, high, radius = (length * factor for length in (rect.wide_mm, rect.high_mm, rect.radius_mm))
    return replace(rect, corner=corner, wide_mm=wide, high_mm=high, radius_mm=radius)
