"""Why a ball is no recovery point: one neck on a lever beside a pin held on both sides."""

from inspector.drawings.change import grown, moved
from inspector.drawings.shapes import Drawing, Shape, Text
from inspector.drawings.shear_parts import ball_section, pin_section
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
    return [
        Text((0.5, _HEAD_Y_MM), tr("Ball on its shank: single shear"), LABEL_MM, bold=True),
        *ball_section((tr("pull"),), (tr("lever"),)),
        *_words(tr("The pull acts on a lever: it bends the neck, and one section carries it all. "
                   "A ball that snaps off flies.")),
    ]  # fmt: skip


def _pin() -> list[Shape]:
    return [
        Text((0.5, _HEAD_Y_MM), tr("Pin through a receiver: double shear"), LABEL_MM, bold=True),
        *pin_section((tr("pull"),), (tr("half"),)),
        *_words(tr("The pin is held on both sides of the pull: there is no lever, and two sections share it.")),
    ]


def _words(text: str) -> list[Shape]:
    return [
        Text((0.5, _WORDS_Y_MM + 0.8 * LEADING_MM + number * LEADING_MM), line, LABEL_MM)
        for number, line in enumerate(wrapped(text, _PANEL_MM - 1.0)[:2])
    ]
