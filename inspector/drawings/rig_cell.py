"""What stands under a part of a rig: its tag, what it bears, what it stands, and a bar of use against its limit."""

from collections.abc import Sequence

from inspector.drawings.bar_rows import Bar, Row, rows
from inspector.drawings.change import moved
from inspector.drawings.extent import extent, text_width_mm
from inspector.drawings.rig_words import (
    bears_text,
    link_name,
    part_name,
    rig_word,
    stands_text,
    unrated_text,
    used_text,
)
from inspector.drawings.shapes import Ink, Point, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.rig import Rig
from inspector.gear.rig_result import LinkUse, RigOutcome, RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr, within
from inspector.units import System

LIMIT_RATIO = 0.75  # where on its bar the limit stands: what lies beyond shows
_EDGE_MM = 1.4
_BOLD_WIDER = text_width_mm("n", 1.0, bold=True) / text_width_mm("n", 1.0)


def part_label(result: RigResult, tag: str, corner: Point, width_mm: float, system: System) -> list[Shape]:
    """The words and the bar of a part, below its corner in a column width_mm wide."""
    link = result.link(tag)
    lines = _said(result.rig, link, tag, system)
    shapes, below_mm = _lines(lines, corner, width_mm)
    if link is not None:
        bar, _ = rows([_use(link)], below_mm + 0.4, width_mm - 2 * _EDGE_MM + 1.0)
        shapes += [moved(shape, corner[0] + _EDGE_MM - 0.5) for shape in bar]
    return [_frame(shapes, corner, width_mm), *shapes] if tag == result.weakest else shapes


def body_label(vehicle: Vehicle | None, tag: str, rig: Rig, corner: Point, width_mm: float) -> list[Shape]:
    """A vehicle's tag, what it does, its mass on the day or else its laden mass."""
    does = {rig.bogged: tr("stuck"), rig.pulling: tr("it pulls")}.get(tag, tr("stands by"))
    lines = [(tag, True), (does, False)]
    if vehicle is not None:
        mass = tr("{mass}", mass=vehicle.mass.as_typed) if vehicle.mass else tr("GVM {mass}", mass=vehicle.gvm.as_typed)
        lines += [(vehicle.name, False), (mass, False)]
    return _lines(lines, corner, width_mm)[0]


def link_says(link: LinkUse, system: System) -> str:
    """All that is known of a part in one sentence, for who hovers over it or cannot see it."""
    bears, stands, used = bears_text(link, system), stands_text(link, system), used_text(link)
    said = tr("{part}: bears {bears}, stands {stands}, used {used}", part=link_name(link),
              bears=bears, stands=stands, used=used)  # fmt: skip
    return said if link.outcome is RigOutcome.SOUND else f"{said}, {within(rig_word(link.outcome))}"


def _said(rig: Rig, link: LinkUse | None, tag: str, system: System) -> list[tuple[str, bool]]:
    said = [(part_name(tag), True)]
    if link is not None:
        said += [(link.kind_name, False)] if part_name(tag) == tag else []
        said.append((tr("bears {force}", force=bears_text(link, system)), False))
        said.append((_stands(link, system), False))
    angle = rig.angle(tag)
    return [*said, (tr("angle {angle}", angle=angle.as_typed), False)] if angle else said


def _stands(link: LinkUse, system: System) -> str:
    if link.passes_on:
        return unrated_text(link)
    if link.capacity_n is None:
        return tr("strength not known")
    return tr("stands {force}", force=stands_text(link, system))


def _lines(said: Sequence[tuple[str, bool]], corner: Point, width_mm: float) -> tuple[list[Shape], float]:
    """The texts below one another, bold or not, and where the next thing may begin."""
    shapes: list[Shape] = []
    left_mm, top_mm = corner
    for text, bold in said:
        for line in wrapped(text, width_mm - 2 * _EDGE_MM, LABEL_MM * (_BOLD_WIDER if bold else 1.0)):
            shapes.append(Text((left_mm + _EDGE_MM, top_mm + 0.78 * LEADING_MM), line, LABEL_MM, bold=bold))
            top_mm += LEADING_MM
    return shapes, top_mm


def _use(link: LinkUse) -> Row:
    """The bar: a frame up to the limit, what is used in it, a stroke at the limit; hollow and dashed where unknown."""
    share = link.use_ratio
    if link.passes_on:
        return Row(tr("used"), used_text(link))
    if share is None:
        hollow = Bar(0.0, LIMIT_RATIO, None, Ink.INK, dashed=True, tells=tr("Nobody knows what it stands"))
        return Row(_loud(link), "", (hollow,), bold=True)
    within = Bar(0.0, min(share, 1.0) * LIMIT_RATIO, Ink.STEEL, Ink.INK, tells=tr("Used"))
    frame = Bar(0.0, LIMIT_RATIO, Ink.PAPER, Ink.INK, tells=tr("What it may bear"))
    ticks = ((LIMIT_RATIO, tr("Its limit: 100 %")),)
    if share <= 1:
        return Row(tr("used"), used_text(link), (frame, within), ticks)
    over = Bar(LIMIT_RATIO, share * LIMIT_RATIO, Ink.LIMIT, Ink.INK, tells=tr("Beyond what it may bear"))
    return Row(_loud(link), "", (frame, within, over), ticks, bold=True)


def _loud(link: LinkUse) -> str:
    return tr("used: {share}", share=used_text(link))


def _frame(shapes: Sequence[Shape], corner: Point, width_mm: float) -> Shape:
    """A strong frame round the label of the weakest part."""
    high = max(extent(shape).bottom for shape in shapes) - corner[1] + 0.9
    at = (corner[0] + 0.6, corner[1] - 0.2)
    return RoundedRect(at, width_mm - 1.2, high, 0.8, width_mm=0.5, tells=tr("Weakest part"))
