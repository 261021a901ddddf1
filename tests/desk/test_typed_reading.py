"""From what is typed at a measure to a reading, without a window."""

import pytest

from inspector.desk.inspect.typed_reading import How, methods_for, must_say_method, reading_of, with_unit
from inspector.gear.inspection import Method, Surface
from inspector.gear.kind import Measure
from inspector.refused import Refused
from inspector.units import Dimension

WALL = Measure("wall", "Wall thickness", Dimension.LENGTH, "with a gauge", ("top", "left"))
BODY = Measure("bow_diameter", "Body", Dimension.LENGTH, "with a calliper")
BOLTS = Measure("bolts", "Bolts", Dimension.COUNT, "count them")


def test_a_figure_keeps_what_was_typed_and_how_it_was_taken() -> None:
    """Metres inside, the officer's own text beside it."""
    reading = reading_of(WALL, "top", "2.9 mm", How(Method.ULTRASONIC_BARE, Surface.DRESSED, True), ".")
    assert reading.figure.si == pytest.approx(0.0029)
    assert reading.figure.as_typed == "2.9 mm"
    assert (reading.point, reading.surface, reading.block_checked) == ("top", Surface.DRESSED, True)


def test_what_belongs_to_a_gauge_is_not_said_of_a_calliper() -> None:
    """Face and block are chosen for a gauge; changing to a calliper drops them."""
    reading = reading_of(WALL, "top", "2.9 mm", How(Method.CALLIPER, Surface.DRESSED, True), ".")
    assert (reading.surface, reading.block_checked) == (Surface.NOT_STATED, None)


def test_an_unclear_figure_is_refused_under_the_name_of_its_place() -> None:
    """The refusal can be shown where it belongs."""
    with pytest.raises(Refused) as caught:
        reading_of(WALL, "left", "2.9", How(Method.CALLIPER), ".")
    assert caught.value.field == "Wall thickness, left"


def test_how_a_wall_was_measured_is_never_taken_for_granted() -> None:
    """A gauge through paint reads too thick, so the way must be said; a calliper across a body is plain."""
    assert must_say_method(WALL)
    assert not must_say_method(BODY)
    assert Method.ULTRASONIC_PAINT in methods_for(WALL)
    assert methods_for(BOLTS) == (Method.COUNTED,)


@pytest.mark.parametrize(
    ("text", "others", "wanted"),
    [
        ("2.2", ("2.9 mm", ""), "2.2 mm"),
        ("0,11", ("", "1/8 in"), "0,11 in"),
        ("2.2", ("", "3"), "2.2"),
        ("2.2 in", ("2.9 mm",), "2.2 in"),
        ("abc", ("2.9 mm",), "abc"),
        ("", ("2.9 mm",), ""),
    ],
)
def test_a_unit_typed_once_holds_for_the_other_places(text: str, others: tuple[str, ...], wanted: str) -> None:
    """Only a bare number takes it over, and only from what the officer typed himself."""
    assert with_unit(text, others) == wanted
