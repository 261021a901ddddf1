"""Signs of what is made of steel, and of what stands in the ground, each about its own middle. Millimetres."""

from inspector.drawings.rig_arcs import arc, ring
from inspector.drawings.shapes import Circle, Ink, Line, Polygon, Polyline, RoundedRect, Shape

_NO_LINE = 99.0  # beyond every cell: nothing goes on there
ENDS: dict[str, tuple[float, float]] = {  # where the line stops and the sign begins
    "bow_shackle": (-4.4, 4.6),
    "dee_shackle": (-4.4, 4.2),
    "recovery_point": (-6.0, 5.4),
    "towing_eye": (-6.0, 5.4),
    "hitch_receiver": (-8.0, 8.0),
    "receiver_insert": (-8.0, 7.6),
    "hitch_pin": (-2.0, 2.0),
    "ball_mount": (-8.0, 7.5),
    "tow_ball": (-3.0, 3.0),
    "tow_bar": (-9.0, 9.0),
    "snatch_block": (-4.6, 4.6),
    "sheave_ring": (-4.4, 4.4),
    "winch_hook": (-6.0, 4.4),
    "winch": (-6.0, 6.0),
    "tie_down": (-5.0, 3.4),
    "chain_plate": (-5.0, 3.4),
    "tree": (-2.4, _NO_LINE),
    "ground_anchor": (-0.6, _NO_LINE),
}


def bow_shackle() -> list[Shape]:
    """A bow on the right, its pin on the left."""
    bow = Polyline(
        ((-3.4, -2.4), (-1.0, -2.2), *arc((1.4, 0.0), 3.2, -135, 135), (-1.0, 2.2), (-3.4, 2.4)), width_mm=1.1
    )
    return [bow, *_pin_across(3.6)]


def dee_shackle() -> list[Shape]:
    """Straight sides and a round end on the right, its pin on the left."""
    dee = Polyline(((-3.4, -2.3), (1.4, -2.3), *arc((1.4, 0.0), 2.3, -90, 90), (-3.4, 2.3)), width_mm=1.1)
    return [dee, *_pin_across(3.4)]


def _pin_across(half_mm: float) -> list[Shape]:
    return [
        RoundedRect((-4.4, -half_mm), 2.0, 2 * half_mm, 0.4, fill=Ink.STEEL),
        RoundedRect((-4.9, -half_mm - 1.0), 3.0, 1.2, 0.3, fill=Ink.STEEL),
    ]


def recovery_point() -> list[Shape]:
    """A plate with its bolts and a hole for the shackle."""
    bolts = [Circle((-4.2, y), 0.8, fill=Ink.PAPER) for y in (-2.2, 2.2)]
    outline = ((-6.0, -4.0), (-1.6, -4.0), *arc((2.4, 0.0), 3.0, -70, 70), (-1.6, 4.0), (-6.0, 4.0))
    return [Polygon(outline, fill=Ink.STEEL), *bolts, ring((2.4, 0.0), 1.4, 0.3)]


def towing_eye() -> list[Shape]:
    """A screwed-in shank with an eye."""
    return [RoundedRect((-6.0, -0.9), 6.0, 1.8, fill=Ink.STEEL), Circle((2.4, 0.0), 3.0, fill=Ink.STEEL),
            ring((2.4, 0.0), 1.5, 0.3)]  # fmt: skip


def hitch_receiver() -> list[Shape]:
    """A tube cut open, its holes for the pin."""
    walls = [RoundedRect((-8.0, y), 16.0, 1.4, fill=Ink.STEEL) for y in (-4.0, 2.6)]
    inside = RoundedRect((-8.0, -2.6), 16.0, 5.2, ink=None, fill=Ink.PAPER)
    holes = [RoundedRect((1.2, y), 2.0, 1.4, ink=None, fill=Ink.PAPER) for y in (-4.0, 2.6)]
    return [inside, *walls, *holes, Line((-8.0, -4.0), (-8.0, 4.0), width_mm=0.6)]


def receiver_insert() -> list[Shape]:
    """A solid block with the hole for its pin and the one for the shackle."""
    body = Polygon(((-8.0, -2.6), (3.0, -2.6), *arc((5.0, 0.0), 2.6, -90, 90), (3.0, 2.6), (-8.0, 2.6)), fill=Ink.STEEL)
    return [body, ring((-4.6, 0.0), 1.0, 0.3), ring((5.0, 0.0), 1.3, 0.3)]


def hitch_pin() -> list[Shape]:
    """A pin seen from its side, across the pull."""
    return [
        RoundedRect((-1.2, -4.6), 2.4, 9.4, 0.4, fill=Ink.STEEL),
        RoundedRect((-2.0, -5.0), 4.0, 1.6, 0.4, fill=Ink.STEEL),
        Line((-2.0, 3.6), (2.0, 3.6), width_mm=0.5),
    ]


def ball_mount() -> list[Shape]:
    """A square shank with its plate and the hole for a ball."""
    shank = RoundedRect((-8.0, -2.4), 10.0, 3.6, fill=Ink.STEEL)
    plate = Polygon(((1.0, -0.6), (7.5, -0.6), (7.5, 1.2), (1.0, 1.2)), fill=Ink.STEEL)
    return [shank, plate, RoundedRect((4.0, -0.6), 2.0, 1.8, ink=None, fill=Ink.PAPER)]


def tow_ball() -> list[Shape]:
    """A ball on its neck, above its plate."""
    neck = Polygon(((-1.2, 0.0), (1.2, 0.0), (1.4, 4.0), (-1.4, 4.0)), fill=Ink.STEEL)
    return [neck, Circle((0.0, -0.6), 3.0, fill=Ink.STEEL), RoundedRect((-4.0, 3.6), 8.0, 1.4, fill=Ink.STEEL)]


def tow_bar() -> list[Shape]:
    """A stiff bar with an eye at both ends."""
    eyes = [Circle((way * 7.2, 0.0), 1.8, fill=Ink.STEEL) for way in (-1, 1)]
    holes = [ring((way * 7.2, 0.0), 0.8, 0.25) for way in (-1, 1)]
    return [RoundedRect((-6.4, -1.1), 12.8, 2.2, fill=Ink.STEEL), *eyes, *holes]


def snatch_block() -> list[Shape]:
    """A wheel between two cheeks."""
    cheek = Polygon((*arc((0.0, 0.0), 4.6, 60, 300), (4.6, -1.6), (4.6, 1.6)), fill=Ink.BAND)
    return [cheek, Circle((-0.4, 0.0), 3.1, fill=Ink.STEEL), ring((-0.4, 0.0), 0.9, 0.3)]


def sheave_ring() -> list[Shape]:
    """A grooved ring."""
    return [Circle((0.0, 0.0), 4.4, fill=Ink.STEEL), ring((0.0, 0.0), 2.2, 0.3)]


def winch_hook() -> list[Shape]:
    """An open hook with its latch."""
    hook = Polyline(((-6.0, 0.0), (-2.6, 0.0), (-1.0, -1.6), *arc((1.2, 0.0), 3.0, -115, 120)), width_mm=1.2)
    return [hook, Line((-1.4, -1.2), (-0.2, 2.6), width_mm=0.4)]


def winch() -> list[Shape]:
    """A drum between two flanges, line on it."""
    flanges = [RoundedRect((x, -4.6), 1.2, 9.2, 0.3, fill=Ink.STEEL) for x in (-6.0, 4.8)]
    layers = [Line((x, -3.2), (x, 3.2), ink=Ink.FAINT, width_mm=0.25) for x in (-3.6, -2.4, -1.2, 0.0, 1.2, 2.4, 3.6)]
    return [RoundedRect((-4.8, -3.2), 9.6, 6.4, fill=Ink.BAND), *layers, *flanges]


def tie_down() -> list[Shape]:
    """A bent sheet with a slot, one bolt."""
    sheet = Polygon(((-5.0, -3.6), (3.4, -3.6), (3.4, 3.6), (-1.0, 3.6), (-5.0, 1.0)), fill=Ink.BAND)
    return [sheet, RoundedRect((0.4, -2.2), 1.6, 4.4, 0.8, fill=Ink.PAPER), Circle((-3.0, -1.6), 0.8, fill=Ink.PAPER)]


def chain_plate() -> list[Shape]:
    """A thin plate with two holes for safety chains."""
    plate = Polygon(((-5.0, -3.6), (3.4, -3.6), (3.4, 3.6), (-5.0, 3.6)), fill=Ink.BAND)
    return [plate, *(ring((0.6, y), 1.2, 0.3) for y in (-1.8, 1.8))]


def tree() -> list[Shape]:
    """A trunk and its crown."""
    crown = Polygon((*arc((0.0, -3.0), 2.6, 130, 410),), fill=Ink.BAND)
    trunk = Polygon(((-1.0, -1.0), (1.0, -1.0), (1.6, 4.8), (-1.6, 4.8)), fill=Ink.STEEL)
    strap = Line((-2.4, 0.0), (1.1, 0.0), width_mm=0.9)
    return [crown, trunk, strap, Line((-5.0, 4.8), (5.0, 4.8), ink=Ink.FAINT)]


def ground_anchor() -> list[Shape]:
    """A stake driven in, leaning away from the pull."""
    stake = Polygon(((0.0, -3.0), (1.4, -3.4), (-0.4, 5.0), (-1.4, 5.0)), fill=Ink.STEEL)
    return [stake, Line((-5.0, 1.4), (5.0, 1.4), ink=Ink.FAINT)]
