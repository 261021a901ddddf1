"""The rig from the stuck vehicle to the far end: every part with its bar of use, every joint with its mark."""

from collections.abc import Sequence

from inspector.drawings.change import moved
from inspector.drawings.rig_cell import link_says
from inspector.drawings.rig_strip import plan_of, strip
from inspector.drawings.rig_words import part_name, rig_mark, rig_meaning, rig_word
from inspector.drawings.shapes import Drawing, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.rig_result import JointUse, RigOutcome, RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr, within
from inspector.units import System

_WIDTH_MM = 178.0
_EDGE_MM = 0.5
_MARK_MM = 3.8


def rig_chain(
    result: RigResult, vehicles: Sequence[Vehicle] = (), system: System = System.METRIC, width_mm: float = _WIDTH_MM
) -> Drawing:
    """The whole rig in one picture, wrapped into rows where it is long, with what its signs mean."""
    shapes: list[Shape] = []
    top_mm = 0.0
    for part in rig_strips(result, vehicles, system, width_mm):
        shapes += [moved(shape, 0.0, top_mm) for shape in part.shapes]
        top_mm += part.height_mm
    return Drawing(width_mm, top_mm, tuple(shapes), _title(), _describes(result, system))


def rig_strips(
    result: RigResult, vehicles: Sequence[Vehicle] = (), system: System = System.METRIC, width_mm: float = _WIDTH_MM
) -> tuple[Drawing, ...]:
    """The same row by row, where a page has no room for all of it; last what the signs mean."""
    plan = plan_of(result, vehicles, system, width_mm)
    made = [*(strip(plan, row) for row in range(plan.rows.count)), _legend(result, width_mm)]
    says = _describes(result, system)
    return tuple(Drawing(width_mm, high_mm, tuple(shapes), _title(), says) for shapes, high_mm in made)


def _title() -> str:
    return tr("The rig, from the stuck vehicle to the far end")


def _describes(result: RigResult, system: System) -> str:
    """Every part in the order of the runs, then the joints that are not as they should be."""
    links = [link for tag in result.rig.tags if (link := result.link(tag)) is not None]
    said = [link_says(link, system) for link in links]
    said += [
        _joint_says(number, one) for number, one in enumerate(result.joints, 1) if one.outcome is not RigOutcome.SOUND
    ]
    if result.weakest:
        said.append(tr("Weakest: {tag}", tag=part_name(result.weakest)))
    return "; ".join(said) + "."


def _joint_says(number: int, joint: JointUse) -> str:
    return tr("joint {number}, {one} to {other}: {outcome}", number=number, one=part_name(joint.one),
              other=part_name(joint.other), outcome=within(rig_word(joint.outcome)))  # fmt: skip


def _legend(result: RigResult, width_mm: float) -> tuple[list[Shape], float]:
    """What the words and bars mean, then the marks that occur on joints."""
    shapes: list[Shape] = []
    top_mm = 0.6
    for line in wrapped(_meanings(), width_mm - 2 * _EDGE_MM):
        shapes.append(Text((_EDGE_MM, top_mm + 0.78 * LEADING_MM), line, LABEL_MM))
        top_mm += LEADING_MM
    for outcome in sorted({one.outcome for one in result.joints} - {RigOutcome.SOUND}, key=lambda one: -one.severity):
        shapes += [moved(shape, _EDGE_MM, top_mm + 0.5) for shape in rig_mark(outcome, _MARK_MM).shapes]
        said = tr("{word}: {means}.", word=rig_word(outcome), means=rig_meaning(outcome))
        for line in wrapped(said, width_mm - 3 * _EDGE_MM - _MARK_MM - 1.0):
            shapes.append(Text((_EDGE_MM + _MARK_MM + 1.0, top_mm + 0.94 * LEADING_MM), line, LABEL_MM))
            top_mm += LEADING_MM
        top_mm += 1.2
    return shapes, top_mm + 0.6


def _meanings() -> str:
    return tr(
        "Bears: the greatest pull that can come on the part. Stands: the least pull that breaks it on that day. Used: "
        "share of what it may bear; the stroke on the bar is its limit, 100 %. Numbers between the parts: the joints. "
        "Signs are not to size; a line with a break in it is longer than drawn."
    )
