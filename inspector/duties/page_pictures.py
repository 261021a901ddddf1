"""Look at a document before it goes to a printer: its pages as pictures."""

from pathlib import Path

from msgspec import Struct

from inspector.duties.named_files import read_bytes
from inspector.paper.pages import page_png, page_sizes


class PaperPages(Struct, frozen=True):
    """A document as it was read. sizes: width and height of each page in points (1/72 inch)."""

    pdf: bytes
    sizes: tuple[tuple[float, float], ...]


def read_pages(file: Path) -> PaperPages:
    """The document in a file; refused where it is not there any more or is no PDF."""
    pdf = read_bytes(file)
    return PaperPages(pdf, page_sizes(pdf))


def page_picture(pages: PaperPages, number: int, dpi: float) -> bytes:
    """A page as a PNG. number: from 0; dpi: dots to the inch."""
    return page_png(pages.pdf, number, dpi)
