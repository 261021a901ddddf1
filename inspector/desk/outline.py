"""Shapes of a drawing as Qt's paths, and what lies under a point. Millimetres."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath, QPainterPathStroker, QPolygonF

from inspector.drawings.extent import extent
from inspector.drawings.shapes import Circle, Drawing, Line, Point, Polygon, Polyline, RoundedRect, Shape, Text

_REACH_MM = 2.0  # how near a thin line the pointer must come


def outline(shape: Shape) -> QPainterPath:
    """The path of a shape; of a text, the box it stands in."""
    path = QPainterPath()
    match shape:
        case Circle():
            path.addEllipse(QPointF(*shape.centre), shape.radius_mm, shape.radius_mm)
        case RoundedRect():
            box = QRectF(*shape.corner, shape.wide_mm, shape.high_mm)
            path.addRoundedRect(box, shape.radius_mm, shape.radius_mm)
        case Line():
            path.addPolygon(_run((shape.start, shape.end)))
        case Polyline() | Polygon():
            path.addPolygon(_run(shape.points))
            if isinstance(shape, Polygon):
                path.closeSubpath()
        case Text():
            box_mm = extent(shape)
            path.addRect(QRectF(box_mm.left, box_mm.top, box_mm.width, box_mm.height))
    return path


def _run(points: tuple[Point, ...]) -> QPolygonF:
    return QPolygonF([QPointF(*point) for point in points])


def tells_at(drawing: Drawing, point: QPointF) -> str:
    """What the uppermost shape under a point in mm says; empty where none says anything."""
    for shape in reversed(drawing.shapes):
        if shape.tells and _covers(shape, point):
            return shape.tells
    return ""


def _covers(shape: Shape, point: QPointF) -> bool:
    path = outline(shape)
    if (shape.fill or isinstance(shape, Text)) and path.contains(point):
        return True
    stroker = QPainterPathStroker()
    stroker.setWidth(max(shape.width_mm, _REACH_MM))
    return shape.ink is not None and stroker.createStroke(path).contains(point)
