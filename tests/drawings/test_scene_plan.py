"""The distances of a sketch: each as long as it says, on one scale, nothing out of its frame or on another."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.drawings.extent import Box, extent
from inspector.drawings.scene_plan import scene_plan
from inspector.drawings.shapes import Drawing, Ink, Line, Text
from inspector.gear.incident import Distance
from inspector.units import Dimension, System, read


def distance(typed: str, one: str = "hook", other: str = "point") -> Distance:
    """Between two ends."""
    return Distance(one, other, read(typed, Dimension.LENGTH, field="d"))


def level(drawing: Drawing) -> list[float]:
    """How long the measuring lines are, in the picture's millimetres."""
    lines = [one for one in drawing.shapes if isinstance(one, Line) and one.tells]
    return [one.end[0] - one.start[0] for one in lines]


def test_each_line_is_as_long_as_it_says_on_one_scale() -> None:
    drawn = level(scene_plan([distance("10 m"), distance("2.5 m"), distance("400 cm")]))
    assert [one / drawn[0] for one in drawn] == pytest.approx([1.0, 0.25, 0.4])


@pytest.mark.parametrize("system", System)
def test_the_scale_bar_is_as_long_as_it_says(system: System) -> None:
    plan = scene_plan([distance("31.2 m")], system)
    bar = next(one for one in plan.shapes if isinstance(one, Line) and one.ink is Ink.FAINT)
    said = next(one.text for one in plan.shapes if isinstance(one, Text) and one.at[0] > bar.end[0])
    told = read(said, Dimension.LENGTH, field="bar").si
    assert (bar.end[0] - bar.start[0]) / level(plan)[0] == pytest.approx(told / 31.2)


def test_the_words_name_both_ends_and_the_figure_as_typed() -> None:
    plan = scene_plan([distance("31 1/2 ft", "V-1 hook", "Ned")])
    assert any(isinstance(one, Text) and one.text == "V-1 hook to Ned: 31 1/2 ft" for one in plan.shapes)
    assert plan.describes == "V-1 hook to Ned: 31 1/2 ft."


NAMES = st.text(st.characters(categories=("L", "N", "P")), min_size=1, max_size=120)
DISTANCES = st.builds(
    lambda one, other, length: distance(f"{length} cm", one, other), NAMES, NAMES, st.integers(1, 1_000_000)
)


@given(distances=st.lists(DISTANCES, min_size=1, max_size=8), width=st.sampled_from([120.0, 178.0]))
def test_nothing_leaves_the_frame_and_no_words_lie_on_others(distances: list[Distance], width: float) -> None:
    plan = scene_plan(distances, width_mm=width)
    frame = Box(0.0, 0.0, plan.width_mm, plan.height_mm)
    assert all(frame.holds(extent(shape), 0.6) for shape in plan.shapes if not _is_note(shape))
    texts = [extent(shape) for shape in plan.shapes if isinstance(shape, Text)]
    assert not any(one.overlaps(other) for one, other in combinations(texts, 2))


def _is_note(shape: object) -> bool:
    return isinstance(shape, Text) and shape.ink is Ink.FAINT
