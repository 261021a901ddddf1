"""The press: a canvas with y downwards from the top left, in points, that remembers what it could not set."""

from io import BytesIO

from reportlab.lib.utils import ImageReader

from inspector.drawings.shapes import Anchor, Ink
from inspector.gear.sheet_layout import SheetPage
from inspector.paper.fonts import main_font, missing_in
from inspector.paper.one_look import PressCanvas
from inspector.paper.page_style import PageSize, Type, colour
from inspector.paper.placing import Placing
from inspector.paper.shaping import Piece, pieces

_SHIFT = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}
_FILLED, _FILLED_AND_OUTLINED = 0, 2  # how PDF draws letters
_THICKENED = 0.03  # of the size: the outline that makes bold of a font without a bold one


class Press:
    """Prints onto pages of one size."""

    def __init__(self, page: PageSize) -> None:
        self.page = page
        self._bytes = BytesIO()
        size, font = (page.width_pt, page.height_pt), main_font(False).fontName  # so that all fonts are embedded
        self.canvas = PressCanvas(self._bytes, pagesize=size, invariant=1, initialFontName=font)
        self._missing: dict[str, None] = {}
        self.placed_here = Placing()
        self.pages: list[SheetPage] = []

    def describe(self, *, title: str, author: str, subject: str, keywords: str) -> None:
        """What the file says about itself."""
        self.canvas.setTitle(title)
        self.canvas.setAuthor(author)
        self.canvas.setSubject(subject)
        self.canvas.setKeywords(keywords)

    @property
    def missing_glyphs(self) -> tuple[str, ...]:
        """The signs that were printed as an empty square."""
        return tuple(self._missing)

    def up(self, y: float) -> float:
        """The canvas's own y of a y measured from the top."""
        return self.page.height_pt - y

    def text(self, x: float, y: float, text: str, type_: Type, anchor: Anchor = Anchor.START) -> None:
        """One line with its baseline at y."""
        self._missing |= dict.fromkeys(missing_in(text, bold=type_.bold))
        line = pieces(text, type_.bold)
        left = x - _SHIFT[anchor] * type_.size_pt * sum(piece.em for piece in line)
        self.canvas.setFillColor(colour(type_.ink))
        for piece in line:
            self._piece(left, y, piece, type_)
            left += piece.em * type_.size_pt

    def _piece(self, x: float, y: float, piece: Piece, type_: Type) -> None:
        written = self.canvas.beginText(x, self.up(y))
        written.setFont(piece.font, type_.size_pt)
        if piece.thick:
            self.canvas.setStrokeColor(colour(type_.ink))
            self.canvas.setLineWidth(type_.size_pt * _THICKENED)
            written.setTextRenderMode(_FILLED_AND_OUTLINED)
        written.textOut(piece.text)
        if piece.thick:
            written.setTextRenderMode(_FILLED)
        self.canvas.drawText(written)

    def image(self, x: float, y: float, width_pt: float, height_pt: float, png: bytes) -> None:
        """A picture with its top left at x, y."""
        self.canvas.drawImage(ImageReader(BytesIO(png)), x, self.up(y + height_pt), width_pt, height_pt)

    def filled(self, x: float, y: float, width_pt: float, height_pt: float, ink: Ink) -> None:
        """A rectangle full of ink by its top left corner."""
        self.canvas.setFillColor(colour(ink))
        self.canvas.rect(x, self.up(y + height_pt), width_pt, height_pt, stroke=0, fill=1)

    def line(self, x: float, y: float, to_x: float, to_y: float, ink: Ink = Ink.HAIR, width_pt: float = 0.5) -> None:
        """A straight line."""
        self.canvas.setStrokeColor(colour(ink))
        self.canvas.setLineWidth(width_pt)
        self.canvas.line(x, self.up(y), to_x, self.up(to_y))

    def dashes(self, x: float, y: float, to_x: float, dash_pt: float, to_y: float | None = None) -> None:
        """A dashed line, level unless it is told to where it falls."""
        self.canvas.saveState()
        self.canvas.setDash(dash_pt, dash_pt * 0.75)
        self.line(x, y, to_x, y if to_y is None else to_y, Ink.INK, 0.8)
        self.canvas.restoreState()

    def frame(self, x: float, y: float, width_pt: float, height_pt: float, line_pt: float) -> None:
        """The outline of a rectangle by its top left corner."""
        self.canvas.setStrokeColor(colour(Ink.INK))
        self.canvas.setLineWidth(line_pt)
        self.canvas.rect(x, self.up(y + height_pt), width_pt, height_pt)

    def next_page(self) -> None:
        """Ends the page in hand."""
        self.pages.append(self.placed_here.page)
        self.placed_here = Placing()
        self.canvas.showPage()

    def finished(self) -> bytes:
        """The PDF."""
        self.canvas.save()
        return self._bytes.getvalue()
