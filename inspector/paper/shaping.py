"""A line as the press sets it: pieces of one font in the order of the page, their glyphs joined and placed."""

import unicodedata
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import groupby, pairwise
from typing import Any

import uharfbuzz
from msgspec import Struct
from reportlab.pdfbase.ttfonts import ShapeData, ShapedStr

from inspector.paper.fonts import JOINERS, MISSING, composed, font_with, main_font, sits_on
from inspector.paper.reading_order import in_order
from inspector.paper.script_font import ScriptFont

_NO_SIGN = "\u200b"  # a glyph that said nothing would be read as some other sign
_AS_DRAWN = {"kern": False, "liga": False}  # Latin words stand as wide in a mixed line as they do alone


class Piece(Struct, frozen=True):
    """Signs of one font. text: as reportlab sets it; em: width in shares of the size; thick: bold has to be drawn."""

    font: str
    text: str
    em: float
    thick: bool = False


def text_width_pt(text: str, size_pt: float, *, bold: bool = False) -> float:
    """How wide the text runs, in points, as it will be printed."""
    font = main_font(bold)
    if font.plain.issuperset(text):
        return size_pt * sum(map(font.em.__getitem__, text))
    return size_pt * sum(piece.em for piece in pieces(text, bold))


def pieces(text: str, bold: bool) -> tuple[Piece, ...]:
    """The line's pieces from left to right."""
    font = main_font(bold)
    if font.plain.issuperset(text):
        return (Piece(font.fontName, text, sum(map(font.em.__getitem__, text))),)
    return _set(composed(text).replace("\n", " "), bold)


@lru_cache(2048)
def _set(text: str, bold: bool) -> tuple[Piece, ...]:
    return tuple(
        _piece(font, part, stretch.leftwards, bold)
        for stretch in in_order(text)
        for font, part in _by_font(stretch.text, stretch.leftwards, bold)
    )


def _by_font(text: str, leftwards: bool, bold: bool) -> list[tuple[ScriptFont, str]]:
    """The stretch cut where the font or the script changes, in the order of the page."""
    cut = groupby(_with_fonts(text, bold), key=lambda one: (one[1], one[2]))
    parts = [(font, "".join(sign for sign, _, _ in some)) for (font, _), some in cut]
    return parts[::-1] if leftwards else parts


def _with_fonts(text: str, bold: bool) -> Iterator[tuple[str, ScriptFont, str]]:
    """Each sign, its font and its script; what sits on a sign goes with it, and so do spaces and points."""
    font, script = main_font(bold), ""
    for sign in text:
        stays = sits_on(sign) and (sign in font.signs or sign in JOINERS)
        found = font if stays else font_with(sign, bold)
        font = found or main_font(bold)
        if sign.isalpha():
            script = "" if sign in font.plain else unicodedata.name(sign, "").partition(" ")[0]
        yield (sign if found else MISSING), font, script


def _piece(font: ScriptFont, text: str, leftwards: bool, bold: bool) -> Piece:
    thick = bold and font is not main_font(True)
    if font.plain.issuperset(text) and not leftwards:
        return Piece(font.fontName, text, sum(map(font.em.__getitem__, text)), thick)
    glyphs = list(_glyphs(font, text, leftwards))
    signs = ShapedStr("".join(sign for sign, _ in glyphs), [placed for _, placed in glyphs])
    return Piece(font.fontName, signs, sum(placed.x_advance for _, placed in glyphs) / 1000, thick)


def _glyphs(font: ScriptFont, text: str, leftwards: bool) -> Iterator[tuple[str, Any]]:
    """The shaped glyphs, each as the sign it is set by and where it stands, in thousandths of the size."""
    buffer = uharfbuzz.Buffer()
    buffer.cluster_level = uharfbuzz.BufferClusterLevel.MONOTONE_CHARACTERS
    buffer.add_str(text)
    buffer.guess_segment_properties()
    buffer.direction = "rtl" if leftwards else "ltr"
    uharfbuzz.shape(font.shaper, buffer, _AS_DRAWN)
    told = _told(text, buffer.glyph_infos, leftwards, font)
    for info, at, says in zip(buffer.glyph_infos, buffer.glyph_positions, told, strict=True):
        sign = font.own_sign(info.codepoint, says)
        placed = map(font.thousandths, (at.x_advance, at.y_advance, at.x_offset, at.y_offset))
        yield sign, ShapeData(info.cluster, *placed, font.face.charWidths[ord(sign)])


def _told(text: str, infos: Sequence[Any], leftwards: bool, font: ScriptFont) -> Iterator[str]:
    """What each glyph says to whoever copies or searches. Readers turn a leftward line round sign by sign."""
    ends = dict(pairwise([*sorted({info.cluster for info in infos}), len(text)]))
    for start, some in groupby(infos, key=lambda info: info.cluster):
        glyphs = [info.codepoint for info in some]
        signs = text[start : ends[start]]
        if len(glyphs) == 1 and len(signs) > 1 and leftwards:
            yield font.ligature(glyphs[0], signs) or signs[::-1]
        else:
            yield from _shared_out(signs[::-1] if leftwards else signs, len(glyphs))


def _shared_out(signs: str, count: int) -> list[str]:
    """Signs that several glyphs make together: one to each, the last says the rest; none says nothing at all."""
    return [(signs[at : at + 1] if at < count - 1 else signs[at:]) or _NO_SIGN for at in range(count)]
