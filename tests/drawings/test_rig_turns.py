"""Where three lines meet: the angle as it is, the forces in balance."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.rig_turns import turn_picture, turns
from inspector.drawings.shapes import Drawing, Ink, Point, Polygon
from inspector.gear.rig import Angle
from inspector.units import Dimension, System, read
from tests.drawings import rigs
from tests.drawings.walls import assert_inside, assert_texts_apart, said


@given(st.floats(0.0, 180.0), st.lists(st.floats(0.0, 1e6), min_size=3, max_size=3), st.sampled_from(list(System)))
def test_it_lies_in_its_frame_at_any_angle_and_force(degrees: float, forces: list[float], system: System) -> None:
    made = rigs.bridled()
    figure = read(f"{degrees:.1f}°", Dimension.ANGLE, field="angle")
    known = dict(zip(("SH-L", "SH-R", "SS-12"), forces, strict=True))
    links = tuple(replace(one, force_n=known.get(one.tag, one.force_n)) for one in made.links)
    turned = replace(made, rig=replace(made.rig, angles=(Angle("BR-01", figure),)), links=links)
    drawing = turn_picture(turned, "BR-01", system)
    assert_inside(drawing)
    assert_texts_apart(drawing)


def arrows(drawing: Drawing) -> list[tuple[float, float]]:
    """Each arrow as its angle in degrees and its length in mm, from the middle of the part."""
    heads = [one for one in drawing.shapes if isinstance(one, Polygon) and one.fill is Ink.FORCE]
    return [_from_base(head) for head in heads]


def _from_base(head: Polygon) -> tuple[float, float]:
    tip, left, right = head.points
    base: Point = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
    turn = math.degrees(math.atan2(tip[1] - base[1], tip[0] - base[0]))
    return turn, (tip[0] - 30.0) / math.cos(math.radians(turn))


@pytest.mark.parametrize(("name", "tag"), [("bridled", "BR-01"), ("redirected", "SB-03"), ("doubled", "SB-03")])
def test_the_angle_is_true_and_the_arrows_balance(name: str, tag: str) -> None:
    result = rigs.RIGS[name]()
    assert turns(result) == (tag,)
    held, upper, lower = arrows(turn_picture(result, tag))
    figure = result.rig.angle(tag)
    assert figure
    assert lower[0] - upper[0] == pytest.approx(math.degrees(figure.si), abs=1e-6)
    assert abs(held[0]) == pytest.approx(180.0)
    along = sum(long * math.cos(math.radians(turn)) for turn, long in (upper, lower))
    assert along == pytest.approx(held[1], rel=0.01)  # the rigs' forces are rounded to three digits


def test_its_words_name_angle_parts_and_forces() -> None:
    words = said(turn_picture(rigs.redirected(), "SB-03"))
    for one in ("90° between WL-02 and WI-01", "SH-13", "56.6 kN", "40 kN"):
        assert one in words


def test_an_angle_where_no_three_lines_meet_has_no_picture() -> None:
    angle = Angle("KS-11", read("30°", Dimension.ANGLE, field="angle"))
    made = rigs.plain()
    assert turns(replace(made, rig=replace(made.rig, angles=(angle,)))) == ()
