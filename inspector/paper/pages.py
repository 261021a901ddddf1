"""The pages of a finished PDF as pictures, to be looked at on a screen or sent to a printer. Bytes in, bytes out.

The reader is imported with the first document: it takes long, and a window shows none as it opens.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from threading import Lock
from typing import TYPE_CHECKING

from inspector.language import tr
from inspector.refused import Refused

if TYPE_CHECKING:
    from PIL.Image import Image
    from pypdfium2 import PdfDocument, PdfPage

_POINTS_PER_INCH = 72
_one_at_a_time = Lock()  # the reader of PDFs is not made for two threads


def page_count(pdf: bytes) -> int:
    """How many pages it has. Refused where it is no PDF."""
    with _opened(pdf) as document:
        return len(document)


def page_sizes(pdf: bytes) -> tuple[tuple[float, float], ...]:
    """Width and height of each page in points (1/72 inch). Refused where it is no PDF."""
    with _opened(pdf) as document:
        return tuple(document[number].get_size() for number in range(len(document)))


def page_png(pdf: bytes, number: int, dpi: float) -> bytes:
    """A page as a PNG. number: from 0; dpi: dots to the inch. Refused where it is no PDF or has no such page."""
    with _opened(pdf) as document:
        if not 0 <= number < len(document):
            raise _unreadable(tr("It has no page {number}.", number=number + 1))
        document.init_forms()  # what stands in fields belongs to the picture
        picture = document[number].render(scale=dpi / _POINTS_PER_INCH).to_pil()
    png = BytesIO()
    picture.save(png, "PNG", compress_level=1)
    return png.getvalue()


def scanned_pages(pdf: bytes, dpi: float, longest_px: int) -> "tuple[Image, ...]":
    """Each page of a scan in grey, at dpi dots to the inch and no side longer than longest_px. Refused where no PDF."""
    with _opened(pdf) as document:
        document.init_forms()  # what was ticked or drawn on a screen belongs to the picture
        return tuple(_grey(document[number], dpi, longest_px) for number in range(len(document)))


def _grey(page: "PdfPage", dpi: float, longest_px: int) -> "Image":
    scale = min(dpi / _POINTS_PER_INCH, longest_px / max(*page.get_size(), 1))
    drawn: Image = page.render(scale=scale, grayscale=True).to_pil()
    return drawn.convert("L")


def page_texts(pdf: bytes) -> tuple[str, ...]:
    """What is printed on each page, without spaces; what was typed into fields is not in it. Refused where no PDF."""
    with _opened(pdf) as document:
        return tuple(_text(document[number]) for number in range(len(document)))


def _text(page: "PdfPage") -> str:
    found = page.get_textpage()
    try:
        return "".join(found.get_text_range().split())
    finally:
        found.close()


@contextmanager
def _opened(pdf: bytes) -> "Iterator[PdfDocument]":
    import pypdfium2

    with _one_at_a_time:
        try:
            document = pypdfium2.PdfDocument(pdf)
        except pypdfium2.PdfiumError as error:
            raise _unreadable(tr("It cannot be read as a PDF.")) from error
        try:
            yield document
        except pypdfium2.PdfiumError as error:
            raise _unreadable(tr("A page of it cannot be drawn.")) from error
        finally:
            document.close()


def _unreadable(why: str) -> Refused:
    return Refused(tr("document"), why, tr("Print the document again."))
