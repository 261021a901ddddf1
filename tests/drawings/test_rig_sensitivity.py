"""How the pull grows, with speed and with depth."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.axes import round_ticks
from inspector.drawings.rig_sensitivity import depth_chart, has_depths, has_speeds, speed_chart
from inspector.drawings.shapes import Circle, Ink, Line, RoundedRect
from inspector.gear.rig import Footing
from inspector.gear.rig_result import RigResult, Sensitivity
from inspector.units import Dimension, System
from tests.drawings import rigs
from tests.drawings.walls import assert_inside, assert_texts_apart, said

FORCES = st.floats(0.0, 1e6)
WORDS = st.sampled_from(["in mud", "mud up to the sills", "soft dry sand, wheels sunk to the rims and more " * 2])


@st.composite
def results(draw: st.DrawFn) -> RigResult:
    """Any sensitivity, of a rig that has one."""
    speeds = sorted(draw(st.lists(st.floats(0.01, 12.0), min_size=1, max_size=9, unique=True)))
    points = tuple((speed, draw(FORCES)) for speed in (0.0, *speeds))
    depths = tuple(
        (key, draw(WORDS), draw(FORCES), draw(st.none() | FORCES))
        for key in draw(st.lists(st.sampled_from(Footing), min_size=1, max_size=12, unique=True))
    )
    known = Sensitivity(points, depths, draw(st.none() | st.floats(0.0, 15.0)), draw(st.sampled_from(["", "RP-01"])))
    made = rigs.plain()
    return replace(made, sensitivity=known, load=replace(made.load, offered_n=draw(FORCES)))


@given(results(), st.sampled_from(list(System)))
def test_both_lie_in_their_frames_and_no_text_on_another(result: RigResult, system: System) -> None:
    for drawing in (speed_chart(result, system), depth_chart(result, system)):
        assert_inside(drawing)
        assert_texts_apart(drawing)
        assert drawing.width_mm == 86.0
        assert "…" not in said(drawing)


def test_points_stand_at_their_speed_and_pull() -> None:
    dots = [one for one in speed_chart(rigs.plain()).shapes if isinstance(one, Circle)]
    points = rigs.SENSITIVITY.speeds
    (x0, y0), (x1, y1) = dots[0].centre, dots[-1].centre
    for dot, (speed, force) in zip(dots, points, strict=True):
        assert (dot.centre[0] - x0) / (x1 - x0) == pytest.approx(speed / 3.2)
        assert (dot.centre[1] - y0) / (y1 - y0) == pytest.approx((force - 8e3) / (88e3 - 8e3))


def test_the_limit_speed_is_a_line_at_its_place_with_its_words() -> None:
    drawing = speed_chart(rigs.plain())
    dots = [one for one in drawing.shapes if isinstance(one, Circle)]
    limit = next(one for one in drawing.shapes if isinstance(one, Line) and one.ink is Ink.LIMIT)
    per_speed = (dots[-1].centre[0] - dots[0].centre[0]) / 3.2
    assert limit.start[0] == pytest.approx(dots[0].centre[0] + 1.75 * per_speed)
    assert "limit 6.3 km/h" in said(drawing) and "RP-01" in said(drawing)


def test_a_limit_speed_is_rounded_down() -> None:
    known = replace(rigs.SENSITIVITY, greatest_speed_m_per_s=6.299 / 3.6)
    assert "limit 6.2 km/h" in said(speed_chart(replace(rigs.plain(), sensitivity=known)))


def test_where_no_speed_helps_it_is_said() -> None:
    known = replace(rigs.SENSITIVITY, greatest_speed_m_per_s=None)
    assert (
        "No speed brings every part within what it may bear"
        in speed_chart(replace(rigs.plain(), sensitivity=known)).describes
    )


def test_the_depth_it_is_stuck_in_is_marked_by_word() -> None:
    drawing = depth_chart(rigs.plain())
    assert "here: wheel-deep in mud" in said(drawing)
    full = [one for one in drawing.shapes if isinstance(one, RoundedRect) and one.fill in {Ink.STEEL, Ink.BAND}]
    assert full[2].wide_mm / full[1].wide_mm == pytest.approx(42.7 / 28.4)


def test_a_rig_without_either_has_no_chart() -> None:
    none = replace(rigs.plain(), sensitivity=Sensitivity())
    assert not has_speeds(none) and not has_depths(none)
    assert has_speeds(rigs.plain()) and has_depths(rigs.plain())


@given(st.floats(0.1, 1e6), st.sampled_from([Dimension.FORCE, Dimension.SPEED]), st.sampled_from(list(System)))
def test_ticks_are_few_even_and_end_within(high: float, dimension: Dimension, system: System) -> None:
    values = [tick.value for tick in round_ticks(high, dimension, system)]
    assert 1 <= len(values) <= 7 and values[0] == 0.0 and values[-1] <= high * (1 + 1e-6)
