"""The shapes a picture is made of. All lengths in millimetres, the origin at the top left, y downwards."""

from dataclasses import dataclass
from enum import StrEnum

from inspector.drawings.inks import Ink as Ink

Point = tuple[float, float]


class Anchor(StrEnum):
    """Which end of a text stands at its point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """What every shape carries. ink None: no outline; fill None: hollow; tells: what it says on hover."""

    ink: Ink | None = Ink.INK
    width_mm: float = 0.25
    fill: Ink | None = None
    dash_mm: tuple[float, ...] = ()
    tells: str = ""


@dataclass(frozen=True, slots=True)
class Line(Drawn):
    """A straight line between two points in mm."""

    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Polyline(Drawn):
    """An open run of straight lines through points in mm."""

    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Polygon(Drawn):
    """A closed outline through points in mm."""

    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Circle(Drawn):
    """A circle about a centre, radius in mm."""

    centre: Point
    radius_mm: float


@dataclass(frozen=True, slots=True)
class RoundedRect(Drawn):
    """A rectangle from its top left corner, sides and corner radius in mm; radius 0: sharp corners."""

    corner: Point
    wide_mm: float
    high_mm: float
    radius_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Text(Drawn):
    """One line of text; `at` is on its baseline, size_mm the height of the type (its em)."""

    at: Point
    text: str
    size_mm: float
    anchor: Anchor = Anchor.START
    bold: bool = False


Shape = Line | Polyline | Polygon | Circle | RoundedRect | Text


@dataclass(frozen=True, slots=True)
class Drawing:
    """A picture with its frame in mm. describes: one or two sentences for a person who cannot see it."""

    width_mm: float
    height_mm: float
    shapes: tuple[Shape, ...]
    title: str
    describes: str
