"""Reading a printed document back."""

from collections.abc import Iterator
from functools import lru_cache
from importlib import import_module
from io import BytesIO
from typing import Any

from msgspec import Struct
from pypdf import PdfReader

from inspector.paper.page_style import FOOT_MARGIN, HEAD_MARGIN, SIDE_MARGIN
from inspector.paper.printed import Printed

_PDFIUM: Any = import_module("pypdfium2")  # carries no types
_TEXTS = import_module("pypdfium2.raw").FPDF_PAGEOBJ_TEXT
_SLACK_PT = 1.5  # a sign's ink may reach a hair over its own width
NAMES = {  # invented ones
    "Arabic": "نورة سلام البحر",
    "Hebrew": "נועה בת-ים",
    "Greek": "Ελένη Άμμου",
    "Cyrillic": "Света Песчаная",
    "Vietnamese": "Nguyễn Thị Bãi Dài",
    "Chinese": "沙小洲",
    "Japanese": "砂浜 さくら",
    "Korean": "모래 민준",
}
Rect = tuple[float, float, float, float]


def opened(pdf: bytes) -> Any:
    """The document as a viewer sees it."""
    return _PDFIUM.PdfDocument(pdf)


def page_texts(printed: Printed) -> list[str]:
    """The text of each page, spaces and line ends made one space."""
    document = opened(printed.pdf)
    found = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return found


def all_text(printed: Printed) -> str:
    """The text of all pages."""
    return " ".join(page_texts(printed))


def squeezed(text: str) -> str:
    """Without any space, for texts that were wrapped anywhere."""
    return "".join(text.split())


class Line(Struct, frozen=True):
    """Signs that were set together, and the box of their ink in points from the top left of the page."""

    left: float
    top: float
    right: float
    bottom: float
    text: str


class ReadPage(Struct, frozen=True):
    """A page as it is read: its size in points and every line on it, in the order they were set."""

    width: float
    height: float
    lines: tuple[Line, ...]


@lru_cache(2)
def pages_of(printed: Printed) -> tuple[ReadPage, ...]:
    """The pages of a document."""
    document = opened(printed.pdf)
    found = tuple(ReadPage(page.get_width(), page.get_height(), tuple(_lines(page))) for page in document)
    document.close()
    return found


def _lines(page: Any) -> Iterator[Line]:
    high, signs = page.get_height(), page.get_textpage()
    for one in page.get_objects(filter=[_TEXTS], textpage=signs):
        left, bottom, right, top = one.get_bounds()
        if text := " ".join(one.extract().split()):
            yield Line(left, high - top, right, high - bottom, text)


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
    """Every line of every page lies between the margins."""
    _assert_within(printed, SIDE_MARGIN, HEAD_MARGIN, FOOT_MARGIN)


def assert_within_page(printed: Printed) -> None:
    """Every line lies on the paper."""
    _assert_within(printed, 0.0, 0.0, 0.0)


def _assert_within(printed: Printed, side: float, head: float, foot: float) -> None:
    for page in pages_of(printed):
        for line in page.lines:
            assert line.left >= side - _SLACK_PT and line.right <= page.width - side + _SLACK_PT, line
            assert line.top >= head - _SLACK_PT and line.bottom <= page.height - foot + _SLACK_PT, line


def sign_boxes(page: Any) -> list[Rect]:
    """The ink boxes of a page's signs."""
    text = page.get_textpage()
    boxes = [text.get_charbox(number) for number in range(text.count_chars())]
    return [box for box in boxes if box[2] > box[0] and box[3] > box[1]]


def assert_no_text_on_text(printed: Printed) -> None:
    """No line's ink lies on another's by more than a hair."""
    for page in pages_of(printed):
        down = sorted(page.lines, key=lambda line: line.top)
        for number, one in enumerate(down):
            for other in down[number + 1 :]:
                if other.top >= one.bottom:
                    break
                assert not _overlap(one, other), (one, other)


def _overlap(one: Line, other: Line) -> bool:
    across = min(one.right, other.right) - max(one.left, other.left)
    down = min(one.bottom, other.bottom) - max(one.top, other.top)
    return across > 0.9 and down > 0.9


def assert_fonts_embedded(printed: Printed) -> None:
    """Every font that a page sets text in is in the file; what is typed into fields is set by the viewer."""
    for page in PdfReader(BytesIO(printed.pdf)).pages:
        fonts: Any = page["/Resources"]
        for name, font in fonts.get("/Font", {}).items():
            assert "/FontFile2" in font.get_object()["/FontDescriptor"].get_object(), name


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
