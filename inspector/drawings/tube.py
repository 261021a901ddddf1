"""The square section of a tube to scale: steel left, steel lost, and the wall it must keep."""

from dataclasses import dataclass

from inspector.drawings.extent import Box, extent
from inspector.drawings.shapes import Anchor, Circle, Ink, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, length_text
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.language import show_day, tr
from inspector.units import System

_CORNER_WALLS = 2.0  # outer corner radius of a new cold-formed tube, in walls
_DASH = (1.0, 0.8)


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the section stands: a square of side_mm from its top left corner, mm_per_m its scale."""

    left_mm: float
    top_mm: float
    side_mm: float
    mm_per_m: float

    @property
    def middle(self) -> tuple[float, float]:
        """The centre of the section in mm."""
        return self.left_mm + self.side_mm / 2, self.top_mm + self.side_mm / 2


def tube(wall: WallForecast, outside_m: float, left_mm: float, top_mm: float, side_mm: float) -> list[Shape]:
    """The section as shapes in a square of side_mm; outside_m is the tube's outer side in metres, above 0."""
    frame = Frame(left_mm, top_mm, side_mm, side_mm / outside_m)
    return [*_steel(wall, frame), *_limit(wall, frame), *_readings(wall, frame)]


def _steel(wall: WallForecast, frame: Frame) -> list[Shape]:
    """Outer face, the wall now, the lost steel inside it, and the new inner face as a dashed line."""
    said = tr("The inside of a tube rusts unseen.")
    lost = _contour(wall, frame, wall.wall_now_m, ink=Ink.INK, width=0.3, fill=Ink.THIN, tells=said)
    hollow = _contour(wall, frame, max(wall.nominal_m, wall.wall_now_m), ink=None, fill=Ink.PAPER)
    new = _contour(wall, frame, wall.nominal_m, ink=Ink.FAINT, dash=_DASH, tells=tr("Inner face as new"))
    outer = _contour(wall, frame, 0.0, ink=Ink.INK, width=0.4, fill=Ink.STEEL, tells=tr("Steel that is left"))
    return [outer, lost, hollow, new]


def _limit(wall: WallForecast, frame: Frame) -> list[Shape]:
    said = tr("The wall must not be thinner than this: {why}", why=wall.required_because)
    return [_contour(wall, frame, wall.required_m, ink=Ink.LIMIT, width=0.45, tells=said)]


def _contour(
    wall: WallForecast,
    frame: Frame,
    depth_m: float,
    *,
    ink: Ink | None,
    width: float = 0.25,
    fill: Ink | None = None,
    dash: tuple[float, ...] = (),
    tells: str = "",
) -> RoundedRect:
    """A rounded square depth_m inside the outer face; its corner radius shrinks by the same depth."""
    depth = min(max(depth_m, 0.0) * frame.mm_per_m, frame.side_mm / 2)
    side = frame.side_mm - 2 * depth
    radius = min(_CORNER_WALLS * wall.nominal_m * frame.mm_per_m, frame.side_mm / 2) - depth
    corner = (frame.left_mm + depth, frame.top_mm + depth)
    rounded = min(max(radius, 0.0), side / 2)
    return RoundedRect(corner, side, side, rounded, ink=ink, width_mm=width, fill=fill, dash_mm=dash, tells=tells)


def _readings(wall: WallForecast, frame: Frame) -> list[Shape]:
    """A dot on the wall of each face that was read, and its name and value in the hollow where there is room."""
    shapes: list[Shape] = []
    taken: list[Box] = []
    for face, point in _latest_by_face(wall.points or wall.history).items():
        dot, words = _reading(face, point, wall, frame)
        shapes.append(dot)
        boxes = [extent(word) for word in words]
        if _fits(boxes, taken, _hollow(wall, frame)):
            shapes.extend(words)
            taken.extend(boxes)
    return shapes


def _fits(boxes: list[Box], taken: list[Box], hollow: Box) -> bool:
    return all(hollow.holds(box) and not any(box.overlaps(other) for other in taken) for box in boxes)


def _hollow(wall: WallForecast, frame: Frame) -> Box:
    thickest_m = max(wall.nominal_m, wall.wall_now_m, wall.required_m)
    edge = min(thickest_m * frame.mm_per_m + 0.6, frame.side_mm / 2)
    right, bottom = frame.left_mm + frame.side_mm - edge, frame.top_mm + frame.side_mm - edge
    return Box(frame.left_mm + edge, frame.top_mm + edge, right, bottom)


def _latest_by_face(history: tuple[WallPoint, ...]) -> dict[str, WallPoint]:
    """The latest reading of each face; a point that names no face is left to the note."""
    found = {face_of(point.point): point for point in sorted(history, key=lambda point: point.on)}
    return {face: point for face, point in found.items() if face}


def face_of(point: str) -> str:
    """The face a reading point's name speaks of: top, bottom, left or right; empty for none."""
    words = point.lower().replace(",", " ").replace("_", " ").split()
    return next((face for face in ("top", "bottom", "left", "right") if face in words), "")


_AWAY = {"top": (0, -1), "bottom": (0, 1), "left": (-1, 0), "right": (1, 0)}


def _face_name(face: str) -> str:
    return {"top": tr("top"), "bottom": tr("bottom"), "left": tr("left"), "right": tr("right")}[face]


def _reading(face: str, point: WallPoint, wall: WallForecast, frame: Frame) -> tuple[Circle, list[Text]]:
    across, down = _AWAY[face]
    (x, y), half = frame.middle, frame.side_mm / 2
    reach = half - min(max(wall.wall_now_m, 0.0) * frame.mm_per_m, half) / 2
    said = tr("{point}: {value} on {day}", point=point.point, value=point.as_typed, day=show_day(point.on))
    dot = Circle((x + across * reach, y + down * reach), 0.75, ink=Ink.PAPER, width_mm=0.2, fill=Ink.INK, tells=said)
    inner = half - max(wall.nominal_m, wall.wall_now_m, wall.required_m) * frame.mm_per_m - 1.2
    return dot, _face_words(face, point, (x + across * inner, y + down * inner))


def _face_words(face: str, point: WallPoint, at: tuple[float, float]) -> list[Text]:
    anchor = {"left": Anchor.START, "right": Anchor.END}.get(face, Anchor.MIDDLE)
    first = {"top": 0.8 * LABEL_MM, "bottom": -LEADING_MM - 0.2 * LABEL_MM}.get(face, -0.3)
    name = Text((at[0], at[1] + first), _face_name(face), LABEL_MM, anchor=anchor, ink=Ink.FAINT)
    read = tr("{value} ({year})", value=point.as_typed, year=point.on.year)
    value = Text((at[0], at[1] + first + LEADING_MM), read, LABEL_MM, anchor=anchor)
    return [name, value]


def scale_words(outside_m: float, system: System) -> str:
    """What the section is a section of."""
    return tr("Section of the tube, to scale; outside {outside}.", outside=length_text(outside_m, system))
