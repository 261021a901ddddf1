"""Single and double shear, side by side."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.drawings.shapes import Drawing, Ink, Line, Polygon
from inspector.drawings.shear import shear_picture
from tests.drawings.walls import assert_inside, assert_texts_apart, said


@given(st.floats(60.0, 400.0))
def test_the_picture_lies_in_its_frame_at_any_size(width_mm: float) -> None:
    drawing = shear_picture(width_mm)
    assert drawing.width_mm == width_mm
    assert_inside(drawing)
    assert_texts_apart(drawing)


def cuts(drawing: Drawing) -> list[Line]:
    """The sections that carry the load."""
    return [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.ink is Ink.LIMIT]


def test_the_ball_has_one_carrying_section_and_the_pin_two() -> None:
    drawing = shear_picture(178.0)
    left = [cut for cut in cuts(drawing) if cut.end[0] < 89.0]
    right = [cut for cut in cuts(drawing) if cut.start[0] > 89.0]
    assert (len(left), len(right)) == (1, 2)


def test_pull_and_what_holds_against_it_point_opposite_ways() -> None:
    heads = [s for s in shear_picture(178.0).shapes if isinstance(s, Polygon) and s.fill is Ink.FORCE]
    ways = ["right" if head.points[0][0] > head.points[1][0] else "left" for head in heads]
    assert ways == ["right", "left", "right", "left", "left"]


def test_both_words_are_said_to_who_cannot_see_it() -> None:
    drawing = shear_picture()
    assert "single shear" in said(drawing) and "double shear" in said(drawing)
    assert "lever" in said(drawing)
    assert "two sections share" in drawing.describes


def test_it_grows_as_a_whole() -> None:
    small, large = shear_picture(89.0), shear_picture(178.0)
    assert large.height_mm == pytest.approx(2 * small.height_mm)
    assert [type(shape) for shape in small.shapes] == [type(shape) for shape in large.shapes]
    assert cuts(large)[0].width_mm == pytest.approx(2 * cuts(small)[0].width_mm)
