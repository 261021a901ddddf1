"""The checks of printed pages can fail."""

import pytest

from inspector.paper.page_style import BODY, SIDE_MARGIN, PageSize
from inspector.paper.press import Press
from inspector.paper.printed import Printed
from tests.paper.reading import (
    assert_fonts_embedded,
    assert_no_text_on_text,
    assert_within_margins,
    assert_within_page,
)


def printed(*places: tuple[float, float]) -> Printed:
    """A page with other words at each place in points from the top left."""
    press = Press(PageSize.A4)
    for (x, y), words in zip(places, ("words", "metal"), strict=False):
        press.text(x, y, words, BODY)
    press.next_page()
    return Printed(press.finished(), 1, ())


def test_words_beyond_a_margin_are_found() -> None:
    assert_within_margins(printed((SIDE_MARGIN, 100.0)))
    right = PageSize.A4.width_pt - SIDE_MARGIN
    for place in ((SIDE_MARGIN - 4, 100.0), (right - 10, 100.0), (100.0, 20.0), (100.0, 835.0)):
        with pytest.raises(AssertionError):
            assert_within_margins(printed(place))


def test_words_on_words_are_found() -> None:
    assert_no_text_on_text(printed((100.0, 100.0), (100.0, 112.0)))
    with pytest.raises(AssertionError):
        assert_no_text_on_text(printed((100.0, 100.0), (103.0, 102.0)))


def test_words_off_the_paper_are_found() -> None:
    assert_within_page(printed((1.0, 12.0)))
    for place in ((-9.0, 100.0), (PageSize.A4.width_pt - 9, 100.0), (100.0, 1.0)):
        with pytest.raises(AssertionError):
            assert_within_page(printed(place))


def test_a_font_that_is_not_in_the_file_is_found() -> None:
    assert_fonts_embedded(printed((100.0, 100.0)))
    press = Press(PageSize.A4)
    press.canvas.setFont("Helvetica", 10)
    press.canvas.drawString(100, 100, "words")
    press.next_page()
    with pytest.raises((AssertionError, KeyError)):
        assert_fonts_embedded(Printed(press.finished(), 1, ()))
