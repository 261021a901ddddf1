"""The packaged type: where it lies, which signs it has, how wide a text runs."""

import unicodedata
from functools import cache
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

MISSING = "□"
_FOLDER = Path(__file__).parent / "fonts"
_REGULAR, _BOLD = "DejaVuSansCondensed", "DejaVuSansCondensed-Bold"


def font_files() -> tuple[Path, Path]:
    """The type's files, regular and bold; the window may register the same ones."""
    return _FOLDER / f"{_REGULAR}.ttf", _FOLDER / f"{_BOLD}.ttf"


@cache
def font_name(bold: bool) -> str:
    """The name under which the press knows the type; registers it on first use."""
    name = _BOLD if bold else _REGULAR
    pdfmetrics.registerFont(TTFont(name, str(font_files()[bold])))
    return name


@cache
def _signs(bold: bool) -> frozenset[int]:
    return frozenset(pdfmetrics.getFont(font_name(bold)).face.charToGlyph)


def composed(text: str) -> str:
    """The text as it can be set: accents joined to their letters, control signs made spaces; newlines stay."""
    joined = unicodedata.normalize("NFC", text)
    return "".join(" " if unicodedata.category(sign) == "Cc" and sign != "\n" else sign for sign in joined)


def missing_in(text: str, *, bold: bool = False) -> tuple[str, ...]:
    """The signs of a text that the type lacks, each once, in order."""
    have = _signs(bold)
    return tuple(dict.fromkeys(sign for sign in composed(text) if sign != "\n" and ord(sign) not in have))


def printable(text: str, *, bold: bool = False) -> str:
    """The text with an empty square for each sign the type lacks."""
    lacks = set(missing_in(text, bold=bold))
    return "".join(MISSING if sign in lacks else sign for sign in composed(text))


def text_width_pt(text: str, size_pt: float, *, bold: bool = False) -> float:
    """How wide the text runs, in points, as it will be printed."""
    name = font_name(bold)
    return float(pdfmetrics.stringWidth(printable(text, bold=bold), name, size_pt))
