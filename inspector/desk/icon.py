"""The small pictures beside the names of places: lines drawn as SVG, in the ink of the look that is in force.

An icon only repeats its word; nothing is said by it alone.
"""

from functools import cache
from pathlib import Path

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from inspector.desk.look import Look
from inspector.drawings.inks import Ink

_DRAWN_IN = "#000000"
_FOLDER = Path(__file__).parent / "icons"


def icon(name: str, look: Look, size_px: int) -> QIcon:
    """The icon of a place, sharp on a dense screen too; an empty one where the place has none."""
    made = QIcon()
    if drawn := _svg(name):
        picture = QSvgRenderer(QByteArray(drawn.replace(_DRAWN_IN, look.colours.inks[Ink.INK]).encode()))
        for density in look.densities():
            made.addPixmap(_painted(picture, size_px, density))
    return made


def _painted(picture: QSvgRenderer, size_px: int, density: int) -> QPixmap:
    pixmap = QPixmap(size_px * density, size_px * density)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    picture.render(painter, QRectF(pixmap.rect()))
    painter.end()
    pixmap.setDevicePixelRatio(density)
    return pixmap


@cache
def _svg(name: str) -> str:
    place = _FOLDER / f"{name}.svg"
    return place.read_text(encoding="utf-8") if place.is_file() else ""
