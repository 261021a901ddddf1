"""A sign for each kind of part, about its own middle; the line runs through from left to right. Millimetres."""

from collections.abc import Callable

from msgspec import Struct

from inspector.drawings import rig_signs_steel as steel
from inspector.drawings.change import mirrored, moved
from inspector.drawings.rig_arcs import arc, ring
from inspector.drawings.shapes import Circle, Ink, Line, Point, Polygon, Polyline, RoundedRect, Shape

REACH_MM = 9.0  # half the width of a sign
FORK_MM = 4.4  # how far below the line the other leg of a bridle comes in
_EYE_MM = 1.5
_LINE_MM = 0.5
_LEAST_LINE_MM = 0.01


class Reach(Struct, frozen=True):
    """How far the line runs from a sign's middle to either side; 0 where nothing goes on."""

    left_mm: float
    right_mm: float


def sign(kind: str, at: Point, reach: Reach, *, branches: bool = False, turned: bool = False) -> list[Shape]:
    """The sign at a place with the line that runs through it.

    branches: a bridle with two legs; turned: its vehicle stands on the right.
    """
    forked = kind == "bridle_strap" and branches
    left, right = _ENDS.get(kind, (-REACH_MM, REACH_MM))
    before, after = (reach.right_mm, reach.left_mm) if turned else (reach.left_mm, reach.right_mm)
    line = [
        Line((start, 0.0), (end, 0.0), width_mm=_LINE_MM)
        for start, end in ((-before, left), (right, after))
        if end - start > _LEAST_LINE_MM
    ]
    made = [
        mirrored(shape) if turned else shape
        for shape in (*line, *(_bridle(before) if forked else _MAKERS.get(kind, _plain)()))
    ]
    return [moved(shape, *at) for shape in made]


def is_broken(kind: str) -> bool:
    """Whether the sign is a line drawn shorter than it is."""
    return kind in _STRAPS or kind in _ROPES


def _strap() -> list[Shape]:
    """A flat band with sewn eyes, broken in the middle: it is longer than drawn."""
    band = RoundedRect((-REACH_MM + 3, -1.3), 2 * REACH_MM - 6, 2.6, fill=Ink.BAND)
    seams = [Line((x, -1.3), (x, 1.3), width_mm=0.2) for x in (-5.2, -4.4, 4.4, 5.2)]
    return [band, *seams, *_eyes(), *_break(1.3)]


def _rope() -> list[Shape]:
    """A twisted line with eyes, broken in the middle."""
    band = RoundedRect((-REACH_MM + 3, -0.9), 2 * REACH_MM - 6, 1.8, fill=Ink.BAND)
    twist = [Line((x - 0.5, 0.9), (x + 0.5, -0.9), width_mm=0.2) for x in (-5.0, -3.8, -2.6, 2.6, 3.8, 5.0)]
    return [band, *twist, *_eyes(), *_break(0.9)]


def _eyes() -> list[Shape]:
    return [ring((way * (REACH_MM - _EYE_MM), 0.0), _EYE_MM, 0.5) for way in (-1, 1)]


def _break(half_mm: float) -> list[Shape]:
    """Two slanting strokes with nothing between them."""
    tall = half_mm + 1.3
    gap = Polygon(((-1.6, tall), (-0.4, -tall), (1.6, -tall), (0.4, tall)), ink=None, fill=Ink.PAPER)
    return [gap, *(Line((x - 0.6, tall), (x + 0.6, -tall), width_mm=0.35) for x in (-1.0, 1.0))]


def _bridle(reach_mm: float) -> list[Shape]:
    """Seen from above: one leg along the line, the other up from the line below, both to one eye."""
    eye = REACH_MM - _EYE_MM
    legs = [Polyline(((-reach_mm, y), (eye, 0.0)), width_mm=0.9) for y in (0.0, FORK_MM)]
    return [*legs, ring((eye, 0.0), _EYE_MM, 0.5)]


def _soft_shackle() -> list[Shape]:
    """A loop of rope closed by its knot."""
    loop = Polyline((*arc((-3.2, 0.0), 2.2, 90, 270), *arc((3.2, 0.0), 2.2, -90, 90), (-3.2, 2.2)), width_mm=1.0)
    return [loop, Circle((0.0, 2.2), 1.3, fill=Ink.INK)]


def _damper() -> list[Shape]:
    return [RoundedRect((-4, -1.5), 8, 6, 1.0, fill=Ink.BAND)]


def _plain() -> list[Shape]:
    """A part whose kind nobody drew: a bar with an eye at both ends."""
    return [RoundedRect((-REACH_MM + 3, -1.6), 2 * REACH_MM - 6, 3.2, 1.6, fill=Ink.PAPER), *_eyes()]


_STRAPS = ("kinetic_strap", "static_strap", "tree_strap", "bridle_strap")
_ROPES = ("kinetic_rope", "fibre_winch_line", "wire_winch_rope")
_MAKERS: dict[str, Callable[[], list[Shape]]] = {
    **dict.fromkeys(_STRAPS, _strap),
    **dict.fromkeys(_ROPES, _rope),
    "soft_shackle": _soft_shackle,
    "damper": _damper,
    "bow_shackle": steel.bow_shackle,
    "dee_shackle": steel.dee_shackle,
    "recovery_point": steel.recovery_point,
    "towing_eye": steel.towing_eye,
    "hitch_receiver": steel.hitch_receiver,
    "receiver_insert": steel.receiver_insert,
    "hitch_pin": steel.hitch_pin,
    "ball_mount": steel.ball_mount,
    "tow_ball": steel.tow_ball,
    "tow_bar": steel.tow_bar,
    "snatch_block": steel.snatch_block,
    "sheave_ring": steel.sheave_ring,
    "winch_hook": steel.winch_hook,
    "winch": steel.winch,
    "tie_down": steel.tie_down,
    "chain_plate": steel.chain_plate,
    "tree": steel.tree,
    "ground_anchor": steel.ground_anchor,
}
_ENDS: dict[str, tuple[float, float]] = {  # where the line stops and the sign begins
    "soft_shackle": (-5.4, 5.4),
    "damper": (0.0, 0.0),
    **steel.ENDS,
}
