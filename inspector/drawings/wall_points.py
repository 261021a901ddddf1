"""The reading points of a wall on its section, read or never read, and in words what the section has no room for."""

from msgspec import Struct

from inspector.drawings.extent import Box, extent
from inspector.drawings.shapes import Anchor, Circle, Ink, Shape, Text
from inspector.drawings.wall_words import How, point_words
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.kind import kind_word
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.language import tr

_AWAY = {"top": (0, -1), "bottom": (0, 1), "left": (-1, 0), "right": (1, 0)}
_FACE_SHARE = 0.6  # of a side that is clear of the corners
_INDENT_MM = 3.0
_DASH = (0.5, 0.4)


class Frame(Struct, frozen=True):
    """Where the section stands: a square of side_mm from its top left corner, mm_per_m its scale."""

    left_mm: float
    top_mm: float
    side_mm: float
    mm_per_m: float

    @property
    def middle(self) -> tuple[float, float]:
        """The centre of the section in mm."""
        return self.left_mm + self.side_mm / 2, self.top_mm + self.side_mm / 2


class Spot(Struct, frozen=True):
    """A named place. read: what was read there last; None: nobody competent has ever read it."""

    name: str
    read: WallPoint | None


def spots(wall: WallForecast) -> list[Spot]:
    """Every place that was read, with its latest reading, and every named place that never was."""
    taken = sorted(wall.points or wall.history, key=lambda point: point.on)
    latest = {point.point: point for point in taken}
    return [*(Spot(name, point) for name, point in latest.items()), *(Spot(name, None) for name in wall.unread_points)]


def face_of(point: str) -> str:
    """The face a reading point's name speaks of: top, bottom, left or right; empty for none."""
    words = point.lower().replace(",", " ").replace("_", " ").split()
    return next((face for face in _AWAY if face in words), "")


def on_section(wall: WallForecast, frame: Frame, how: How) -> tuple[list[Shape], list[Spot]]:
    """A dot on the wall for each place whose face is known, its words in the hollow where there is room.

    Also returns the places whose words found none, to be told below the picture.
    """
    shapes: list[Shape] = []
    taken: list[Box] = []
    untold = [one for one in spots(wall) if not face_of(one.name)]
    for face in _AWAY:
        here = [one for one in spots(wall) if face_of(one.name) == face]
        for number, spot in enumerate(here):
            shapes.append(_dot(_place(face, number, len(here), wall, frame), spot, how))
        words = _face_words(face, here[0], wall, frame) if here else []
        boxes = [extent(word) for word in words]
        fits = bool(here) and _fits(boxes, taken, _hollow(wall, frame))
        shapes += words if fits else []
        taken += boxes if fits else []
        untold += here[1:] if fits else here
    return shapes, untold


def below(untold: list[Spot], left_mm: float, top_mm: float, width_mm: float, how: How) -> tuple[list[Shape], float]:
    """Places in words, each behind its dot, one below the other; and where the next thing may begin."""
    shapes: list[Shape] = []
    for spot in untold:
        shapes.append(_dot((left_mm + 1.0, top_mm + 0.5 * LEADING_MM), spot, how))
        for line in wrapped(_in_words(spot), width_mm - _INDENT_MM):
            at = (left_mm + _INDENT_MM, top_mm + 0.78 * LEADING_MM)
            shapes.append(Text(at, line, LABEL_MM))
            top_mm += LEADING_MM
    return shapes, top_mm


def _in_words(spot: Spot) -> str:
    name = kind_word(spot.name) or tr("worst place")
    if spot.read is None:
        return tr("{point}: never read", point=name)
    return tr("{point}: {value} ({year})", point=name, value=spot.read.as_typed, year=spot.read.on.year)


def _dot(at: tuple[float, float], spot: Spot, how: How) -> Circle:
    """Full where it was read; a dashed ring where nobody ever read it."""
    if spot.read is None:
        said = tr("{point}: never read by a competent person", point=kind_word(spot.name))
        return Circle(at, 0.8, ink=Ink.LIMIT, width_mm=0.3, fill=Ink.PAPER, dash_mm=_DASH, tells=said)
    said = point_words(spot.read, how.get(spot.read, ""))
    return Circle(at, 0.75, ink=Ink.PAPER, width_mm=0.2, fill=Ink.INK, tells=said)


def _place(face: str, number: int, count: int, wall: WallForecast, frame: Frame) -> tuple[float, float]:
    """In the middle of the wall of its face; several on one face stand side by side along it."""
    across, down = _AWAY[face]
    (x, y), half = frame.middle, frame.side_mm / 2
    reach = half - min(max(wall.wall_now_m, 0.0) * frame.mm_per_m, half) / 2
    along = ((number + 1) / (count + 1) - 0.5) * frame.side_mm * _FACE_SHARE
    return x + across * reach + abs(down) * along, y + down * reach + abs(across) * along


def _fits(boxes: list[Box], taken: list[Box], hollow: Box) -> bool:
    return all(hollow.holds(box) and not any(box.overlaps(other) for other in taken) for box in boxes)


def _hollow(wall: WallForecast, frame: Frame) -> Box:
    thickest_m = max(wall.nominal_m, wall.wall_now_m, wall.required_m)
    edge = min(thickest_m * frame.mm_per_m + 0.6, frame.side_mm / 2)
    right, bottom = frame.left_mm + frame.side_mm - edge, frame.top_mm + frame.side_mm - edge
    return Box(frame.left_mm + edge, frame.top_mm + edge, right, bottom)


def _face_name(face: str) -> str:
    return {"top": tr("top"), "bottom": tr("bottom"), "left": tr("left"), "right": tr("right")}[face]


def _face_words(face: str, spot: Spot, wall: WallForecast, frame: Frame) -> list[Text]:
    """The face and what was read there, inside the hollow beside it."""
    across, down = _AWAY[face]
    (x, y), half = frame.middle, frame.side_mm / 2
    inner = half - max(wall.nominal_m, wall.wall_now_m, wall.required_m) * frame.mm_per_m - 1.2
    at = (x + across * inner, y + down * inner)
    anchor = {"left": Anchor.START, "right": Anchor.END}.get(face, Anchor.MIDDLE)
    first = {"top": 0.8 * LABEL_MM, "bottom": -LEADING_MM - 0.2 * LABEL_MM}.get(face, -0.3)
    name = Text((at[0], at[1] + first), _face_name(face), LABEL_MM, anchor=anchor, ink=Ink.FAINT)
    read = tr("never read")
    if spot.read:
        read = tr("{value} ({year})", value=spot.read.as_typed, year=spot.read.on.year)
    value = Text((at[0], at[1] + first + LEADING_MM), read, LABEL_MM, anchor=anchor)
    return [name, value]
