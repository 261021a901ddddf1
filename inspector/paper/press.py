"""The press: a canvas with y downwards from the top left, in points, that remembers what it could not set."""

from io import BytesIO

from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from inspector.drawings.shapes import Anchor, Ink
from inspector.gear.sheet_layout import SheetPage
from inspector.paper.fonts import font_name, missing_in, printable, text_width_pt
from inspector.paper.page_style import PageSize, Type, colour
from inspector.paper.placing import Placing

_SHIFT = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


class Press:
    """Prints onto pages of one size."""

    def __init__(self, page: PageSize) -> None:
        self.page = page
        self._bytes = BytesIO()
        self.canvas = Canvas(self._bytes, pagesize=(page.width_pt, page.height_pt), invariant=1)
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
        left = x - _SHIFT[anchor] * text_width_pt(text, type_.size_pt, bold=type_.bold)
        self.canvas.setFont(font_name(type_.bold), type_.size_pt)
        self.canvas.setFillColor(colour(type_.ink))
        self.canvas.drawString(left, self.up(y), printable(text, bold=type_.bold))

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
