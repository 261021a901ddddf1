"""Why a ball is no recovery point: one neck on a lever beside a pin held on both sides."""

from inspector.drawings.change import grown, moved
from inspector.drawings.shapes import (
    Anchor,
    Circle,
    Drawing,
    Ink,
    Line,
    Point,
    Polygon,
    Polyline,
    RoundedRect,
    Shape,
    Text,
)
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.language import tr

_WIDTH_MM = 178.0
_HEIGHT_MM = 52.5
_PANEL_MM = 86.0
_HEAD_Y_MM = 3.4
_WORDS_Y_MM = 44.9


def shear_picture(width_mm: float = _WIDTH_MM) -> Drawing:
    """Both cases side by side, width_mm wide, the height in proportion."""
    factor = width_mm / _WIDTH_MM
    shapes = [*_ball(), *(moved(shape, _WIDTH_MM - _PANEL_MM) for shape in _pin())]
    describes = tr(
        "Left: a ball on its shank, pulled from the side; the pull bends the neck and one section carries all. "
        "Right: a pin through a receiver; it is held on both sides and two sections share the pull."
    )
    larger = tuple(grown(shape, factor) for shape in shapes)
    return Drawing(width_mm, _HEIGHT_MM * factor, larger, tr("Why a ball is no recovery point"), describes)


def _ball() -> list[Shape]:
    """A ball from the side: plate, shank, nut, neck, ball; the pull at the ball's height."""
    return [
        Text((0.5, _HEAD_Y_MM), tr("Ball on its shank: single shear"), LABEL_MM, bold=True),
        RoundedRect((8, 33), 44, 4, fill=Ink.STEEL, tells=tr("Plate of the ball mount")),
        RoundedRect((25, 37), 10, 4.4, 0.6, fill=Ink.STEEL, tells=tr("Nut")),
        RoundedRect((27, 41.4), 6, 2.2, 0.4, fill=Ink.STEEL, tells=tr("Shank")),
        RoundedRect((23.5, 30.6), 13, 2.4, 0.5, fill=Ink.STEEL, tells=tr("Collar")),
        Polygon(((27, 30.6), (26.8, 24), (33.2, 24), (33, 30.6)), fill=Ink.STEEL, tells=tr("Neck")),
        Circle((30, 17), 8, fill=Ink.STEEL, tells=tr("Ball")),
        *_arrow((38, 17), (60, 17), 1.1),
        Text((61.5, 18.0), tr("pull"), LABEL_MM),
        *_arrow((52, 35), (66, 35), 0.6, back=True),
        Text((67.5, 36.0), tr("held here"), LABEL_MM),
        *_lever(),
        *_cut((22, 30.2), (38, 30.2)),
        *_words(tr("The pull acts on a lever: it bends the neck, and one section carries it all. "
                   "A ball that snaps off flies.")),
    ]  # fmt: skip


def _lever() -> list[Shape]:
    """The distance between the pull and the section that bends."""
    line = Line((14, 17), (14, 30.2), width_mm=0.3, tells=tr("Lever of the pull"))
    reach = [Line((12.5, y), (26 if y > 20 else 22, y), ink=Ink.FAINT, width_mm=0.15) for y in (17.0, 30.2)]
    heads = [Polygon(((14, y), (13.4, y + way), (14.6, y + way)), ink=None, fill=Ink.INK)
             for y, way in ((17.0, 1.8), (30.2, -1.8))]  # fmt: skip
    return [*reach, line, *heads, Text((11.5, 24.6), tr("lever"), LABEL_MM, anchor=Anchor.END)]


def _pin() -> list[Shape]:
    """A receiver cut open: two walls, the insert between them, the pin through all three."""
    return [
        Text((0.5, _HEAD_Y_MM), tr("Pin through a receiver: double shear"), LABEL_MM, bold=True),
        RoundedRect((4, 11.5), 40, 5, fill=Ink.STEEL, tells=tr("Receiver, upper wall")),
        RoundedRect((4, 32.5), 40, 5, fill=Ink.STEEL, tells=tr("Receiver, lower wall")),
        RoundedRect((14, 17.5), 42, 14, 1, fill=Ink.BAND, tells=tr("Insert")),
        RoundedRect((26, 9), 6, 31, 1, fill=Ink.STEEL, tells=tr("Hitch pin")),
        *_arrow((56, 24.5), (74, 24.5), 1.1),
        Text((75.5, 25.5), tr("pull"), LABEL_MM),
        *_arrow((44, 14), (60, 14), 0.6, back=True),
        Text((61.5, 15.0), tr("half"), LABEL_MM),
        *_arrow((44, 35), (60, 35), 0.6, back=True),
        Text((61.5, 36.0), tr("half"), LABEL_MM),
        *_cut((22.5, 17), (35.5, 17)),
        *_cut((22.5, 32), (35.5, 32)),
        *_words(tr("The pin is held on both sides of the pull: there is no lever, and two sections share it.")),
    ]


def _cut(start: Point, end: Point) -> list[Shape]:
    """A section that carries the load."""
    said = tr("A section that carries the load")
    return [Line(start, end, ink=Ink.LIMIT, width_mm=0.7, dash_mm=(1.6, 0.8), tells=said)]


def _arrow(start: Point, end: Point, width_mm: float, *, back: bool = False) -> list[Shape]:
    """A level force arrow between two points; back: it points to the left."""
    (left, y), (right, _) = start, end
    length, half = 1.5 + 2.2 * width_mm, 0.6 + 1.1 * width_mm
    tip, foot = (left, left + length) if back else (right, right - length)
    shaft = Polyline(((foot, y), (right if back else left, y)), ink=Ink.FORCE, width_mm=width_mm)
    head = Polygon(((tip, y), (foot, y - half), (foot, y + half)), ink=None, fill=Ink.FORCE)
    return [shaft, head]


def _words(text: str) -> list[Shape]:
    return [
        Text((0.5, _WORDS_Y_MM + 0.8 * LEADING_MM + number * LEADING_MM), line, LABEL_MM)
        for number, line in enumerate(wrapped(text, _PANEL_MM - 1.0)[:2])
    ]
