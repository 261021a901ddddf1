"""The packaged type: where it lies, which font has a sign, what no font has."""

import unicodedata
from functools import cache, lru_cache

from reportlab.pdfbase import pdfmetrics

from inspector.paper.font_files import BOLD, FOLDER, REGULAR
from inspector.paper.script_font import ScriptFont

MISSING = "□"
_EAST_ASIAN = "DroidSansFallback"  # Chinese, Japanese, Korean; one weight; read only for a text that needs it
JOINERS = frozenset("\u200c\u200d")  # seen only in how their neighbours join
_ORDERS, _SHAPES = (*range(0x202A, 0x202F), *range(0x2066, 0x206A)), range(0xFE00, 0xFE10)
_UNSEEN = dict.fromkeys(
    # hyphens that show only at a break, marks and orders of direction, choices among the shapes of a sign
    (0xAD, 0x61C, 0x200B, 0x200E, 0x200F, 0x2060, 0xFEFF, *_ORDERS, *_SHAPES)
)


@cache
def _font(name: str) -> ScriptFont:
    """A packaged font, known to the press from its first use."""
    font = ScriptFont(name, FOLDER / f"{name}.ttf")
    pdfmetrics.registerFont(font)
    return font


def main_font(bold: bool) -> ScriptFont:
    """The font that texts are set in where it has their signs."""
    return _font(BOLD if bold else REGULAR)


@lru_cache(4096)
def font_with(sign: str, bold: bool) -> ScriptFont | None:
    """The font that has a sign: the type's own, for bold then its regular, then the East Asian one; or None."""
    if unicodedata.category(sign) == "Co":  # what it means is agreed between others
        return None
    for name in (BOLD, REGULAR, _EAST_ASIAN) if bold else (REGULAR, _EAST_ASIAN):
        if sign in _font(name).signs:
            return _font(name)
    return None


def sits_on(sign: str) -> bool:
    """Whether a sign belongs to the one before it: an accent, a vowel mark, a joiner."""
    return unicodedata.category(sign).startswith("M") or sign in JOINERS


def composed(text: str) -> str:
    """The text as it can be set: accents joined to their letters, control signs made spaces; newlines stay."""
    if text.isascii() and text.isprintable():
        return text
    joined = unicodedata.normalize("NFC", text).translate(_UNSEEN)
    return "".join(" " if unicodedata.category(sign) == "Cc" and sign != "\n" else sign for sign in joined)


def missing_in(text: str, *, bold: bool = False) -> tuple[str, ...]:
    """The signs of a text that no font has, each once, in order."""
    if main_font(bold).plain.issuperset(text):
        return ()
    seen = dict.fromkeys(sign for sign in composed(text) if sign != "\n" and sign not in JOINERS)
    return tuple(sign for sign in seen if font_with(sign, bold) is None)


def printable(text: str, *, bold: bool = False) -> str:
    """The text with an empty square for each sign that no font has."""
    lacks = set(missing_in(text, bold=bold))
    return "".join(MISSING if sign in lacks else sign for sign in composed(text))
