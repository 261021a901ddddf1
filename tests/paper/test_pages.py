"""The pages of a document as pictures."""

from io import BytesIO

import pytest
from PIL import Image

from inspector.drawings.shapes import Ink
from inspector.paper.page_style import PageSize
from inspector.paper.pages import page_png, page_sizes
from inspector.paper.press import Press
from inspector.refused import Refused

_A4_INCHES = (8.27, 11.69)


def _two_pages() -> bytes:
    press = Press(PageSize.A4)
    press.next_page()
    press.line(100, 200, 400, 200, Ink.INK, 20)
    press.next_page()
    return press.finished()


@pytest.mark.parametrize("dpi", [72, 300])
def test_a_page_is_as_large_as_its_paper_at_so_many_dots(dpi: int) -> None:
    size = Image.open(BytesIO(page_png(_two_pages(), 0, dpi))).size
    assert size == pytest.approx([inches * dpi for inches in _A4_INCHES], abs=3)


def test_the_sizes_are_those_of_the_paper() -> None:
    points = [inches * 72 for inches in _A4_INCHES]
    assert [list(one) for one in page_sizes(_two_pages())] == [pytest.approx(points, abs=1)] * 2


def test_each_page_shows_what_stands_on_it() -> None:
    pdf = _two_pages()
    empty, drawn = (Image.open(BytesIO(page_png(pdf, number, 72))).convert("L") for number in (0, 1))
    assert empty.getextrema() == (255, 255)
    assert set(drawn.crop((245, 195, 255, 205)).tobytes()) == {26}, "ink is that dark"
    assert drawn.crop((245, 295, 255, 305)).getextrema() == (255, 255)


@pytest.mark.parametrize("number", [-1, 2])
def test_a_page_that_is_not_there_is_refused(number: int) -> None:
    with pytest.raises(Refused, match="no page"):
        page_png(_two_pages(), number, 72)


def test_what_is_no_pdf_is_refused() -> None:
    with pytest.raises(Refused, match="cannot be read as a PDF"):
        page_png(b"no document", 0, 72)
