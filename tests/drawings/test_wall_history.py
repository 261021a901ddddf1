"""The wall over the years."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from msgspec.structs import replace

from inspector.drawings.extent import extent
from inspector.drawings.shapes import Circle, Drawing, Ink, Line, Polygon, Polyline, Text
from inspector.drawings.wall_history import wall_history
from inspector.drawings.wall_span import ahead, day_range, past, until_now
from inspector.drawings.wall_words import band_days
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.gear.wall_band import BandAt, BandFrom, WallBand
from inspector.units import System
from tests.drawings.walls import DAYS, assert_inside, assert_texts_apart, said, walls
from tests.each import each

ON = date(2026, 6, 13)


@given(walls(), DAYS)
def test_every_shape_lies_in_the_frame_and_no_label_on_another(wall: WallForecast, on: date) -> None:
    for system in System:
        drawing = wall_history(wall, on, system)
        assert_inside(drawing)
        assert_texts_apart(drawing)


def dots(drawing: Drawing) -> list[Circle]:
    """The readings."""
    return [shape for shape in drawing.shapes if isinstance(shape, Circle) and shape.fill is Ink.INK]


def level(drawing: Drawing, tells: str) -> float:
    """The height of a level line in mm from the top."""
    line = next(shape for shape in drawing.shapes if isinstance(shape, Line) and shape.tells.startswith(tells))
    assert line.start[1] == line.end[1]
    return line.start[1]


def test_readings_stand_at_their_height_between_new_and_limit(wall: WallForecast) -> None:
    drawing = wall_history(wall, ON)
    new, limit = level(drawing, "Wall as new"), level(drawing, "Must keep")
    mm_per_m = (limit - new) / (0.0063 - 0.0030)
    for dot, point in zip(dots(drawing), wall.history, strict=True):
        assert dot.centre[1] - new == pytest.approx((0.0063 - point.read_m) * mm_per_m)


def test_readings_stand_in_order_of_time(wall: WallForecast) -> None:
    across = [dot.centre[0] for dot in dots(wall_history(wall, ON))]
    assert across == sorted(across)
    first, second, third = across
    assert (second - first) / (third - second) == pytest.approx(1127 / 1127, rel=0.01)


def test_few_readings_all_carry_their_typed_value(wall: WallForecast) -> None:
    words = said(wall_history(wall, ON))
    for value in ("5.8 mm", "5.0 mm", "4.3 mm", "now 4 mm", "as new", "must keep", "1 Jun 2030"):
        assert value in words


def test_of_many_readings_the_latest_is_labelled_and_every_dot_tells_its_own(wall: WallForecast) -> None:
    history = tuple(
        WallPoint(
            date(2020, 1, 1) + timedelta(days=40 * n), 0.006 - n * 4e-5, 0.0058 - n * 4e-5, "top", f"{6 - n / 25} mm"
        )
        for n in range(50)
    )
    drawing = wall_history(replace(wall, history=history), ON)
    assert len(dots(drawing)) == 50
    assert history[-1].as_typed in said(drawing)
    assert all(point.as_typed in dot.tells for point, dot in zip(history, dots(drawing), strict=True))
    assert_texts_apart(drawing)


def test_one_reading_is_enough(wall: WallForecast) -> None:
    drawing = wall_history(replace(wall, history=wall.history[-1:]), ON)
    assert len(dots(drawing)) == 1
    assert "4.3 mm" in said(drawing)


def test_an_estimate_is_dashed_and_said(unread: WallForecast) -> None:
    drawing = wall_history(unread, ON)
    assert not dots(drawing)
    assert "estimated 4 mm" in said(drawing)
    assert "no reading stands behind it" in said(drawing)
    line = next(s for s in drawing.shapes if isinstance(s, Line) and s.tells.startswith("Estimated"))
    assert line.dash_mm


def test_a_read_wall_is_a_full_line(wall: WallForecast) -> None:
    drawing = wall_history(wall, ON)
    line = next(s for s in drawing.shapes if isinstance(s, Line) and s.tells == "What may be relied on")
    assert line.dash_mm == ()


def test_what_is_relied_on_starts_at_the_thinnest_ever_and_ends_now(wall: WallForecast) -> None:
    thicker_since = (*wall.history, WallPoint(date(2026, 6, 1), 0.0049, 0.0047, "top", "4.9 mm"))
    stretch = until_now(replace(wall, history=thicker_since), ON)
    assert (stretch.from_m, stretch.to_m) == (0.0041, 0.0040)
    assert (stretch.from_day, stretch.to_day) == (date(2026, 6, 1).toordinal(), ON.toordinal())


def test_the_forecast_meets_the_limit_where_the_rate_says(wall: WallForecast) -> None:
    stretch = ahead(wall, ON)
    assert stretch is not None
    assert stretch.to_m == pytest.approx(0.0030)
    assert stretch.to_day - stretch.from_day == pytest.approx(4 * 365.25)


def test_a_far_forecast_is_cut_and_its_day_only_told(wall: WallForecast) -> None:
    slow = replace(wall, rate_m_per_year=0.00001, reaches_required_on=date(2126, 6, 13))
    stretch = ahead(slow, ON)
    assert stretch is not None and stretch.to_day < date(2035, 1, 1).toordinal()
    assert said(wall_history(slow, ON)).count("13 Jun 2126") == 1  # in the note alone


def test_below_the_limit_there_is_no_forecast(wall: WallForecast) -> None:
    thin = replace(wall, wall_now_m=0.0022)
    assert ahead(thin, ON) is None
    assert "The wall is below its limit" in said(wall_history(thin, ON))


def test_the_long_term_line_leads_back_to_new(wall: WallForecast) -> None:
    stretch = past(wall)
    assert stretch is not None
    assert stretch.from_m == 0.0063
    assert (stretch.from_m - stretch.to_m) / (stretch.to_day - stretch.from_day) * 365.25 == pytest.approx(0.00025)


def test_the_words_for_who_cannot_see_name_every_reading(wall: WallForecast) -> None:
    describes = wall_history(wall, ON).describes
    assert all(point.as_typed in describes for point in wall.history)
    assert "It comes down to its limit on 1 Jun 2030" in describes


def test_the_last_days_of_the_calendar_do_not_overflow(wall: WallForecast) -> None:
    far = replace(wall, history=(), rate_m_per_year=1e-9)
    assert_inside(wall_history(far, date(9990, 1, 1)))
    assert_inside(wall_history(far, date(2, 1, 1)))


BAND = WallBand(
    BandFrom.LINE,
    "top",
    3,
    date(2028, 1, 1),
    None,
    None,
    reach_on=date(2029, 6, 1),
    drawn=(
        BandAt(date(2020, 3, 1), 0.0055, 0.0058, 0.0061),
        BandAt(date(2026, 5, 3), 0.0040, 0.0043, 0.0046),
        BandAt(date(2029, 6, 1), 0.0031, 0.0036, 0.0041),
    ),
)


def test_the_band_is_a_face_between_its_bounds_and_says_how_it_was_made(wall: WallForecast) -> None:
    drawing = wall_history(replace(wall, band=BAND), ON)
    face = next(shape for shape in drawing.shapes if isinstance(shape, Polygon))
    new, limit = level(drawing, "Wall as new"), level(drawing, "Must keep")
    mm_per_m = (limit - new) / (0.0063 - 0.0030)
    heights = [(y - new) / mm_per_m for _, y in face.points]
    assert heights == pytest.approx([0.0063 - one for one in (0.0061, 0.0046, 0.0041, 0.0031, 0.0040, 0.0055)])
    assert "straight line through 3 readings at “top”" in said(drawing)
    assert "of 100 new readings there, 95 lie in the band" in drawing.describes


def test_the_chart_reaches_as_far_as_its_band(wall: WallForecast) -> None:
    far = replace(BAND, drawn=(*BAND.drawn, BandAt(date(2040, 1, 1), 0.0, 0.0005, 0.0040)))
    first, last = day_range(replace(wall, band=far), ON)
    assert first < date(2020, 3, 1).toordinal() and last > date(2040, 1, 1).toordinal()


def test_a_reading_on_a_rough_face_is_a_hollow_dot_and_says_why(wall: WallForecast) -> None:
    rough = replace(wall, history=(*wall.history[:-1], replace(wall.history[-1], upper_bound=True)))
    drawing = wall_history(rough, ON)
    assert len(dots(drawing)) == 2
    hollow = [one for one in drawing.shapes if isinstance(one, Circle) and "an upper bound" in one.tells]
    assert [one.fill for one in hollow] == [Ink.PAPER]
    assert "the wall may be thinner than read" in drawing.describes


@each(
    ("band", "words"),
    [
        (BAND, "not before 1 Jan 2028, no latest day before 1 Jun 2029, where the line must end"),
        (replace(BAND, earliest_on=None), "not before 1 Jun 2029; no line may be drawn further"),
        (replace(BAND, earliest_on=None, reach_on=None), "no end in sight"),
        (replace(BAND, reach_on=None), "not before 1 Jan 2028, no latest day"),
        (
            replace(BAND, likely_on=date(2028, 6, 1), latest_on=date(2029, 1, 1)),
            "about 1 Jun 2028; not before 1 Jan 2028, not after 1 Jan 2029",
        ),
        (replace(BAND, likely_on=date(2028, 1, 1), latest_on=date(2028, 1, 1)), "reached on 1 Jan 2028"),
    ],
)
def test_the_retire_date_is_told_with_its_bounds(band: WallBand, words: str) -> None:
    assert band_days(band) == words


def test_every_mark_tells_its_value(wall: WallForecast) -> None:
    """Whoever hovers or walks by keys hears figures, days and reasons, not names alone."""
    how = dict.fromkeys(wall.history, "thickness gauge on bare metal, by a member")
    tells = " | ".join(shape.tells for shape in wall_history(wall, ON, how=how).shapes)
    assert "left: 5.0 mm on 2 Apr 2023, thickness gauge on bare metal, by a member" in tells
    assert "Wall as new: 6.3 mm" in tells
    assert "Must keep 3 mm: club's share of the wall as new" in tells
    assert "On 13 Jun 2026: 4 mm" in tells
    assert "Down to its limit on 1 Jun 2030, at 0.25 mm a year: long-term rate" in tells


def test_the_band_tells_its_values_and_days(wall: WallForecast) -> None:
    drawn = (BandAt(date(2020, 3, 1), 0.0057, 0.0058, 0.0059), BandAt(date(2030, 1, 1), 0.002, 0.003, 0.004))
    now = BandAt(ON, 0.0041, 0.0042, 0.0043)
    band = WallBand(
        BandFrom.LINE, "top", 3, date(2028, 1, 1), date(2030, 1, 1), None, date(2031, 1, 1), now=now, drawn=drawn
    )
    (tells,) = {one.tells for one in wall_history(replace(wall, band=band), ON).shapes if one.tells.startswith("Band")}
    assert "13 Jun 2026: 4.1 mm to 4.3 mm, the line at 4.2 mm." in tells
    assert "Down to the limit: about 1 Jan 2030; not before 1 Jan 2028" in tells


def test_no_figure_stands_on_the_line_in_the_middle_of_the_band(wall: WallForecast) -> None:
    history = tuple(
        WallPoint(date(2024 + n, 3, 1), one, one - 0.0002, "top", f"{one * 1000:.1f} mm")
        for n, one in enumerate((0.0045, 0.0044, 0.0029))
    )
    drawn = tuple(BandAt(date(2024 + n, 3, 1), 0.001, 0.0046 - 0.0007 * n, 0.006) for n in range(5))
    band = WallBand(BandFrom.LINE, "top", 3, None, None, None, drawn=drawn)
    drawing = wall_history(replace(wall, history=history, wall_now_m=0.0027, band=band), date(2026, 3, 1))
    (line,) = [one for one in drawing.shapes if isinstance(one, Polyline)]
    words = [one for one in drawing.shapes if isinstance(one, Text)]
    assert {"2.9 mm", "now 2.7 mm"} <= {one.text for one in words}
    for start, end in pairwise(line.points):
        for step in range(101):
            x, y = (a + (b - a) * step / 100 for a, b in zip(start, end, strict=True))
            for one in words:
                room = extent(one)
                assert not (room.left < x < room.right and room.top < y < room.bottom), one.text
