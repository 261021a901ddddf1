"""The codes that a reader finds on the pages of a printed document."""

from importlib import import_module
from typing import Any

from inspector.paper.printed import Printed
from tests.paper.reading import opened

_ZXING: Any = import_module("zxingcpp")  # carries no types
_DPI = 150


def codes_by_page(printed: Printed, dpi: float = _DPI) -> list[list[Any]]:
    """The codes of each page, each with its text and its corners in points from the top left."""
    document = opened(printed.pdf)
    found = [list(_ZXING.read_barcodes(page.render(scale=dpi / 72).to_pil())) for page in document]
    document.close()
    return found


def code_texts(printed: Printed) -> list[str]:
    """The texts of all codes, page by page, sorted on each."""
    return [text for page in codes_by_page(printed) for text in sorted(one.text for one in page)]
