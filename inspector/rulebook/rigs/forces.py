"""What each part and joint bears, as shares of the line's pull: a balance of forces along the rig's graph.

A single line has one tension throughout; a block bears both parts of the line that runs over it; the legs of a bridle
share by the angle between them.
"""

import math

from msgspec import Struct, field

from inspector.gear.rig import LooseEnd
from inspector.language import tr
from inspector.mechanics import bridle, rating
from inspector.refused import Refused
from inspector.rulebook.rigs.layout import Layout, Part

_WIDEST_RAD = math.radians(179)


class Shares(Struct):
    """Of the line's pull: what a part bears in each of its legs, and what passes through a joint.

    along: cosine by which a leg lies off the line. assumed: angles nobody said, in radians. hung: a block, and all
    that holds it.
    """

    part: dict[str, float] = field(default_factory=dict)
    legs: dict[str, int] = field(default_factory=dict)
    joint: dict[frozenset[str], float] = field(default_factory=dict)
    along: dict[str, float] = field(default_factory=dict)
    assumed: dict[str, float] = field(default_factory=dict)
    hung: set[str] = field(default_factory=set)

    def on_body(self, layout: Layout, body: str) -> float:
        """What a vehicle or the ground bears in all along the line, of the line's pull."""
        return math.fsum(
            self.part[part.tag] * self.along[part.tag] for part in layout.on_body(body) if _faces_line(layout, part)
        )


def _faces_line(layout: Layout, part: Part) -> bool:
    """Whether a neighbour sits elsewhere: a receiver does, the bar that carries it does not."""
    return any(layout.parts[tag].body != part.body for tag in layout.near(part.tag))


def shares(layout: Layout, source: str) -> Shares:
    """The shares of the whole rig, from the part whose tension is known."""
    found = Shares()
    waiting: list[tuple[str, str, float, float]] = [(source, "", 1.0, 1.0)]
    while waiting:
        tag, came_from, share, along = waiting.pop()
        part = layout.parts[tag]
        onward, found.legs[tag] = _bears(layout, found, part, share)
        found.part[tag], found.along[tag] = onward, along
        for other in layout.near(tag):
            if other == came_from:
                continue
            passed, turned = _passes(layout, found, part, layout.parts[other], came_from, share)
            found.joint[frozenset((tag, other))] = passed
            over_sheave = part.role == "line" and layout.parts[other].role == "block"
            if over_sheave or (tag in found.hung and layout.parts[other].role != "line"):
                found.hung.add(other)
            waiting.append((other, tag, passed, along * turned))
    return found


def _bears(layout: Layout, found: Shares, part: Part, share: float) -> tuple[float, int]:
    """What one leg of the part bears, and how many legs it has: a bridle and a strap round a tree have two."""
    if part.role == "bridle" and len(layout.near(part.tag)) == 3:
        return share * rating.bridle_leg_factor(bridle_angle(layout, found, part.tag)), 2
    if part.role != "around":
        return share, 1
    tree = next((tag for tag in layout.near(part.tag) if layout.parts[tag].role == LooseEnd.TREE.value), "")
    joint = layout.between(part.tag, tree).joint if tree else None
    if joint is None or joint.key != "round_tree":
        return share, 1
    angle_rad = _angle(layout, found, part.tag, math.radians(120))
    return share * rating.bridle_leg_factor(angle_rad), 2


def _passes(
    layout: Layout, found: Shares, part: Part, other: Part, came_from: str, share: float
) -> tuple[float, float]:
    """What goes on to a neighbour, and the cosine by which it turns off the line."""
    if part.role == "line" and other.role == "block":
        return share * rating.block_load_factor(_angle(layout, found, other.tag, 0.0)), 1.0
    if part.role == "line":
        return share, _spread(layout, found, part)
    if part.role == "block" and other.role == "line":
        return share / rating.block_load_factor(_angle(layout, found, part.tag, 0.0)), 1.0
    if part.role == "bridle" and len(layout.near(part.tag)) == 3:
        if came_from != _middle(layout, part.tag):
            why = tr("The pull on the bridle {tag} does not come from its middle.", tag=part.tag)
            raise Refused(
                tr("runs"), why, tr("Lead the line to the bridle, and its two legs to points of one vehicle.")
            )
        angle_rad = bridle_angle(layout, found, part.tag)
        return share * rating.bridle_leg_factor(angle_rad), math.cos(angle_rad / 2)
    return share, 1.0


def _spread(layout: Layout, found: Shares, line: Part) -> float:
    """The cosine by which both ends of a line lie off the way to its one block, where one vehicle holds them both."""
    near = layout.near(line.tag)
    blocks = [tag for tag in near if layout.parts[tag].role == "block"]
    held = [_body_behind(layout, tag, line.tag) for tag in near if tag not in blocks]
    if len(blocks) != 1 or len(held) != 2 or held[0] != held[1] or not held[0]:
        return 1.0
    return math.cos(_angle(layout, found, blocks[0], 0.0) / 2)


def _middle(layout: Layout, tag: str) -> str:
    """The neighbour by which a bridle hangs on the line: the one whose way does not end at its own vehicle at once."""
    ends = {other: _body_behind(layout, other, tag) for other in layout.near(tag)}
    bodies = list(ends.values())
    twice = {body for body in bodies if bodies.count(body) > 1}
    return next((other for other, body in ends.items() if body not in twice), "")


def _body_behind(layout: Layout, tag: str, came_from: str) -> str:
    """The body a way leads to, seen from its neighbour; empty where it branches or leads to none."""
    part = layout.parts[tag]
    onward = [other for other in layout.near(tag) if other != came_from]
    if part.body:
        return part.body
    return _body_behind(layout, onward[0], tag) if len(onward) == 1 else ""


def bridle_angle(layout: Layout, found: Shares, tag: str) -> float:
    """The angle between a bridle's legs: as said or from the distance of its points and its length, the wider of both;
    as assumed where neither is known."""
    said, reckoned = layout.facts.rig.angle(tag), _from_spacing(layout, tag)
    known = [one for one in (reckoned, _within(tag, said.si) if said is not None else None) if one is not None]
    if known:
        return max(known)
    found.assumed[tag] = layout.book.setting("bridle_angle_unsaid")
    return found.assumed[tag]


def spacing_of(layout: Layout, tag: str) -> float | None:
    """The distance in metres between the two points that a bridle joins, None where nobody measured it."""
    ends = [part for part in layout.parts.values() if part.role == "point" and _hangs_on(layout, part.tag, tag)]
    fitted = {part.piece.fitted for part in ends if part.piece and part.piece.fitted}
    places = {(one.vehicle, one.end) for one in fitted}
    if len(ends) != 2 or len(places) != 1:
        return None
    vehicle_tag, end = next(iter(places))
    vehicle = layout.facts.vehicles[vehicle_tag]
    spacing = {"front": vehicle.front_spacing, "rear": vehicle.rear_spacing}.get(end.value)
    return spacing.si if spacing else None


def bridle_length(layout: Layout, tag: str) -> float | None:
    """The whole length of a bridle in metres, as new."""
    piece = layout.parts[tag].piece
    size = piece.judged.dossier.item.size("length") if piece else None
    return size.si if size else None


def _from_spacing(layout: Layout, tag: str) -> float | None:
    spacing_m, length_m = spacing_of(layout, tag), bridle_length(layout, tag)
    if spacing_m is None or length_m is None:
        return None
    if spacing_m >= length_m * (1 - 1e-9):
        why = tr("The bridle {tag} is too short for the distance between the two points.", tag=tag)
        raise Refused(tr("runs"), why, tr("Take a longer bridle."))
    return _within(tag, bridle.bridle_angle_rad(spacing_m, length_m))


def _hangs_on(layout: Layout, point: str, tag: str) -> bool:
    """Whether a point is reached from the bridle without passing any other branching part."""
    waiting, seen = [tag], {tag}
    while waiting:
        here = waiting.pop()
        for other in layout.near(here):
            if other == point:
                return True
            if other not in seen and layout.parts[other].role in {"shackle", "soft"}:
                seen.add(other)
                waiting.append(other)
    return False


def _angle(layout: Layout, found: Shares, tag: str, otherwise_rad: float) -> float:
    said = layout.facts.rig.angle(tag)
    if said is None:
        found.assumed[tag] = otherwise_rad
        return otherwise_rad
    return _within(tag, said.si)


def _within(tag: str, angle_rad: float) -> float:
    if not 0 <= angle_rad <= _WIDEST_RAD:
        why = tr("The angle at {tag} must lie between 0 and 179 degrees.", tag=tag)
        raise Refused(tr("angles"), why, tr("Measure it between the two lines or legs."))
    return angle_rad
