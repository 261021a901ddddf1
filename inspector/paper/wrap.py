"""Text into lines."""

from inspector.paper.fonts import composed, text_width_pt
from inspector.paper.page_style import Type


def lines_of(text: str, width_pt: float, type_: Type) -> tuple[str, ...]:
    """The text in lines no wider than width_pt; a word that is too wide by itself is broken, nothing is dropped."""
    return tuple(line for part in composed(text).split("\n") for line in _lines(part, width_pt, type_))


def _lines(text: str, width_pt: float, type_: Type) -> list[str]:
    done: list[str] = []
    line = ""
    for word in _pieces(text, width_pt, type_):
        longer = f"{line} {word}" if line else word
        if line and _width(longer, type_) > width_pt:
            done.append(line)
            longer = word
        line = longer
    return [*done, line] if line else done


def _pieces(text: str, width_pt: float, type_: Type) -> list[str]:
    """The words, those too wide cut into pieces that fit."""
    return [piece for word in text.split(" ") if word for piece in _cut(word, width_pt, type_)]


def _cut(word: str, width_pt: float, type_: Type) -> list[str]:
    if _width(word, type_) <= width_pt:
        return [word]
    pieces = [""]
    for sign in word:
        if pieces[-1] and _width(pieces[-1] + sign, type_) > width_pt:
            pieces.append("")
        pieces[-1] += sign
    return pieces


def _width(text: str, type_: Type) -> float:
    return text_width_pt(text, type_.size_pt, bold=type_.bold)
