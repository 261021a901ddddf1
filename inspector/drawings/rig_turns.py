"""Where three lines meet in a rig, seen from above: the angle as it is, the arrows as long as the forces are great."""

import math
from collections.abc import Sequence
from itertools import combinations

from inspector.drawings.force_marks import beside
from inspector.drawings.rig_graph import graph_of
from inspector.drawings.rig_words import force_text, part_name
from inspector.drawings.shapes import Circle, Drawing, Ink, Line, Point, Polygon, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.rig_result import LinkUse, RigResult
from inspector.language import tr
from inspector.units import System

_WIDTH_MM = 86.0
_HUB_MM = 30.0  # from the left
_LONGEST_MM = 22.0
_SHORTEST_MM = 4.0
_APART_MM = 1.2  # of two lines that run side by side
_HEAD_MM = 5.0
_SHAFT_MM = 0.9


def turns(result: RigResult) -> tuple[str, ...]:
    """The parts of known angle in which three lines meet."""
    return tuple(one.at for one in result.rig.angles if len(_around(result, one.at)) == 3)


def turn_picture(result: RigResult, tag: str, system: System = System.METRIC) -> Drawing:
    """One such part, 86 mm wide: the two lines and their angle on the right, what holds them on the left."""
    one, other, held = _sorted(_around(result, tag))
    figure = result.rig.angle(tag)
    half_rad = min(max(figure.si if figure else 0.0, 0.0), math.pi) / 2
    most_n = max(link.force_n for link in (one, other, held))
    said = [_words(link, system) for link in (one, other, held)]
    tall_mm = _reach(max(one.force_n, other.force_n), most_n) * math.sin(half_rad)
    hub_mm = _HEAD_MM + tall_mm + (max(map(len, said)) + 1) * LEADING_MM
    hub = (_HUB_MM, hub_mm)
    between = tr("{angle} between {one} and {other}", angle=figure.as_typed if figure else "", one=part_name(one.tag),
                 other=part_name(other.tag))  # fmt: skip
    shapes: list[Shape] = [*_head(between), *_held(held, said[2], hub, most_n)]
    shapes += _line(one, said[0], hub, -half_rad, most_n)
    shapes += _line(other, said[1], hub, half_rad, most_n)
    shapes.append(Circle(hub, 2.0, fill=Ink.STEEL, tells=part_name(tag)))
    shapes, high_mm = _noted(shapes, 2 * hub_mm - _HEAD_MM)
    describes = "; ".join((between, *(f"{words[0]} {words[-1]}" for words in said))) + "."
    return Drawing(_WIDTH_MM, high_mm, tuple(shapes), tr("Forces at {tag}", tag=part_name(tag)), describes)


def _around(result: RigResult, tag: str) -> list[LinkUse]:
    """The neighbours whose force is told."""
    beside_it = graph_of(result).around(tag)
    return [link for one in beside_it if (link := result.link(one)) is not None]


def _sorted(links: Sequence[LinkUse]) -> tuple[LinkUse, LinkUse, LinkUse]:
    """The two that share one tension first, then what holds them."""
    one, other = min(combinations(links, 2), key=lambda pair: abs(pair[0].force_n - pair[1].force_n))
    return one, other, next(link for link in links if link not in {one, other})


def _words(link: LinkUse, system: System) -> tuple[str, ...]:
    """Tag and force below one another, no line too wide for the room on the right."""
    room = _WIDTH_MM - _HUB_MM - _LONGEST_MM - 3.0
    return (*wrapped(part_name(link.tag), room), *wrapped(force_text(link.force_n, system), room))


def _head(text: str) -> list[Shape]:
    return [Text((0.5, 3.4 + number * LEADING_MM), line, LABEL_MM, bold=True)
            for number, line in enumerate(wrapped(text, (_WIDTH_MM - 1.0) / 1.2))]  # fmt: skip


def _held(link: LinkUse, said: tuple[str, ...], hub: Point, most_n: float) -> list[Shape]:
    """What holds the two, drawn to the left; its words over the arrow."""
    top = hub[1] - 2.8 - (len(said) - 1) * LEADING_MM
    return [*_force(hub, math.pi, _reach(link.force_n, most_n)), *beside((1.0, top), said)]


def _line(link: LinkUse, said: tuple[str, ...], hub: Point, turn_rad: float, most_n: float) -> list[Shape]:
    """One of the two lines to the right, its words beyond its end; above the middle they grow upwards."""
    way = math.copysign(1.0, turn_rad)  # two lines side by side: -0 is the upper one
    start = (hub[0], hub[1] + way * _APART_MM)
    reach = _reach(link.force_n, most_n)
    end_y = start[1] + reach * math.sin(turn_rad)
    top = end_y + 2.4 if way > 0 else end_y - 0.4 - (len(said) - 1) * LEADING_MM
    return [*_force(start, turn_rad, reach), *beside((start[0] + reach * math.cos(turn_rad) + 1.8, top), said)]


def _reach(force_n: float, most_n: float) -> float:
    """How long an arrow is beside that of the greatest force; never too short for its head."""
    return max(_LONGEST_MM * force_n / most_n, _SHORTEST_MM) if most_n > 0 else _SHORTEST_MM


def _force(start: Point, turn_rad: float, long_mm: float) -> list[Shape]:
    """An arrow that leaves a place, turned downwards from the right."""
    along, across = (math.cos(turn_rad), math.sin(turn_rad)), (-math.sin(turn_rad), math.cos(turn_rad))

    def at(far: float, aside: float) -> Point:
        return start[0] + far * along[0] + aside * across[0], start[1] + far * along[1] + aside * across[1]

    head = Polygon((at(long_mm, 0), at(long_mm - 3.2, -1.5), at(long_mm - 3.2, 1.5)), ink=None, fill=Ink.FORCE)
    return [Line(start, at(long_mm - 3.0, 0), ink=Ink.FORCE, width_mm=_SHAFT_MM), head]


def _noted(shapes: list[Shape], top_mm: float) -> tuple[list[Shape], float]:
    text = tr("Seen from above: the angle as it is, the arrows as long as the pulls are great.")
    lines = wrapped(text, _WIDTH_MM - 1.0)
    note = beside((0.5, top_mm + 0.78 * LEADING_MM), lines)
    return [*shapes, *note], top_mm + len(lines) * LEADING_MM + 1.0
