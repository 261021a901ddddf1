"""What has become of a strength: as marked, each loss, and what is left."""

from inspector.drawings.bar_rows import Bar, Row, rows
from inspector.drawings.shapes import Drawing, Ink, Shape
from inspector.drawings.wording import LEADING_MM, length_text, note
from inspector.gear.capacity import Capacity
from inspector.language import show_day, tr
from inspector.units import Dimension, System, show

_WIDTH_MM = 88.0
_TOP_MM = 0.5
_MOST_NOTE_LINES = 3


def has_waterfall(capacity: Capacity) -> bool:
    """Whether a picture tells anything: a loss, or a strength that was reckoned from sizes."""
    return bool(capacity.steps) or capacity.as_new_n is not None


def waterfall(capacity: Capacity, system: System = System.METRIC) -> Drawing:
    """The picture, 88 mm wide and as high as it has rows."""
    steps = _steps(capacity, system)
    shapes, top_mm = rows(steps, _TOP_MM, _WIDTH_MM)
    said: list[Shape] = note(_note(capacity, system), 0.5, top_mm, _WIDTH_MM - 1.0, _MOST_NOTE_LINES)
    height_mm = top_mm + len(said) * LEADING_MM + 0.8
    describes = "; ".join(f"{row.words}: {row.value}" for row in steps) + "."
    return Drawing(_WIDTH_MM, height_mm, (*shapes, *said), tr("What has become of its strength"), describes)


def _steps(capacity: Capacity, system: System) -> list[Row]:
    """As marked, each loss hanging from the strength before it, and what is left."""
    begins_n = capacity.begins_n
    if not begins_n:
        return []
    words = tr("as marked") if capacity.as_marked_n is not None else tr("as new, reckoned from its sizes")
    told = tr("{what}: {force}", what=words, force=_force(begins_n, system))
    found = [Row(words, _force(begins_n, system), (Bar(0.0, 1.0, Ink.BAND, Ink.INK, tells=told),))]
    before_n = begins_n
    for step in capacity.steps:
        lost = f"−{show(step.loss_ratio, Dimension.RATIO)}"
        told = tr("{what}: {lost}, from {before} to {after}", what=step.name or tr("loss"), lost=lost,
                  before=_force(before_n, system), after=_force(step.after_n, system))  # fmt: skip
        bar = Bar(step.after_n / begins_n, before_n / begins_n, Ink.THIN, Ink.INK, tells=told)
        found.append(Row(step.name or tr("loss"), lost, (bar,)))
        before_n = step.after_n
    return [*found, _now(capacity, begins_n, system)]


def _now(capacity: Capacity, begins_n: float, system: System) -> Row:
    if capacity.now_n is None:
        why = tr("now: not known. {why}", why=capacity.why_unknown).strip()
        return Row(tr("now"), tr("not known"), (Bar(0.0, 1.0, None, Ink.INK, dashed=True, tells=why),), bold=True)
    words = tr("now, estimated: no reading") if _is_estimated(capacity) else tr("now")
    told = tr("{what}: {force}", what=words, force=_force(capacity.now_n, system))
    told = " ".join(filter(None, (told, _note(capacity, system))))
    bar = Bar(0.0, capacity.now_n / begins_n, Ink.STEEL, Ink.INK, _is_estimated(capacity), told)
    return Row(words, _force(capacity.now_n, system), (bar,), bold=True)


def _is_estimated(capacity: Capacity) -> bool:
    return capacity.estimated and bool(capacity.strengths)


def _note(capacity: Capacity, system: System) -> str:
    """The wall it rests on, for a tube."""
    if capacity.wall_m is None or capacity.wall_on is None:
        return ""
    wall, day = length_text(capacity.wall_m, system), show_day(capacity.wall_on)
    return tr("Reckoned with the wall of {day}: {wall}.", day=day, wall=wall)


def _force(force_n: float, system: System) -> str:
    return show(force_n, Dimension.FORCE, system)
