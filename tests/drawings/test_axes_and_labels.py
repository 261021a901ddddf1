"""Ticks at round figures, labels out of each other's way, safe guesses of width."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.drawings.axes import Scale, day_ticks, length_ticks
from inspector.drawings.extent import Box, extent, text_width_mm
from inspector.drawings.labels import Labels
from inspector.drawings.shapes import Ink, Line
from inspector.drawings.wording import LABEL_MM, note, wrapped
from inspector.language import show_day
from inspector.units import System


@given(st.floats(1e-4, 5.0), st.sampled_from(list(System)))
def test_lengths_have_few_and_even_ticks(high_m: float, system: System) -> None:
    values = [tick.value for tick in length_ticks(high_m, system)]
    assert 1 <= len(values) <= 7
    assert values[0] == 0.0 and values[-1] <= high_m * (1 + 1e-6)


def test_ticks_are_round_in_their_own_system() -> None:
    assert [tick.words for tick in length_ticks(0.0065, System.METRIC)] == ["0 mm", "2 mm", "4 mm", "6 mm"]
    assert [tick.words for tick in length_ticks(0.0065, System.IMPERIAL)][:3] == ["0 in", "0.05 in", "0.1 in"]


@given(st.integers(1, date(9998, 1, 1).toordinal()), st.integers(30, 60000))
def test_days_have_few_ticks_within_their_span(first: int, span: int) -> None:
    last = min(first + span, date(9999, 1, 1).toordinal())
    ticks = day_ticks(first, last)
    assert len(ticks) <= 7 or span > 1200 * 30 * 7
    assert all(first <= tick.value <= last for tick in ticks)


def test_years_read_as_years_and_months_as_months() -> None:
    years = day_ticks(date(2020, 6, 1).toordinal(), date(2025, 6, 1).toordinal())
    assert [tick.words for tick in years] == ["2021", "2022", "2023", "2024", "2025"]
    months = day_ticks(date(2026, 1, 1).toordinal(), date(2026, 6, 2).toordinal())
    assert months[0].words == "Jan 2026" and months[-1].words == "Jun 2026"


def test_a_scale_may_run_upwards() -> None:
    down = Scale(0.0, 10.0, 50.0, 0.0)
    assert (down.at(0.0), down.at(10.0), down.at(2.5)) == (50.0, 0.0, 37.5)


def test_labels_take_free_spots_and_give_up_when_there_is_none() -> None:
    labels = Labels(Box(0, 0, 30, 14))
    placed = [labels.place("4.3 mm", (15.0, 7.0)) for _ in range(40)]
    found = [extent(label) for label in placed if label]
    assert 2 <= len(found) < 40
    assert not any(one.overlaps(other) for number, one in enumerate(found) for other in found[number + 1 :])


def test_a_label_keeps_off_a_slanting_line() -> None:
    line = Line((0.0, 12.0), (30.0, 2.0), ink=Ink.INK)
    labels = Labels(Box(0, 0, 30, 14))
    labels.keep_line_clear(line)
    label = labels.place("4.3 mm", (15.0, 7.0))
    assert label is not None
    box = extent(label)
    heights = [12.0 - x / 3 for x in (box.left, box.right)]
    assert box.bottom <= min(heights) or box.top >= max(heights)


def test_a_long_word_is_broken_and_nothing_lost() -> None:
    lines = wrapped("x" * 200 + " end", 40.0)
    assert all(text_width_mm(line, LABEL_MM) <= 40.0 for line in lines)
    assert "".join(lines) == "x" * 200 + "end"


def test_a_note_too_long_says_so_and_tells_all_on_hover() -> None:
    text = "word " * 60
    shapes = note(text, 0, 0, 40, 2)
    assert len(shapes) == 2
    assert all(shape.tells == text for shape in shapes)
    assert getattr(shapes[-1], "text", "").endswith("…")


@pytest.mark.parametrize(("day", "text"), [(date(2026, 5, 3), "3 May 2026"), (date(1999, 12, 31), "31 Dec 1999")])
def test_days_read_the_same_in_every_country(day: date, text: str) -> None:
    assert show_day(day) == text
