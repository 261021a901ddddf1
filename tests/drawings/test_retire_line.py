"""The line of forecast retirements."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.retire_line import RetireLine, ending_words, retire_line
from inspector.drawings.shapes import Circle, Drawing, Ink, Line, RoundedRect
from inspector.gear.needs import Ending, EndsBy
from inspector.gear.outcome import Outcome
from tests.drawings.walls import assert_inside, assert_texts_apart, said

ON, LAST = date(2026, 6, 13), date(2031, 6, 13)
WALL = Ending("HR-1", "Hitch receiver", Outcome.FIT, EndsBy.WALL, date(2029, 1, 1), date(2028, 1, 1), date(2030, 1, 1))
AGE = Ending("KS-1", "Kinetic strap", Outcome.DERATE, EndsBy.AGE, date(2030, 5, 5))
DAYS = st.dates(date(2020, 1, 1), date(2060, 1, 1))


@st.composite
def endings(draw: st.DrawFn) -> Ending:
    """Any end, with any band or none, in any order."""
    tag, kind = draw(st.text("HR-01W", min_size=1, max_size=60)), draw(st.sampled_from(("Winch", "W" * 50, "")))
    by, estimated = draw(st.sampled_from(EndsBy)), draw(st.booleans())
    days = draw(DAYS), draw(st.none() | DAYS), draw(st.none() | DAYS)
    return Ending(tag, kind, draw(st.sampled_from(Outcome)), by, *days, estimated=estimated)


@given(st.lists(endings(), max_size=12), st.none() | st.integers(0, 11))
def test_every_shape_lies_in_the_frame_and_no_label_on_another(ends: list[Ending], chosen: int | None) -> None:
    drawing = retire_line(ends, ON, LAST, chosen).drawing
    assert_inside(drawing)
    assert_texts_apart(drawing)


@given(st.lists(endings(), min_size=1, max_size=12))
def test_each_piece_has_a_row_of_its_own_that_tells_it(ends: list[Ending]) -> None:
    made = retire_line(ends, ON, LAST)
    grounds = [one for one in made.drawing.shapes if isinstance(one, RoundedRect) and one.wide_mm > 100]
    assert [one.tells for one in grounds] == [ending_words(one) for one in ends]
    for number, row in enumerate(made.rows):
        assert made.row_at((row.top + row.bottom) / 2) == number
    assert made.row_at(made.drawing.height_mm) is None and made.row_at(-1.0) is None


def dot(made: RetireLine) -> Circle:
    """The mark of a wall's day."""
    return next(one for one in made.drawing.shapes if isinstance(one, Circle))


def bars(drawing: Drawing) -> list[Line]:
    """The bands."""
    return [one for one in drawing.shapes if isinstance(one, Line) and one.ink is Ink.STEEL]


def test_a_day_stands_at_its_share_of_the_years_and_its_band_round_it() -> None:
    made = retire_line([WALL], ON, LAST)
    (bar,), at = bars(made.drawing), dot(made).centre[0]
    assert bar.start[0] < at < bar.end[0] and bar.dash_mm == ()
    mm_per_day = (bar.end[0] - bar.start[0]) / (date(2030, 1, 1) - date(2028, 1, 1)).days
    assert at - bar.start[0] == pytest.approx(mm_per_day * (WALL.on - date(2028, 1, 1)).days)


def test_a_band_without_a_last_day_is_dashed_to_the_end_of_the_line() -> None:
    open_end = retire_line([replace(WALL, latest=None)], ON, LAST)
    (bar,) = bars(open_end.drawing)
    (whole,) = bars(retire_line([replace(WALL, latest=LAST)], ON, LAST).drawing)
    assert bar.dash_mm and bar.end == whole.end
    assert "tell no latest day" in ending_words(replace(WALL, latest=None))


def test_a_wall_that_was_read_an_estimate_and_an_age_have_marks_of_their_own() -> None:
    assert dot(retire_line([WALL], ON, LAST)).fill is Ink.INK
    assert dot(retire_line([replace(WALL, estimated=True)], ON, LAST)).fill is Ink.PAPER
    aged = retire_line([AGE], ON, LAST).drawing
    assert not [one for one in aged.shapes if isinstance(one, Circle)]
    assert [one for one in aged.shapes if isinstance(one, RoundedRect) and one.fill is Ink.INK]


def test_a_day_beyond_the_line_has_no_mark_and_is_written_all_the_same() -> None:
    far = retire_line([replace(WALL, on=date(2040, 2, 3))], ON, LAST).drawing
    assert not [one for one in far.shapes if isinstance(one, Circle)] and "3 Feb 2040" in said(far)


def test_a_day_that_is_past_stands_at_the_beginning() -> None:
    past = retire_line([replace(WALL, on=ON - timedelta(days=400), earliest=None, latest=None)], ON, LAST)
    today = retire_line([replace(WALL, on=ON, earliest=None, latest=None)], ON, LAST)
    assert dot(past).centre == dot(today).centre


def test_words_tell_the_piece_its_outcome_what_ends_it_and_how_sure_that_is() -> None:
    told = ending_words(WALL)
    for words in ("HR-1, Hitch receiver, Fit", "down to its limit on 1 Jan 2029", "from 1 Jan 2028 to 1 Jan 2030"):
        assert words in told
    assert "no reading behind it" in ending_words(replace(WALL, estimated=True))
    assert ending_words(AGE) == "KS-1, Kinetic strap, Derate: its age retires it from 5 May 2030."


def test_only_the_chosen_row_is_marked_and_who_cannot_see_it_is_told_all() -> None:
    made = retire_line([WALL, AGE], ON, LAST, chosen=1)
    marked = [one for one in made.drawing.shapes if isinstance(one, RoundedRect) and one.fill is Ink.BAND]
    assert [one.tells for one in marked] == [ending_words(AGE)]
    assert ending_words(WALL) in made.drawing.describes and ending_words(AGE) in made.drawing.describes
