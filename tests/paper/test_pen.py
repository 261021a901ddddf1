"""The printing pen: every shape, where it belongs, in its ink."""

from typing import Any

import pytest

from inspector.drawings.marks import outcome_mark
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Polygon, Polyline, RoundedRect, Shape, Text
from inspector.gear.outcome import Outcome
from inspector.paper import pen
from inspector.paper.page_style import MM, PageSize
from inspector.paper.press import Press
from tests.each import each
from tests.paper.reading import opened

Colour = tuple[int, int, int]
_WHITE = (255, 255, 255)


def printed(*shapes: Shape, scale: float = 1.0) -> Any:
    """A page with a drawing of 40 mm at 20 mm from left and top."""
    press = Press(PageSize.A4)
    pen.draw(Drawing(40, 40, shapes, "t", "d"), press, 20 * MM, 20 * MM, scale)
    press.next_page()
    return opened(press.finished())


def colour_at(document: Any, x_mm: float, y_mm: float) -> Colour:
    """The colour at a place of the drawing."""
    image = document[0].render(scale=2).to_pil().convert("RGB")
    red, green, blue = image.getpixel((int((20 + x_mm) * MM * 2), int((20 + y_mm) * MM * 2)))
    return red, green, blue


@each(
    "shape",
    [
        RoundedRect((5, 5), 10, 10, ink=None, fill=Ink.STEEL),
        RoundedRect((5, 5), 10, 10, 3, ink=None, fill=Ink.STEEL),
        Circle((10, 10), 5, ink=None, fill=Ink.STEEL),
        Polygon(((5, 5), (15, 5), (15, 15), (5, 15)), ink=None, fill=Ink.STEEL),
        Line((5, 10), (15, 10), ink=Ink.STEEL, width_mm=4),
        Polyline(((5, 10), (10, 10), (15, 10)), ink=Ink.STEEL, width_mm=4),
    ],
)
def test_a_shape_is_printed_where_it_stands_in_its_ink(shape: Shape) -> None:
    document = printed(shape)
    assert colour_at(document, 10, 10) == (0x8C, 0x90, 0x94)
    assert colour_at(document, 10, 25) == _WHITE
    assert colour_at(document, 25, 10) == _WHITE


def test_y_runs_downwards_and_scale_enlarges() -> None:
    document = printed(RoundedRect((5, 10), 5, 5, ink=None, fill=Ink.INK), scale=2.0)
    assert colour_at(document, 15, 25) != _WHITE
    assert colour_at(document, 7, 12) == _WHITE


def test_dashes_leave_gaps_and_do_not_leak_into_the_next_shape() -> None:
    dashed = Line((0, 10), (40, 10), width_mm=2, dash_mm=(4, 4))
    whole = Line((0, 20), (40, 20), width_mm=2)
    document = printed(dashed, whole)
    assert colour_at(document, 2, 10) != _WHITE
    assert colour_at(document, 6, 10) == _WHITE
    assert colour_at(document, 6, 20) != _WHITE


@pytest.mark.parametrize(("anchor", "left_mm"), [(Anchor.START, 20.0), (Anchor.MIDDLE, 17.0), (Anchor.END, 14.0)])
def test_text_stands_at_its_anchor(anchor: Anchor, left_mm: float) -> None:
    page = printed(Text((20, 20), "|wwwww|", 2.0, anchor=anchor))[0]
    left, bottom, *_ = page.get_textpage().get_charbox(0)
    wide = page.get_textpage().get_charbox(6)[2] - left
    share = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[anchor]
    assert left == pytest.approx((20 + 20) * MM - share * wide, abs=1.5)
    assert page.get_height() - bottom == pytest.approx(40 * MM, abs=2.5)


def test_retire_and_hold_print_in_the_accent_fit_and_derate_in_ink() -> None:
    at = {Outcome.RETIRE: (1.0, 10.0), Outcome.HOLD: (3.0, 10.0), Outcome.FIT: (3.0, 3.0), Outcome.DERATE: (10.0, 17.4)}
    reds = {}
    for outcome, (x_mm, y_mm) in at.items():
        red, green, _ = colour_at(printed(*outcome_mark(outcome, 20.0).shapes), x_mm, y_mm)
        assert red < 160, outcome
        reds[outcome] = red - green > 60
    assert reds == {Outcome.RETIRE: True, Outcome.HOLD: True, Outcome.FIT: False, Outcome.DERATE: False}
