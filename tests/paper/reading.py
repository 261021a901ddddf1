"""Reading a printed document back."""

from importlib import import_module
from io import BytesIO
from typing import Any

from pypdf import PdfReader

from inspector.paper.page_style import FOOT_MARGIN, HEAD_MARGIN, SIDE_MARGIN
from inspector.paper.printed import Printed

_PDFIUM: Any = import_module("pypdfium2")  # carries no types
_SLACK_PT = 1.5  # a sign's ink may reach a hair over its own width
Rect = tuple[float, float, float, float]


def opened(pdf: bytes) -> Any:
    """The document as a viewer sees it."""
    return _PDFIUM.PdfDocument(pdf)


def page_texts(printed: Printed) -> list[str]:
    """The text of each page, spaces and line ends made one space."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(BytesIO(printed.pdf)).pages]


def all_text(printed: Printed) -> str:
    """The text of all pages."""
    return " ".join(page_texts(printed))


def squeezed(text: str) -> str:
    """Without any space, for texts that were wrapped anywhere."""
    return "".join(text.split())


def fields_by_page(printed: Printed) -> list[dict[str, Rect]]:
    """Name and place in points of each field, page by page."""
    found = []
    for page in PdfReader(BytesIO(printed.pdf)).pages:
        widgets = [note.get_object() for note in page.get("/Annots", [])]
        found.append({str(one["/T"]): _rect(one["/Rect"]) for one in widgets})
    return found


def _rect(given: list[float]) -> Rect:
    left, bottom, right, top = (float(edge) for edge in given)
    return left, bottom, right, top


def assert_within_margins(printed: Printed) -> None:
    """Every sign of every page lies between the margins."""
    document = opened(printed.pdf)
    for page in document:
        wide, high = page.get_size()
        for left, bottom, right, top in sign_boxes(page):
            assert left >= SIDE_MARGIN - _SLACK_PT and right <= wide - SIDE_MARGIN + _SLACK_PT, (left, right)
            assert bottom >= FOOT_MARGIN - _SLACK_PT and top <= high - HEAD_MARGIN + _SLACK_PT, (bottom, top)
    document.close()


def sign_boxes(page: Any) -> list[Rect]:
    """The ink boxes of a page's signs."""
    text = page.get_textpage()
    boxes = [text.get_charbox(number) for number in range(text.count_chars())]
    return [box for box in boxes if box[2] > box[0] and box[3] > box[1]]


def assert_no_text_on_text(printed: Printed) -> None:
    """No sign's ink lies on another's by more than a hair."""
    document = opened(printed.pdf)
    for page in document:
        boxes = sorted(sign_boxes(page))
        for number, one in enumerate(boxes):
            for other in boxes[number + 1 :]:
                if other[0] >= one[2]:
                    break
                assert not _overlap(one, other), (one, other)
    document.close()


def _overlap(one: Rect, other: Rect) -> bool:
    across = min(one[2], other[2]) - max(one[0], other[0])
    down = min(one[3], other[3]) - max(one[1], other[1])
    return across > 0.9 and down > 0.9


def sign_heights(printed: Printed) -> dict[str, float]:
    """The greatest height of each sign's ink in points, over all pages."""
    found: dict[str, float] = {}
    document = opened(printed.pdf)
    for page in document:
        text = page.get_textpage()
        for number in range(text.count_chars()):
            _, bottom, _, top = text.get_charbox(number)
            sign = text.get_text_range(number, 1)
            found[sign] = max(found.get(sign, 0.0), top - bottom)
    document.close()
    return found


def last_page_text(printed: Printed) -> str:
    """The text of the last page alone, where reading all of them would take long."""
    document = opened(printed.pdf)
    text: str = document[len(document) - 1].get_textpage().get_text_range()
    document.close()
    return " ".join(text.split())
