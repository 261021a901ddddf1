"""The four marks: geometry of ISO 3864-1, told apart without colour, never without their word."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.drawings.marks import outcome_mark, outcome_meaning, outcome_word
from inspector.drawings.shapes import Circle, Ink, Line, Polygon, Polyline, RoundedRect
from inspector.gear.outcome import Outcome
from tests.drawings.walls import assert_inside


@given(st.sampled_from(list(Outcome)), st.floats(3.0, 60.0))
def test_a_mark_fills_its_frame_and_stays_in_it(outcome: Outcome, size_mm: float) -> None:
    drawing = outcome_mark(outcome, size_mm)
    assert (drawing.width_mm, drawing.height_mm) == (size_mm, size_mm)
    assert_inside(drawing)


def test_retire_is_a_ring_with_a_bar_from_top_left_to_bottom_right() -> None:
    ring, bar = outcome_mark(Outcome.RETIRE, 20.0).shapes
    assert isinstance(ring, Circle) and ring.ink is Ink.MARK and ring.fill is Ink.PAPER
    assert isinstance(bar, Line) and bar.start[0] < bar.end[0] and bar.start[1] < bar.end[1]
    assert bar.end[0] - bar.start[0] == pytest.approx(bar.end[1] - bar.start[1])  # 45 degrees


def test_hold_is_a_full_disc_with_a_white_sign() -> None:
    disc, *sign = outcome_mark(Outcome.HOLD, 20.0).shapes
    assert isinstance(disc, Circle) and disc.fill is Ink.MARK and disc.radius_mm == 10.0
    assert {shape.ink or shape.fill for shape in sign} == {Ink.PAPER}


def test_derate_is_a_triangle_with_its_point_upwards() -> None:
    triangle = outcome_mark(Outcome.DERATE, 20.0).shapes[0]
    assert isinstance(triangle, Polygon) and len(triangle.points) == 3
    apex, right, left = triangle.points
    assert apex[1] < right[1] == left[1] and left[0] < apex[0] < right[0]


def test_fit_is_a_full_square_with_a_white_tick() -> None:
    square, tick = outcome_mark(Outcome.FIT, 20.0).shapes
    assert isinstance(square, RoundedRect) and square.wide_mm == square.high_mm and square.fill is Ink.INK
    assert isinstance(tick, Polyline) and tick.ink is Ink.PAPER


def test_the_marks_differ_in_shape_and_not_only_in_ink() -> None:
    outlines = {type(outcome_mark(outcome, 10.0).shapes[0]) for outcome in (Outcome.FIT, Outcome.DERATE, Outcome.HOLD)}
    assert len(outlines) == 3
    shapes = {tuple(map(type, outcome_mark(outcome, 10.0).shapes)) for outcome in Outcome}
    assert len(shapes) == 4


def test_only_what_may_not_be_used_carries_the_accent() -> None:
    accented = {one for one in Outcome if any(Ink.MARK in (s.ink, s.fill) for s in outcome_mark(one, 10.0).shapes)}
    assert accented == {Outcome.HOLD, Outcome.RETIRE}


def test_each_mark_has_a_word_and_a_meaning_of_its_own() -> None:
    assert len({outcome_word(outcome) for outcome in Outcome}) == 4
    for outcome in Outcome:
        drawing = outcome_mark(outcome, 10.0)
        assert drawing.title == outcome_word(outcome)
        assert drawing.describes == f"{outcome_word(outcome)}: {outcome_meaning(outcome)}"
