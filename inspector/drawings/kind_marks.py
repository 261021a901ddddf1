"""The gear by kind: a mark for each piece in the shape of its outcome, or a mark and a number where they are many."""

from collections.abc import Sequence

from inspector.drawings.change import moved
from inspector.drawings.extent import text_width_mm
from inspector.drawings.marks import outcome_mark, outcome_word
from inspector.drawings.shapes import Anchor, Drawing, Ink, Line, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.outcome import Outcome
from inspector.gear.register_report import KindCount
from inspector.language import tr

_ORDER = (Outcome.FIT, Outcome.DERATE, Outcome.HOLD, Outcome.RETIRE)
_NAME_MM, _TOTAL_MM = 44.0, 53.0  # where names end and totals end
_MARKS_MM = 57.0
_MARK_MM, _PITCH_MM = 3.2, 3.9
_ROW_MM, _EDGE_MM = 5.4, 0.5
_KEY_MM = 6.5


def kind_marks(kinds: Sequence[KindCount], width_mm: float) -> Drawing:
    """The picture, width_mm wide, with a row for each kind and the marks' words below."""
    shapes: list[Shape] = []
    top = 0.5
    most = int((width_mm - _MARKS_MM - _EDGE_MM) / _PITCH_MM)
    for one in kinds:
        row, top = _row(one, top, width_mm, most)
        shapes += row
    key = _key(top + 1.5)
    described = "; ".join(_says(one) for one in kinds)
    return Drawing(width_mm, top + 1.5 + _KEY_MM, (*shapes, *key), tr("The gear by kind, a mark a piece"), described)


def _row(one: KindCount, top: float, width_mm: float, most: int) -> tuple[list[Shape], float]:
    lines = wrapped(one.kind_name, _NAME_MM)
    high = max(_ROW_MM, len(lines) * LEADING_MM + 1.4)
    middle = top + high / 2
    first = middle - (len(lines) - 1) * LEADING_MM / 2 + 0.35 * LABEL_MM
    shapes: list[Shape] = [Text((_EDGE_MM, first + at * LEADING_MM), line, LABEL_MM) for at, line in enumerate(lines)]
    total = (_TOTAL_MM, middle + 0.35 * LABEL_MM)
    shapes.append(Text(total, str(one.total), LABEL_MM, anchor=Anchor.END, bold=True))
    shapes += _marks(one, middle) if one.total <= most else _numbers(one, middle)
    line = Line((_EDGE_MM, top + high), (width_mm - _EDGE_MM, top + high), ink=Ink.HAIR, width_mm=0.1)
    return [*shapes, line], top + high


def _marks(one: KindCount, middle: float) -> list[Shape]:
    every = [outcome for outcome in _ORDER for _ in range(one.of(outcome))]
    return [shape for at, outcome in enumerate(every) for shape in _mark(outcome, _MARKS_MM + at * _PITCH_MM, middle)]


def _mark(outcome: Outcome, left: float, middle: float) -> list[Shape]:
    return [moved(one, left, middle - _MARK_MM / 2) for one in outcome_mark(outcome, _MARK_MM).shapes]


def _numbers(one: KindCount, middle: float) -> list[Shape]:
    """A mark and a number for each outcome: more marks than the width has room for."""
    shapes: list[Shape] = []
    left = _MARKS_MM
    for outcome in _ORDER:
        if not one.of(outcome):
            continue
        said = tr("× {count}", count=one.of(outcome))
        at = (left + _PITCH_MM + 0.5, middle + 0.35 * LABEL_MM)
        shapes += [*_mark(outcome, left, middle), Text(at, said, LABEL_MM)]
        left += _PITCH_MM + text_width_mm(said, LABEL_MM) + 4.0
    return shapes


def _key(top: float) -> list[Shape]:
    shapes: list[Shape] = []
    left = _EDGE_MM
    for outcome in _ORDER:
        word = outcome_word(outcome)
        at = (left + _PITCH_MM + 0.5, top + _MARK_MM / 2 + 0.35 * LABEL_MM)
        shapes += [*_mark(outcome, left, top + _MARK_MM / 2), Text(at, word, LABEL_MM, ink=Ink.FAINT)]
        left += _PITCH_MM + text_width_mm(word, LABEL_MM) + 6.0
    return shapes


def _says(one: KindCount) -> str:
    said = ", ".join(f"{outcome_word(outcome)} {one.of(outcome)}" for outcome in _ORDER if one.of(outcome))
    return tr("{kind}: {counts}", kind=one.kind_name, counts=said)
