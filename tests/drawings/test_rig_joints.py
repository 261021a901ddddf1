"""The joints of a rig cut open, with its own numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.rig_joints import has_picture, joint_picture
from inspector.drawings.shapes import Ink, Line, Polygon
from inspector.gear.rig_result import JointUse
from inspector.units import System
from tests.drawings import rigs
from tests.drawings.walls import assert_inside, assert_texts_apart, said

PICTURED = (rigs.BALL, rigs.PIN, rigs.WELD, rigs.TUBE, rigs.TIE_DOWN)
EVERY_JOINT = pytest.mark.parametrize("joint", PICTURED, ids=lambda joint: joint.picture)
FIGURES = ("pin_m", "lever_m", "shank_m", "moment_n_m", "stress_pa", "first_set_n", "strength_n")
LARGEST = {
    "pin_m": 0.3,
    "lever_m": 0.3,
    "shank_m": 0.3,
    "moment_n_m": 1e6,
    "stress_pa": 1e10,
    "first_set_n": 1e7,
    "strength_n": 1e7,
}


@given(st.sampled_from(PICTURED), st.sampled_from(list(System)), st.floats(0.0, 2e6), st.data())
def test_it_lies_in_its_frame_with_any_numbers(
    joint: JointUse, system: System, force_n: float, data: st.DataObject
) -> None:
    known = data.draw(st.lists(st.sampled_from(FIGURES), unique=True))
    figures = tuple((name, data.draw(st.floats(0.0, LARGEST[name]))) for name in known)
    drawing = joint_picture(replace(joint, force_n=force_n, figures=figures), system)
    assert_inside(drawing)
    assert_texts_apart(drawing)


@EVERY_JOINT
def test_the_numbers_of_this_rig_are_written(joint: JointUse) -> None:
    words = said(joint_picture(joint))
    assert "45 kN" in words or "22.5 kN" in words
    shown = {"lever_m": "{:g} mm", "moment_n_m": "{:g} N m", "first_set_n": "{:.1f} kN", "strength_n": "{:g} kN"}
    scale = {"lever_m": 1e3, "moment_n_m": 1, "first_set_n": 1e-3, "strength_n": 1e-3}
    for name, form in shown.items():
        value = joint.figure(name)
        if value is not None:
            assert form.format(value * scale[name]) in words


@EVERY_JOINT
def test_a_number_that_nobody_knows_is_not_drawn(joint: JointUse) -> None:
    words = said(joint_picture(replace(joint, figures=())))
    assert not any(unit in words for unit in (" mm", " N m", " MPa"))
    assert words.count("kN") <= 3


@EVERY_JOINT
def test_no_word_is_cut(joint: JointUse) -> None:
    drawing = joint_picture(joint, System.IMPERIAL)
    assert "…" not in said(drawing)
    words = "".join(said(drawing).split())
    for sentence in drawing.describes.split(". ")[1:]:
        assert "".join(sentence.split()).rstrip(".") in words


def sections(joint: JointUse) -> int:
    return sum(isinstance(one, Line) and one.tells.startswith("A section") for one in joint_picture(joint).shapes)


def test_a_pin_carries_on_two_sections_and_a_ball_on_one() -> None:
    assert (sections(rigs.PIN), sections(rigs.BALL)) == (2, 1)
    assert said(joint_picture(rigs.PIN)).count("22.5 kN") == 2


def test_the_weld_is_torn_on_the_side_of_the_hole_and_pressed_on_the_other() -> None:
    faces = {one.tells: one for one in joint_picture(rigs.WELD).shapes if isinstance(one, Polygon)}
    torn, pressed, plate = faces["Weld torn open"], faces["Weld pressed together"], faces["Plate with the hole"]
    assert torn.fill is Ink.LIMIT and pressed.fill is not Ink.LIMIT
    hole_mm = max(y for _, y in plate.points)
    assert abs(max(y for _, y in torn.points) - hole_mm) < abs(max(y for _, y in pressed.points) - hole_mm)


def test_a_joint_without_a_section_has_none() -> None:
    assert not has_picture(rigs.joint("a", "b"))
    assert all(has_picture(one) for one in PICTURED)
