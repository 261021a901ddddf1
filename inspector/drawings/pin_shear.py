"""A pin in double shear, and its section to scale as new and at its thinnest place."""

from inspector.drawings.change import moved
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Shape, Text
from inspector.drawings.shear_parts import pin_section
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.damage import PinWear
from inspector.language import show_day, tr

_WIDTH_MM, _NARROW_MM, _HEIGHT_MM = 178.0, 88.0, 54.0
_PANEL_MM = 86.0
_HEAD_MM = 3.4
_LARGEST_MM = 12.0  # the radius that a pin as new is drawn with
_CENTRE = (_PANEL_MM + 26.0, 22.0)
_WORDS_MM, _ROOM_MM = 130.0, 44.0
_UNKNOWN_MM = 10.0


def pin_shear_picture(pin: PinWear, *, narrow: bool = False) -> Drawing:
    """Both panels beside one another, 178 mm wide; narrow: one above the other, 88 mm wide.

    What was never measured is not drawn, and is said to be unknown.
    """
    sections = [moved(one, -_PANEL_MM - 7.5, _HEIGHT_MM) for one in _sections(pin)] if narrow else _sections(pin)
    title = tr("How the pin bears, and what is left of it")
    width_mm, height_mm = (_NARROW_MM, 2 * _HEIGHT_MM) if narrow else (_WIDTH_MM, _HEIGHT_MM)
    return Drawing(width_mm, height_mm, (*_held(), *sections), title, " ".join((_held_words(), *_told(pin))))


def _held() -> list[Shape]:
    head = Text((0.5, _HEAD_MM), tr("Held on both sides: double shear"), LABEL_MM, bold=True)
    return [head, *pin_section((tr("pull"),), (tr("half"),)), *_lines(_held_words(), 0.5, 46.0, _PANEL_MM - 4.0)]


def _held_words() -> str:
    return tr(
        "Two sections share the pull, marked by the dashed lines. With play between the walls the pin bends first."
    )


def _sections(pin: PinWear) -> list[Shape]:
    """The section as new as an outline, the thinnest one filled, on one scale and one centre."""
    head = Text((_PANEL_MM + 8.0, _HEAD_MM), tr("Its section, to scale"), LABEL_MM, bold=True)
    shapes: list[Shape] = [head]
    if pin.new_m:
        gone = Ink.THIN if pin.thinnest_m else None
        shapes.append(Circle(_CENTRE, _LARGEST_MM, fill=gone, width_mm=0.3, dash_mm=(1.0, 0.8)))
    if not pin.thinnest_m:
        at = (_CENTRE[0], _CENTRE[1] + 0.35 * _UNKNOWN_MM)
        shapes.append(Text(at, "?", _UNKNOWN_MM, anchor=Anchor.MIDDLE, bold=True))
    if pin.thinnest_m:
        radius = _LARGEST_MM * (pin.thinnest_m / pin.new_m if pin.new_m else 1.0)
        shapes += [Circle(_CENTRE, radius, fill=Ink.STEEL, width_mm=0.3), *_across(radius)]
    return [*shapes, *_words(pin)]


def _across(radius_mm: float) -> list[Shape]:
    """The diameter, below the section."""
    (x, y), down = _CENTRE, _CENTRE[1] + _LARGEST_MM + 3.0
    ends = (x - radius_mm, x + radius_mm)
    ticks = [Line((at, y), (at, down + 0.8), ink=Ink.FAINT, width_mm=0.15) for at in ends]
    return [*ticks, Line((ends[0], down), (ends[1], down), width_mm=0.25)]


def _words(pin: PinWear) -> list[Shape]:
    shapes: list[Shape] = []
    top = 10.0
    for number, text in enumerate(_told(pin)):
        lines = _lines(text, _WORDS_MM, top, _ROOM_MM, bold=number == 1)
        shapes += lines
        top += len(lines) * LEADING_MM + 2.0
    if pin.as_typed:
        at = (_CENTRE[0], _CENTRE[1] + _LARGEST_MM + 7.0)
        shapes.append(Text(at, pin.as_typed, LABEL_MM, anchor=Anchor.MIDDLE, bold=True))
    return shapes


def _told(pin: PinWear) -> tuple[str, ...]:
    new = tr("As new: {size}, the dashed outline.", size=pin.new_typed)
    thin = tr("Thinnest: {size}, read on {day}.", size=pin.as_typed, day=show_day(pin.read_on)) if pin.read_on else ""
    return (
        new if pin.new_m else tr("Its diameter as new is not written down."),
        thin or tr("It was never measured since it came in: what is left of it is unknown."),
    )


def _lines(text: str, left_mm: float, top_mm: float, width_mm: float, *, bold: bool = False) -> list[Shape]:
    found = wrapped(text, width_mm, LABEL_MM * (1.15 if bold else 1.0))
    return [
        Text((left_mm, top_mm + (number + 0.8) * LEADING_MM), line, LABEL_MM, bold=bold)
        for number, line in enumerate(found)
    ]
