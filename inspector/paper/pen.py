"""Prints a drawing: shapes in millimetres become lines on the page."""

from reportlab.pdfgen.pathobject import PDFPathObject

from inspector.drawings.shapes import Circle, Drawing, Line, Point, Polygon, Polyline, RoundedRect, Shape, Text
from inspector.paper.page_style import MM, Type, colour
from inspector.paper.press import Press


def draw(drawing: Drawing, press: Press, left_pt: float, top_pt: float, scale: float = 1.0) -> None:
    """The drawing with its top left corner at left_pt, top_pt; scale 1 prints millimetres as millimetres."""
    pen = _Pen(press, left_pt, top_pt, scale * MM)
    press.canvas.saveState()
    press.canvas.setLineJoin(1)
    for shape in drawing.shapes:
        pen.print(shape)
    press.canvas.restoreState()


class _Pen:
    """One drawing at one place; factor: points for a millimetre of the drawing."""

    def __init__(self, press: Press, left_pt: float, top_pt: float, factor: float) -> None:
        self.press, self.canvas = press, press.canvas
        self.left_pt, self.top_pt, self.factor = left_pt, top_pt, factor

    def print(self, shape: Shape) -> None:
        """Any shape."""
        match shape:
            case Text():
                self._text(shape)
            case Circle():
                self._circle(shape)
            case RoundedRect():
                self._rect(shape)
            case _:
                self._path(shape)

    def _at(self, point: Point) -> tuple[float, float]:
        """A point of the drawing on the press, y still downwards."""
        return self.left_pt + point[0] * self.factor, self.top_pt + point[1] * self.factor

    def _text(self, text: Text) -> None:
        x, y = self._at(text.at)
        type_ = Type(text.size_mm * self.factor, text.bold, text.ink) if text.ink else None
        if type_:
            self.press.text(x, y, text.text, type_, text.anchor)

    def _circle(self, circle: Circle) -> None:
        x, y = self._at(circle.centre)
        stroke, fill = self._inks(circle)
        self.canvas.circle(x, self.press.up(y), circle.radius_mm * self.factor, stroke=stroke, fill=fill)

    def _rect(self, rect: RoundedRect) -> None:
        x, y = self._at((rect.corner[0], rect.corner[1] + rect.high_mm))
        wide, high, radius = (length * self.factor for length in (rect.wide_mm, rect.high_mm, rect.radius_mm))
        stroke, fill = self._inks(rect)
        if radius > 0:
            self.canvas.roundRect(x, self.press.up(y), wide, high, radius, stroke=stroke, fill=fill)
        else:
            self.canvas.rect(x, self.press.up(y), wide, high, stroke=stroke, fill=fill)

    def _path(self, shape: Line | Polyline | Polygon) -> None:
        points = (shape.start, shape.end) if isinstance(shape, Line) else shape.points
        path: PDFPathObject = self.canvas.beginPath()
        for number, point in enumerate(points):
            x, y = self._at(point)
            (path.lineTo if number else path.moveTo)(x, self.press.up(y))
        if isinstance(shape, Polygon):
            path.close()
        stroke, fill = self._inks(shape)
        self.canvas.drawPath(path, stroke=stroke, fill=fill)

    def _inks(self, shape: Shape) -> tuple[int, int]:
        """Sets line and fill; whether to stroke and to fill, as the canvas wants them."""
        if shape.ink:
            self.canvas.setStrokeColor(colour(shape.ink))
            self.canvas.setLineWidth(shape.width_mm * self.factor)
        self.canvas.setDash([part * self.factor for part in shape.dash_mm])
        if shape.fill:
            self.canvas.setFillColor(colour(shape.fill))
        return int(shape.ink is not None), int(shape.fill is not None)
