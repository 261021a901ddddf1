"""The pictures of a rig sheet: the rig, its joints cut open, how the pull grows."""

from collections.abc import Sequence
from itertools import zip_longest

from inspector.drawings.rig_chain import rig_strips
from inspector.drawings.rig_joints import has_picture, joint_picture
from inspector.drawings.rig_sensitivity import depth_chart, has_depths, has_speeds, speed_chart
from inspector.drawings.rig_turns import turn_picture, turns
from inspector.drawings.shapes import Drawing, Shape
from inspector.gear.papers import RigSheet
from inspector.gear.rig_result import RigResult
from inspector.language import tr
from inspector.paper.blocks import Block, picture, row, stack, words
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, GRID, MM
from inspector.units import System

_ONE_ROW = 2  # the row, and what its signs mean


def chain(sheet: RigSheet, width_pt: float, system: System) -> list[Block]:
    """The whole rig; where a page has no room for it, it is parted between two rows."""
    strips = rig_strips(sheet.result, sheet.vehicles, system)
    return [heading(strips[0].title, width_pt), stack([picture(strip) for strip in strips])]


def is_long(sheet: RigSheet) -> bool:
    """Whether the picture has more than one row."""
    return len(rig_strips(sheet.result, sheet.vehicles)) > _ONE_ROW


def sections(result: RigResult, width_pt: float, system: System) -> list[Block]:
    """The sections of the joints that have one, those alike drawn once; then where three lines meet."""
    shown: dict[tuple[Shape, ...], list[int]] = {}
    drawn = [(number, joint_picture(one, system)) for number, one in enumerate(result.joints, 1) if has_picture(one)]
    for number, drawing in drawn:
        shown.setdefault(drawing.shapes, []).append(number)
    first = {drawing.shapes: drawing for _, drawing in reversed(drawn)}
    cut = [(_joint_title(numbers, first[shapes].title), first[shapes]) for shapes, numbers in shown.items()]
    meet = [turn_picture(result, tag, system) for tag in turns(result)]
    return _paired([*cut, *((one.title, one) for one in meet)], width_pt)


def _joint_title(numbers: Sequence[int], title: str) -> str:
    """By its parts; of several that look alike by their numbers."""
    if len(numbers) == 1:
        return tr("Joint {number}: {title}", number=numbers[0], title=title)
    return tr("Joints {numbers}", numbers=", ".join(map(str, numbers)))


def sensitivity(result: RigResult, width_pt: float, system: System) -> list[Block]:
    """How the pull grows with speed and with depth."""
    charts = [speed_chart(result, system)] if has_speeds(result) else []
    if has_depths(result):
        charts.append(depth_chart(result, system))
    if not charts:
        return []
    return [heading(tr("How the pull grows"), width_pt), *_paired([(one.title, one) for one in charts], width_pt)]


def _paired(shown: Sequence[tuple[str, Drawing]], width_pt: float) -> list[Block]:
    """Two beside one another."""
    pairs = zip_longest(shown[::2], shown[1::2])
    return [
        row((0, _titled(*left)), *([(width_pt - right[1].width_mm * MM, _titled(*right))] if right else [])).below(
            2 * GRID
        )
        for left, right in pairs
    ]


def _titled(title: str, drawing: Drawing) -> Block:
    return stack([words(title, drawing.width_mm * MM, BODY.in_bold()), picture(drawing).below(GRID / 2)])
