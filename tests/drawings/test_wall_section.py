"""The section of a tube, new and now."""

import pytest
from hypothesis import given
from msgspec.structs import replace

from inspector.drawings.shapes import Drawing, Ink, Line, RoundedRect
from inspector.drawings.wall_points import face_of
from inspector.drawings.wall_section import wall_section
from inspector.gear.verdict import WallForecast
from inspector.units import System
from tests.drawings.walls import assert_inside, assert_texts_apart, said, texts, walls


@given(walls())
def test_every_shape_lies_in_the_frame(wall: WallForecast) -> None:
    for system in System:
        drawing = wall_section(wall, system)
        assert_inside(drawing)
        assert_texts_apart(drawing)


def rounded(drawing: Drawing) -> list[RoundedRect]:
    """The contours of the tube."""
    return [shape for shape in drawing.shapes if isinstance(shape, RoundedRect) and shape.radius_mm > 0]


def contour(drawing: Drawing, tells: str) -> RoundedRect:
    """The contour that says this."""
    return next(shape for shape in rounded(drawing) if shape.tells.startswith(tells))


def test_the_contours_are_to_scale(wall: WallForecast) -> None:
    drawing = wall_section(wall)
    outer = contour(drawing, "Steel that is left")
    mm_per_m = outer.wide_mm / 0.0635
    for tells, depth_m in (("Inner face as new", 0.0063), ("The inside", 0.0040), ("The wall must", 0.0030)):
        inner = contour(drawing, tells)
        assert outer.wide_mm - inner.wide_mm == pytest.approx(2 * depth_m * mm_per_m)
        assert inner.corner[0] - outer.corner[0] == pytest.approx(depth_m * mm_per_m)
        assert outer.radius_mm - inner.radius_mm == pytest.approx(depth_m * mm_per_m)


def test_the_new_face_is_dashed_and_the_limit_has_its_own_ink(wall: WallForecast) -> None:
    drawing = wall_section(wall)
    assert contour(drawing, "Inner face as new").dash_mm
    assert contour(drawing, "The wall must").ink is Ink.LIMIT
    assert contour(drawing, "The inside").fill is Ink.THIN


def test_new_now_and_must_keep_are_written(wall: WallForecast) -> None:
    words = said(wall_section(wall))
    assert "new 6.3 mm" in words
    assert "now 4 mm" in words
    assert "must keep 3 mm" in words
    assert "Thinnest reading 4.3 mm at “bottom face” on 3 May 2026" in words


def test_the_system_decides_the_unit(wall: WallForecast) -> None:
    words = said(wall_section(wall, System.IMPERIAL))
    assert "new 0.248 in" in words
    assert "6.3 mm" not in words


def test_each_read_face_is_named_with_its_latest_value(wall: WallForecast) -> None:
    words = [text.text for text in texts(wall_section(wall))]
    for expected in ("top", "5.8 mm (2020)", "left", "5.0 mm (2023)", "bottom", "4.3 mm (2026)"):
        assert expected in words
    assert "right" not in words


@pytest.mark.parametrize(
    ("point", "face"), [("top", "top"), ("Left face", "left"), ("bottom, 30 mm in", "bottom"), ("mouth", ""), ("", "")]
)
def test_a_points_name_tells_its_face(point: str, face: str) -> None:
    assert face_of(point) == face


def test_without_the_outside_one_wall_is_drawn_and_said_so(wall: WallForecast) -> None:
    drawing = wall_section(replace(wall, outside_m=None))
    assert not rounded(drawing)
    assert "the outside size of the tube was not written down" in said(drawing)
    limit = next(s for s in drawing.shapes if isinstance(s, Line) and s.ink is Ink.LIMIT and s.start[0] == s.end[0])
    steel = next(s for s in drawing.shapes if isinstance(s, RoundedRect) and s.fill is Ink.STEEL)
    assert (limit.start[0] - steel.corner[0]) / steel.wide_mm == pytest.approx(0.0030 / 0.0040)


def test_an_estimate_is_said_and_dashed(unread: WallForecast) -> None:
    drawing = wall_section(unread)
    assert "estimated 4 mm" in said(drawing)
    assert "No reading was taken" in said(drawing)
    assert "estimated at 4 mm" in drawing.describes


def test_a_wall_worn_through_is_drawn_as_nothing_left(wall: WallForecast) -> None:
    drawing = wall_section(replace(wall, wall_now_m=-0.001))
    assert "now 0 mm" in said(drawing)
    assert_inside(drawing)


def test_each_place_tells_its_reading_how_it_was_taken_and_by_whom(wall: WallForecast) -> None:
    how = {wall.history[2]: "thickness gauge on bare metal, face dressed, tried on its block, by a member"}
    tells = [shape.tells for shape in wall_section(wall, how=how).shapes]
    assert f"bottom face: 4.3 mm on 3 May 2026, {how[wall.history[2]]}" in tells
    assert "top: 5.8 mm on 1 Mar 2020" in tells


def test_a_place_that_was_never_read_is_a_dashed_ring_and_says_so(wall: WallForecast) -> None:
    drawing = wall_section(replace(wall, unread_points=("right", "at pin hole")))
    rings = [shape for shape in drawing.shapes if "never read by" in shape.tells]
    assert {ring.tells for ring in rings if ring.dash_mm} == {
        "right: never read by a competent person",
        "at pin hole: never read by a competent person",
    }
    assert "at pin hole: never read" in said(drawing)
    assert "Never read: right, at pin hole." in drawing.describes


def test_no_place_is_left_out_however_many_share_a_face(wall: WallForecast) -> None:
    points = tuple(replace(wall.history[0], point=f"top {number}") for number in range(5))
    drawing = wall_section(replace(wall, history=points, points=()))
    told = {shape.tells.split(":")[0] for shape in drawing.shapes if shape.tells.startswith("top ")}
    assert told == {f"top {number}" for number in range(5)}
    for number in range(1, 5):
        assert f"top {number}: 5.8 mm (2020)" in said(drawing)
