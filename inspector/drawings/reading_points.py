"""Where a measure is taken: its named points on the section of a tube to scale, or its place on the sign of a part."""

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from inspector.drawings.change import grown, moved
from inspector.drawings.rig_signs import Reach, sign
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Point, RoundedRect, Shape, Text
from inspector.drawings.tube import tube
from inspector.drawings.wall_points import Frame
from inspector.drawings.wording import LABEL_MM, LEADING_MM
from inspector.gear.kind import Kind, Measure, kind_word
from inspector.gear.verdict import WallForecast
from inspector.language import tr

WIDTH_MM = 58.0
_LEFT_MM, _TOP_MM, _SIDE_MM = 14.0, 6.0, 26.0
_TUBE_HEIGHT_MM = _SIDE_MM + 2 * _TOP_MM
_SIGN_HEIGHT_MM = 26.0
_SIGN_TIMES = 2.0
_DOT_MM, _RING_MM = 0.9, 1.8
_GAP_MM = 1.6

_FACES: dict[str, Point] = {"top": (0, -1), "bottom": (0, 1), "left": (-1, 0), "right": (1, 0)}
_WALL_POINTS = _FACES | {
    "front": (-1, 0),
    "rear": (1, 0),
    "at pin hole": (1, 0.62),
    "left wall": (-1, 0),
    "right wall": (1, 0),
}
_ON_SIGNS: dict[tuple[str, str, str], Point] = {
    ("bow_shackle", "bow_diameter", ""): (4.6, 0.0),
    ("bow_shackle", "pin_diameter", ""): (-3.4, 0.0),
    ("bow_shackle", "jaw", ""): (-1.4, 0.0),
    ("dee_shackle", "bow_diameter", ""): (3.7, 0.0),
    ("dee_shackle", "pin_diameter", ""): (-3.4, 0.0),
    ("dee_shackle", "jaw", ""): (-1.4, 0.0),
    ("hitch_pin", "pin_diameter", ""): (0.0, 0.6),
    ("receiver_insert", "hole_diameter", ""): (5.0, 0.0),
    ("recovery_point", "hole_diameter", ""): (2.4, 0.0),
    ("recovery_point", "bolts_sound", ""): (-4.2, -2.2),
    ("recovery_point", "plate", ""): (4.6, 0.0),
    ("tow_ball", "ball_diameter", "along the pull"): (2.9, -0.6),
    ("tow_ball", "ball_diameter", "across the pull"): (0.0, -0.6),
}


class Spot(Struct, frozen=True):
    """A point of a measure in mm of the picture."""

    point: str
    at: Point


class PointsPicture(Struct, frozen=True):
    """The drawing and where its points lie on it."""

    drawing: Drawing
    spots: tuple[Spot, ...]


def reading_points(
    kind: Kind, measure: Measure, wall: WallForecast | None, *, at: str | None, typed: Mapping[str, str]
) -> PointsPicture | None:
    """The picture of a measure; None where nothing is drawn of this kind.

    at: the point whose field has the keys, None for none; typed: by point, what stands in its field.
    """
    if measure.key in {"wall", "pin_hole"} and wall and wall.outside_m:
        return _section(measure, wall, wall.outside_m, at, typed)
    spots = _sign_spots(kind, measure)
    return _signed(kind, measure, spots, at, typed) if spots else None


def _section(
    measure: Measure, wall: WallForecast, outside_m: float, at: str | None, typed: Mapping[str, str]
) -> PointsPicture:
    spots = tuple(Spot(point, _on_wall(point, wall, outside_m)) for point in measure.points if point in _WALL_POINTS)
    bare = replace(wall, history=(), points=())
    shapes = tube(bare, Frame(_LEFT_MM, _TOP_MM, _SIDE_MM, _SIDE_MM / outside_m))
    if measure.key == "pin_hole":
        shapes += _pin_hole(spots, wall, outside_m)
    for spot in spots:
        across, down = _WALL_POINTS[spot.point]
        shapes += [*_dot(spot, spot.point == at, typed), *_outside_name(spot, across, down, spot.point == at)]
        shapes += _inside_value(spot, across, down, wall.nominal_m / outside_m * _SIDE_MM, typed)
    return PointsPicture(_drawing(measure, _TUBE_HEIGHT_MM, shapes, spots, at, typed), spots)


def _on_wall(point: str, wall: WallForecast, outside_m: float) -> Point:
    """The middle of the steel that is left, at this point."""
    across, down = _WALL_POINTS[point]
    half = _SIDE_MM / 2
    reach = half - max(wall.wall_now_m, 0.0) / outside_m * _SIDE_MM / 2
    x = across * reach if across else 0.0
    y = down * (reach if abs(down) == 1 else half)
    return _LEFT_MM + half + x, _TOP_MM + half + y


def _pin_hole(spots: tuple[Spot, ...], wall: WallForecast, outside_m: float) -> list[Shape]:
    """The holes in both walls and the line of the pin through them."""
    deep, half = wall.nominal_m / outside_m * _SIDE_MM + 1.0, 3.6
    middle = _TOP_MM + _SIDE_MM / 2
    sides = (_LEFT_MM - 0.4, _LEFT_MM + _SIDE_MM - deep + 0.4)
    holes = [RoundedRect((x, middle - half), deep, 2 * half, ink=None, fill=Ink.PAPER) for x in sides]
    edges = [
        Line((x, y), (x + deep, y), ink=Ink.INK, width_mm=0.3) for x in sides for y in (middle - half, middle + half)
    ]
    pin = Line((_LEFT_MM - 2, middle), (_LEFT_MM + _SIDE_MM + 2, middle), ink=Ink.FAINT, width_mm=0.2, dash_mm=(2, 0.8),
               tells=tr("Middle of the pin"))  # fmt: skip
    return [*holes, *edges, pin] if spots else []


def _dot(spot: Spot, has_keys: bool, typed: Mapping[str, str]) -> list[Shape]:
    """A dot, filled once something is typed there; a ring round the one whose field has the keys."""
    value = typed.get(spot.point, "")
    says = tr("{point}: {value}", point=kind_word(spot.point), value=value) if value else kind_word(spot.point)
    fill = Ink.MARK if value else Ink.PAPER
    dot = Circle(spot.at, _DOT_MM, ink=Ink.INK, width_mm=0.3, fill=fill, tells=says)
    return [*([Circle(spot.at, _RING_MM, ink=Ink.MARK, width_mm=0.6)] if has_keys else []), dot]


def _outside_name(spot: Spot, across: float, down: float, has_keys: bool) -> list[Shape]:
    """The point's name outside the tube."""
    x, y = spot.at
    edge = _SIDE_MM / 2 + _GAP_MM
    if across:
        side = _LEFT_MM + _SIDE_MM / 2 + (edge if across > 0 else -edge)
        at, anchor = (side, y + 0.3 * LABEL_MM), Anchor.START if across > 0 else Anchor.END
    else:
        at, anchor = (
            (x, _TOP_MM - _GAP_MM if down < 0 else _TOP_MM + _SIDE_MM + _GAP_MM + 0.7 * LABEL_MM),
            Anchor.MIDDLE,
        )
    return [
        Text(at, kind_word(spot.point), LABEL_MM, anchor=anchor, bold=has_keys, ink=Ink.INK if has_keys else Ink.FAINT)
    ]


def _inside_value(spot: Spot, across: float, down: float, wall_mm: float, typed: Mapping[str, str]) -> list[Shape]:
    """What stands in the point's field, in the hollow beside it."""
    value = typed.get(spot.point, "")
    if not value:
        return []
    inner = _SIDE_MM / 2 - wall_mm - _GAP_MM
    middle = (_LEFT_MM + _SIDE_MM / 2, _TOP_MM + _SIDE_MM / 2)
    if across:
        at = (middle[0] + across * inner, spot.at[1] + 0.3 * LABEL_MM)
        return [Text(at, value, LABEL_MM, anchor=Anchor.END if across > 0 else Anchor.START)]
    base = middle[1] - inner + 0.7 * LABEL_MM if down < 0 else middle[1] + inner
    return [Text((middle[0], base), value, LABEL_MM, anchor=Anchor.MIDDLE)]


def _sign_spots(kind: Kind, measure: Measure) -> tuple[Spot, ...]:
    middle = (WIDTH_MM / 2, _SIGN_HEIGHT_MM / 2)
    found = ((point, _ON_SIGNS.get((kind.key, measure.key, point))) for point in measure.points or ("",))
    return tuple(
        Spot(point, (middle[0] + place[0] * _SIGN_TIMES, middle[1] + place[1] * _SIGN_TIMES))
        for point, place in found
        if place
    )


def _signed(
    kind: Kind, measure: Measure, spots: tuple[Spot, ...], at: str | None, typed: Mapping[str, str]
) -> PointsPicture:
    """The part's sign, enlarged, with the places of one measure."""
    bare = sign(kind.key, (0.0, 0.0), Reach(0.0, 0.0))
    shapes = [moved(grown(shape, _SIGN_TIMES), WIDTH_MM / 2, _SIGN_HEIGHT_MM / 2) for shape in bare]
    for number, spot in enumerate(spots):
        shapes += [*_dot(spot, spot.point == at, typed), *_sign_words(spot, number, spot.point == at)]
    return PointsPicture(_drawing(measure, _SIGN_HEIGHT_MM, shapes, spots, at, typed), spots)


def _sign_words(spot: Spot, number: int, has_keys: bool) -> list[Shape]:
    """The name of a named place above the sign, with a thin line to it."""
    if not spot.point:
        return []
    is_left = spot.at[0] < WIDTH_MM / 2
    end = (2.0 if is_left else WIDTH_MM - 2.0, LEADING_MM * (1 + number))
    line = Line(spot.at, (spot.at[0], end[1] + 0.8), ink=Ink.FAINT, width_mm=0.2)
    ink = Ink.INK if has_keys else Ink.FAINT
    name = Text((end[0], end[1]), kind_word(spot.point), LABEL_MM, bold=has_keys, ink=ink,
                anchor=Anchor.START if is_left else Anchor.END)  # fmt: skip
    return [line, name]


def _drawing(
    measure: Measure,
    height_mm: float,
    shapes: list[Shape],
    spots: tuple[Spot, ...],
    at: str | None,
    typed: Mapping[str, str],
) -> Drawing:
    title = tr("Where to measure: {measure}", measure=measure.name)
    names = [kind_word(spot.point) for spot in spots if spot.point]
    told = [tr("The points: {names}.", names=", ".join(names))] if names else []
    told += [tr("The keys are at “{point}”.", point=kind_word(at))] if at else []
    told += [
        tr("{point}: {value}", point=kind_word(point), value=value) for point, value in typed.items() if point and value
    ]
    return Drawing(WIDTH_MM, height_mm, tuple(shapes), title, " ".join(told))
