"""A vehicle from above, its front on top, with the parts where they sit on it, each with its mark. Millimetres.

It tells at which end and which side a part sits and is to no scale. What nobody wrote down stands in words below it.
"""

from collections.abc import Sequence

from inspector.drawings.change import grown, moved
from inspector.drawings.marks import outcome_mark, outcome_word
from inspector.drawings.shapes import Anchor, Drawing, Ink, Line, Point, Polygon, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, note, wrapped
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.lists import GearRow
from inspector.language import tr

_WIDTH_MM = 140.0
_BODY_WIDE_MM, _BODY_LONG_MM = 26.0, 44.0
_MARK_MM = 3.4
_ROW_MM = 4.6
_OVER_MM = 3.0
_NOTE_LINES = 3

Sits = tuple[Fitted, GearRow]


def vehicle_plan(name: str, parts: Sequence[Sits]) -> Drawing:
    """The vehicle with its parts; name: what the vehicle is called, for the title."""
    front = [one for one in parts if one[0].end is End.FRONT]
    rear = [one for one in parts if one[0].end is End.REAR]
    top_mm = _OVER_MM + _deepest(front) * _ROW_MM + LEADING_MM
    shapes = _body((_WIDTH_MM / 2, top_mm))
    shapes += [shape for one in _rows(front, top_mm, -1) for shape in one]
    foot_mm = top_mm + _BODY_LONG_MM
    shapes += [shape for one in _rows(rear, foot_mm, 1) for shape in one]
    high_mm = foot_mm + _OVER_MM + _deepest(rear) * _ROW_MM + LEADING_MM
    for told in _unknown(parts):
        shapes += note(told, 0.0, high_mm, _WIDTH_MM, _NOTE_LINES)
        high_mm += min(len(wrapped(told, _WIDTH_MM)), _NOTE_LINES) * LEADING_MM
    title = tr("Where the parts of {name} sit, seen from above", name=name)
    return Drawing(_WIDTH_MM, high_mm, tuple(shapes), title, _describes(parts))


def _unknown(parts: Sequence[Sits]) -> list[str]:
    """What nobody wrote down of where a part sits."""
    nowhere = ", ".join(row.tag for one, row in parts if one.end is End.UNKNOWN)
    no_side = ", ".join(row.tag for one, row in parts if one.end is not End.UNKNOWN and one.side is Side.UNKNOWN)
    told = [tr("Nobody wrote down where these sit: {tags}.", tags=nowhere)] if nowhere else []
    told += [tr("Nobody wrote down on which side these sit: {tags}.", tags=no_side)] if no_side else []
    return told


def _body(top: Point) -> list[Shape]:
    """Bonnet, cabin and tray about the middle line, the front on top."""
    half, long = _BODY_WIDE_MM / 2, _BODY_LONG_MM
    wheels: list[Shape] = [
        RoundedRect((x, y), 3.0, 8.0, 1.0, width_mm=0.3, fill=Ink.STEEL)
        for x in (-half - 1.5, half - 1.5) for y in (5.0, long - 13.0)
    ]  # fmt: skip
    glass = ((-half + 3, 17.0), (-half + 4.5, 13.0), (half - 4.5, 13.0), (half - 3, 17.0))
    shell: list[Shape] = [
        RoundedRect((-half, 0.0), _BODY_WIDE_MM, long, 4.0, width_mm=0.5, fill=Ink.BAND),
        Polygon(glass, width_mm=0.25, fill=Ink.PAPER),
        RoundedRect((-half + 3, 18.5), _BODY_WIDE_MM - 6, 9.0, 1.5, width_mm=0.25),
        Line((-half + 3, 30.0), (half - 3, 30.0), ink=Ink.FAINT),
        Text((0.0, 8.5), tr("front"), LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT),
        Text((0.0, long - 3.0), tr("rear"), LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT),
    ]  # fmt: skip
    return [moved(shape, *top) for shape in (*wheels, *shell)]


def _deepest(parts: Sequence[Sits]) -> int:
    """How many parts stand below one another in the middle, where words need a line each."""
    return sum(one[0].side in {Side.MIDDLE, Side.UNKNOWN} for one in parts)


def _rows(parts: Sequence[Sits], edge_mm: float, outwards: int) -> list[list[Shape]]:
    """Parts at one end. Left and right ones beside the body, the others off its end, one below the other."""
    made: list[list[Shape]] = []
    count = {Side.LEFT: 0, Side.RIGHT: 0, Side.MIDDLE: 0}
    for fitted, row in parts:
        side = Side.MIDDLE if fitted.side is Side.UNKNOWN else fitted.side
        number, count[side] = count[side], count[side] + 1
        words = _words(row)
        if side is Side.MIDDLE:
            made.append(_off_end(words, row, edge_mm + outwards * (_OVER_MM + number * _ROW_MM)))
        else:
            made.append(_beside(words, row, edge_mm - outwards * (1.5 + number * _ROW_MM), right=side is Side.RIGHT))
    return made


def _beside(words: str, row: GearRow, y_mm: float, *, right: bool) -> list[Shape]:
    way = 1 if right else -1
    corner = _WIDTH_MM / 2 + way * (_BODY_WIDE_MM / 2 - 2.5)
    out = _WIDTH_MM / 2 + way * (_BODY_WIDE_MM / 2 + 4.0)
    anchor = Anchor.START if right else Anchor.END
    text = Text((out + way * 1.0, y_mm + 0.35 * LABEL_MM), words, LABEL_MM, anchor=anchor, tells=words)
    return [Line((corner, y_mm), (out, y_mm), ink=Ink.FAINT), *_mark(row, (corner, y_mm), words), text]


def _off_end(words: str, row: GearRow, y_mm: float) -> list[Shape]:
    middle = _WIDTH_MM / 2
    text = Text((middle + _MARK_MM, y_mm + 0.35 * LABEL_MM), words, LABEL_MM, tells=words)
    return [*_mark(row, (middle, y_mm), words), text]


def _mark(row: GearRow, at: Point, tells: str) -> list[Shape]:
    """The mark of its outcome; an empty square where it was not judged yet."""
    corner = at[0] - _MARK_MM / 2, at[1] - _MARK_MM / 2
    if row.outcome is None:
        return [RoundedRect(corner, _MARK_MM, _MARK_MM, width_mm=0.3, fill=Ink.PAPER, tells=tells)]
    drawn = outcome_mark(row.outcome, 10.0).shapes
    return [moved(grown(shape, _MARK_MM / 10.0), *corner) for shape in drawn]


def _words(row: GearRow) -> str:
    return f"{row.tag}, {outcome_word(row.outcome) if row.outcome else tr('not judged yet')}"


def _describes(parts: Sequence[Sits]) -> str:
    """Every part with its place, for whoever does not see the picture."""
    if not parts:
        return tr("No part is written down for it.")
    ends = {End.FRONT: tr("front"), End.REAR: tr("rear"), End.UNKNOWN: tr("end not written down")}
    sides = {
        Side.LEFT: tr("left"),
        Side.RIGHT: tr("right"),
        Side.MIDDLE: tr("middle"),
        Side.UNKNOWN: tr("side not written down"),
    }
    told = (f"{ends[one.end]}, {sides[one.side]}" for one, _ in parts)
    return "; ".join(f"{where}: {_words(row)}" for where, (_, row) in zip(told, parts, strict=True)) + "."
