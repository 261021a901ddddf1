"""Small helps for the words in pictures: wrapped notes, lengths."""

from inspector.drawings.extent import text_width_mm
from inspector.drawings.shapes import Ink, Shape, Text
from inspector.units import Dimension, System, show

LABEL_MM = 2.8  # 8 pt: the smallest type of a page
LEADING_MM = 3.6


def length_text(length_m: float, system: System) -> str:
    """A length in metres as it is printed; below nothing there is nothing."""
    return show(max(length_m, 0.0), Dimension.LENGTH, system)


def wrapped(text: str, width_mm: float, size_mm: float = LABEL_MM) -> tuple[str, ...]:
    """The text in lines no wider than width_mm; a word that is wider by itself is broken."""
    lines: list[str] = []
    for word in text.split():
        lines = _with_word(lines, word, width_mm, size_mm)
    return tuple(lines)


def _with_word(lines: list[str], word: str, width_mm: float, size_mm: float) -> list[str]:
    longer = f"{lines[-1]} {word}" if lines else word
    if text_width_mm(longer, size_mm) <= width_mm:
        return [*lines[:-1], longer]
    if text_width_mm(word, size_mm) <= width_mm:
        return [*lines, word]
    return [*lines, *_broken(word, width_mm, size_mm)]


def _broken(word: str, width_mm: float, size_mm: float) -> list[str]:
    pieces = [""]
    for character in word:
        if pieces[-1] and text_width_mm(pieces[-1] + character, size_mm) > width_mm:
            pieces.append("")
        pieces[-1] += character
    return pieces


def note(text: str, left_mm: float, top_mm: float, width_mm: float, most_lines: int) -> list[Shape]:
    """A faint note in lines below top_mm; what does not fit ends in an ellipsis and is told in full on hover."""
    lines = list(wrapped(text, width_mm))
    if len(lines) > most_lines:
        lines = [*lines[: most_lines - 1], _shortened(lines[most_lines - 1], width_mm)]
    return [
        Text((left_mm, top_mm + LEADING_MM * (number + 0.8)), line, LABEL_MM, ink=Ink.FAINT, tells=text)
        for number, line in enumerate(lines)
    ]


def _shortened(line: str, width_mm: float) -> str:
    while line and text_width_mm(line + "…", LABEL_MM) > width_mm:
        line = line[:-1]
    return line + "…"
