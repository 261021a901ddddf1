"""The lines between the parts of a rig, and the marks of its joints. Millimetres."""

from collections.abc import Sequence

from msgspec.structs import replace

from inspector.drawings.change import moved
from inspector.drawings.rig_rows import Course, Level
from inspector.drawings.rig_words import rig_mark, rig_word
from inspector.drawings.shapes import Anchor, Circle, Ink, Line, Point, Polygon, Shape, Text
from inspector.drawings.wording import LABEL_MM
from inspector.gear.rig_result import JointUse, RigOutcome
from inspector.language import tr

_LINE_MM = 0.5
_RUN_ON_MM = 2.6
_WORD_MM = 6.4  # above the line
_UNDER_MM = 5.2  # below the line: under the largest mark, over what is said of the parts
_NEAR_EDGE_MM = 9.0  # no room for a word on both sides
_MARK_MM = 3.8
_NEVER_MM = 5.4


def course_shapes(course: Course, row: int, heights: Sequence[float]) -> list[Shape]:
    """What of a tie's course lies in a row; heights: of the line in each lane."""
    shapes = [shape for level in course.levels if level.row == row for shape in _level(level, heights[level.lane])]
    upright = course.upright
    if upright is not None and upright.row == row:
        upper_mm, lower_mm = sorted((heights[upright.from_lane], heights[upright.to_lane]))
        start, end = (upright.at_mm, upper_mm + upright.fork_mm), (upright.at_mm, lower_mm)
        shapes.append(Line(start, end, width_mm=_LINE_MM))
    return shapes


def _level(level: Level, y_mm: float) -> list[Shape]:
    shapes: list[Shape] = []
    if level.end_mm > level.start_mm:
        shapes.append(Line((level.start_mm, y_mm), (level.end_mm, y_mm), width_mm=_LINE_MM))
    if level.comes_in:
        shapes += _arrow(level.start_mm - _RUN_ON_MM, y_mm, tr("Comes from the row above"))
    if level.goes_on:
        shapes += _arrow(level.end_mm, y_mm, tr("Goes on in the row below"))
    return shapes


def _arrow(start_mm: float, y_mm: float, tells: str) -> list[Shape]:
    tip = start_mm + _RUN_ON_MM
    head = Polygon(((tip, y_mm), (tip - 1.4, y_mm - 0.9), (tip - 1.4, y_mm + 0.9)), ink=None, fill=Ink.INK, tells=tells)
    return [Line((start_mm, y_mm), (tip - 1.0, y_mm), width_mm=_LINE_MM, tells=tells), head]


def joint_shapes(
    joints: Sequence[tuple[int, JointUse]], course: Course, at: Point, width_mm: float
) -> tuple[list[Shape], Text]:
    """The marks of the joints at a place, the severest uppermost; over them their numbers, one never right says so."""
    order = sorted(joints, key=lambda one: one[1].outcome.severity)
    worst = order[-1][1].outcome
    numbers = ", ".join(str(number) for number, _ in joints)
    word = tr("{number} never", number=numbers) if worst is RigOutcome.NEVER else numbers
    anchor, across = _beside(course, at, width_mm)
    over = (at[0] + across, at[1] - _WORD_MM)
    label = Text(over, word, LABEL_MM, anchor=anchor, bold=worst is not RigOutcome.SOUND)
    return [shape for _, joint in order for shape in _mark(joint, at)], label


def under_line(label: Text) -> Text:
    """A joint's words below its mark, where others have taken the room above."""
    return replace(label, at=(label.at[0], label.at[1] + _WORD_MM + _UNDER_MM))


def _mark(joint: JointUse, at: Point) -> list[Shape]:
    said = tr("{name}: {outcome}. {says}", name=joint.name, outcome=rig_word(joint.outcome), says=joint.says)
    if joint.outcome is RigOutcome.SOUND:
        return [Circle(at, 0.9, ink=None, fill=Ink.INK, tells=said)]
    size = _NEVER_MM if joint.outcome is RigOutcome.NEVER else _MARK_MM
    made = [moved(shape, at[0] - size / 2, at[1] - size / 2) for shape in rig_mark(joint.outcome, size).shapes]
    return [Circle(at, size / 2, ink=None, tells=said), *made]


def _beside(course: Course, at: Point, width_mm: float) -> tuple[Anchor, float]:
    """Over the mark; beside an upright line or within the frame's edge where it would lie on them."""
    upright = course.upright
    if upright is not None and upright.to_lane != upright.from_lane and abs(upright.at_mm - at[0]) < _RUN_ON_MM:
        return (Anchor.END, -0.9) if upright.from_lane > upright.to_lane else (Anchor.START, 0.9)
    if at[0] > width_mm - _NEAR_EDGE_MM:
        return Anchor.END, 2.0
    return (Anchor.START, -2.0) if at[0] < _NEAR_EDGE_MM else (Anchor.MIDDLE, 0.0)
