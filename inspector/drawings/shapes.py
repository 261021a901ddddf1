"""The shapes a picture is made of. All lengths in millimetres, the origin at the top left, y downwards."""

from enum import StrEnum

from msgspec import Struct

from inspector.drawings.inks import Ink as Ink

Point = tuple[float, float]


class Anchor(StrEnum):
    """Which end of a text stands at its point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


class Drawn(Struct, frozen=True, kw_only=True):
    """What every shape carries. ink None: no outline; fill None: hollow; tells: what it says on hover."""

    ink: Ink | None = Ink.INK
    width_mm: float = 0.25
    fill: Ink | None = None
    dash_mm: tuple[float, ...] = ()
    tells: str = ""


class Line(Drawn, frozen=True):
    """A straight line between two points in mm."""

    start: Point
    end: Point


class Polyline(Drawn, frozen=True):
    """An open run of straight lines through points in mm."""

    points: tuple[Point, ...]


class Polygon(Drawn, frozen=True):
    """A closed outline through points in mm."""

    points: tuple[Point, ...]


class Circle(Drawn, frozen=True):
    """A circle about a centre, radius in mm."""

    centre: Point
    radius_mm: float


class RoundedRect(Drawn, frozen=True):
    """A rectangle from its top left corner, sides and corner radius in mm; radius 0: sharp corners."""

    corner: Point
    wide_mm: float
    high_mm: float
    radius_mm: float = 0.0


class Text(Drawn, frozen=True):
    """One line of text; `at` is on its baseline, size_mm the height of the type (its em)."""

    at: Point
    text: str
    size_mm: float
    anchor: Anchor = Anchor.START
    bold: bool = False


Shape = Line | Polyline | Polygon | Circle | RoundedRect | Text


class Drawing(Struct, frozen=True):
    """A picture with its frame in mm. describes: one or two sentences for a person who cannot see it."""

    width_mm: float
    height_mm: float
    shapes: tuple[Shape, ...]
    title: str
    describes: str
