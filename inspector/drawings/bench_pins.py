"""Pictures of the bench to one scale: a pin held on one side and on both, a tow ball's shank beside such a pin."""

from inspector.drawings.bench_parts import HEAD_MM, Compared, bars, framed, head, right
from inspector.drawings.force_marks import cut, lever, pull_arrow
from inspector.drawings.shapes import Circle, Drawing, Ink, RoundedRect, Shape
from inspector.gear.bench import Worked
from inspector.language import tr
from inspector.units import Dimension, System, show

_MM_PER_M = 280.0  # of the picture
_SECTION_MM = 40.0  # high
_PIN_AT_MM = 20.0
_HELD_FROM_MM, _WALL_MM = 3.0, 32.0
_PULLED_FROM_MM, _PULLED_MM = 9.0, 34.0


def pin_picture(worked: Worked, system: System) -> Drawing:
    """The same pin twice: one wall holds it, two walls hold it; below, what each bears."""
    single, double = worked.amount("single_n"), worked.amount("double_n")
    shapes: list[Shape] = [
        head(tr("Held on one side: single shear"), 0.0),
        *_held(worked, both=False),
        *right([head(tr("Held on both sides: double shear"), 0.0), *_held(worked, both=True)]),
    ]
    compared = (
        Compared(tr("bears in double shear"), show(double, Dimension.FORCE, system), double),
        Compared(tr("bears in single shear"), show(single, Dimension.FORCE, system), single, weak=True),
    )
    more, top_mm = bars(compared, HEAD_MM + _SECTION_MM + 1.0)
    note = tr("Pin, walls and play to one scale. Dashed: sections that carry the pull.")
    return framed(worked, [*shapes, *more], top_mm, note)


def _held(worked: Worked, *, both: bool) -> list[Shape]:
    """A pin through what pulls and the wall or walls that hold it."""
    pin, between, play, wall = (worked.amount(key) * _MM_PER_M for key in ("pin_m", "between_m", "play_m", "wall_m"))
    middle = HEAD_MM + _SECTION_MM / 2
    top, foot = middle - between / 2, middle + between / 2
    upper = [top - play - wall, *([foot + play] if both else [])]
    reach = wall + play + 2.0
    pin_top, pin_foot = top - reach, foot + (reach if both else 2.0)
    shapes: list[Shape] = [
        RoundedRect((_HELD_FROM_MM, y), _WALL_MM, wall, fill=Ink.STEEL, tells=tr("Wall that holds the pin"))
        for y in upper
    ]
    shapes.append(RoundedRect((_PULLED_FROM_MM, top), _PULLED_MM, between, 0.6, fill=Ink.BAND, tells=tr("What pulls")))
    left = _PIN_AT_MM - pin / 2
    shapes.append(RoundedRect((left, pin_top), pin, pin_foot - pin_top, 0.4, fill=Ink.STEEL, tells=tr("Pin")))
    shapes += pull_arrow((_PULLED_FROM_MM + _PULLED_MM, middle), (53.0, middle), 1.0)
    cuts = [top - play / 2, *([foot + play / 2] if both else [])]
    for y in cuts:
        shapes += cut((left - 3.0, y), (left + pin + 3.0, y))
    return shapes


def ball_picture(worked: Worked, system: System) -> Drawing:
    """The ball on its shank and the pin in double shear, to one scale; below, what each bears."""
    height_m = worked.amount("height_m")
    words = (tr("lever"), show(height_m, Dimension.LENGTH, system))
    over, pin, first = (worked.amount(key) for key in ("over_n", "pin_n", "first_n"))
    shapes: list[Shape] = [
        head(tr("Ball: one section on a lever"), 0.0),
        *_ball(worked, words),
        *right([head(tr("Pin: held on both sides"), 0.0), *_held(worked, both=True)]),
    ]
    compared = (
        Compared(tr("pin in double shear bears"), show(pin, Dimension.FORCE, system), pin),
        Compared(tr("the ball's shank bends over at"), show(over, Dimension.FORCE, system), over, weak=True),
        Compared(tr("it first bends for good at"), show(first, Dimension.FORCE, system), first, weak=True),
    )
    more, top_mm = bars(compared, HEAD_MM + _SECTION_MM + 1.0)
    note = tr("Shank, height and pin to one scale, the same steel. Dashed: sections that carry the pull.")
    return framed(worked, [*shapes, *more], top_mm, note)


def _ball(worked: Worked, words: tuple[str, ...]) -> list[Shape]:
    shank, height = worked.amount("shank_m") * _MM_PER_M, worked.amount("height_m") * _MM_PER_M
    plate, at = HEAD_MM + _SECTION_MM - 5.0, 31.0
    pulled = plate - height
    radius = min(7.0, height - 0.6)
    return [
        RoundedRect((14, plate), 34, 3.6, fill=Ink.STEEL, tells=tr("Plate of the ball mount")),
        RoundedRect((at - shank / 2, pulled), shank, height, fill=Ink.STEEL, tells=tr("Shank of the ball")),
        Circle((at, pulled), radius, fill=Ink.STEEL, tells=tr("Ball")),
        *pull_arrow((at + radius, pulled), (53.0, pulled), 1.0),
        *lever(19.0, pulled, plate, words, (at - radius - 1.0, at - shank / 2)),
        *cut((at - shank / 2 - 3.0, plate), (at + shank / 2 + 3.0, plate)),
    ]
