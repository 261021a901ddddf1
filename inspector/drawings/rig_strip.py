"""One row of a rig's picture: parts with their labels, lines between them, marks of the joints. Millimetres."""

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from inspector.drawings.extent import extent
from inspector.drawings.rig_cell import body_label, link_says, part_label
from inspector.drawings.rig_graph import kind_of
from inspector.drawings.rig_grid import Cell, Grid, Tie, grid_of
from inspector.drawings.rig_lines import course_shapes, joint_shapes, under_line
from inspector.drawings.rig_rows import Course, Rows, course_of, lanes_in, rows_of
from inspector.drawings.rig_signs import FORK_MM, Reach, is_broken, sign
from inspector.drawings.rig_vehicle import vehicle
from inspector.drawings.rig_words import part_name
from inspector.drawings.shapes import Anchor, Ink, Point, Polygon, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM
from inspector.gear.rig_result import JointUse, RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.units import Dimension, System, show

_ABOVE_MM = 14.0  # over the line: words on two levels, then the upper half of a sign
_BELOW_MM = 6.4
_HIGH_WORDS_MM = 10.4  # above the line
_LANE_GAP_MM = 2.0
_IN_VEHICLE = frozenset({"hitch_receiver", "hitch_pin"})  # a part next to them is held by that side
_EMPTY_LANE_MM = 8.0


class Plan(Struct, frozen=True):
    """A rig laid out: where its parts stand and how the lines between them run."""

    result: RigResult
    vehicles: dict[str, Vehicle]
    system: System
    grid: Grid
    rows: Rows
    courses: tuple[Course, ...]
    width_mm: float


def plan_of(result: RigResult, vehicles: Sequence[Vehicle], system: System, width_mm: float) -> Plan:
    """The plan of a rig for a picture of this width."""
    grid = grid_of(result)
    rows = rows_of(grid, width_mm)
    courses = tuple(course_of(tie, rows, _fork_mm(result, tie)) for tie in grid.ties)
    return Plan(result, {one.tag: one for one in vehicles}, system, grid, rows, courses, width_mm)


def _fork_mm(result: RigResult, tie: Tie) -> float:
    """A bridle's second leg comes in beside the first."""
    upper = min((tie.left, tie.right), key=lambda cell: cell.lane)
    return FORK_MM if not upper.is_body and kind_of(result, upper.tag) == "bridle_strap" else 0.0


def strip(plan: Plan, row: int) -> tuple[list[Shape], float]:
    """The shapes of one row and how high it is."""
    parts: list[Shape] = []
    heights: list[float] = []  # of the line in each lane
    top_mm = 0.0
    for lane in range(lanes_in(row, plan.grid, plan.courses, plan.rows)):
        cells = [cell for cell in plan.grid.cells if cell.lane == lane and plan.rows.row_of(cell.column) == row]
        heights.append(top_mm + (_ABOVE_MM if cells else _EMPTY_LANE_MM / 2))
        made = [shape for cell in cells for shape in _cell(plan, cell, heights[-1])]
        parts += made
        top_mm = max([heights[-1] + _EMPTY_LANE_MM / 2, *(extent(shape).bottom for shape in made)]) + _LANE_GAP_MM
    lines = [shape for course in plan.courses for shape in course_shapes(course, row, heights)]
    return [*lines, *parts, *_joints(plan, row, heights)], top_mm


def _cell(plan: Plan, cell: Cell, line_mm: float) -> list[Shape]:
    left_mm, width_mm = plan.rows.left_mm(cell.column), plan.rows.column_mm
    middle, below_mm = (left_mm + width_mm / 2, line_mm), line_mm + _BELOW_MM
    if cell.is_body:
        tells, rig = tr("Vehicle {tag}", tag=cell.tag), plan.result.rig
        body = vehicle(middle, _reach(plan, cell), tells, stuck=cell.tag == rig.bogged)
        label = body_label(plan.vehicles.get(cell.tag), cell.tag, rig, (left_mm, below_mm), width_mm)
        return [*body, *label]
    label = part_label(plan.result, cell.tag, (left_mm, below_mm), width_mm, plan.system)
    return [*_part(plan, cell, middle), *_above(plan, cell, middle), *label]


def _part(plan: Plan, cell: Cell, middle: Point) -> list[Shape]:
    """The sign; hovering tells all of its part."""
    link = plan.result.link(cell.tag)
    ties = plan.grid.ties
    forks = sum(tie.right == cell for tie in ties) > 1 or sum(tie.left == cell for tie in ties) > 1
    turned = _is_turned(plan, cell)
    made = sign(kind_of(plan.result, cell.tag), middle, _reach(plan, cell), branches=forks, turned=turned)
    said = link_says(link, plan.system) if link else part_name(cell.tag)
    return [replace(shape, tells=said) for shape in made]


def _reach(plan: Plan, cell: Cell) -> Reach:
    half_mm = plan.rows.column_mm / 2
    left = any(tie.right == cell for tie in plan.grid.ties)
    right = any(tie.left == cell for tie in plan.grid.ties)
    return Reach(half_mm if left else 0.0, half_mm if right else 0.0)


def _is_turned(plan: Plan, cell: Cell) -> bool:
    """Whether the vehicle that the part hangs on stands on its right, or it is fixed or forks that way."""
    link = plan.result.link(cell.tag)
    body = (link.side if link else "") or cell.tag.partition("@")[2]
    stands = next((one.column for one in plan.grid.cells if one.is_body and one.tag == body), None)
    if stands is not None:
        return stands > cell.column
    beyond = [tie.right.tag for tie in plan.grid.ties if tie.left == cell]
    return len(beyond) > 1 or any(kind_of(plan.result, tag) in _IN_VEHICLE for tag in beyond)


def _above(plan: Plan, cell: Cell, middle: Point) -> list[Shape]:
    """Over the sign: that it is the weakest, and how long a line really is."""
    (x, y), link = middle, plan.result.link(cell.tag)
    long_m = link.length_m if link is not None and is_broken(kind_of(plan.result, cell.tag)) else None
    long = show(long_m, Dimension.LENGTH, plan.system) if long_m is not None else ""
    tells = tr("Its length; it is drawn shorter")
    if cell.tag != plan.result.weakest:
        at = (x, y - _HIGH_WORDS_MM + LEADING_MM)
        return [Text(at, long, LABEL_MM, anchor=Anchor.MIDDLE, tells=tells)] if long else []
    top = y - _HIGH_WORDS_MM
    says = tr("weakest, {long}", long=long) if long else tr("weakest")
    word = Text((x, top), says, LABEL_MM, anchor=Anchor.MIDDLE, bold=True, tells=tells if long else "")
    head = ((x - 1.4, top + 0.9), (x + 1.4, top + 0.9), (x, top + 3.0))
    return [word, Polygon(head, ink=None, fill=Ink.INK, tells=tr("Weakest part"))]


def _joints(plan: Plan, row: int, heights: Sequence[float]) -> list[Shape]:
    """The marks of the joints that the result tells of, those of a row; several may meet at one place."""
    spots: dict[tuple[int, int, float], list[tuple[int, JointUse]]] = {}
    courses: dict[tuple[int, int, float], Course] = {}
    for tie, course in zip(plan.grid.ties, plan.courses, strict=True):
        names = set(tie.edge.joined) if tie.edge else {tie.left.tag, tie.right.tag}
        found = [(number, one) for number, one in enumerate(plan.result.joints, 1) if {one.one, one.other} == names]
        if found and course.mark[0] == row:
            spots.setdefault(course.mark, []).extend(found)
            courses[course.mark] = course
    marks: list[Shape] = []
    words: list[Text] = []
    for spot, found in spots.items():
        made, word = joint_shapes(found, courses[spot], (spot[2], heights[spot[1]]), plan.width_mm)
        marks += made
        is_free = not any(extent(word).overlaps(extent(one)) for one in words)
        words.append(word if is_free else under_line(word))
    return [*marks, *words]
