"""The checks of printed pages can fail."""

import pytest

from inspector.paper.page_style import BODY, SIDE_MARGIN, PageSize
from inspector.paper.press import Press
from inspector.paper.printed import Printed
from tests.paper.reading import assert_no_text_on_text, assert_within_margins


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
