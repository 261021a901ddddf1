"""The life of a piece on one axis of time."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.axes import Scale
from inspector.drawings.extent import extent
from inspector.drawings.life_marks import HALF_MM, bundle_width_mm, mark
from inspector.drawings.shapes import Drawing, Shape
from inspector.drawings.timeline import bundles, timeline
from inspector.gear.life import Life, LifeEntry, LifeSort
from inspector.gear.outcome import Outcome
from tests.drawings.walls import assert_inside, assert_texts_apart, said, texts

BOOKED, TODAY = date(2016, 5, 1), date(2026, 11, 26)
DAYS = st.dates(date(2010, 1, 1), TODAY)


@st.composite
def entries(draw: st.DrawFn) -> LifeEntry:
    """Anything that could happen to a piece."""
    on, sort = draw(DAYS), draw(st.sampled_from(LifeSort))
    says = draw(st.sampled_from(["2 pulls", "Inspection: all good (a member)", "salt, 3 days, not rinsed. " * 9]))
    until = draw(st.none() | st.dates(on, TODAY))
    outcome = draw(st.sampled_from(Outcome)) if sort is LifeSort.VERDICT else None
    return LifeEntry(on, sort, says, until, outcome, draw(st.booleans()))


@st.composite
def lives(draw: st.DrawFn) -> Life:
    """Any life, short or long, with anything due or not."""
    happened = draw(st.lists(entries(), max_size=60))
    due = draw(st.none() | st.dates(date(2016, 1, 1), date(2032, 1, 1)))
    booked = draw(st.dates(BOOKED, TODAY))
    return Life(booked, TODAY, due, tuple(sorted(happened, key=lambda one: one.on)))


def long_life() -> Life:
    """Ten years with three hundred entries, mostly of four sorts."""
    sorts = list(LifeSort)[1:5] * 4 + list(LifeSort)[1:]
    happened = [
        LifeEntry(BOOKED + timedelta(days=12 * number), sorts[number % len(sorts)], f"entry {number}")
        for number in range(300)
    ]
    return Life(BOOKED, TODAY, date(2027, 2, 1), tuple(happened))


WIDTHS = st.sampled_from([40.0, 88.0, 120.0, 174.0, 260.0])


@given(lives(), WIDTHS)
def test_no_label_lies_on_another_and_nothing_leaves_the_frame(life: Life, width_mm: float) -> None:
    drawing = timeline(life, width_mm)
    assert_inside(drawing)
    assert_texts_apart(drawing)


@given(st.lists(entries(), max_size=80), st.floats(30.0, 240.0))
def test_every_entry_is_drawn_or_counted_once(happened: list[LifeEntry], width_mm: float) -> None:
    across = Scale(date(2009, 12, 1).toordinal(), TODAY.toordinal(), 20.0, 20.0 + width_mm)
    found = bundles(happened, across)
    counted = [id(entry) for one in found for entry in one.entries]
    assert sorted(counted) == sorted(id(entry) for entry in happened)


@given(st.lists(entries(), min_size=2, max_size=80), st.floats(30.0, 240.0))
def test_no_two_marks_of_a_row_touch(happened: list[LifeEntry], width_mm: float) -> None:
    across = Scale(date(2009, 12, 1).toordinal(), TODAY.toordinal(), 20.0, 20.0 + width_mm)
    found = sorted(bundles(happened, across), key=lambda one: one.x_mm)
    half = [HALF_MM if len(one.entries) == 1 else bundle_width_mm(len(one.entries)) / 2 for one in found]
    for (left, left_half), (right, right_half) in zip(
        zip(found, half, strict=True), list(zip(found, half, strict=True))[1:], strict=False
    ):
        assert left.x_mm + left_half <= right.x_mm - right_half + 1e-9


@given(lives(), WIDTHS)
def test_what_is_drawn_and_what_is_counted_add_up_to_the_life(life: Life, width_mm: float) -> None:
    """Read from the finished picture: each mark stands for one entry, each framed number for as many as it says."""
    told = tuple(replace(one, says=f"entry {number}") for number, one in enumerate(life.entries))
    alone, counted = drawn_and_counted(timeline(replace(life, entries=told), width_mm))
    assert alone + counted == len(told)


def drawn_and_counted(drawing: Drawing) -> tuple[int, int]:
    """How many marks stand for one entry each, and for how many the framed numbers stand together."""
    tells = {shape.tells for shape in drawing.shapes if ": entry " in shape.tells}
    numbers = [text.text for text in texts(drawing) if text.text.isdigit() and text.tells]
    return sum("\n" not in one for one in tells), sum(map(int, numbers))


def marks_of(drawing: Drawing, starts: str) -> list[Shape]:
    """The shapes that tell something that begins so."""
    return [shape for shape in drawing.shapes if shape.tells.startswith(starts)]


def test_ten_years_with_three_hundred_entries_stay_readable() -> None:
    life = long_life()
    drawing = timeline(life, 174.0)
    assert drawing.height_mm < 100
    alone, counted = drawn_and_counted(drawing)
    assert alone + counted == 300 and alone > 0 and counted > 0
    assert_texts_apart(drawing)


def test_a_wider_picture_parts_what_lay_together() -> None:
    (narrow, _), (wide, _) = (drawn_and_counted(timeline(long_life(), width)) for width in (88.0, 260.0))
    assert wide > narrow


def test_sorts_differ_by_their_outline_and_not_by_ink_alone() -> None:
    """Black and white tells them apart; the two sorts of sheets, one empty and one grey, stand in rows of their own."""
    outlines = set()
    for sort in set(LifeSort) - {LifeSort.VERDICT, LifeSort.FILE}:
        (shape,) = mark(LifeEntry(TODAY, sort, "x"), (10.0, 10.0), "x")
        box = extent(shape)
        outlines.add((type(shape), round(box.width, 2), round(box.height, 2), getattr(shape, "points", ())))
    assert len(outlines) == len(LifeSort) - 2


def test_a_turned_verdict_bears_the_mark_of_its_outcome() -> None:
    marks = [len(mark(LifeEntry(TODAY, LifeSort.VERDICT, "x", outcome=one), (0.0, 0.0), "x")) for one in Outcome]
    assert min(marks) >= 2
    entry = LifeEntry(TODAY, LifeSort.VERDICT, "Hold: the wall", outcome=Outcome.HOLD)
    drawing = timeline(Life(BOOKED, TODAY, None, (entry,)))
    assert marks_of(drawing, "26 Nov 2026: Hold: the wall")


def test_a_loan_is_a_line_from_the_day_out_to_the_day_back() -> None:
    lent = LifeEntry(date(2020, 1, 1), LifeSort.LENDING, "Lent: to a member", until=date(2022, 1, 1))
    drawing = timeline(Life(BOOKED, TODAY, None, (lent,)))
    (told,) = {shape.tells for shape in drawing.shapes if "Lent" in shape.tells}
    assert told == "1 Jan 2020 to 1 Jan 2022: Lent: to a member"


@pytest.mark.parametrize(
    ("due", "words"),
    [(date(2027, 2, 1), "next due 1 Feb 2027"), (date(2026, 3, 1), "was due 1 Mar 2026"), (None, "")],
)
def test_today_and_what_is_due_are_named(due: date | None, words: str) -> None:
    drawing = timeline(Life(BOOKED, TODAY, due, ()))
    assert "today, 26 Nov 2026" in said(drawing)
    assert [one.text for one in texts(drawing) if "due" in one.text] == ([words] if words else [])


def test_whoever_cannot_see_it_hears_how_much_there_is_of_each() -> None:
    describes = timeline(long_life()).describes
    assert "Inspections: " in describes and "Next due 1 Feb 2027." in describes
