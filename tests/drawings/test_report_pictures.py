"""The gear by kind and by age: a mark for each piece, a bar for each span."""

import pytest

from inspector.drawings.age_bars import age_bars
from inspector.drawings.extent import extent
from inspector.drawings.kind_marks import kind_marks
from inspector.drawings.shapes import Circle, Ink, Polygon, RoundedRect, Shape
from inspector.gear.register_report import AgeCount, KindCount
from tests.drawings.walls import assert_inside, assert_texts_apart, said

LONG = "Kinetic strap with a name that nobody could read at one look and that takes lines"


@pytest.mark.parametrize("width_mm", [178.0, 183.9])
def test_kinds_keep_to_their_frame_however_many_and_long(width_mm: float) -> None:
    kinds = [KindCount(LONG if n % 3 else "Winch", n, n // 2, n // 3, 300 * (n == 7)) for n in range(22)]
    drawing = kind_marks(kinds, width_mm)
    assert_inside(drawing)
    assert_texts_apart(drawing)


def test_there_is_a_mark_for_each_piece_in_the_shape_of_its_outcome() -> None:
    drawing = kind_marks([KindCount("Bow shackle", 4, 3, 2, 1)], 178.0)
    key = drawing.height_mm - 7.0  # below it each mark stands once more, with its word
    rows = [one for one in drawing.shapes if _top(one) < key]
    squares = [one for one in rows if isinstance(one, RoundedRect)]
    triangles = [one for one in rows if isinstance(one, Polygon)]
    discs = [one for one in rows if isinstance(one, Circle) and one.radius_mm > 1 and one.fill is Ink.MARK]
    rings = [one for one in rows if isinstance(one, Circle) and one.radius_mm > 1 and one.ink is Ink.MARK]
    assert [len(one) for one in (squares, triangles, discs, rings)] == [4, 3, 2, 1]
    assert "10" in said(drawing)


def _top(one: Shape) -> float:

    return extent(one).top


def test_more_than_a_row_holds_are_told_by_number() -> None:
    words = said(kind_marks([KindCount("Bow shackle", 200, 0, 3, 0)], 178.0))
    assert "× 200" in words and "× 3" in words and "× 0" not in words


def test_the_longest_bar_is_the_most_and_what_nobody_knows_is_hollow() -> None:
    drawing = age_bars([AgeCount("young", 8), AgeCount("old", 4), AgeCount("age not known", 2)], 90.0)
    assert_inside(drawing)
    bars = [one for one in drawing.shapes if isinstance(one, RoundedRect)]
    young, old, unknown = bars
    assert old.wide_mm == pytest.approx(young.wide_mm / 2) and unknown.wide_mm == pytest.approx(young.wide_mm / 4)
    assert unknown.fill is None and unknown.dash_mm and young.fill


def test_no_gear_at_all_draws_no_bar() -> None:
    drawing = age_bars([AgeCount("young", 0), AgeCount("age not known", 0)], 90.0)
    assert not [one for one in drawing.shapes if isinstance(one, RoundedRect)]
