"""Text into lines, in the order of reading; the press turns each line round where its script wants it."""

import unicodedata
from collections.abc import Iterator

from inspector.paper.fonts import composed, sits_on
from inspector.paper.page_style import Type
from inspector.paper.shaping import text_width_pt

_SLACK_PT = 1e-6  # widths are added up


def lines_of(text: str, width_pt: float, type_: Type) -> tuple[str, ...]:
    """The text in lines no wider than width_pt; a word that is too wide by itself is broken, nothing is dropped.

    Lines break at spaces, and before or after any East Asian sign.
    """
    return tuple(line for part in composed(text).split("\n") for line in _lines(part, width_pt, type_))


def _lines(text: str, width_pt: float, type_: Type) -> list[str]:
    done: list[str] = []
    line, reach = "", 0.0
    space_pt = _width(" ", type_)
    for piece, gap in _pieces(text, width_pt, type_):
        wide, before = _width(piece, type_), space_pt if gap else 0.0
        if line and reach + before + wide > width_pt + _SLACK_PT:
            done.append(line)
            line, reach = piece, wide
        elif line:
            line, reach = f"{line}{' ' * gap}{piece}", reach + before + wide
        else:
            line, reach = piece, wide
    return [*done, line] if line else done


def _pieces(text: str, width_pt: float, type_: Type) -> Iterator[tuple[str, bool]]:
    """What stays together on a line, and whether a space stands before it; what is too wide is cut to fit."""
    for word in text.split(" "):
        gap = True
        for whole in _unbroken(word):
            for piece in _cut(whole, width_pt, type_):
                yield piece, gap
                gap = False


def _unbroken(word: str) -> list[str]:
    """A word's parts that no line breaks within: an East Asian sign each, with the points and brackets at its side."""
    if word.isascii():
        return [word] if word else []
    parts: list[str] = []
    for sign in _signs(word):
        if parts and not _may_break(parts[-1][-1], sign[0]):
            parts[-1] += sign
        else:
            parts.append(sign)
    return parts


def _may_break(before: str, after: str) -> bool:
    opens, closes = (
        unicodedata.category(before) in {"Ps", "Pi"},
        unicodedata.category(after) in {"Pe", "Pf", "Po", "Lm"},
    )
    return (_is_east_asian(before) or _is_east_asian(after)) and not (opens or closes)


def _is_east_asian(sign: str) -> bool:
    return unicodedata.east_asian_width(sign) in "WF"


def _signs(word: str) -> list[str]:
    """The word sign by sign, each with the marks that sit on it."""
    found: list[str] = []
    for sign in word:
        if found and sits_on(sign):
            found[-1] += sign
        else:
            found.append(sign)
    return found


def _cut(word: str, width_pt: float, type_: Type) -> list[str]:
    if _width(word, type_) <= width_pt:
        return [word]
    pieces = [""]
    for sign in _signs(word):
        if pieces[-1] and _width(pieces[-1] + sign, type_) > width_pt:
            pieces.append("")
        pieces[-1] += sign
    return pieces


def _width(text: str, type_: Type) -> float:
    return text_width_pt(text, type_.size_pt, bold=type_.bold)
