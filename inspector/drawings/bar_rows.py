"""Rows of a bar chart: words and a value over a bar, one row below the other. Millimetres, y downwards."""

from msgspec import Struct

from inspector.drawings.extent import text_width_mm
from inspector.drawings.shapes import Anchor, Ink, Line, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped

_EDGE_MM = 0.5
_BAR_MM = 3.4
_UNDER_MM = 1.5
_ROOM_MM = 2.0  # between the words and the value
_DASH = (1.0, 0.8)
_BOLD_WIDER = text_width_mm("n", 1.0, bold=True) / text_width_mm("n", 1.0)


class Bar(Struct, frozen=True):
    """A piece of a bar from one share of the full width to another, 0 to 1. hollow: an outline only."""

    start_ratio: float
    end_ratio: float
    fill: Ink | None
    ink: Ink | None = None
    dashed: bool = False
    tells: str = ""


class Row(Struct, frozen=True):
    """Words, a value and what is drawn below them. ticks: places on the bar, as shares, with what each says."""

    words: str
    value: str
    bars: tuple[Bar, ...] = ()
    ticks: tuple[tuple[float, str], ...] = ()
    ink: Ink = Ink.INK
    bold: bool = False


def rows(given: list[Row], top_mm: float, width_mm: float) -> tuple[list[Shape], float]:
    """The rows as shapes, and where the next thing may begin."""
    shapes: list[Shape] = []
    for row in given:
        made, top_mm = _row(row, top_mm, width_mm)
        shapes.extend(made)
    return shapes, top_mm


def _row(row: Row, top_mm: float, width_mm: float) -> tuple[list[Shape], float]:
    value_mm = text_width_mm(row.value, LABEL_MM, bold=True)
    words_mm = width_mm - 2 * _EDGE_MM - value_mm - _ROOM_MM
    lines = _lines(row, words_mm)
    shapes: list[Shape] = [
        Text((_EDGE_MM, top_mm + (number + 0.78) * LEADING_MM), line, LABEL_MM, ink=row.ink, bold=row.bold)
        for number, line in enumerate(lines)
    ]
    at = (width_mm - _EDGE_MM, top_mm + 0.78 * LEADING_MM)
    if row.value:
        shapes.append(Text(at, row.value, LABEL_MM, anchor=Anchor.END, ink=row.ink, bold=row.bold))
    below_mm = top_mm + len(lines) * LEADING_MM + 0.5
    shapes += _bars(row, below_mm, width_mm)
    return shapes, below_mm + (_BAR_MM if row.bars else 0.0) + _UNDER_MM


def _lines(row: Row, words_mm: float) -> tuple[str, ...]:
    """Bold words are set as if larger, since `wrapped` measures plain ones."""
    return wrapped(row.words, words_mm, LABEL_MM * (_BOLD_WIDER if row.bold else 1.0))


def _bars(row: Row, top_mm: float, width_mm: float) -> list[Shape]:
    full_mm = width_mm - 2 * _EDGE_MM
    shapes: list[Shape] = []
    for bar in row.bars:
        start, end = (_EDGE_MM + full_mm * min(max(share, 0.0), 1.0) for share in (bar.start_ratio, bar.end_ratio))
        dash = _DASH if bar.dashed else ()
        look = {"ink": bar.ink, "fill": bar.fill, "dash_mm": dash, "width_mm": 0.3, "tells": bar.tells}
        shapes.append(RoundedRect((start, top_mm), end - start, _BAR_MM, **look))  # type: ignore[arg-type]
    for share, said in row.ticks:
        x = _EDGE_MM + full_mm * min(max(share, 0.0), 1.0)
        shapes.append(Line((x, top_mm - 0.3), (x, top_mm + _BAR_MM + 0.3), width_mm=0.6, tells=said))
    return shapes
