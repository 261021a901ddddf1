"""A font of which every glyph can be set, also those that no single sign has, and each tells which signs it says."""

import unicodedata
from functools import cached_property
from pathlib import Path
from threading import Lock
from typing import Any

import uharfbuzz
from reportlab.pdfbase.ttfonts import TTFont

_OWN_CODES = 0xF0000  # the first of a range that Unicode leaves to everyone; no text is looked up by these


def _is_plain(sign: str) -> bool:
    """Whether a sign stands by itself, to the right of the one before: it joins none, turns none, sits on none."""
    rightwards = unicodedata.bidirectional(sign) not in {"R", "AL", "AN", "NSM", "BN"}
    return rightwards and unicodedata.category(sign) not in {"Mn", "Mc", "Me", "Cc", "Cf", "Co"}


class ScriptFont(TTFont):  # type: ignore[misc]  # reportlab carries no types
    """Reportlab's font with glyphs by number.

    signs: those it has; plain: those that need no shaping; em: how wide each is, in shares of the type's size.
    Reportlab sets signs, a glyph each. A joined or composed glyph gets a code of its own here, by which reportlab puts
    it into the file, and that file's table of what its codes say gives the signs back to whoever copies or searches.
    """

    def __init__(self, name: str, file: Path) -> None:
        super().__init__(name, str(file))
        self.signs = frozenset(map(chr, self.face.charToGlyph))
        self.plain = frozenset(sign for sign in self.signs if _is_plain(sign))
        self.em = {
            sign: float(self.face.charWidths.get(ord(sign), self.face.defaultWidth)) / 1000 for sign in self.signs
        }
        self._codes: dict[tuple[int, str], int] = {}
        self._says: dict[int, str] = {}
        self._one_at_a_time = Lock()  # papers are printed off the window's thread

    @cached_property
    def shaper(self) -> Any:
        """The font as HarfBuzz knows it, in its own units."""
        return uharfbuzz.Font(self.hbFace)

    def thousandths(self, units: float) -> float:
        """A length of the font in thousandths of its size."""
        return units * 1000 / float(self.face.unitsPerEm)

    def ligature(self, glyph: int, signs: str) -> str:
        """The one sign by which Unicode names a glyph that joins these signs; empty where it has none."""
        named = (chr(code) for code in self.face.glyphToChar.get(glyph, ()) if code < _OWN_CODES)
        return next((sign for sign in named if unicodedata.normalize("NFKC", sign) == signs), "")

    def own_sign(self, glyph: int, says: str) -> str:
        """The sign that stands for a glyph which says these signs."""
        with self._one_at_a_time:
            code = self._codes.get((glyph, says), _OWN_CODES + len(self._codes))
            if code not in self._says:
                self.face.charToGlyph[code] = glyph
                self.face.charWidths[code] = self.thousandths(self.shaper.get_glyph_h_advance(glyph))
                self._codes[glyph, says], self._says[code] = code, says
        return chr(code)

    def addObjects(self, doc: Any) -> None:  # noqa: N802  # reportlab's own name
        """Puts the font into a finished file, with a table of what each code says."""
        subsets = self.state[doc].subsets
        names = [self.getSubsetInternalName(number, doc)[1:] for number in range(len(subsets))]
        super().addObjects(doc)
        for name, subset in zip(names, subsets, strict=True):
            font = doc.idToObject["BasicFonts"].dict[name]
            doc.idToObject[font.ToUnicode.name].content = self._table(font.BaseFont, subset)

    def _table(self, name: str, codes: list[int]) -> str:
        """Which signs each code says, as a PDF wants it."""
        lines = [f"<{at:02X}> <{self._said(code)}>" for at, code in enumerate(codes)]
        return "\n".join(
            (
                "/CIDInit /ProcSet findresource begin 12 dict begin begincmap",
                f"/CIDSystemInfo << /Registry ({name}) /Ordering ({name}) /Supplement 0 >> def",
                f"/CMapName /{name} def /CMapType 2 def",
                f"1 begincodespacerange <00> <{len(codes) - 1:02X}> endcodespacerange",
                *(f"{len(some)} beginbfchar\n{chr(10).join(some)}\nendbfchar" for some in _hundreds(lines)),
                "endcmap CMapName currentdict /CMap defineresource pop end end",
            )
        )

    def _said(self, code: int) -> str:
        return self._says.get(code, chr(code)).encode("utf-16-be").hex().upper()


def _hundreds(lines: list[str]) -> list[list[str]]:
    """No more than a hundred to a part, as the format has it."""
    return [lines[start : start + 100] for start in range(0, len(lines), 100)]
