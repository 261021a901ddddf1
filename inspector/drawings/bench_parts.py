"""What the pictures of the bench share: their frame, heads over panels, bars to compare, a curve with its axes."""

from collections.abc import Sequence

from msgspec import Struct

from inspector.drawings.axes import Scale, Tick
from inspector.drawings.bar_rows import Bar, Row, rows
from inspector.drawings.change import moved
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Polyline, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.bench import Worked

WIDTH_MM = 118.0
PANEL_MM = 56.0
RIGHT_MM = WIDTH_MM - PANEL_MM  # where the right one of two panels begins
HEAD_MM = 7.0  # below the heads of the panels


def head(text: str, left_mm: float) -> Shape:
    """The head of a panel."""
    return Text((left_mm + 0.5, 3.4), text, LABEL_MM, bold=True)


class Compared(Struct, frozen=True):
    """One of several amounts of one sort, in SI, with its words and how it prints. weak: the one to beware of."""

    words: str
    shown: str
    amount: float
    weak: bool = False


def bars(compared: Sequence[Compared], top_mm: float, full: float = 0.0) -> tuple[list[Shape], float]:
    """The amounts as bars on one scale, and where the next thing may begin. full: what fills the width, if more."""
    most = max([full, *(one.amount for one in compared)]) or 1.0
    made = [
        Row(
            one.words,
            one.shown,
            (Bar(0.0, one.amount / most, Ink.BAND if one.weak else Ink.STEEL, Ink.LIMIT if one.weak else Ink.INK),),
            ink=Ink.LIMIT if one.weak else Ink.INK,
            bold=one.weak,
        )
        for one in compared
    ]
    return rows(made, top_mm, WIDTH_MM)


def framed(worked: Worked, shapes: Sequence[Shape], top_mm: float, note: str) -> Drawing:
    """The picture, with a faint note below; described by what it means."""
    lines = wrapped(note, WIDTH_MM - 1.0)
    said = [
        Text((0.5, top_mm + (number + 0.78) * LEADING_MM), line, LABEL_MM, ink=Ink.FAINT)
        for number, line in enumerate(lines)
    ]
    return Drawing(WIDTH_MM, top_mm + len(lines) * LEADING_MM + 1.0, (*shapes, *said), worked.title, worked.means)


def right(shapes: Sequence[Shape], across_mm: float = RIGHT_MM) -> list[Shape]:
    """The same shapes further to the right."""
    return [moved(shape, across_mm) for shape in shapes]


class Curve(Struct, frozen=True):
    """A curve in its chart: places in the units of both scales, and the place the dial stands at.

    across, up: the scales; across_ticks, up_ticks: what stands on the axes.
    """

    across: Scale
    up: Scale
    across_ticks: tuple[Tick, ...]
    up_ticks: tuple[Tick, ...]
    places: tuple[tuple[float, float], ...]
    here: tuple[float, float]
    tells: str


def curve_shapes(curve: Curve) -> list[Shape]:
    """The chart with hairlines, ticks, the curve and a dot."""
    across, up = curve.across, curve.up
    shapes: list[Shape] = []
    for tick in curve.up_ticks:
        y = up.at(tick.value)
        shapes.append(Line((across.start_mm, y), (across.end_mm, y), ink=Ink.HAIR, width_mm=0.15))
        shapes.append(Text((across.start_mm - 1.2, y + 1.0), tick.words, LABEL_MM, anchor=Anchor.END))
    for number, tick in enumerate(curve.across_ticks):
        x = across.at(tick.value)
        shapes.append(Line((x, up.start_mm), (x, up.start_mm + 1.0)))
        if number % 2 == 0 or len(curve.across_ticks) <= 4:
            shapes.append(Text((x, up.start_mm + 4.0), tick.words, LABEL_MM, anchor=Anchor.MIDDLE))
    run = tuple((across.at(x), up.at(y)) for x, y in curve.places)
    dot = (across.at(curve.here[0]), up.at(curve.here[1]))
    axis = Line((across.start_mm, up.start_mm), (across.end_mm, up.start_mm), width_mm=0.3)
    return [*shapes, axis, Polyline(run, width_mm=0.7), Circle(dot, 1.3, fill=Ink.INK, tells=curve.tells)]
