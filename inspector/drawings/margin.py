"""Two labels in the margin of a chart, each at its line, pushed apart where the lines lie close."""

from msgspec import Struct

from inspector.drawings.extent import Box
from inspector.drawings.shapes import Ink, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped


class MarginLabel(Struct, frozen=True):
    """Words of a level line; y_mm is the line's height in the picture."""

    words: tuple[str, ...]
    y_mm: float
    ink: Ink


def margin_words(one: MarginLabel, other: MarginLabel, room: Box) -> list[Shape]:
    """Both labels in the room, neither on the other."""
    upper, lower = sorted((one, other), key=lambda label: label.y_mm)
    upper_lines, lower_lines = _lines(upper, room), _lines(lower, room)
    upper_high, lower_high = len(upper_lines) * LEADING_MM, len(lower_lines) * LEADING_MM
    push = max((upper_high + lower_high) / 2 - (lower.y_mm - upper.y_mm), 0.0) / 2
    lower_top = min(lower.y_mm + push - lower_high / 2, room.bottom - lower_high)
    upper_top = max(min(upper.y_mm - push - upper_high / 2, lower_top - upper_high), room.top)
    lower_top = max(lower_top, upper_top + upper_high)
    return [*_set(upper_lines, upper, upper_top, room), *_set(lower_lines, lower, lower_top, room)]


def _lines(label: MarginLabel, room: Box) -> list[str]:
    return [line for words in label.words for line in wrapped(words, room.width)]


def _set(lines: list[str], label: MarginLabel, top_mm: float, room: Box) -> list[Shape]:
    return [
        Text((room.left, top_mm + (number + 0.78) * LEADING_MM), line, LABEL_MM, ink=label.ink)
        for number, line in enumerate(lines)
    ]
