"""The pen: drawings in the inks of the look, at any width, telling on hover what they show."""

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter

from inspector.desk.look import DARK, LIGHT, Colours, Look, Scheme, TextSize
from inspector.desk.outline import tells_at
from inspector.desk.pen import Mark, Picture, mark_icon, paint
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Polygon, Polyline, RoundedRect, Text
from inspector.gear.outcome import Outcome

DRAWING = Drawing(
    40.0,
    20.0,
    (
        RoundedRect((0.0, 0.0), 20.0, 20.0, 2.0, ink=None, fill=Ink.STEEL, tells="steel"),
        Line((20.0, 10.0), (40.0, 10.0), ink=Ink.LIMIT, width_mm=2.0, dash_mm=(1.0,), tells="limit"),
        Circle((10.0, 10.0), 3.0, ink=Ink.INK, fill=Ink.PAPER, tells="hole"),
        Polygon(((30.0, 1.0), (34.0, 1.0), (32.0, 5.0)), fill=Ink.MARK),
        Polyline(((22.0, 18.0), (30.0, 14.0), (38.0, 18.0)), tells="run"),
        Text((39.0, 19.0), "5 mm", 3.0, anchor=Anchor.END, bold=True),
    ),
    "A plate",
    "A plate with a hole.",
)


def painted(look: Look, width: int) -> QImage:
    """The drawing on white, so wide."""
    image = QImage(width, width // 2, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    paint(DRAWING, painter, 0, 0, width, look)
    painter.end()
    return image


@pytest.mark.parametrize(("scheme", "colours"), [(Scheme.LIGHT, LIGHT), (Scheme.DARK, DARK)])
@pytest.mark.parametrize("width", [200, 400])
def test_a_face_has_its_inks_colour_at_any_width(look: Look, scheme: Scheme, colours: Colours, width: int) -> None:
    """Roles become colours only here, and places scale with the width."""
    look.choose(scheme)
    image = painted(look, width)
    factor = width / 40
    assert image.pixelColor(int(3 * factor), int(10 * factor)) == QColor(colours.inks[Ink.STEEL])
    assert image.pixelColor(int(10 * factor), int(10 * factor)) == QColor(colours.inks[Ink.PAPER])
    assert image.pixelColor(int(32 * factor), int(2.5 * factor)) == QColor(colours.inks[Ink.MARK])
    look.choose(Scheme.LIGHT)


@pytest.mark.parametrize(
    ("place", "tells"),
    [((3.0, 10.0), "steel"), ((10.0, 10.0), "hole"), ((30.5, 10.5), "limit"), ((30.0, 14.2), "run"), ((25.0, 2.0), "")],
)
def test_the_uppermost_shape_tells_on_hover(qapp: object, place: tuple[float, float], tells: str) -> None:
    """A hole over steel tells of the hole; bare paper says nothing."""
    assert tells_at(DRAWING, QPointF(*place)) == tells


def test_a_picture_keeps_its_shape_and_describes_itself(look: Look) -> None:
    """Half as high as wide, and in words for whoever cannot see it."""
    picture = Picture(DRAWING, look)
    assert picture.heightForWidth(400) == 200
    assert picture.accessibleName() == "A plate"
    assert picture.accessibleDescription() == "A plate with a hole."
    picture.resize(400, 200)
    assert picture.tells(QPointF(100, 100)) == "hole"


@pytest.mark.parametrize("outcome", list(Outcome))
def test_each_mark_differs_from_the_others_by_shape_alone(look: Look, outcome: Outcome) -> None:
    """Without colour: the grey pictures of any two marks differ."""

    def grey(which: Outcome) -> bytes:
        image = mark_icon(which, look, 24).pixmap(24, 24).toImage().convertToFormat(QImage.Format.Format_Alpha8)
        return bytes(image.constBits())

    assert all(grey(outcome) != grey(other) for other in Outcome if other is not outcome)


def test_a_mark_grows_with_large_text(look: Look) -> None:
    """It stands beside its word, so it grows with it."""
    mark = Mark(Outcome.HOLD, look, 20)
    assert mark.width() == 20
    look.set_text(TextSize.LARGE)
    assert mark.width() == 30
    look.set_text(TextSize.USUAL)
